#include <algorithm>
#include <cmath>
#include <map>

#include "../../solver/cut_list.hpp"
#include "../../solver/sawing.hpp"
#include "../../solver/solution_sheet.hpp"
#include "cut_sheet.hpp"

namespace rakewright {
namespace {

bool stands(Stuff stuff) { return is_picket(stuff) || stuff == Stuff::foot; }

/// Names of edges: of what stands, its top is the side that looks uphill; a picket with a bevelled foot has an outer
/// side, and one that lies on the rail.
std::string edge_of(const CutPiece& piece, const Corner& edge) {
    if (!stands(piece.stuff)) return words(edge);
    const std::string along = edge.top > 0 ? "uphill" : edge.top < 0 || piece.outer == 0 ? "downhill" : "";
    if (piece.outer == 0 || edge.left == 0) return along;
    return (edge.left == piece.outer ? "outer" : "rail side") + (along.empty() ? along : " " + along);
}

/// How the ends lie on the edge: in one line, or in one each where the saw is set differently for them.
std::string ends_of(Stuff stuff, const SetOut& measure, bool one_line) {
    const std::string from = words(measure.from), to = words(measure.to);
    if (one_line) return measure.from == measure.to ? from : from + ", " + to;
    if (stands(stuff)) return "foot " + from + "\nhead " + to;
    return "from " + from + "\nto " + to;
}

/// Which pieces a mark stands for in the tables at the bench.
using MarkOf = std::map<std::pair<int, int>, std::string>;

class SawAndBench {
 public:
    SawAndBench(const Job& job, const Solution& solution)
        : job_(job), solution_(solution), cells_(job), saw_(saw_limits(job)), pieces_(cut_list(job, solution)) {
        for (std::size_t i = 0; i < pieces_.size(); ++i)
            if (is_picket(pieces_[i].stuff))
                for (const Use& use : pieces_[i].uses) picket_marks_[{use.of, use.index}] = mark_of(i);
    }

    Table saw() const {
        Table table{"saw", "AT THE SAW: one row a piece, equal pieces of the whole job together", {}, {}, {}, {}};
        table.columns = {{"mark", "mark", Align::left},
                         {"qty", "quantity"},
                         {"", "piece", Align::left},
                         {"", cells_.in_unit("width")},
                         {"", cells_.in_unit("depth")},
                         {"section", "section", Align::left},
                         {"along", "measure_edge", Align::left},
                         {"", "measure_from", Align::left},
                         {"", "measure_to", Align::left},
                         {"ends", "ends", Align::left},
                         {"length ", cells_.in_unit("length")},
                         {"", cells_.in_unit("overall")},
                         {"", "from_flat_miter_deg"},
                         {"", "from_flat_bevel_deg"},
                         {"", "from_edge_miter_deg"},
                         {"", "from_edge_bevel_deg"},
                         {"", "from_long_point", Align::left},
                         {"", "to_flat_miter_deg"},
                         {"", "to_flat_bevel_deg"},
                         {"", "to_edge_miter_deg"},
                         {"", "to_edge_bevel_deg"},
                         {"", "to_long_point", Align::left},
                         {"flat", "flat"},
                         {"on edge", "on_edge"},
                         {"", "for", Align::left}};
        if (saw_)
            for (const char* name : {"from_saw", "from_saw_miter_deg", "from_saw_bevel_deg", "to_saw",
                                     "to_saw_miter_deg", "to_saw_bevel_deg"})
                table.columns.push_back({"", name, Align::left});
        for (std::size_t i = 0; i < pieces_.size(); ++i) table.rows.push_back(row_of(i));
        const auto any = [&](char sign) {
            return std::any_of(table.rows.begin(), table.rows.end(),
                               [&](const Row& row) { return row.cells[10].shown.back() == sign; });
        };
        std::vector<Explained> sentences{
            {{},
             "along: the edge to set the length out on; ends: whether its from end and its to end are the long or "
             "the short point there."}};
        if (any('+') || any('-'))
            sentences.push_back({{},
                                 "+ or - behind a length: the exact one is more than a quarter of a division over "
                                 "or under."});
        const bool any_picket = std::any_of(pieces_.begin(), pieces_.end(),
                                            [](const CutPiece& piece) { return piece.stuff == Stuff::picket; });
        sentences.push_back({{},
                             std::string("flat, on edge: miter / bevel in degrees, with the bottom face ") +
                                 (any_picket ? "(of a picket: the one that looks downhill) " : "") +
                                 "or a side on the saw's table."});
        table.footnotes = {legend(table, sentences)};
        if (saw_)
            table.footnotes.push_back(
                "saw: which of the two is in the saw's reach, flat if it is; or, held square to the fence against a "
                "block, its setting there. A blade tilted by the bevel is taken to cut through its depth of cut times "
                "the cosine of the bevel.");
        return table;
    }

    Table trims() const {
        Table table{"trims", "AT THE SAW: what comes off turned pickets as they are bought", {}, {}, {}, {}};
        table.columns = {{"mark", "mark", Align::left},
                         {"qty", "quantity"},
                         {"off the lower block", cells_.in_unit("off_lower")},
                         {"leaves", cells_.in_unit("lower_block")},
                         {"off the upper block", cells_.in_unit("off_upper")},
                         {"leaves", cells_.in_unit("upper_block")}};
        for (std::size_t i = 0; i < pieces_.size(); ++i)
            if (const std::optional<Trim>& trim = pieces_[i].trim)
                table.rows.push_back({{cells_.word(mark_of(i)), cells_.count(pieces_[i].quantity),
                                       cells_.length(trim->off_lower), cells_.length(trim->lower_block),
                                       cells_.length(trim->off_upper), cells_.length(trim->upper_block)},
                                      {}});
        table.about = {
            "Along the middle of a face that looks across the rail: off, from the end as bought; leaves, from the "
            "turning."};
        return table;
    }

    std::vector<Table> benches() const {
        std::vector<Table> tables;
        for (std::size_t s = 0; s < job_.sections.size(); ++s)
            if (const auto& pickets = solution_.sections[s].pickets; pickets && pickets->count > 0)
                tables.push_back(bench(static_cast<int>(s), *pickets));
        return tables;
    }

    Table panels() const {
        Table table{"panels", "The assembled panel, between the facing edges of its rails", {}, {}, {}, {}};
        table.columns = {{"section", "section", Align::left},
                         {"alike", "count"},
                         {"from lower rail's from end", cells_.in_unit("diagonal_from_foot")},
                         {"from its to end", cells_.in_unit("diagonal_to_foot")}};
        for (std::size_t s = 0; s < job_.sections.size(); ++s)
            if (const auto& diagonals = solution_.sections[s].diagonals)
                table.rows.push_back({{cells_.word(job_.sections[s].id.name), cells_.count(job_.sections[s].count),
                                       cells_.length(diagonals->from_foot), cells_.length(diagonals->to_foot)},
                                      {}});
        table.about = {"Pull the panel until both diagonals read so: then it stands at its rake."};
        return table;
    }

 private:
    std::string angles(const SawSetting& setting) const {
        const auto words_for = [&](double slope) { return slope == 0 ? std::string("0") : cells_.angle(slope).shown; };
        return words_for(setting.miter) + " / " + words_for(setting.bevel);
    }

    /// The four arrises of a piece that is cut askew or coped.
    std::string arrises_of(const CutPiece& piece) const {
        if (piece.stuff == Stuff::round_picket || !arrises_differ(piece.piece, piece.copes)) return {};
        std::string text = "; arrises";
        for (const Corner& corner : {Corner{1, 1}, Corner{-1, 1}, Corner{1, -1}, Corner{-1, -1}})
            text += std::string(text.back() == 's' ? " " : ", ") + edge_of(piece, corner) + " " +
                    cells_.length(length_over(piece.piece, piece.copes, spot_of(corner, piece.piece.section))).shown;
        return text;
    }

    bool saw_is_set_once(const CutPiece& piece) const {
        return angles(piece.from_end.flat) == angles(piece.to_end.flat) &&
               angles(piece.from_end.edge) == angles(piece.to_end.edge);
    }

    /// The settings of both ends: in one line where they are alike, else the from end's over the to end's.
    Cell both(const SawSetting& from, const SawSetting& to, bool one_line) const {
        const std::string raw = angles(from) + (one_line ? "" : ", " + angles(to));
        return {angles(from) + (one_line ? "" : "\n" + angles(to)), raw};
    }

    std::optional<SawReach> reach_at(const CutPiece& piece, End end) const {
        return reach_of_end(saw_, end == End::from ? piece.from_end : piece.to_end, piece.piece.section,
                            piece.copes[index_of(end)].has_value());
    }

    /// "on edge", "flat against a block 34.6 / 0".
    std::string saw_words(const SawReach& reach) const {
        switch (reach.laid) {
            case LaidOn::flat: return "flat";
            case LaidOn::edge: return "on edge";
            case LaidOn::flat_against_block: return "flat against a block " + angles(reach.setting);
            case LaidOn::edge_against_block: return "on edge against a block " + angles(reach.setting);
            case LaidOn::none: break;
        }
        return "out of reach";
    }

    /// What stands under a piece: how its ends are cut on the saw, in one word where it is the same.
    std::string saw_under(const CutPiece& piece) const {
        const std::optional<SawReach> from = reach_at(piece, End::from), to = reach_at(piece, End::to);
        if (!from && !to) return {};
        const std::string at_from = from ? saw_words(*from) : "by template",
                          at_to = to ? saw_words(*to) : "by template";
        if (at_from == at_to) return "; saw: " + at_from;
        const bool stands = is_picket(piece.stuff);
        return std::string("; saw: ") + (stands ? "foot " : "from ") + at_from + (stands ? ", head " : ", to ") + at_to;
    }

    void add_saw(Row& row, const CutPiece& piece) const {
        row.under += saw_under(piece);
        for (const End end : both_ends) {
            const std::optional<SawReach> reach = reach_at(piece, end);
            const bool reached = reach && reach->laid != LaidOn::none;
            row.cells.push_back(reach ? cells_.word(words(reach->laid)) : Cell{});
            for (const double slope : {reached ? reach->setting.miter : 0, reached ? reach->setting.bevel : 0})
                row.cells.push_back({"", reached ? cells_.angle(slope).raw : ""});
        }
    }

    /// What the pieces are for: "left, right 2 off".
    std::string destinations(const CutPiece& piece) const {
        std::string text;
        int last = -1;
        for (const Use& use : piece.uses) {
            if (use.of == last) continue;
            last = use.of;
            const auto of = static_cast<std::size_t>(use.of);
            if (is_handrail(piece.stuff)) {
                text += (text.empty() ? "" : ", ") + job_.handrails[of].id.name;
                continue;
            }
            const Section& section = job_.sections[of];
            text += (text.empty() ? "" : ", ") + section.id.name;
            if (section.count > 1) text += " x " + std::to_string(section.count);
        }
        return text;
    }

    Row row_of(std::size_t index) const {
        const CutPiece& piece = pieces_[index];
        const CrossSection& size = piece.piece.section;
        const std::string width = words_of_size(size.width, cells_.tape());
        const std::string section = is_round(piece.stuff)
                                        ? "round " + width
                                        : width + " x " + words_of_size(size.depth, cells_.tape());
        const std::string where = destinations(piece);
        const bool once = saw_is_set_once(piece);
        const auto setting = [&](double slope) { return Cell{"", cells_.angle(slope).raw}; };
        Row row{
            {cells_.word(mark_of(index)),
             cells_.count(piece.quantity),
             cells_.word(names_of(piece)),
             {"", exact(size.width)},
             {"", exact(size.depth)},
             cells_.word(section),
             cells_.word(edge_of(piece, piece.measure.edge)),
             cells_.word(words(piece.measure.from)),
             cells_.word(words(piece.measure.to)),
             {ends_of(piece.stuff, piece.measure, once),
              words(piece.measure.from) + std::string(", ") + words(piece.measure.to)},
             cells_.fitting(piece.measure.length, piece.room),
             {"", exact(piece.overall)}},
            names_of(piece) + ": " + where + "; tip to tip " + cells_.length(piece.overall).shown + arrises_of(piece)};
        for (const EndCut* end : {&piece.from_end, &piece.to_end}) {
            for (const double slope : {end->flat.miter, end->flat.bevel, end->edge.miter, end->edge.bevel})
                row.cells.push_back(setting(slope));
            row.cells.push_back(cells_.word(words(end->long_point)));
        }
        row.cells.push_back(both(piece.from_end.flat, piece.to_end.flat, once));
        row.cells.push_back(both(piece.from_end.edge, piece.to_end.edge, once));
        row.cells.push_back(cells_.word(where));
        if (saw_) add_saw(row, piece);
        return row;
    }

    static std::string hook_words(const char* rail, const std::string& face, const Marks& marks) {
        return std::string(rail) + " rail, " + face + ": hook the tape at its " + words(marks.hook) + " end.";
    }

    static std::string marking_of(const Pickets& pickets) {
        std::string upper = "underside", lower = "top";
        if (pickets.beside) {
            const std::string side = pickets.beside->left ? "left side" : "right side";
            upper = "lower edge of its " + side;
            lower = "upper edge of its " + side;
        }
        return hook_words("Upper", upper, pickets.upper) +
               (pickets.lower.centres.empty() ? std::string() : " " + hook_words("Lower", lower, pickets.lower)) +
               " Mark each near edge from there, and set the picket on its far side.";
    }

    /// Where pickets on the side of the rails are held: plumb across it, and so far past it.
    std::string holding_of(const Pickets& pickets, int s) const {
        const PicketPast& past = pickets.beside->past;
        const Build& build =
            job_.builds[static_cast<std::size_t>(job_.sections[static_cast<std::size_t>(s)].build.index)];
        const auto size = [&](double length) { return cells_.length(std::fabs(length)).shown; };
        std::string text = "Left and right: seen from the from end. ";
        if (pickets.cut != 0) text += "Plumb across that side is " + cells_.angle(pickets.cut).shown + " off square. ";
        text +=
            "Hold the head " +
            (past.upper == 0 ? std::string("level with") : size(past.upper) + (past.upper > 0 ? " over" : " under")) +
            " the top of the " + build.upper.back().name + ", plumb, in the picket's middle; ";
        const FootPast foot = pickets.beside->foot;
        text += "the foot then reaches " + size(past.lower) + " below the " +
                (foot == FootPast::lower_rail ? "underside of the "
                 : foot == FootPast::string   ? "top of the "
                                              : "") +
                words(foot) + ".";
        return text;
    }

    Table bench(int s, const Pickets& pickets) const {
        const Section& section = job_.sections[static_cast<std::size_t>(s)];
        const std::string& id = section.id.name;
        Table table{
            "bench",
            "AT THE BENCH: " + id + (section.count > 1 ? ", " + std::to_string(section.count) + " alike" : std::string()),
            {},
            {},
            {},
            {}};
        table.columns = {{"", "section", Align::left},
                         {"picket", "picket"},
                         {"piece", "piece", Align::left},
                         {"", "upper_hook", Align::left},
                         {"upper edge", cells_.in_unit("upper_edge")},
                         {"centre", cells_.in_unit("upper_centre")},
                         {"", "lower_hook", Align::left},
                         {"lower edge", cells_.in_unit("lower_edge")},
                         {"centre", cells_.in_unit("lower_centre")},
                         {"tread", "tread"},
                         {"from riser", cells_.in_unit("from_riser")}};
        table.about = {marking_of(pickets)};
        if (pickets.beside) table.about.push_back(holding_of(pickets, s));
        if (!pickets.feet.empty())
            table.about.push_back(
                "from riser: level, from the riser face under the tread's nosing to the picket's downhill face.");
        const std::vector<std::string> pieces = piece_marks(s, pickets);
        for (std::size_t i = 0; i < pieces.size(); ++i) {
            Row row{{{"", id}, cells_.count(static_cast<int>(i) + 1), cells_.word(pieces[i])}, {}};
            for (const Marks* marks : {&pickets.upper, &pickets.lower}) {
                const bool marked = i < marks->centres.size();
                row.cells.push_back({"", marked ? words(marks->hook) : ""});
                row.cells.push_back(cells_.length(marked ? std::optional(marks->near_edge(i)) : std::nullopt));
                row.cells.push_back(cells_.length(marked ? std::optional(marks->centre_from_hook(i)) : std::nullopt));
            }
            const Foot* foot = i < pickets.feet.size() ? &pickets.feet[i] : nullptr;
            row.cells.push_back(foot ? cells_.count(foot->tread) : Cell{});
            row.cells.push_back(cells_.length(foot ? std::optional(foot->from_riser) : std::nullopt));
            table.rows.push_back(std::move(row));
        }
        return table;
    }

    /// The saw's mark of each picket; none where its length is not known.
    std::vector<std::string> piece_marks(int s, const Pickets& pickets) const {
        std::vector<std::string> marks(static_cast<std::size_t>(pickets.count));
        for (std::size_t p = 0; p < pickets.pieces.size(); ++p)
            for (const int at : pickets.pieces[p].at)
                marks[static_cast<std::size_t>(at - 1)] = picket_marks_.at({s, static_cast<int>(p)});
        return marks;
    }

    const Job& job_;
    const Solution& solution_;
    Cells cells_;
    std::optional<SawLimits> saw_;
    std::vector<CutPiece> pieces_;
    MarkOf picket_marks_;
};

}  // namespace

std::vector<Table> saw_and_bench_tables(const Job& job, const Solution& solution) {
    const SawAndBench pages(job, solution);
    std::vector<Table> tables{pages.saw(), cope_table(job, solution), joint_table(job, solution), pages.trims()};
    for (Table& bench : pages.benches()) tables.push_back(std::move(bench));
    tables.push_back(pages.panels());
    tables.push_back(screw_table(job, solution));
    tables.push_back(row_table(job, solution));
    for (Table& pilots : pilot_tables(job, solution)) tables.push_back(std::move(pilots));
    return tables;
}

}  // namespace rakewright
