#include "build.hpp"

#include "measure/compare.hpp"

namespace rakewright {
namespace {

void check_holes(const std::vector<Reading>& holes, const Reading& leg, std::vector<Finding>& findings) {
    for (const Reading& hole : holes)
        if (!less_than(hole, leg)) findings.push_back({Trouble::hole_beyond_leg, hole.place, {hole, leg}, leg.place});
}

void check_plough(const Reading& plough, const MemberSize& member, std::vector<Finding>& findings) {
    if (!less_than(plough, member.depth))
        findings.push_back({Trouble::picket_through_rail, plough.place, {plough, member.depth}, member.depth.place});
}

}  // namespace

void check(const Build& build, std::vector<Finding>& findings) {
    if (build.bracket) {
        check_holes(build.bracket->post_hole, build.bracket->post_leg, findings);
        check_holes(build.bracket->rail_hole, build.bracket->rail_leg, findings);
    }
    const bool has_lower = !build.lower.empty();
    if (build.pickets) {
        check_plough(build.pickets->plough.upper, build.upper.back(), findings);
        if (has_lower) check_plough(build.pickets->plough.lower, build.lower.front(), findings);
        if (has_lower && build.pickets->per_tread)
            findings.push_back({Trouble::per_tread_with_lower, build.pickets->per_tread->place, {}, {}});
    }
    if (!has_lower && build.lower_gap)
        findings.push_back({Trouble::lower_gap_without_lower, build.lower_gap->size.place, {}, {}});
}

}  // namespace rakewright
