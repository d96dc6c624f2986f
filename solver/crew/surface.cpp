#include "surface.hpp"

#include <algorithm>
#include <cmath>

#include "../measure/compare.hpp"

namespace rakewright {
namespace {

constexpr double pi = 2 * right_angle;

/// The mean of a function from -half to half that is smooth but for roots of the distance to the ends: the five-point
/// rule of Gauss (Abramowitz and Stegun, table 25.4) on each of sixteen parts, over half (3 x - x^3) / 2, in which such
/// roots are smooth.
template <class Function>
double mean(double half, const Function& at) {
    struct Node {
        double place, weight;
    };
    constexpr Node nodes[] = {{-0.906179845938664, 0.236926885056189},
                              {-0.538469310105683, 0.478628670499366},
                              {0, 0.568888888888889},
                              {0.538469310105683, 0.478628670499366},
                              {0.906179845938664, 0.236926885056189}};
    constexpr int parts = 16;
    double sum = 0;
    for (int part = 0; part < parts; ++part)
        for (const Node& node : nodes) {
            const double x = (2 * part + 1 + node.place) / parts - 1;
            sum += node.weight * 1.5 * (1 - x * x) * at(half * x * (3 - x * x) / 2);
        }
    return sum / (2 * parts);
}

/// How far a cope reaches past the centre line's cut along a face, on the mean.
double mean_outward(const Cope& cope, const StickFace& face, const CrossSection& section) {
    return mean(face.width / 2, [&](double across) { return outward(cope, spot_on(face, section, across)); });
}

double mean_outward(const Slant& slant, End end, const StickFace& face, const CrossSection& section) {
    const Spot middle = spot_on(face, section, 0);
    return (end == End::to ? 1 : -1) * (slant.per_left * middle.left + slant.per_top * middle.top);
}

double end_area(const Slant& slant, double square_across) {
    return square_across * std::sqrt(1 + slant.per_left * slant.per_left + slant.per_top * slant.per_top);
}

/// The part of a round post's surface that a section cuts out.
double end_area(const Cope& cope, const CrossSection& section) {
    const OverSection& room = cope.room;
    const auto steeper = [&](double left, double top) {
        const double out = std::sqrt(std::fmax(room.at_centre + room.more({left, top}), 1e-18));
        const double per_left = cope.per_left - cope.stretch / (2 * out) *
                                                    (room.left + 2 * room.left_left * left + room.left_top * top),
                     per_top = cope.per_top -
                               cope.stretch / (2 * out) * (room.top + 2 * room.top_top * top + room.left_top * left);
        return std::sqrt(1 + per_left * per_left + per_top * per_top);
    };
    return section.width * section.depth * mean(section.width / 2, [&](double left) {
               return mean(section.depth / 2, [&](double top) { return steeper(left, top); });
           });
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

Surface surface_of(const Piece& piece, const Copes& copes) {
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
