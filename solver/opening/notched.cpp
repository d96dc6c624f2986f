#include "notched.hpp"

#include <algorithm>

namespace rakewright {
namespace {

/// Where the straight line from `a` to `b` crosses the notch's boundary, nearest to `a`; `by_face` whether that is on
/// its face.
struct Crossing {
    Seen at;
    bool by_face = false;
    double part = 0;
};

Seen between(const Seen& a, const Seen& b, double part) {
    return {a.along + part * (b.along - a.along), a.up + part * (b.up - a.up)};
}

/// Every crossing of the notch's two boundaries by an edge, in its order: none, one, or two where it only cuts through
/// the notch.
std::vector<Crossing> crossings(const Seen& a, const Seen& b, const Notch& notch) {
    const double face_a = notch.face.over(a), face_b = notch.face.over(b);
    const double over_a = a.up - notch.up_to, over_b = b.up - notch.up_to;
    std::vector<Crossing> found;
    if ((face_a < 0) != (face_b < 0)) {
        const double part = face_a / (face_a - face_b);
        const Seen at = between(a, b, part);
        if (at.up < notch.up_to) found.push_back({at, true, part});
    }
    if ((over_a < 0) != (over_b < 0)) {
        const double part = over_a / (over_a - over_b);
        const Seen at = between(a, b, part);
        if (notch.face.over(at) < 0) found.push_back({{at.along, notch.up_to}, false, part});
    }
    if (found.size() == 2 && found[0].part > found[1].part) std::swap(found[0], found[1]);
    return found;
}

/// The corner of the notch that stands in the opening.
Seen corner_of(const Notch& notch) {
    return {(notch.face.from - notch.face.up_part * notch.up_to) / notch.face.along_part, notch.up_to};
}

}  // namespace

Outline notched(const Outline& outline, const Notch& notch) {
    const auto inside = [&](const Seen& point) { return notch.face.over(point) < 0 && point.up < notch.up_to; };
    const auto start = std::find_if_not(outline.begin(), outline.end(), inside);
    if (start == outline.end()) return {};
    const std::size_t first = static_cast<std::size_t>(start - outline.begin()), count = outline.size();
    Outline result;
    result.reserve(count + 3);
    Crossing entered;
    bool within = false;
    for (std::size_t i = first; i < first + count; ++i) {
        const Seen &from = outline[i % count], &to = outline[(i + 1) % count];
        if (!within) result.push_back(from);
        for (const Crossing& crossing : crossings(from, to, notch)) {
            // Along the notch's boundary, round its corner where the outline enters it by one side and leaves by the
            // other.
            if (within && entered.by_face != crossing.by_face) result.push_back(corner_of(notch));
            result.push_back(crossing.at);
            if (!within) entered = crossing;
            within = !within;
        }
    }
    return result;
}

}  // namespace rakewright
