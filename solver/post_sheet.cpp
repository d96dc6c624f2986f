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

void describe(Sheet& row, const Job& job, const PostTop& top) {
    row.word("section", job.sections[static_cast<std::size_t>(top.under.section)].id.name, "whose rail runs over it");
    row.word("end", words(top.under.end), "from or to");
    row.length("near", top.near,
               "along the post, from what it stands on: where the rail's line leaves it toward that section");
    row.length("centre", top.centre, "the same on the post's axis");
    row.length("far", top.far, "the same on the other side; where a second rail runs over the post, only to its axis");
    row.length("overall", top.overall, "the same at the post's highest corner");
    row.angle("miter_deg", top.cut.miter, "of the cut across it: swung along the post's own first axis");
    row.angle("bevel_deg", top.cut.bevel, "tilted across that axis");
}

void describe(Sheet& sheet, const RodLength& rod) {
    sheet.length("length", rod.whole(), "of the rod, end to end: what follows, added up");
    sheet.length("below", rod.below, "under the floor");
    sheet.length("floor", rod.floor, "through the floor's build-up, along the rod, as all that follows");
    sheet.length("plate", rod.plate, "through the base plate");
    sheet.length("post", rod.post, "up the post");
    sheet.length("channel", rod.channel, "through what lies on the post");
    sheet.length("washer", rod.washer, "the washers over that");
    sheet.length("nut", rod.nut, "the nuts");
    sheet.length("spare", rod.spare, "thread past the nut");
}

void describe(Sheet& sheet, const BoltPull& push) {
    sheet.length("arm", push.arm, "from the plate's edge on the side that is pressed to the two bolts across from it");
    sheet.number("pull", push.pull, "on each of the two, lbf, or kN in a job in mm");
}

void describe(Sheet& sheet, const PostFixing& fixing, const FixedPost& fixed) {
    sheet.word("name", fixing.id.name, "as the job calls it");
    sheet.word("anchored_in", words(fixing.anchored_in), "wood or concrete");
    sheet.length("wood_under", fixing.wood_under ? std::optional(fixing.wood_under->value) : std::nullopt,
                 "thickness of the wood under the bolts");
    sheet.number("load", fixed.load,
                 "level, at the top of the highest rail that meets the post, the code's concentrated load on a guard "
                 "(IBC 2021, 1607.9.1.1): lbf, or kN in a job in mm");
    sheet.number("moment", fixed.moment, "of that load about what the post stands on: in-lbf, or kN m in a job in mm");
    if (fixed.along)
        sheet.part("along", "the load along the post's own first axis",
                   [&](Sheet& part) { describe(part, *fixed.along); });
    if (fixed.across) sheet.part("across", "the load across it", [&](Sheet& part) { describe(part, *fixed.across); });
}

/// How long the post and its rod are, where its plate's holes come, and what a push does to its fixing.
void describe(Sheet& sheet, const Job& job, const Post& asked, const PostResult& post) {
    sheet.length("height", post.height,
                 "plumb, from what it stands on to its top: the highest rail's top and the reveal; under rails that run "
                 "over it, their underside on its axis");
    sheet.length("length", post.length,
                 "of the post, along its axis, from what it stands on, or from the top of its base plate");
    sheet.length("stick", post.stick,
                 "the shortest post with a square top that it comes from: longer where its top is cut under a rail");
    sheet.list("holes", post.holes,
               "of its base plate, counter-clockwise from above, from the one ahead and to the left on its own axes",
               [](Sheet& row, const PlateHole& hole) {
                   const auto in_plan = [&](int axis) {
                       return hole.in_plan ? std::optional((*hole.in_plan)[axis]) : std::nullopt;
                   };
                   row.length("along", hole.at.x(),
                              "level, along the first axis of its stair or floor: from plumb under the first nosing, "
                              "or the floor's origin");
                   row.length("across", hole.at.y(), "level, to the left of that axis");
                   row.length("x", in_plan(0), "in the plan of the job, where that is known");
                   row.length("y", in_plan(1), "the same, to the left of x");
               });
    if (post.rod) sheet.part("rod", "the threaded rod up through it", [&](Sheet& part) { describe(part, *post.rod); });
    if (post.fixed)
        sheet.part("fixing",
                   "for information: fixing a guard's post is a structural matter for local code and licensed practice",
                   [&](Sheet& part) {
                       describe(part, job.post_fixings[static_cast<std::size_t>(asked.fixing.index)], *post.fixed);
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
            describe(part, job, job.posts[i], post);
            part.list("tops", post.tops, "the cuts across it under the rails that run over it",
                      [&](Sheet& row, const PostTop& top) { describe(row, job, top); });
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
