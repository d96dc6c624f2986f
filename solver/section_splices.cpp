#include "section_splices.hpp"

#include <algorithm>

#include "measure/compare.hpp"

namespace rakewright {
namespace {

/// Places without those at which a member is spliced already.
std::vector<SplicePlace> apart_from(std::vector<SplicePlace> places, const std::vector<Splice>& splices) {
    std::erase_if(places, [&](const SplicePlace& place) {
        return std::any_of(splices.begin(), splices.end(), [&](const Splice& splice) {
            return splice.picket == place.picket && splice.foot == place.foot;
        });
    });
    return places;
}

}  // namespace

void splice_members(const SectionTask& task, const RailLine& line, double first_face, SectionResult& result,
                    std::vector<Finding>& findings) {
    if (!task.build.longest_stick) return;
    std::vector<SplicePlace> pickets, feet;
    if (result.pickets)
        for (std::size_t i = 0; i < result.pickets->centres.size(); ++i)
            pickets.push_back({result.pickets->from_face + result.pickets->centres[i], static_cast<int>(i) + 1, 0});
    for (std::size_t f = 0; f < result.feet.size(); ++f)
        feet.push_back({first_face + result.feet[f].at, 0, static_cast<int>(f) + 1});
    for (std::size_t m = 0; m < result.members.size(); ++m) {
        Member& member = result.members[m];
        const bool lies_under = m > 0 && result.members[m - 1].group == member.group;
        const std::vector<Splice> above = lies_under ? result.members[m - 1].splices : std::vector<Splice>();
        std::optional<std::vector<Splice>> splices;
        const auto try_at = [&](const std::vector<SplicePlace>& places, bool needed) {
            if (splices || (places.empty() && needed)) return;
            splices = splices_in(member, line, places, *task.build.longest_stick);
        };
        if (member.group == Group::lower) {
            try_at(apart_from(feet, above), true);
            try_at(feet, true);
        }
        try_at(apart_from(pickets, above), true);
        try_at(pickets, !pickets.empty());
        if (!splices) {
            findings.push_back({Trouble::no_place_to_splice,
                                task.build.longest_stick->place,
                                {*task.build.longest_stick, member.overall},
                                task.section.id.place});
            return;
        }
        member.splices = std::move(*splices);
    }
}

}  // namespace rakewright
