#include "sweep.hpp"

#include <cmath>

#include <Eigen/Geometry>

#include "../measure/compare.hpp"

namespace rakewright {
namespace {

/// A round tool: its way, radius, and from where on along it the tool is there.
struct Tool {
    const DriverWay& way;
    double radius, start;

    Vector at(double along) const { return way.seat + along * way.way; }

    /// Whether any of it, as far as so long a way, is between two places along the stair's first axis.
    bool reaches(double low, double high, double length) const {
        const double x = way.seat.x(), first = x + start * way.way.x();
        const double last = way.way.x() == 0 ? x : x + length * way.way.x();
        return std::fmin(first, last) - radius <= high && low <= std::fmax(first, last) + radius;
    }
};

/// A tool on its way to planes of one normal.
class TowardPlanes {
 public:
    TowardPlanes(const Tool& tool, const Vector& normal)
        : tool_(tool), normal_(normal), start_(tool.at(tool.start)), closing_(-normal.dot(tool.way.way)),
          rim_(tool.radius * normal.cross(tool.way.way).norm()) {
        const Vector square = normal - normal.dot(tool.way.way) * tool.way.way;
        const double size = square.norm();
        nearest_ = size < rounding ? Vector(Vector::Zero()) : Vector(tool.radius / size * square);
    }

    /// Where its rim first meets the plane through a point; infinite where it does not.
    double met(const Vector& point) const {
        const double middle = normal_.dot(start_ - point), over = middle - rim_;
        if (!no_more_than(0, over, std::fmax(tool_.radius, std::fabs(middle)))) return tool_.start;
        return closing_ > rounding ? tool_.start + std::fmax(0, over) / closing_ : INFINITY;
    }

    /// The point of its rim that comes nearest to them, at a place along its way.
    Vector rim_at(double along) const { return tool_.at(along) - nearest_; }

 private:
    const Tool& tool_;
    Vector normal_, start_;
    double closing_, rim_;
    Vector nearest_;
};

/// A tool on its way past straight edges of one direction, without end.
class PastEdges {
 public:
    PastEdges(const Tool& tool, const Vector& direction)
        : tool_(tool), along_(direction.dot(tool.way.way)), across_(direction - along_ * tool.way.way),
          square_(across_.squaredNorm()) {}

    /// Where it first meets the edge through a point; infinite where it passes by it.
    double met(const Vector& point) const {
        if (square_ < rounding) return INFINITY;  // an edge along the way runs where a plane does, too
        const Vector from_seat = point - tool_.way.seat;
        const double middle_along = from_seat.dot(tool_.way.way), radius = tool_.radius;
        const Vector apart = from_seat - middle_along * tool_.way.way;
        const double nearest = -apart.dot(across_) / square_,
                     room = radius * radius - (apart + nearest * across_).squaredNorm();
        if (!less_than(0, room, radius * radius)) return INFINITY;
        const double half = std::sqrt(room / square_), middle = middle_along + nearest * along_,
                     spread = half * std::fabs(along_);
        if (middle + spread < tool_.start) return INFINITY;
        return std::fmax(tool_.start, middle - spread);
    }

 private:
    const Tool& tool_;
    double along_;
    Vector across_;
    double square_;
};

void keep_nearer(FreeWay& free, double length, Meets what) {
    if (length < free.length) free = {length, what};
}

/// The treads, the floor at the foot and the landing with them, the risers' faces, and the nosings' edges.
void meet_stair(const StairShape& stair, const Tool& tool, FreeWay& free) {
    const TowardPlanes level(tool, Vector::UnitZ()), risers(tool, -Vector::UnitX());
    const TowardPlanes treads = stair.wash == 0 ? level : TowardPlanes(tool, Vector(-stair.wash, 0, 1).normalized());
    const PastEdges edges(tool, Vector::UnitY());
    for (int tread = 0; tread <= stair.risers(); ++tread) {
        const bool floor = tread == 0, landing = tread == stair.risers();
        const double front = floor ? -INFINITY : stair.nosing(tread).x, height = tread_height(stair, tread);
        const double back = landing ? INFINITY : stair.nosing(tread + 1).x + stair.nosing(tread + 1).projection;
        if (!tool.reaches(front, back, free.length)) continue;
        const Vector edge(floor ? 0 : front, 0, height);
        const TowardPlanes& surface = floor || landing ? level : treads;
        if (const double met = surface.met(edge); met < free.length) {
            const double x = surface.rim_at(met).x();
            if (front <= x && x <= back) keep_nearer(free, met, floor ? Meets::floor : Meets::tread);
        }
        if (!floor) keep_nearer(free, edges.met(edge), Meets::tread);
        if (landing) continue;
        if (const double met = risers.met(Vector(back, 0, 0)); met < free.length) {
            const double z = risers.rim_at(met).z();
            if (surface_height(stair, tread, back) <= z && z <= stair.nosing(tread + 1).z)
                keep_nearer(free, met, Meets::tread);
        }
    }
}

}  // namespace

FreeWay free_for(const InTheWay& in_the_way, const DriverWay& way, double diameter, double start) {
    const Tool tool{way, diameter / 2, start};
    FreeWay free{INFINITY, Meets::nothing};
    for (const Barrier& barrier : in_the_way.barriers)
        keep_nearer(free, TowardPlanes(tool, barrier.plane.normal).met(barrier.plane.point), barrier.what);
    if (in_the_way.stair) meet_stair(*in_the_way.stair, tool, free);
    return free;
}

FreeWay free_for_driver(const InTheWay& in_the_way, const DriverWay& way, const Driver& driver, double screw) {
    const FreeWay bit = free_for(in_the_way, way, driver.bit.diameter, 0),
                  body = free_for(in_the_way, way, driver.body.diameter, driver.bit.reach);
    return bit.length < std::fmin(body.length, driver.bit.reach + screw) ? bit : body;
}

double needed_by(const Driver& driver, double screw) { return driver.bit.reach + driver.body.length + screw; }

}  // namespace rakewright
