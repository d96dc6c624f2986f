#include "handrail.hpp"

#include <cmath>
#include <numbers>

namespace rakewright {
namespace {

/// A corner of the handrail's centre line: where it is, and how it goes on from there.
struct Leg {
    HandrailPart part;
    Vector from, to;
};

/// Sticks along a broken centre line: cut square at its free ends, to half the turn at its corners.
class Jointing {
 public:
    Jointing(const CrossSection& section, const std::vector<Leg>& legs) : section_(section), legs_(legs) {}

    /// None where two cuts cross in a stick.
    std::optional<std::vector<HandrailPiece>> pieces() const {
        std::vector<HandrailPiece> pieces;
        for (std::size_t i = 0; i < legs_.size(); ++i) {
            const Frame frame = frame_along(legs_[i].from, direction(i));
            Slant from, to;
            if (i > 0) from = half_turn(frame, direction(i - 1));
            if (i + 1 < legs_.size()) to = half_turn(frame, direction(i + 1));
            to.at = (legs_[i].to - legs_[i].from).norm();
            const Stick stick{frame, {section_, from, to}};
            if (!(shortest_arris(stick.piece) > 0)) return std::nullopt;
            pieces.push_back({legs_[i].part, stick, end_cut(stick.piece, End::from), end_cut(stick.piece, End::to),
                              set_out(stick.piece)});
        }
        return pieces;
    }

 private:
    /// The plane that halves the corner between a stick and its neighbour, through the frame's origin: square to the
    /// sum of their directions.
    static Slant half_turn(const Frame& frame, const Vector& neighbour) {
        const double size = 1 + neighbour.dot(frame.along);
        return {0, -neighbour.dot(frame.left) / size, -neighbour.dot(frame.top) / size};
    }

    Vector direction(std::size_t i) const { return (legs_[i].to - legs_[i].from).normalized(); }

    static Frame frame_along(const Vector& origin, const Vector& along) {
        const double level = std::sqrt(along.x() * along.x() + along.y() * along.y());
        return frame_on_slope(origin, along.x() / level, along.y() / level, along.z() / level);
    }

    CrossSection section_;
    const std::vector<Leg>& legs_;
};

}  // namespace

CrossSection section_of(const Profile& profile) {
    if (profile.diameter) return {*profile.diameter, *profile.diameter};
    if (profile.around) return {*profile.around / std::numbers::pi, *profile.around / std::numbers::pi};
    return {*profile.width, profile.depth ? profile.depth->value : profile.width->value};
}

bool is_round(const Profile& profile) { return profile.diameter || profile.around; }

std::vector<RimPoint> rim_of(const Piece& piece, End end) {
    std::vector<RimPoint> points;
    if (long_point(piece, end) == Corner{}) return points;
    points.reserve(rim_parts + 1);
    const double radius = piece.section.width / 2;
    const Slant cut{0, end == End::to ? piece.to.per_left : -piece.from.per_left,
                    end == End::to ? piece.to.per_top : -piece.from.per_top};
    for (int part = 0; part <= rim_parts; ++part) {
        const double of_turn = double(part - rim_parts / 2) / rim_parts;
        const SineCosine from_top = sine_cosine(angle_from_degrees(360 * of_turn));
        points.push_back(
            {2 * std::numbers::pi * radius * of_turn, reach(cut, {radius * from_top.sine, radius * from_top.cosine})});
    }
    return points;
}

const char* words(HandrailPart part) {
    switch (part) {
        case HandrailPart::rail: return "handrail";
        case HandrailPart::top_extension: return "top extension";
        case HandrailPart::top_return: return "top return";
        case HandrailPart::bottom_return: return "bottom return";
    }
    return "handrail";
}

HandrailResult handrail_of(const Handrail& handrail, const StairShape& stair, std::vector<Finding>& findings) {
    const auto refuse = [&](Trouble trouble, Place place) {
        findings.push_back({trouble, place, {}, handrail.id.place});
        return HandrailResult{};
    };
    if (!stair.line) return refuse(Trouble::no_nosing_line, handrail.stair.place);
    const bool returns = handrail.returned.top == Return::wall || handrail.returned.bottom == Return::wall;
    if (returns && !handrail.clearance) return refuse(Trouble::return_without_clearance, handrail.id.place);

    const CrossSection section = section_of(handrail.profile);
    HandrailResult result;
    result.slope = stair.line->slope;
    const double lengthened = std::sqrt(1 + result.slope * result.slope);
    const double lift = handrail.height - section.depth / 2 * lengthened;
    const auto over = [&](double x) { return Vector(x, 0, stair.line->at(x) + lift); };
    const double to_wall = handrail.clearance ? *handrail.clearance + section.width / 2 : 0;
    const Vector wall = Vector(0, !handrail.side || handrail.side->left ? to_wall : -to_wall, 0);

    const double beyond_top = handrail.extend.top.value_or(0), beyond_bottom = handrail.extend.bottom.value_or(0);
    const Vector bottom = over(-beyond_bottom), last = over(stair.run_total());
    const Vector top = last + Vector(beyond_top, 0, 0);
    std::vector<Leg> legs;
    if (handrail.returned.bottom == Return::wall) legs.push_back({HandrailPart::bottom_return, bottom + wall, bottom});
    legs.push_back({HandrailPart::rail, bottom, last});
    if (beyond_top > 0) legs.push_back({HandrailPart::top_extension, last, top});
    if (handrail.returned.top == Return::wall) legs.push_back({HandrailPart::top_return, top, top + wall});
    std::optional<std::vector<HandrailPiece>> pieces = Jointing(section, legs).pieces();
    if (!pieces) return refuse(Trouble::handrail_too_short, handrail.id.place);
    const bool off_rake =
        handrail.returned.bottom == Return::wall || (handrail.returned.top == Return::wall && beyond_top == 0);
    if (off_rake && !is_round(handrail.profile) && result.slope != 0)
        findings.push_back({Trouble::return_off_rake, handrail.id.place, {}, {}});
    result.pieces = std::move(*pieces);
    return result;
}

}  // namespace rakewright
