#include <algorithm>

#include "../../solver/fixing_sheet.hpp"
#include "../../solver/measure/compare.hpp"
#include "../../solver/pilot_list.hpp"
#include "../../solver/solution_sheet.hpp"
#include "../told.hpp"
#include "cut_sheet.hpp"

namespace rakewright {
namespace {

/// Lengths one after the other.
Cell listed(const Cells& cells, const std::vector<double>& lengths) {
    if (lengths.empty()) return {"-", ""};
    Cell all;
    for (const double length : lengths) {
        const Cell one = cells.length(length);
        all.shown += (all.shown.empty() ? "" : ", ") + one.shown;
        all.raw += (all.raw.empty() ? "" : " ") + one.raw;
    }
    return all;
}

class BracketTables {
 public:
    BracketTables(const Job& job, const Solution& solution) : job_(job), solution_(solution), cells_(job) {}

    Table seats() const {
        Table table{"seats", "AT THE POSTS: the brackets' seats and the height of their screws", {}, {}, {}, {}};
        table.columns = {{"section end", "section", Align::left},
                         {"", "end", Align::left},
                         {"rail", "group", Align::left},
                         {"screws up", cells_.in_unit("screw_height")},
                         {"from mark", cells_.in_unit("screw_from_mark")},
                         {"mortise", cells_.in_unit("mortise_height")},
                         {"", cells_.in_unit("mortise_width")},
                         {"", cells_.in_unit("mortise_depth")},
                         {"its top", cells_.in_unit("mortise_top")},
                         {"", cells_.in_unit("mortise_bottom")},
                         {"seat", "rail_seat", Align::left},
                         {"length", cells_.in_unit("rail_cut_length")},
                         {"", cells_.in_unit("rail_cut_width")},
                         {"", cells_.in_unit("rail_cut_depth")},
                         {"", cells_.in_unit("beside")},
                         {"", cells_.in_unit("beside_left")},
                         {"", cells_.in_unit("beside_right")}};
        each([&](const Section& section, const Bracket& bracket, const Fixing& fixing) {
            const Seat& seat = fixing.seat;
            const auto mortise = [&](double PostMortise::*length) {
                return cells_.length(seat.mortise ? std::optional((*seat.mortise).*length) : std::nullopt);
            };
            const auto cut = [&](double RailCut::*length) {
                return cells_.length(seat.rail_cut ? std::optional((*seat.rail_cut).*length) : std::nullopt);
            };
            Row row = named(section, bracket);
            for (Cell& cell : std::vector<Cell>{
                     listed(cells_, seat.screw_heights), listed(cells_, seat.screw_from_mark),
                     mortise(&PostMortise::height), mortise(&PostMortise::width), mortise(&PostMortise::depth),
                     mortise(&PostMortise::top), mortise(&PostMortise::bottom), cells_.word(words(seat.possible)),
                     cut(&RailCut::length), cut(&RailCut::width), cut(&RailCut::depth), cells_.length(seat.beside()),
                     cells_.length(seat.beside_left), cells_.length(seat.beside_right)})
                row.cells.push_back(std::move(cell));
            table.rows.push_back(std::move(row));
        });
        table.footnotes = {legend(
            table,
            {{{"screws up"}, "screws up: each screw in the post, plumb above what it stands on."},
             {{"from mark"}, "from mark: each along the face, from where the underside meets it."},
             {{"mortise"},
              "mortise: its height along the face, as wide as the bracket and as deep as its plate; its top: above the "
              "mark, below it negative."},
             {{"seat"}, "seat: what can be cut in the rail."},
             {{"length"},
              "A mortise there is as wide as the bracket, and askew where that is, a rabbet right across; length: on "
              "the slope, from the rail's own end along its edge; as deep as the plate."}})};
        return table;
    }

    Table drivers() const {
        Table table{"drivers", "AT THE POSTS: the brackets' screws, as a straight driver gets to them", {}, {}, {}, {}};
        table.columns = {{"section end", "section", Align::left}, {"", "end", Align::left},
                         {"rail", "group", Align::left},          {"at post", "post_driver", Align::left},
                         {"at rail", "rail_driver", Align::left}, {"room", cells_.in_unit("rail_room")},
                         {"to", "rail_room_to", Align::left},     {"order", "order", Align::left},
                         {"picket", "picket_after", Align::left}};
        each([&](const Section& section, const Bracket& bracket, const Fixing& fixing) {
            if (!fixing.driving) return;
            const Driving& driving = *fixing.driving;
            const bool met = driving.rail.meets != Meets::nothing;
            Row row = named(section, bracket);
            for (Cell& cell :
                 std::vector<Cell>{cells_.word(bracket.driver_clear ? "clear" : "blocked"),
                                   cells_.word(driving.rail_clear ? "clear" : "blocked"),
                                   cells_.length(met ? std::optional(driving.rail.length) : std::nullopt),
                                   cells_.word(met ? words(driving.rail.meets) : ""), cells_.word(words(driving.order)),
                                   driving.picket_after ? Cell{"after", "true"} : Cell{}})
                row.cells.push_back(std::move(cell));
            table.rows.push_back(std::move(row));
        });
        table.footnotes = {legend(
            table,
            {{{},
              "at post: whether a driver gets home at the screw in the post before the rail is set; at rail: at the "
              "screw in the rail, square to it, the bracket on the post."},
             {{"room"}, "room: how far it is free there, and to what: it needs its reach, its body and the screw."},
             {{},
              "order: which of post and rail the bracket can go on first, so that both screws are reached; rail "
              "first: before the rail is lifted in."},
             {{"picket"}, "picket after: the first one has to go in after the bracket's second screw."}})};
        return table;
    }

 private:
    template <class Add>
    void each(const Add& add) const {
        for (std::size_t s = 0; s < job_.sections.size(); ++s) {
            const SectionResult& section = solution_.sections[s];
            for (std::size_t i = 0; i < section.fixings.size(); ++i)
                add(job_.sections[s], section.brackets[i], section.fixings[i]);
        }
    }

    Row named(const Section& section, const Bracket& bracket) const {
        const std::string end = words(bracket.end);
        return {{{section.id.name + " " + end, section.id.name}, cells_.word(end), cells_.word(words(bracket.group))},
                {}};
    }

    const Job& job_;
    const Solution& solution_;
    Cells cells_;
};

/// Where a screw is: "upper, from 2" is the second hole of the bracket at the from end of the upper group.
std::string where(const JointScrew& screw) {
    std::string text = words(screw.group);
    if (screw.end) text += std::string(", ") + words(*screw.end) + " " + std::to_string(screw.hole);
    return text;
}

std::string passed(const JointScrew& screw, const Cells& cells, bool raw) {
    std::string text;
    for (const Passed& one : screw.hold.passed) {
        const Cell length = cells.length(one.length);
        text += (text.empty() ? "" : ", ") + one.name + " " + (raw ? length.raw : length.shown);
    }
    return text;
}

/// The longest length on the tape that does not come out.
Cell longest(const JointScrew& screw, const Cells& cells) {
    if (!screw.hold.longest) return {"-", ""};
    const Tape& tape = cells.tape();
    return {words_of_mark(fitting_mark(*screw.hold.longest, 0, tape), tape), exact(*screw.hold.longest)};
}

/// The tape on which drill bits are marked: 1/64 in, or a tenth of a millimetre.
Tape bits(Unit unit) { return {unit, unit == Unit::inch ? 1.0 / 64 : 0.1}; }

/// A hole's diameter: the nearest bit; of one that a screw has to pass freely none that is smaller.
Cell hole(const PilotHoles& holes, const Cells& cells) {
    if (holes.pilot.why == PilotFor::nothing) return {"-", ""};
    const Tape tape = bits(cells.tape().unit);
    long long mark = nearest_mark(holes.pilot.hole, tape);
    if (holes.fastened && less_than(at_mark(mark, tape), holes.pilot.hole)) ++mark;
    return {words_of_mark(mark, tape), exact(holes.pilot.hole)};
}

/// The marks of a row, one after the other.
std::string marks_in_words(const RowMarks& row, const Cells& cells) {
    std::string text;
    for (const double place : row.places) text += (text.empty() ? "" : ", ") + cells.length(place).shown;
    return text;
}

double widest_apart(const std::vector<double>& places) {
    double widest = 0;
    for (std::size_t i = 1; i < places.size(); ++i) widest = std::max(widest, places[i] - places[i - 1]);
    return widest;
}

std::string places_in_numbers(const RowMarks& row) {
    std::string text;
    for (const double place : row.places) text += (text.empty() ? "" : " ") + exact(place);
    return text;
}

Table pilot_heading(const std::string& title, const Cells& cells) {
    Table table{"pilots", title, {}, {}, {}, {}};
    table.columns = {{"", "build", Align::left},
                     {"screw", "joint", Align::left},
                     {"in", "piece", Align::left},
                     {"", "part", Align::left},
                     {"", cells.in_unit("diameter")},
                     {"hole", cells.in_unit("hole")},
                     {"deep", cells.in_unit("deep")},
                     {"why", "why", Align::left},
                     {"end", cells.in_unit("end")},
                     {"edge", cells.in_unit("edge")},
                     {"may split", "still_near", Align::left},
                     {"", "section", Align::left}};
    return table;
}

Row pilot_row(const Job& job, const PilotHoles& holes, const Cells& cells) {
    const std::string near = words_of_near(holes.pilot);
    return {{{"", job.builds[static_cast<std::size_t>(holes.build)].id.name},
             {joint_on_paper(holes.joint), words(holes.joint)},
             cells.word(holes.piece),
             {"", holes.fastened ? "fastened" : "held in"},
             {"", exact(holes.diameter)},
             hole(holes, cells),
             cells.length(holes.deep),
             cells.word(words(holes.pilot.why)),
             cells.length(holes.room.end),
             cells.length(holes.room.edge),
             {near == "neither" ? "-" : near, near},
             {"", job.sections[static_cast<std::size_t>(holes.section)].id.name}},
            {}};
}

}  // namespace

std::vector<Table> fixing_tables(const Job& job, const Solution& solution) {
    const BracketTables tables(job, solution);
    return {tables.seats(), tables.drivers()};
}

Table screw_table(const Job& job, const Solution& solution) {
    const Cells cells(job);
    Table table{"screws", "AT THE BENCH: the screws, and what each is in", {}, {}, {}, {}};
    table.columns = {{"section", "section", Align::left}, {"screw", "joint", Align::left},
                     {"at", "where", Align::left},        {"", "count"},
                     {"length", cells.in_unit("length")}, {"", cells.in_unit("diameter")},
                     {"hold", cells.in_unit("hold")},     {"longest", cells.in_unit("longest")},
                     {"out", "comes_out", Align::left},   {"", "passes", Align::left}};
    for (std::size_t s = 0; s < job.sections.size(); ++s)
        for (const JointScrew& screw : solution.sections[s].screws) {
            const bool out = screw.hold.comes_out != ComesOut::nowhere;
            table.rows.push_back({{cells.word(job.sections[s].id.name),
                                   Cell{joint_on_paper(screw.joint), words(screw.joint)},
                                   cells.word(where(screw)),
                                   cells.count(screw.count),
                                   cells.size(screw.length),
                                   cells.size(screw.diameter),
                                   cells.length(screw.hold.hold),
                                   longest(screw, cells),
                                   out ? cells.word(words(screw.hold.comes_out)) : Cell{"-", "nowhere"},
                                   {"", passed(screw, cells, true)}},
                                  (screw.count > 1 ? std::to_string(screw.count) + " side by side: " : "") +
                                      passed(screw, cells, false)});
        }
    table.footnotes = {
        "at: the group, and of a bracket its end and hole. hold: how much of the screw is in what it holds in, behind "
        "what it fastens. longest: that does not come out; out: where the point of this one does. Under each: what it "
        "is in, and how long in each, along the "
        "screw's own line from its head."};
    return table;
}

Table row_table(const Job& job, const Solution& solution) {
    const Cells cells(job);
    Table table{"rows", "AT THE BENCH: screws between members, where each stands", {}, {}, {}, {}};
    table.columns = {{"section", "section", Align::left},
                     {"", "joint", Align::left},
                     {"from", "from", Align::left},
                     {"into", "into", Align::left},
                     {"screws", "count"},
                     {"apart", cells.in_unit("apart")},
                     {"hook", "hook", Align::left},
                     {"", cells.in_unit("places"), Align::left}};
    for (std::size_t s = 0; s < job.sections.size(); ++s)
        for (const JointScrew& screw : solution.sections[s].screws) {
            if (!screw.row) continue;
            const RowMarks& row = *screw.row;
            table.rows.push_back({{cells.word(job.sections[s].id.name),
                                   {"", words(screw.joint)},
                                   cells.word(row.members[0]),
                                   cells.word(row.members[1]),
                                   cells.count(static_cast<int>(row.places.size())),
                                   row.places.size() > 1 ? cells.length(widest_apart(row.places)) : Cell{"-", ""},
                                   cells.word(words(row.hook)),
                                   {"", places_in_numbers(row)}},
                                  "at " + marks_in_words(row, cells)});
        }
    table.footnotes = {
        "from: the member that the heads lie on; into: the next. apart: the farthest from one to the next. Hook the "
        "tape at that end of the face that the heads lie on, and mark each along its middle; drive it square to the "
        "rail. They stand clear of pickets and of their screws."};
    return table;
}

std::vector<Table> pilot_tables(const Job& job, const Solution& solution) {
    const Cells cells(job);
    std::vector<Table> tables;
    for (const PilotHoles& holes : pilot_list(job, solution)) {
        if (holes.pilot.why == PilotFor::nothing) continue;
        const std::string build = job.builds[static_cast<std::size_t>(holes.build)].id.name;
        const std::string title = "AT THE BENCH: pilot holes, " + build;
        if (tables.empty() || tables.back().title != title) tables.push_back(pilot_heading(title, cells));
        tables.back().rows.push_back(pilot_row(job, holes, cells));
    }
    if (!tables.empty())
        tables.back().footnotes = {
            "hole, deep: its diameter, to the bit, and how far it goes along the screw's line: right through what the "
            "screw fastens, and as deep as its point in what it holds in. end, edge: the nearest that any such screw "
            "of any section comes to an end or splice of the piece, along the grain, and to a side that it does not "
            "go in or out by. may split: at what it is too near although it is drilled. Not listed: what wants no "
            "hole by these distances, and the ends of posts."};
    return tables;
}

}  // namespace rakewright
