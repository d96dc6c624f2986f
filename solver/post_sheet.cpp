#include "post_sheet.hpp"

#include "solution_sheet.hpp"

namespace rakewright {
namespace {

void describe(Sheet& sheet, const Arrivals& arrivals) {
    const auto of_lower = [&](double GroupHeights::*height) {
        return arrivals.lower ? std::optional((*arrivals.lower).*height) : std::nullopt;
    };
    sheet.length("upper_underside", arrivals.upper.underside,
                 "the lowest of the upper groups, above what the post stands on");
    sheet.length("upper_top", arrivals.upper.top,
                 "the highest of the upper groups: between the two a turned newel is square");
    sheet.length("upper_block", arrivals.upper.top - arrivals.upper.underside, "how long that block is at least");
    sheet.length("lower_underside", of_lower(&GroupHeights::underside), "the same of the lower groups");
    sheet.length("lower_top", of_lower(&GroupHeights::top), "the same of the lower groups");
    sheet.length("lower_block",
                 arrivals.lower ? std::optional(arrivals.lower->top - arrivals.lower->underside) : std::nullopt,
                 "how long their block is at least");
    sheet.length("apart", arrivals.apart, "the highest top of the upper groups over the lowest");
    sheet.length("set_back", arrivals.set_back,
                 "level, past the stair's last nosing (at its foot: from its first on, before it negative): where the "
                 "top of the raked rail is as high as the level one's");
}

void describe(Sheet& row, const Job& job, const Solution& solution, const JointResult& met) {
    const auto section_of = [&](const SectionEnd& end) { return static_cast<std::size_t>(end.section); };
    row.word("first", job.sections[section_of(met.first)].id.name, "the section first named");
    row.word("first_end", words(met.first.end), "from or to");
    row.word("second", job.sections[section_of(met.second)].id.name, "the other section");
    row.word("second_end", words(met.second.end), "from or to");
    row.truth("straight", met.straight, "whether both rails run in one plumb plane");
    row.length("moved", met.moved,
               "level along the first rail, past the joint's place: where the tops of the upper groups meet");
    row.list(
        "members", met.members, "pairs of one group, from the top down", [&](Sheet& pair, const MembersMet& members) {
            pair.word("first", solution.sections[section_of(met.first)].members[members.first].name,
                      "of the first section");
            pair.word("second", solution.sections[section_of(met.second)].members[members.second].name,
                      "of the second");
            pair.length("apart", members.apart(), "how far apart their arrises end at most; 0 where they meet flush");
            pair.list("corners", members.corners, "each arris of the first, seen along it from its from end",
                      [](Sheet& corner, const CornerMet& it) {
                          corner.word("corner", words(it.corner), "which of the first member's arrises");
                          corner.length("plumb", it.plumb, "how much higher the second's arris ends in the joint");
                          corner.length("level", it.level, "how far beside it, level");
                          corner.length("moulded_left", it.moulded.left,
                                        "where the first's arris comes out on the second's section: to the left of its "
                                        "centre line, seen along that");
                          corner.length("moulded_top", it.moulded.top, "the same, above its centre line");
                      });
        });
}

}  // namespace

void describe(Sheet& sheet, const GroupHeights& heights, const char* above) {
    sheet.length("underside", heights.underside, above);
    sheet.length("top", heights.top, above);
}

void describe_posts(Sheet& sheet, const Job& job, const Solution& solution) {
    sheet.named(
        "posts", solution.posts.size(), [&](std::size_t i) -> std::string_view { return job.posts[i].id.name; },
        "each post and the rails that meet it",
        [&](Sheet& part, std::size_t i) {
            const PostResult& post = solution.posts[i];
            part.length("base", post.base(),
                        "height of the surface that it stands on above its stair's floor, or its floor's origin");
            const auto in_plan = [&](int axis) {
                return post.in_plan ? std::optional((*post.in_plan)[axis]) : std::nullopt;
            };
            part.length("x", in_plan(0), "of the centre of its foot in the plan of the job, where that is known");
            part.length("y", in_plan(1), "the same, to the left of x");
            part.length("level", in_plan(2), "height of the centre of its foot in the plan");
            if (const std::optional<JointResult>& joint = post.joint)
                part.part("joint", "where there is no post: how the two sections' rails meet",
                          [&](Sheet& group) { describe(group, job, solution, *joint); });
            if (const std::optional<Arrivals>& arrivals = post.arrivals)
                part.part("arrivals", "where rails of more than one section meet the post",
                          [&](Sheet& group) { describe(group, *arrivals); });
            part.list("rails", post.rails, "in the order of the sections", [&](Sheet& row, const RailAtPost& rail) {
                row.word("section", job.sections[static_cast<std::size_t>(rail.section)].id.name, "whose rail it is");
                row.word("end", words(rail.end), "from or to");
                row.word("group", words(rail.group), "upper or lower");
                describe(row, rail.heights, "plumb above the surface that the post stands on, at the face met");
            });
        });
}

}  // namespace rakewright
