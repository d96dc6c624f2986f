#include "../../solver/solution_sheet.hpp"
#include "cut_sheet.hpp"

namespace rakewright {
namespace {

Table lengths_table(const Job& job, const Solution& solution) {
    const Cells cells(job);
    Table table{"post_lengths", "HOW LONG THE POSTS ARE", {}, {}, {}, {}};
    table.columns = {{"post", "post", Align::left},
                     {"highest rail", cells.in_unit("highest_rail")},
                     {"reveal", cells.in_unit("reveal")},
                     {"height", cells.in_unit("height")},
                     {"length", cells.in_unit("length")}};
    for (std::size_t p = 0; p < job.posts.size(); ++p) {
        const Post& asked = job.posts[p];
        const PostResult& post = solution.posts[p];
        if (!post.height) continue;
        table.rows.push_back({{cells.word(asked.id.name), cells.length(post.highest_rail()),
                               asked.reveal ? cells.length(asked.reveal->value) : Cell{}, cells.length(post.height),
                               cells.length(post.length)},
                              {}});
    }
    table.footnotes = {
        "highest rail: its top where it meets the post, and height: the post's own top under the cap or under a rail "
        "that runs over it, on its axis, both plumb above what the post stands on. length: of the post along its axis, "
        "less its base plate."};
    return table;
}

/// The cuts across posts under the rails that run over them.
Table tops_table(const Job& job, const Solution& solution) {
    const Cells cells(job);
    Table table{"post_tops", "AT THE SAW: tops of posts that rails run over", {}, {}, {}, {}};
    table.columns = {{"post", "post", Align::left},
                     {"under", "section", Align::left},
                     {"end", "end", Align::left},
                     {"near", cells.in_unit("near")},
                     {"axis", cells.in_unit("centre")},
                     {"far", cells.in_unit("far")},
                     {"miter", "miter_deg"},
                     {"bevel", "bevel_deg"}};
    for (std::size_t p = 0; p < job.posts.size(); ++p)
        for (const PostTop& top : solution.posts[p].tops)
            table.rows.push_back({{cells.word(job.posts[p].id.name),
                                   cells.word(job.sections[static_cast<std::size_t>(top.under.section)].id.name),
                                   cells.word(words(top.under.end)), cells.length(top.near), cells.length(top.centre),
                                   top.far ? cells.length(*top.far) : Cell{}, cells.angle(top.cut.miter),
                                   cells.angle(top.cut.bevel)},
                                  {}});
    table.footnotes = {
        "near, axis, far: along the post from what it stands on, base plate and all: where the rail's line leaves the "
        "post toward the section, on the post's axis, and where it leaves it on the other side. Where two rails run "
        "over one post, each one's cut ends on the axis. miter: swung along the post's own first axis, bevel: tilted "
        "across it."};
    return table;
}

/// The centre of each post that has a base plate, and the plate's holes, as they are marked on the floor.
Table marks_table(const Job& job, const Solution& solution) {
    const Cells cells(job);
    Table table{"post_marks", "ON THE FLOOR: the posts' centres and the holes of their base plates", {}, {}, {}, {}};
    table.columns = {{"post", "post", Align::left},     {"mark", "mark", Align::left},
                     {"along", cells.in_unit("along")}, {"across", cells.in_unit("across")},
                     {"level", cells.in_unit("level")}, {"x", cells.in_unit("x")},
                     {"y", cells.in_unit("y")}};
    for (std::size_t p = 0; p < job.posts.size(); ++p) {
        const PostResult& post = solution.posts[p];
        if (post.holes.empty()) continue;
        const std::string& id = job.posts[p].id.name;
        const auto add = [&](const Cell& name, const Cell& mark, const Vector& at, std::optional<double> level,
                             const std::optional<Vector>& in_plan) {
            table.rows.push_back(
                {{name, mark, cells.length(at.x()), cells.length(at.y()), level ? cells.length(*level) : Cell{},
                  in_plan ? cells.length(in_plan->x()) : Cell{}, in_plan ? cells.length(in_plan->y()) : Cell{}},
                 {}});
        };
        const Vector& foot = post.standing->foot;
        add(cells.word(id), cells.word("centre"), foot, foot.z(), post.in_plan);
        for (std::size_t h = 0; h < post.holes.size(); ++h)
            add({"", id}, cells.word("hole " + std::to_string(h + 1)), post.holes[h].at, {}, post.holes[h].in_plan);
    }
    table.footnotes = {
        "along, across: level, from plumb under the stair's first nosing, uphill and to the left, or on the floor's "
        "own "
        "axes. level: of what the post stands on, above the stair's floor or the floor's origin. x, y: in plan, where "
        "that is known. Holes run counter-clockwise seen from above, from the one uphill and to the left before the "
        "post is turned."};
    return table;
}

Table rods_table(const Job& job, const Solution& solution) {
    const Cells cells(job);
    Table table{"rods", "THREADED RODS: what each passes, added up along it", {}, {}, {}, {}};
    table.columns = {{"post", "post", Align::left},       {"below", cells.in_unit("below")},
                     {"floor", cells.in_unit("floor")},   {"plate", cells.in_unit("plate")},
                     {"post", cells.in_unit("up_post")},  {"channel", cells.in_unit("channel")},
                     {"washer", cells.in_unit("washer")}, {"nut", cells.in_unit("nut")},
                     {"spare", cells.in_unit("spare")},   {"rod", cells.in_unit("rod")}};
    for (std::size_t p = 0; p < job.posts.size(); ++p) {
        const std::optional<RodLength>& rod = solution.posts[p].rod;
        if (!rod) continue;
        table.rows.push_back(
            {{cells.word(job.posts[p].id.name), cells.size(rod->below), cells.length(rod->floor),
              cells.size(rod->plate), cells.length(rod->post), cells.size(rod->channel), cells.size(rod->washer),
              cells.size(rod->nut), cells.size(rod->spare), cells.length(rod->whole())},
             {}});
    }
    table.footnotes = {"rod: to be cut, from the exact parts; each part is rounded by itself."};
    return table;
}

/// What the code's load on the rail does to the bolts, for information.
Table pulls_table(const Job& job, const Solution& solution) {
    const Cells cells(job);
    const bool inch = job.units == Unit::inch;
    const std::string force = inch ? "lbf" : "kN", moment = inch ? "in-lbf" : "kN m";
    std::string load;
    Table table{
        "post_pulls", "AT THE POSTS' BOLTS: what a push on the rail does there, for information", {}, {}, {}, {}};
    table.columns = {{"post", "post", Align::left},
                     {"fixing", "fixing", Align::left},
                     {"in", "anchored_in", Align::left},
                     {"", cells.in_unit("wood_under")},
                     {"moment", inch ? "moment_in_lbf" : "moment_kN_m"},
                     {"arm", cells.in_unit("arm_along")},
                     {"pull along", "pull_along_" + force},
                     {"arm", cells.in_unit("arm_across")},
                     {"pull across", "pull_across_" + force}};
    const auto pull = [&](const std::optional<BoltPull>& push) {
        return push ? cells.number(push->pull, inch ? 0 : 2) : Cell{};
    };
    const auto arm = [&](const std::optional<BoltPull>& push) { return push ? cells.length(push->arm) : Cell{}; };
    for (std::size_t p = 0; p < job.posts.size(); ++p) {
        const std::optional<FixedPost>& fixed = solution.posts[p].fixed;
        if (!fixed) continue;
        load = cells.number(fixed->load, inch ? 0 : 2).shown + " " + force;
        const PostFixing& fixing = job.post_fixings[static_cast<std::size_t>(job.posts[p].fixing.index)];
        table.rows.push_back(
            {{cells.word(job.posts[p].id.name), cells.word(fixing.id.name), cells.word(words(fixing.anchored_in)),
              fixing.wood_under ? cells.size(fixing.wood_under->value) : Cell{},
              cells.number(fixed->moment, inch ? 0 : 3), arm(fixed->along), pull(fixed->along), arm(fixed->across),
              pull(fixed->across)},
             {}});
    }
    table.about = {
        "Fixing a guard's post is a structural matter for local code and licensed practice. These figures are simple "
        "statics, for whoever judges it; no strength of wood, concrete, plate or bolt is judged here, and no prying."};
    table.footnotes = {
        "moment: in " + moment + ", of " + load +
        ", level, at the top of the highest rail that meets the post, about what it stands on; "
        "that is the code's concentrated load on a guard (IBC 2021, 1607.9.1.1). pull: in " +
        force +
        ", on each of two bolts, for the push along the post's first axis and across it: the plate turns about its "
        "edge "
        "on the side that is pressed, arm from the two bolts across from it; the other two, and the post's weight, "
        "hold nothing."};
    return table;
}

}  // namespace

std::vector<Table> post_fixing_tables(const Job& job, const Solution& solution) {
    return {lengths_table(job, solution), tops_table(job, solution), marks_table(job, solution), rods_table(job, solution),
            pulls_table(job, solution)};
}

}  // namespace rakewright
