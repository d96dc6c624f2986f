#include "surface.hpp"

#include <algorithm>
#include <cmath>

#include "../measure/compare.hpp"

namespace rakewright {
namespace {

constexpr double pi = 2 * right_angle;

double root(double radius, double m) { return std::sqrt(std::fmax(0, radius * radius - m * m)); }

/// The arc of a circle from its middle to where it passes `m` off a diameter; negative with m.
double arc(double radius, double m) {
    const double out = root(radius, m);
    return radius * (out > 0 ? angle_of(m / out) : std::copysign(right_angle, m));
}

/// The mean of root(radius, m) from one m to another.
double mean_root(double radius, double from, double to) {
    if (std::fabs(to - from) < alike_within * radius) return root(radius, (from + to) / 2);
    const auto under = [&](double m) { return (m * root(radius, m) + radius * arc(radius, m)) / 2; };
    return (under(to) - under(from)) / (to - from);
}

/// How far a cope reaches past the centre line's cut along the middle of what it ends at a face, on the mean.
double mean_outward(const Cope& cope, const StickFace& face, const CrossSection& section) {
    const Spot middle = spot_on(face, section, 0);
    const double off_per = face.side.top != 0 ? cope.off_left : cope.off_top;
    const double off = cope.off + cope.off_left * middle.left + cope.off_top * middle.top;
    const double half = off_per * face.width / 2;
    return cope.per_left * middle.left + cope.per_top * middle.top +
           cope.stretch * (root(cope.radius, cope.off) - mean_root(cope.radius, off - half, off + half));
}

double mean_outward(const Slant& slant, End end, const StickFace& face, const CrossSection& section) {
    const Spot middle = spot_on(face, section, 0);
    return (end == End::to ? 1 : -1) * (slant.per_left * middle.left + slant.per_top * middle.top);
}

double end_area(const Slant& slant, double square_across) {
    return square_across * std::sqrt(1 + slant.per_left * slant.per_left + slant.per_top * slant.per_top);
}

/// The integral over a part of the section, from one m to another, of its chords along the cylinder, along the arc:
/// chords grow or shrink evenly with m.
double over_arc(double radius, double from, double to, double chord_from, double chord_to) {
    if (to - from < rounding * radius) return 0;
    const double per = (chord_to - chord_from) / (to - from);
    return (chord_from - per * from) * (arc(radius, to) - arc(radius, from)) -
           per * radius * (root(radius, to) - root(radius, from));
}

/// The part of the cylinder that a section cuts out. Seen along the axis the section's lines of one m are chords of the
/// rectangle, which the cope stretches to the same slope everywhere.
double end_area(const Cope& cope, const CrossSection& section) {
    const double left = std::fabs(cope.off_left) * section.width / 2, top = std::fabs(cope.off_top) * section.depth / 2;
    const double whole = std::fabs(left - top), all = left + top;
    const double chord = section.width * section.depth / (2 * std::fmax(left, top));
    const double slope = cope.per_top * cope.off_left - cope.per_left * cope.off_top;
    const double area = over_arc(cope.radius, cope.off - all, cope.off - whole, 0, chord) +
                        over_arc(cope.radius, cope.off - whole, cope.off + whole, chord, chord) +
                        over_arc(cope.radius, cope.off + whole, cope.off + all, chord, 0);
    return area * std::sqrt(1 + slope * slope);
}

/// The mantle of a frustum of a cone.
double mantle(double high, double diameter, double next) {
    const double out = (next - diameter) / 2;
    return pi * (diameter + next) / 2 * std::sqrt(high * high + out * out);
}

/// The mantles of what is turned between the blocks, which it meets as thick as it can be there.
double turning_surface(const PicketBuild& bought, double thickest) {
    const double between = *bought.length - bought.blocks->lower - bought.blocks->upper;
    double area = 0, at = 0, diameter = thickest;
    for (const Turning& turning : bought.turning) {
        area += mantle(turning.at - at, diameter, turning.diameter);
        at = turning.at;
        diameter = turning.diameter;
    }
    return area + mantle(between - at, diameter, thickest);
}

}  // namespace

Surface surface_of(const Piece& piece, const std::array<std::optional<Cope>, 2>& copes) {
    Surface surface;
    for (const StickFace& face : faces_of(piece.section)) {
        const double beyond_from = copes[0] ? mean_outward(*copes[0], face, piece.section)
                                            : mean_outward(piece.from, End::from, face, piece.section);
        const double beyond_to = copes[1] ? mean_outward(*copes[1], face, piece.section)
                                          : mean_outward(piece.to, End::to, face, piece.section);
        surface.sides += face.width * (beyond_from + length(piece) + beyond_to);
    }
    const double square_across = piece.section.width * piece.section.depth;
    surface.ends = (copes[0] ? end_area(*copes[0], piece.section) : end_area(piece.from, square_across)) +
                   (copes[1] ? end_area(*copes[1], piece.section) : end_area(piece.to, square_across));
    return surface;
}

Surface turned_surface(const PicketBuild& bought, const Piece& piece, const Trim& trim) {
    const CrossSection& section = piece.section;
    const double thickest = std::fmin(section.width, section.depth);
    const double shoulder = section.width * section.depth - pi * thickest * thickest / 4;
    Surface surface = surface_of({section, piece.from, piece.to});
    // The sides lie about the centre line: what is turned takes as much of each of them.
    surface.sides += turning_surface(bought, thickest) + 2 * shoulder -
                     2 * (section.width + section.depth) * (length(piece) - trim.lower_block - trim.upper_block);
    return surface;
}

Surface round_surface(const Piece& piece) {
    const double diameter = piece.section.width, square_across = pi * diameter * diameter / 4;
    return {pi * diameter * length(piece), end_area(piece.from, square_across) + end_area(piece.to, square_across)};
}

Surface profile_surface(const Piece& piece, double perimeter) {
    return {perimeter * length(piece), surface_of(piece).ends};
}

}  // namespace rakewright
