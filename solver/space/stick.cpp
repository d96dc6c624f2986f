#include "stick.hpp"

#include <algorithm>
#include <cmath>

#include "../measure/compare.hpp"

namespace rakewright {
namespace {

int sign_of(double slope) {
    // Slopes are of the size of 1: below the rounding of doubles a cut is square.
    if (std::fabs(slope) < rounding) return 0;
    return slope > 0 ? 1 : -1;
}

Reaching reaching(const Slant& slant, double outward, const Corner& long_corner, Spot spot) {
    if (long_corner == Corner{}) return Reaching::square;
    const double beyond_centre = outward * (slant.per_left * spot.left + slant.per_top * spot.top);
    return beyond_centre < 0 ? Reaching::short_there : Reaching::long_there;
}

/// The same piece, seen along its stick after it is turned half round about its own axis.
Piece rolled(const Piece& p) {
    const auto roll = [](const Slant& s) { return Slant{s.at, -s.per_left, -s.per_top}; };
    return {p.section, roll(p.from), roll(p.to)};
}

/// The same piece turned end for end about its top: left and right, from and to change places.
Piece end_for_end(const Piece& p) {
    const auto turn = [](const Slant& s) { return Slant{-s.at, s.per_left, -s.per_top}; };
    return {p.section, turn(p.to), turn(p.from)};
}

bool matches(const Piece& a, const Piece& b) {
    return alike(length(a), length(b)) && alike(a.from.per_left, b.from.per_left) &&
           alike(a.from.per_top, b.from.per_top) && alike(a.to.per_left, b.to.per_left) &&
           alike(a.to.per_top, b.to.per_top);
}

}  // namespace

std::optional<Slant> cut(const Frame& frame, const Plane& plane) {
    const double over = plane.normal.dot(frame.along), left = plane.normal.dot(frame.left),
                 top = plane.normal.dot(frame.top);
    if (std::max(std::fabs(left), std::fabs(top)) > steepest_cut * std::fabs(over)) return std::nullopt;
    return Slant{plane.normal.dot(plane.point - frame.origin) / over, -left / over, -top / over};
}

Spot spot_of(const Corner& corner, const CrossSection& section) {
    return {corner.left * section.width / 2, corner.top * section.depth / 2};
}

double length(const Piece& piece, Spot spot) { return reach(piece.to, spot) - reach(piece.from, spot); }

double edge_length(const Piece& piece, const Corner& edge) { return length(piece, spot_of(edge, piece.section)); }

double overall(const Piece& piece) {
    return length(piece) + (std::fabs(piece.to.per_left) + std::fabs(piece.from.per_left)) * piece.section.width / 2 +
           (std::fabs(piece.to.per_top) + std::fabs(piece.from.per_top)) * piece.section.depth / 2;
}

double shortest_arris(const Piece& piece) {
    return length(piece) - std::fabs(piece.to.per_left - piece.from.per_left) * piece.section.width / 2 -
           std::fabs(piece.to.per_top - piece.from.per_top) * piece.section.depth / 2;
}

Corner long_point(const Piece& piece, End end) {
    if (end == End::to) return {sign_of(piece.to.per_left), sign_of(piece.to.per_top)};
    return {-sign_of(piece.from.per_left), -sign_of(piece.from.per_top)};
}

SetOut set_out(const Piece& piece) {
    const Corner from = long_point(piece, End::from), to = long_point(piece, End::to);
    Corner edge = from;
    if (edge == Corner{}) edge = to;
    if (edge == Corner{}) edge = {0, -1};
    const Spot spot = spot_of(edge, piece.section);
    return {edge, reaching(piece.from, -1, from, spot), reaching(piece.to, 1, to, spot), length(piece, spot)};
}

bool same_section(const CrossSection& a, const CrossSection& b) {
    return (alike(a.width, b.width) && alike(a.depth, b.depth)) || (alike(a.width, b.depth) && alike(a.depth, b.width));
}

bool same_piece(const Piece& a, const Piece& b) {
    if (!alike(a.section.width, b.section.width) || !alike(a.section.depth, b.section.depth)) return false;
    const Piece turned = end_for_end(b);
    return matches(a, b) || matches(a, rolled(b)) || matches(a, turned) || matches(a, rolled(turned));
}

}  // namespace rakewright
