#pragma once

#include <array>
#include <cstddef>

#include "circle.hpp"

namespace rakewright {

/// What a circle touches, or its centre lies on. `wall`: a line `a along + b up = d`, touched on the side to which the
/// unit vector (a, b) points. `bound`: such a line with the circle's centre on it. `corner`: the point `at`.
struct Feature {
    enum class Kind { wall, bound, corner };
    Kind kind = Kind::wall;
    double a = 0, b = 0, d = 0;
    Seen at;

    static Feature corner(const Seen& at) { return {Kind::corner, 0, 0, 0, at}; }
    static Feature bound(const Side2& side) { return {Kind::bound, side.along_part, side.up_part, side.from, {}}; }
    /// A wall's line, touched on its left as seen along the unit vector `along`.
    static Feature left_of(const Seen& from, const Seen& along) {
        return {Kind::wall, -along.up, along.along, along.along * from.up - along.up * from.along, {}};
    }
    static Feature right_of(const Seen& from, const Seen& along) { return left_of(from, {-along.along, -along.up}); }
};

struct Round {
    Seen centre;
    double radius = 0;
};

/// At most two circles.
class Rounds {
 public:
    const Round* begin() const { return rounds_.data(); }
    const Round* end() const { return rounds_.data() + count_; }
    void add(const Round& round) { rounds_[count_++] = round; }

 private:
    std::array<Round, 2> rounds_{};
    std::size_t count_ = 0;
};

/// The circles of positive radius that touch three features. With (along, up, radius) as unknowns, a wall or bound is a
/// plane and a corner a cone; two corners differ by a plane. So there is either one meeting of three planes, or the
/// line of two planes meets a cone in the roots of a quadratic. None where features repeat each other.
Rounds touching(const Feature& first, const Feature& second, const Feature& third);

}  // namespace rakewright
