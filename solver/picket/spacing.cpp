#include "spacing.hpp"

#include <algorithm>
#include <cmath>

#include "../measure/compare.hpp"

namespace rakewright {
namespace {

/// Whether a picket with its centre at `along` would cut into a post: a corner of it, between the tread and the rail,
/// lies behind a face, or behind the boards round its foot.
bool cuts_into_post(const TreadRoom& room, double along, double surface) {
    const RailLine& line = room.line;
    const Vector left(-line.y, line.x, 0);
    const double scale = room.to_face - room.from_face;
    const auto behind = [&](const Plane& face, const Vector& middle) {
        for (const double lateral : {-room.depth / 2, room.depth / 2})
            if (less_than(face.normal.dot(middle + lateral * left - face.point), 0, scale)) return true;
        return false;
    };
    for (const End end : {End::from, End::to}) {
        const double side = along + (end == End::from ? -room.width : room.width) / 2;
        Vector foot = line.at(side);
        foot.z() = surface;
        if (behind(line.face(end), foot) || behind(line.face(end), line.at(side, room.underside))) return true;
        const TrimMet& trim = line.trim(end);
        if (trim.there() && less_than(surface, trim.up_to) && behind(trim.face.plane, foot)) return true;
    }
    return false;
}

/// Whether a layout with k on each tread serves: none past its nosing, no gap between two of them over the limit.
bool serves(const TreadLayout& layout, double width, double max_gap) {
    return layout.past_nosing == 0 && no_more_than(layout.widest_between(width), max_gap);
}

}  // namespace

std::optional<int> fewest_between(const PicketSpan& span, double max_gap) {
    const double estimate = std::ceil((span.clear - (span.parts_at_ends() - 1) * max_gap) / (span.width + max_gap));
    if (estimate > most_pickets) return std::nullopt;
    int count = std::max(0, static_cast<int>(estimate));
    while (count > 0 && no_more_than(equal_gap(span, count - 1), max_gap)) --count;
    while (!no_more_than(equal_gap(span, count), max_gap)) ++count;
    return count;
}

double equal_gap(const PicketSpan& span, int count) {
    return (span.clear - count * span.width) / (count - 1 + span.parts_at_ends());
}

double end_gap(const PicketSpan& span, const Spaced& spaced) {
    if (!spaced.between || spaced.count < 1) return equal_gap(span, spaced.count);
    return (span.clear - span.width - (spaced.count - 1) * (span.width + *spaced.between)) / span.parts_at_ends();
}

std::optional<int> most_at_pitch(const PicketSpan& span, double pitch, double least_end) {
    const double estimate =
        std::floor((span.clear - span.width - span.parts_at_ends() * least_end) / pitch) + 1;
    if (estimate > most_pickets) return std::nullopt;
    const auto fits = [&](int count) {
        return no_more_than(least_end, end_gap(span, {count, pitch - span.width}), span.clear);
    };
    int count = std::max(0, static_cast<int>(estimate));
    while (count > 0 && !fits(count)) --count;
    while (fits(count + 1)) ++count;
    return count;
}

Layout laid_out_between(double from_face, double to_face, const PicketSpan& span, const Spaced& spaced) {
    Layout layout{{}, from_face, to_face};
    layout.centres.reserve(static_cast<std::size_t>(spaced.count));
    const double end = end_gap(span, spaced), first = span.part_at(End::from);
    for (int i = 0; i < spaced.count; ++i) {
        const double gaps = spaced.between ? first * end + i * *spaced.between : (i + first) * end;
        layout.centres.push_back(from_face + gaps + (i + 0.5) * span.width);
    }
    return layout;
}

std::vector<double> gaps_of(const Layout& layout, double width) {
    std::vector<double> gaps;
    gaps.reserve(layout.centres.size() + 1);
    double before = layout.from_face;
    for (const double centre : layout.centres) {
        gaps.push_back(centre - width / 2 - before);
        before = centre + width / 2;
    }
    gaps.push_back(layout.to_face - before);
    return gaps;
}

double TreadLayout::widest_between(double width) const {
    double widest = 0;
    for (std::size_t i = 1; i < layout.centres.size(); ++i)
        widest = std::max(widest, layout.centres[i] - layout.centres[i - 1] - width);
    return widest;
}

TreadLayout laid_out_on_treads(const TreadRoom& room, int per_tread) {
    const RailLine& line = room.line;
    TreadLayout result{{{}, room.from_face, room.to_face}, {}, per_tread};
    const double uphill = line.x > 0 ? 1 : -1;
    for (int tread = 1; tread < room.stair.risers(); ++tread) {
        const Nosing &here = room.stair.nosing(tread), &next = room.stair.nosing(tread + 1);
        for (int j = 0; j < per_tread; ++j) {
            const double from_riser = j * (next.x - here.x) / per_tread;
            const double face = (here.x + here.projection + from_riser - line.origin.x()) / line.x;
            const double centre = face + uphill * room.width / 2;
            const double surface = surface_height(room.stair, tread, line.at(centre).x());
            if (cuts_into_post(room, centre, surface)) continue;
            result.layout.centres.push_back(centre);
            result.feet.push_back({tread, from_riser});
        }
        // The uphill corners of the last one's foot stand out sideways on a rail that is skew to its stair.
        const double last = (per_tread - 1) * (next.x - here.x) / per_tread;
        const double reaches =
            here.x + here.projection + last + room.width * std::fabs(line.x) + room.depth / 2 * std::fabs(line.y);
        if (result.past_nosing == 0 && less_than(next.x, reaches, room.stair.run_total())) {
            result.past_nosing = tread;
            result.past_by = reaches - next.x;
        }
    }
    if (uphill < 0) {
        std::reverse(result.layout.centres.begin(), result.layout.centres.end());
        std::reverse(result.feet.begin(), result.feet.end());
    }
    return result;
}

std::optional<int> fewest_per_tread(const TreadRoom& room, double max_gap) {
    for (int k = 1; k <= most_per_tread; ++k)
        if (serves(laid_out_on_treads(room, k), room.width, max_gap)) return k;
    return std::nullopt;
}

std::optional<int> per_tread_for_ends(const TreadRoom& room, double max_gap, int least) {
    for (int k = least; k <= most_per_tread; ++k) {
        const TreadLayout layout = laid_out_on_treads(room, k);
        const std::vector<double> gaps = gaps_of(layout.layout, room.width);
        if (serves(layout, room.width, max_gap) && no_more_than(gaps.front(), max_gap) &&
            no_more_than(gaps.back(), max_gap))
            return k;
    }
    return std::nullopt;
}

}  // namespace rakewright
