#include "sweep.hpp"

#include <cmath>

#include <Eigen/Geometry>

#include "../measure/compare.hpp"

namespace rakewright {
namespace {

/// A round tool: its way, radius, and from where on along it the tool is there.
class Tool {
 public:
    Tool(const DriverWay& way, double radius, double start) : way_(way), radius_(radius), start_(start) {}

    Vector at(double along) const { return way_.seat + along * way_.way; }

    /// Where its rim first meets a plane; infinite where it does not.
    double met(const Plane& plane) const {
        const double closing = -plane.normal.dot(way_.way), rim = rim_over(plane.normal);
        const double over = plane.normal.dot(at(start_) - plane.point) - rim;
        if (!no_more_than(0, over, std::fmax(radius_, std::fabs(plane.normal.dot(at(start_) - plane.point)))))
            return start_;
        return closing > rounding ? start_ + std::fmax(0, over) / closing : INFINITY;
    }

    /// The point of its rim that comes nearest to planes of a normal, at a place along its way.
    Vector rim_at(double along, const Vector& normal) const {
        const Vector square = normal - normal.dot(way_.way) * way_.way;
        const double size = square.norm();
        return size < rounding ? at(along) : Vector(at(along) - radius_ / size * square);
    }

    /// Where it first meets a straight edge without end; infinite where it passes by it.
    double met_edge(const Vector& point, const Vector& direction) const {
        const Vector from_seat = point - way_.seat;
        const double along = direction.dot(way_.way);
        const Vector across = direction - along * way_.way, apart = from_seat - from_seat.dot(way_.way) * way_.way;
        const double square = across.squaredNorm();
        if (square < rounding) return INFINITY;  // an edge along the way runs where a plane does, too
        const double nearest = -apart.dot(across) / square,
                     room = radius_ * radius_ - (apart + nearest * across).squaredNorm();
        if (!less_than(0, room, radius_ * radius_)) return INFINITY;
        const double half = std::sqrt(room / square), middle = from_seat.dot(way_.way) + nearest * along,
                     spread = half * std::fabs(along);
        if (middle + spread < start_) return INFINITY;
        return std::fmax(start_, middle - spread);
    }

 private:
    /// How far its rim stands out toward planes of a normal.
    double rim_over(const Vector& normal) const { return radius_ * normal.cross(way_.way).norm(); }

    const DriverWay& way_;
    double radius_, start_;
};

void keep_nearer(FreeWay& free, double length, Meets what) {
    if (length < free.length) free = {length, what};
}

/// The treads, the floor at the foot and the landing with them, the risers' faces, and the nosings' edges.
void meet_stair(const StairShape& stair, const Tool& tool, FreeWay& free) {
    const Vector wash = Vector(-stair.wash, 0, 1).normalized();
    for (int tread = 0; tread <= stair.risers(); ++tread) {
        const bool floor = tread == 0, landing = tread == stair.risers();
        const double front = floor ? -INFINITY : stair.nosing(tread).x;
        const double back = landing ? INFINITY : stair.nosing(tread + 1).x + stair.nosing(tread + 1).projection;
        const Plane surface{Vector(floor ? 0 : front, 0, tread_height(stair, tread)),
                            floor || landing ? Vector(Vector::UnitZ()) : wash};
        if (const double met = tool.met(surface); std::isfinite(met)) {
            const double x = tool.rim_at(met, surface.normal).x();
            if (front <= x && x <= back) keep_nearer(free, met, floor ? Meets::floor : Meets::tread);
        }
        if (!floor)
            keep_nearer(free, tool.met_edge(Vector(front, 0, tread_height(stair, tread)), Vector::UnitY()),
                        Meets::tread);
        if (landing) continue;
        const Plane riser{Vector(back, 0, 0), -Vector::UnitX()};
        if (const double met = tool.met(riser); std::isfinite(met)) {
            const double z = tool.rim_at(met, riser.normal).z();
            if (surface_height(stair, tread, back) <= z && z <= stair.nosing(tread + 1).z)
                keep_nearer(free, met, Meets::tread);
        }
    }
}

}  // namespace

FreeWay free_for(const InTheWay& in_the_way, const DriverWay& way, double diameter, double start) {
    const Tool tool(way, diameter / 2, start);
    FreeWay free{INFINITY, Meets::nothing};
    for (const Barrier& barrier : in_the_way.barriers) keep_nearer(free, tool.met(barrier.plane), barrier.what);
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
