#include "telling.hpp"

namespace rakewright {

Told Telling::of_screw() const {
    switch (finding_.trouble) {
        case Trouble::screw_comes_out:
            return {"the point of the screw of " + size(1) + ", " + joint() +
                        ", comes out: the longest that does "
                        "not is " +
                        floored(2) + (finding_.numbers[3] > 0 ? ", and so short it holds less than is asked for" : ""),
                    {}};
        case Trouble::screw_holds_little:
            return {"the screw, " + joint() + ", holds in " + against(1, 2) + ", less than " + size(2), {}};
        case Trouble::screw_without_joint:
            return {"the screw, " + joint() + ", has no effect: the build has no such joint", {}};
        case Trouble::too_many_screws:
            return {"more than " + whole(0) + " screws would stand in one row", "screws farther apart"};
        case Trouble::drilled_not_nearer:
            return {"a distance of " + plain(0) + " diameters where it is drilled, and of " + plain(1) +
                        " where it is not: a pilot hole lets a screw nearer",
                    "a smaller one, or a greater `end` or `edge`"};
        case Trouble::screw_near_end: return {screw_near("an end or splice of ", ", along the grain"), {}};
        case Trouble::screw_near_edge: return {screw_near("a side of ", ""), {}};
        case Trouble::screws_at_pickets:
            return {whole(2) + (finding_.numbers[2] == 1 ? " screw " : " screws ") + joint() +
                        " would meet a picket or its screws: with `every` at " + length(1) +
                        " they cannot all stand between pickets",
                    {}};
        case Trouble::screws_meet: return {screws_meet(), {}};
        default: return {};
    }
}

}  // namespace rakewright
