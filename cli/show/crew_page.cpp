#include <algorithm>

#include "../../solver/crew/crew_sheet.hpp"
#include "../../solver/solution_sheet.hpp"
#include "cut_sheet.hpp"

namespace rakewright {
namespace {

/// The steps of a solved job, as a crew reads them (common practice).
class WorkPage {
 public:
    WorkPage(const Job& job, const Solution& solution)
        : job_(job), solution_(solution), steps_(steps_of_work(job, solution)) {}

    Table table() const {
        Table table{"work", "ORDER OF WORK (common practice)", {}, {}, {}, {}};
        table.columns = {
            {"", "number"}, {"", "step", Align::left}, {"", "sections", Align::left}, {"", "what", Align::left}};
        for (std::size_t i = 0; i < steps_.size(); ++i) {
            const WorkStep& step = steps_[i];
            const std::string number = std::to_string(i + 1), sentence = sentence_of(step),
                              sections = sections_of(step);
            table.rows.push_back({{{"", number}, {"", words(step.work)}, {"", sections}, {"", sentence}}, {}});
            const bool said = step.sections.empty() || step.sections.size() == job_.sections.size() ||
                              step.work == Work::prime || !step.brackets.empty();
            table.about.push_back(number + ". " + sentence + (said ? std::string() : " (" + sections + ")"));
        }
        return table;
    }

 private:
    std::string sentence_of(const WorkStep& step) const {
        switch (step.work) {
            case Work::cut:
                return job_.stock.empty()
                           ? "Cut every piece by the table at the saw, one of each kind first, and try it."
                           : "Cut the bars as the plan from stock has them, one of each kind of piece first, "
                             "and try it.";
            case Work::cope: return "Cope the ends that meet round posts, and try each on its post.";
            case Work::bend: return "Bend the brackets by the list of bends, one of each kind first.";
            case Work::seat_rails: return "Cut the brackets' seats in the rails by the table at the posts.";
            case Work::plough:
                return any_bored() ? "Plough or bore the rails for the pickets." : "Plough the rails for the pickets.";
            case Work::prime:
                return "Prime " + primed(step) + " on all faces and both ends, before anything is put together.";
            case Work::set_posts:
                return "Set the posts where and how the job has them: the rails are cut to that." +
                       std::string(any_top() ? " Cut the tops that rails run over by the table at the saw." : "");
            case Work::seat_posts: return "Cut the brackets' mortises in the posts by the table at the posts.";
            case Work::set_brackets:
                return "Fasten the brackets to the posts at the heights of the table at the posts" + named(step) + ".";
            case Work::splice: return "Splice the members that come in pieces, in line and before they are marked.";
            case Work::set_brackets_on_rails:
                return "Fasten to their rails the brackets that a driver reaches there first only" + named(step) + ".";
            case Work::lay_out:
                return job_.story_stick ? "Lay out the pickets on the rails from the story sticks."
                                        : "Lay out the pickets on the rails by the tables at the bench.";
            case Work::assemble: return assembling();
            case Work::weld: return "Weld the pickets, and hold the diagonals to the table again before the last pass.";
            case Work::prime_panels: return "Prime what was welded, all round.";
            case Work::galvanise: return "Drill what has to vent and drain, and send the panels to the zinc bath.";
            case Work::fit:
                return find(Work::set_brackets_on_rails) ? "Fit the rails between the posts and fasten them: to the "
                                                           "brackets on the posts, and to the "
                                                           "posts the brackets on the rails."
                                                         : "Fit the rails between the posts and fasten them.";
            case Work::put_in_pickets:
                return "Put in the pickets that were left out, now that the screws beside them are driven" +
                       named(step) + ".";
            case Work::join: return "Join the rails that meet without a post.";
            case Work::stand_pickets: return "Stand the pickets under the fitted rail, each to its mark.";
            case Work::fasten_pickets: return "Fasten the pickets to the side of the fitted rails, each to its marks.";
            case Work::fit_fillets: return "Fit the fillets into the ploughs between the pickets.";
            case Work::set_feet: return "Set the feet under the lower rails, tight to what they stand on.";
            case Work::fit_handrails: return "Fit the handrails.";
            case Work::paint:
                return "Prime again where work was cut or bored, then paint" +
                       (job_.paint && job_.paint->coverage
                            ? ": " + std::to_string(job_.paint->coats) + (job_.paint->coats == 1 ? " coat" : " coats")
                            : std::string()) +
                       ".";
            case Work::cap: return "Put the caps on the posts.";
        }
        return {};
    }

    bool any_bored() const {
        return std::any_of(solution_.sections.begin(), solution_.sections.end(),
                           [](const SectionResult& section) { return section.pickets && section.pickets->hole; });
    }

    /// Whether a rail runs over a post.
    bool any_top() const {
        return std::any_of(solution_.posts.begin(), solution_.posts.end(),
                           [](const PostResult& post) { return !post.tops.empty(); });
    }

    const WorkStep* find(Work work) const {
        const auto step =
            std::find_if(steps_.begin(), steps_.end(), [&](const WorkStep& at) { return at.work == work; });
        return step == steps_.end() ? nullptr : &*step;
    }

    std::string assembling() const {
        const WorkStep* const later = find(Work::put_in_pickets);
        return "Put each section together on the bench" +
               (later ? ", but for the first picket beside these brackets, which goes in last" + named(*later) +
                            "; pull it"
                      : std::string(", and pull it")) +
               " until both diagonals read as in the table of panels.";
    }

    /// What is primed while it is loose: welded and galvanised work is not.
    std::string primed(const WorkStep& step) const {
        if (step.sections.size() == job_.sections.size() && !job_.sections.empty()) return "every piece";
        std::vector<std::string> what;
        if (!step.sections.empty()) what.push_back("the pieces of " + sections_of(step));
        if (!job_.handrails.empty()) what.emplace_back("the handrails");
        if (!job_.also_cut.empty()) {
            std::string sticks;
            for (const AlsoCut& stick : job_.also_cut) sticks += (sticks.empty() ? "" : ", ") + stick.name;
            what.push_back("the loose sticks (" + sticks + ")");
        }
        std::string text;
        for (std::size_t i = 0; i < what.size(); ++i)
            text += (i == 0 ? "" : i + 1 < what.size() ? ", " : " and ") + what[i];
        return text;
    }

    std::string sections_of(const WorkStep& step) const {
        std::string sections;
        for (const int section : step.sections)
            sections += (sections.empty() ? "" : ", ") + job_.sections[static_cast<std::size_t>(section)].id.name;
        return sections;
    }

    /// The step's brackets by their sections, where it has not all: ": steps from upper, steps to upper; deck".
    std::string named(const WorkStep& step) const {
        std::size_t all = 0;
        for (const SectionResult& section : solution_.sections) all += section.brackets.size();
        if (step.brackets.size() == all) return {};
        std::string text;
        for (std::size_t i = 0; i < step.brackets.size();) {
            const std::size_t s = step.brackets[i].section;
            const std::vector<Bracket>& brackets = solution_.sections[s].brackets;
            std::size_t end = i;
            while (end < step.brackets.size() && step.brackets[end].section == s) ++end;
            const std::string& id = job_.sections[s].id.name;
            if (end - i == brackets.size()) {
                text += (text.empty() ? ": " : ", ") + id;
                i = end;
                continue;
            }
            for (; i < end; ++i) {
                const Bracket& bracket = brackets[step.brackets[i].bracket];
                text += (text.empty() ? ": " : ", ") + id + " " + words(bracket.end) + " " + words(bracket.group);
            }
        }
        return text;
    }

    const Job& job_;
    const Solution& solution_;
    std::vector<WorkStep> steps_;
};

class OrderPage {
 public:
    OrderPage(const Job& job, const Solution& solution) : job_(job), solution_(solution), cells_(job) {}

    Table order() const {
        Table table{"order", "TO ORDER", {}, {}, {}, {}};
        table.columns = {{"qty", "quantity"},
                         {"", "needed"},
                         {"to spare", "spare"},
                         {"what", "what", Align::left},
                         {"", "shape", Align::left},
                         {"", cells_.in_unit("width")},
                         {"", cells_.in_unit("depth")},
                         {"section", "section", Align::left},
                         {"length", cells_.in_unit("length")},
                         {"in all", cells_.in_unit("in_all")},
                         {"between legs", "included_deg"},
                         {"", cells_.in_unit("post_leg")},
                         {"", cells_.in_unit("rail_leg")},
                         {"", cells_.in_unit("inside_radius")},
                         {"", cells_.in_unit("reaches")},
                         {"", cells_.in_unit("post_holes")},
                         {"", cells_.in_unit("rail_holes")},
                         {"", cells_.in_unit("holes_along")},
                         {"", cells_.in_unit("holes_across")},
                         {"", cells_.in_unit("hole")}};
        for (const OrderLine& line : order_list(job_, solution_)) table.rows.push_back(row_of(line));
        table.about = {about(table)};
        return table;
    }

 private:
    std::string about(const Table& table) const {
        const auto any = [&](Ordered what) {
            return std::any_of(table.rows.begin(), table.rows.end(),
                               [&](const Row& row) { return row.cells[3].raw == words(what); });
        };
        std::vector<Explained> sentences = {{{"to spare"}, "qty: with what is to spare."}};
        if (any(Ordered::stick))
            sentences.push_back({{},
                                 "Of sticks qty is pieces, and in all their lengths together, tip to tip, with no "
                                 "waste."});
        if (any(Ordered::bracket))
            sentences.push_back({{},
                                 "A bracket's section: width and thickness of its plate; between legs: the angle, "
                                 "inside."});
        if (any(Ordered::base_plate)) sentences.push_back({{}, "Of base plates the length is their thickness."});
        sentences.push_back(
            {{}, "Not listed: posts that the job does not name; bolts, washers and nuts" + pickets_left_out() + "."});
        return legend(table, sentences);
    }

    /// Pickets whose lengths do not follow, which are then in no list of pieces.
    std::string pickets_left_out() const {
        std::string text;
        for (std::size_t s = 0; s < job_.sections.size(); ++s) {
            const std::optional<Pickets>& pickets = solution_.sections[s].pickets;
            if (!pickets || pickets->count == 0 || !pickets->pieces.empty()) continue;
            text += "; the " + std::to_string(pickets->count * static_cast<int>(job_.sections[s].count)) +
                    " pickets of " + job_.sections[s].id.name +
                    ", whose lengths do not follow without the posts' places";
        }
        return text;
    }

    std::string size(double value) const { return cells_.size(value).shown; }

    std::string section_of(const OrderLine& line) const {
        if (!line.nominal.empty()) return line.nominal;
        if (line.section.width == 0) return "-";
        if (line.shape == SectionShape::circle) return "round " + size(line.section.width);
        if (line.shape == SectionShape::profile) return "as the job, " + size(line.section.width) + " wide";
        return size(line.section.width) + " x " + size(line.section.depth);
    }

    static std::string holes(const std::vector<Reading>& holes, const Cells& cells) {
        std::string text;
        for (const Reading& hole : holes) text += (text.empty() ? "" : ", ") + cells.size(hole.value).shown;
        return text.empty() ? "none" : text;
    }

    std::string under_of(const OrderLine& line) const {
        if (line.what == Ordered::post && line.reaches)
            return "the highest rail on it ends " + cells_.length(*line.reaches).shown + " above what it stands on";
        if (line.holes)
            return "holes " + size(line.holes->width) + " by " + size(line.holes->depth) + " centre to centre, " +
                   size(*line.hole) + " across";
        if (!line.bracket) return {};
        const BracketBuild& build = bracket_build_of(job_, line.bracket->uses.front().section);
        return "post leg " + size(build.post_leg) + ", holes " + holes(build.post_hole, cells_) + "; rail leg " +
               size(build.rail_leg) + ", holes " + holes(build.rail_hole, cells_) +
               (build.inside_radius ? "; inside radius " + size(*build.inside_radius) : std::string());
    }

    static Cell hidden(const std::vector<Reading>& holes) {
        Cell cell;
        for (const Reading& hole : holes) cell.raw += (cell.raw.empty() ? "" : " ") + exact(hole);
        return cell;
    }

    /// Posts and rods are measured; all else is bought by a length that the job states.
    static bool is_measured(const OrderLine& line) { return line.what == Ordered::post || line.what == Ordered::rod; }

    Row row_of(const OrderLine& line) const {
        const auto known = [&](const std::optional<double>& value) { return value ? cells_.length(*value) : Cell{}; };
        const auto raw = [&](const std::optional<double>& value) { return Cell{"", value ? exact(*value) : ""}; };
        const Cell length = line.length && !is_measured(line) ? cells_.size(*line.length) : known(line.length);
        Cell angle, post_leg, rail_leg, radius, post_holes, rail_holes;
        if (line.bracket) {
            const BracketUse& first = line.bracket->uses.front();
            const BracketBuild& build = bracket_build_of(job_, first.section);
            angle = cells_.over_square(solution_.sections[first.section].brackets[first.bracket].over_square);
            post_leg = cells_.length(build.post_leg.value);
            rail_leg = cells_.length(build.rail_leg.value);
            post_holes = hidden(build.post_hole);
            rail_holes = hidden(build.rail_hole);
            if (build.inside_radius) radius = cells_.length(build.inside_radius->value);
        }
        return {{cells_.count(line.quantity()),
                 cells_.count(line.needed),
                 line.spare > 0 ? cells_.count(line.spare) : Cell{"", ""},
                 cells_.word(words(line.what)),
                 cells_.word(words(line.shape)),
                 cells_.length(line.section.width),
                 cells_.length(line.section.depth),
                 cells_.word(section_of(line)),
                 length,
                 known(line.in_all),
                 angle,
                 post_leg,
                 rail_leg,
                 radius,
                 known(line.reaches),
                 post_holes,
                 rail_holes,
                 raw(line.holes ? std::optional(line.holes->width) : std::nullopt),
                 raw(line.holes ? std::optional(line.holes->depth) : std::nullopt),
                 raw(line.hole)},
                under_of(line)};
    }

    const Job& job_;
    const Solution& solution_;
    Cells cells_;
};

}  // namespace

std::vector<Table> work_tables(const Job& job, const Solution& solution) {
    Table work{"work", {}, {}, {}, {}, {}};
    if (job.order_of_work) work = WorkPage(job, solution).table();
    return {std::move(work), OrderPage(job, solution).order()};
}

std::vector<Table> paint_tables(const Job& job, const Solution& solution) {
    if (!job.paint) return {};
    const Cells cells(job);
    const bool inches = job.units == Unit::inch;
    const std::string unit = inches ? "ft2" : "m2";
    const int decimals = inches ? 2 : 4;
    Table table{"paint", std::string("TO PRIME AND PAINT: in square ") + (inches ? "feet" : "metres"), {}, {}, {}, {}};
    table.columns = {{"mark", "mark", Align::left}, {"piece", "piece", Align::left}, {"qty", "quantity"},
                     {"each", "each_" + unit},      {"of it ends", "ends_" + unit},  {"in all", "in_all_" + unit}};
    const PaintList list = paint_list(job, solution);
    for (std::size_t i = 0; i < list.pieces.size(); ++i) {
        const PaintedPiece& piece = list.pieces[i];
        table.rows.push_back({{cells.word(piece.mark), cells.word(piece.name), cells.count(piece.count),
                               cells.number(piece.each.all(), decimals), cells.number(piece.each.ends, decimals),
                               cells.number(piece.in_all(), decimals)},
                              {}});
    }
    std::string sum =
        "All together " + rounded(list.all.all(), decimals) + ", of it ends " + rounded(list.all.ends, decimals) + ".";
    if (list.volume)
        sum += " Paint for " + std::to_string(job.paint->coats) + (job.paint->coats == 1 ? " coat" : " coats") +
               " at " + exact(*job.paint->coverage) +
               (inches ? " square feet a gallon: " : " square metres a litre: ") + rounded(*list.volume, 2) +
               (inches ? " gallons." : " litres.");
    table.footnotes = {sum,
                       "Pieces as they come off the saw, all round, coped ends and turnings as they are; without posts "
                       "and brackets, and without what is grooved or bored."};
    return {table};
}

}  // namespace rakewright
