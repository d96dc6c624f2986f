#include "../../solver/solution_sheet.hpp"
#include "cut_sheet.hpp"

namespace rakewright {
namespace {

const Bracket* bracket_of(const SectionResult& section, End end, Group group) {
    for (const Bracket& bracket : section.brackets)
        if (bracket.end == end && bracket.group == group) return &bracket;
    return nullptr;
}

/// What the leg takes off the group's lowest member at that end.
std::optional<double> taken_off(const SectionResult& section, End end, Group group) {
    std::optional<double> taken;
    for (const Member& member : section.members)
        if (member.group == group) taken = member.shortened[index_of(end)];
    return taken && *taken > 0 ? taken : std::nullopt;
}

class PostTable {
 public:
    PostTable(const Job& job, const Solution& solution) : job_(job), solution_(solution), cells_(job) {}

    Table rails() {
        table_ = {"posts", "AT THE POSTS: where each rail meets, plumb above what the post stands on", {}, {}, {}, {}};
        table_.columns = {{"post", "post", Align::left},
                          {"", cells_.in_unit("base")},
                          {"", cells_.in_unit("size_along")},
                          {"", cells_.in_unit("size_across")},
                          {"", "nominal", Align::left},
                          {"section end", "section", Align::left},
                          {"", "end", Align::left},
                          {"rail", "group", Align::left},
                          {"under", cells_.in_unit("underside")},
                          {"top", cells_.in_unit("top")},
                          {"leg", "leg", Align::left},
                          {"angle", "included_deg"},
                          {"bend", "bend_deg"},
                          {"driver", "post_driver", Align::left},
                          {"off", cells_.in_unit("shortened")}};
        for (std::size_t p = 0; p < job_.posts.size(); ++p)
            for (const RailAtPost& rail : solution_.posts[p].rails)
                add(static_cast<int>(p), rail.section, rail.end, rail.group, rail.heights);
        for (std::size_t s = 0; s < job_.sections.size(); ++s) add_unlisted(static_cast<int>(s));
        std::vector<Explained> sentences{
            {{"leg"}, "under: the underside, where the bracket's leg under the rail meets the post."},
            {{"leg"}, "leg: which way the leg on the post is turned."},
            {{"angle"}, "angle: between the legs, inside; bend: from flat."},
            {{"driver"}, "driver: whether a straight one gets home at the post's screw."},
            {{"off"},
             "off: what a leg or a pad between post and rail takes off the rail, along it; the lengths at the saw are "
             "without it."}};
        if (!is_printed(table_, "leg")) sentences.front() = {{}, "under: the underside, where it meets the post."};
        table_.footnotes = {legend(table_, sentences)};
        return std::move(table_);
    }

 private:
    /// Ends at which no post's heights are known: no post is named there, or a raked section has no place.
    void add_unlisted(int section) {
        const SectionResult& result = solution_.sections[static_cast<std::size_t>(section)];
        const Section& asked = job_.sections[static_cast<std::size_t>(section)];
        for (const End end : both_ends) {
            const Ref& post = end == End::from ? asked.from : asked.to;
            const EndHeights& heights = result.ends[index_of(end)];
            if (post.named() && heights.upper) continue;
            add(post.index, section, end, Group::upper, heights.upper);
            const bool has_lower = !result.members.empty() && result.members.back().group == Group::lower;
            if (has_lower) add(post.index, section, end, Group::lower, heights.lower);
        }
    }

    /// A nominal timber size as it was written, and what it was read as; or what a round post measures across.
    std::string size_words(const Post& post) const {
        const PostSize size = size_of(post);
        if (post.shape == PostShape::round) {
            // What was taped round it is not a size that was stated.
            const std::string across =
                "round " + (post.around ? cells_.length(size.along) : cells_.size(size.along)).shown;
            return post.around ? across + ", " + cells_.length(post.around->value).shown + " around" : across;
        }
        if (size.nominal.empty()) return {};
        const std::string along = cells_.size(size.along).shown, across = cells_.size(size.across).shown;
        return size.nominal + " read as dressed, " + along +
               (along == across ? " square" : " along by " + across + " across");
    }

    static std::string named_size(const Post& post) {
        return post.shape == PostShape::round ? "round" : post.size.nominal;
    }

    void add(int post, int section, End end, Group group, const std::optional<GroupHeights>& heights) {
        const SectionResult& result = solution_.sections[static_cast<std::size_t>(section)];
        const std::string& section_id = job_.sections[static_cast<std::size_t>(section)].id.name;
        const std::string post_id = post < 0 ? "-" : job_.posts[static_cast<std::size_t>(post)].id.name;
        const bool again = post >= 0 && post == last_post_;
        const Post* const asked = post < 0 ? nullptr : &job_.posts[static_cast<std::size_t>(post)];
        last_post_ = post;
        const Bracket* bracket = bracket_of(result, end, group);
        const Cell none{"-", ""};
        table_.rows.push_back(
            {{{again ? "" : post_id, post < 0 ? "" : post_id},
              cells_.length(post < 0 ? std::nullopt : solution_.posts[static_cast<std::size_t>(post)].base()),
              cells_.length(asked ? std::optional(size_of(*asked).along) : std::nullopt),
              cells_.length(asked ? std::optional(size_of(*asked).across) : std::nullopt),
              cells_.word(asked ? named_size(*asked) : std::string()),
              {section_id + " " + words(end), section_id},
              cells_.word(words(end)),
              cells_.word(words(group)),
              cells_.length(heights ? std::optional(heights->underside) : std::nullopt),
              cells_.length(heights ? std::optional(heights->top) : std::nullopt),
              bracket ? cells_.word(words(bracket->leg)) : none,
              bracket ? cells_.over_square(bracket->over_square) : none,
              bracket ? cells_.over_square(-bracket->over_square) : none,
              bracket ? cells_.word(bracket->driver_clear ? "clear" : "blocked") : none,
              cells_.length(taken_off(result, end, group))},
             asked && !again ? size_words(*asked) : std::string()});
    }

    const Job& job_;
    const Solution& solution_;
    Cells cells_;
    Table table_;
    int last_post_ = -1;
};

/// How rails of more than one section arrive at a post.
Table arrivals(const Job& job, const Solution& solution) {
    const Cells cells(job);
    Table table{"arrivals", "Where rails of two sections meet a post, plumb above what it stands on", {}, {}, {}, {}};
    table.columns = {{"post", "post", Align::left},
                     {"upper from", cells.in_unit("upper_underside")},
                     {"to", cells.in_unit("upper_top")},
                     {"block", cells.in_unit("upper_block")},
                     {"lower from", cells.in_unit("lower_underside")},
                     {"to", cells.in_unit("lower_top")},
                     {"block", cells.in_unit("lower_block")},
                     {"tops apart", cells.in_unit("apart")},
                     {"set-back", cells.in_unit("set_back")}};
    for (std::size_t p = 0; p < job.posts.size(); ++p) {
        const std::optional<Arrivals>& at = solution.posts[p].arrivals;
        if (!at) continue;
        const auto lower = [&](auto height) { return at->lower ? std::optional(height(*at->lower)) : std::nullopt; };
        const auto block = [](const GroupHeights& heights) { return heights.top - heights.underside; };
        table.rows.push_back(
            {{cells.word(job.posts[p].id.name), cells.length(at->upper.underside), cells.length(at->upper.top),
              cells.length(block(at->upper)), cells.length(lower([](const GroupHeights& h) { return h.underside; })),
              cells.length(lower([](const GroupHeights& h) { return h.top; })), cells.length(lower(block)),
              cells.length(at->apart), cells.length(at->set_back)},
             {}});
    }
    table.footnotes = {
        "block: what of a turned newel has to be square. set-back: how far past the last nosing (at the "
        "foot: from the first one) the raked rail's top is as high as the level one's."};
    return table;
}

/// Where the centres of posts' feet stand, where their stairs and floors have a place in plan.
Table in_plan(const Job& job, const Solution& solution) {
    const Cells cells(job);
    Table table{"plan", "IN PLAN: the centres of the posts' feet", {}, {}, {}, {}};
    table.columns = {{"post", "post", Align::left},
                     {"stands on", "stands_on", Align::left},
                     {"x", cells.in_unit("x")},
                     {"y", cells.in_unit("y")},
                     {"level", cells.in_unit("level")}};
    for (std::size_t p = 0; p < job.posts.size(); ++p) {
        const std::optional<Vector>& at = solution.posts[p].in_plan;
        if (!at) continue;
        const Ground ground = ground_of(job.posts[p]);
        const std::size_t index = static_cast<std::size_t>(ground.index);
        const Id& id = ground.kind == Ground::Kind::stair ? job.stairs[index].id : job.floors[index].id;
        table.rows.push_back({{cells.word(job.posts[p].id.name), cells.word(id.name), cells.length(at->x()),
                               cells.length(at->y()), cells.length(at->z())},
                              {}});
    }
    return table;
}

}  // namespace

std::vector<Table> post_tables(const Job& job, const Solution& solution) {
    std::vector<Table> tables{in_plan(job, solution), PostTable(job, solution).rails(), arrivals(job, solution)};
    std::erase_if(tables, [](const Table& table) { return table.name != "posts" && table.rows.empty(); });
    return tables;
}

}  // namespace rakewright
