#include "telling.hpp"

namespace rakewright {

Told Telling::of_screw() const {
    switch (finding_.trouble) {
        case Trouble::screw_comes_out:
            return {"the point of the screw of " + length(1) + " " + joint() +
                        " comes out: the longest that does "
                        "not is " +
                        floored(2) + (finding_.numbers[3] > 0 ? ", and so short it holds less than is asked for" : ""),
                    {}};
        case Trouble::screw_holds_little:
            return {"the screw " + joint() + " holds in " + length(1) + ", less than " + length(2), {}};
        case Trouble::screw_without_joint:
            return {"the screw " + joint() + " has no effect: the build has no such joint", {}};
        case Trouble::screws_meet: return {screws_meet(), {}};
        default: return {};
    }
}

}  // namespace rakewright
