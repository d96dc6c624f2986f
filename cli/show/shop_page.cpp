#include <algorithm>
#include <map>

#include "../../solver/cut_list.hpp"
#include "../../solver/solution_sheet.hpp"
#include "../../solver/story_stick.hpp"
#include "cut_sheet.hpp"

namespace rakewright {
namespace {

class ShopPage {
 public:
    ShopPage(const Job& job, const Solution& solution) : job_(job), solution_(solution), cells_(job) {
        const std::vector<CutPiece> pieces = cut_list(job, solution);
        for (std::size_t i = 0; i < pieces.size(); ++i)
            for (const Use& use : pieces[i].uses) {
                if (pieces[i].stuff == Stuff::foot) foot_marks_[{use.of, use.index}] = mark_of(i);
                if (pieces[i].stuff == Stuff::member) member_marks_[{use.of, use.index, use.part}] = mark_of(i);
            }
    }

    /// Rails that come drilled at a pitch, or are punched for the pickets.
    Table holes() const {
        Table table{"holes", "THE HOLES: rails that are drilled or punched for the pickets", {}, {}, {}, {}};
        table.columns = {{"section", "section", Align::left},
                         {"rail", "group", Align::left},
                         {"holes", "holes"},
                         {"apart", cells_.in_unit("pitch_on_slope")},
                         {"from end", cells_.in_unit("first_from")},
                         {"to end", cells_.in_unit("first_to")},
                         {"slot", cells_.in_unit("slot_length")},
                         {"wide", cells_.in_unit("slot_width")}};
        const bool any_bored =
            std::any_of(solution_.sections.begin(), solution_.sections.end(),
                        [](const auto& section) { return section.pickets && section.pickets->hole; });
        if (any_bored) {
            table.columns.push_back({"bore", cells_.in_unit("bore_diameter")});
            table.columns.push_back({"deep", cells_.in_unit("bore_depth")});
        }
        for (std::size_t s = 0; s < job_.sections.size(); ++s)
            if (const auto& pickets = solution_.sections[s].pickets;
                pickets && pickets->count > 0 && (pickets->at_pitch || pickets->slot || pickets->hole))
                for (const Group group : both_groups) add_holes(s, *pickets, group, any_bored, table);
        table.about = {legend(
            table, {{{}, "apart: along the rail, centre to centre."},
                    {{"from end"},
                     "from end, to end: where to cut a rail that comes drilled, from the centre of the hole that is "
                     "nearest, along the face that the pickets meet."},
                    {{"slot"}, "slot: along the rail, not rounded to the tape."},
                    {{"bore"},
                     "bore: for round pickets, plumb, so off square to the rail by its rake; deep: along the middle of "
                     "the hole, with room for the picket's long side. Their centres are marked at the bench."}})};
        return table;
    }

    /// Members that are put together of shorter sticks.
    Table splices() const {
        Table table{"splices", "THE SPLICES: members of more than one stick", {}, {}, {}, {}};
        table.columns = {
            {"section", "section", Align::left}, {"member", "member", Align::left}, {"rail", "group", Align::left},
            {"from end", cells_.in_unit("at")},  {"at picket", "picket"},           {"at foot", "foot"},
            {"joins", "joins", Align::left}};
        for (std::size_t s = 0; s < job_.sections.size(); ++s) {
            const std::vector<Member>& members = solution_.sections[s].members;
            for (std::size_t m = 0; m < members.size(); ++m)
                for (std::size_t p = 0; p < members[m].splices.size(); ++p) table.rows.push_back(splice_row(s, m, p));
        }
        table.about = {
            "from end: along the member's centre line, from its from end to the joint. Joints are plumb, through the "
            "picket's or the foot's centre: under a picket each lies within the picket's mark. joins: the pieces of "
            "the "
            "saw's table, the nearer to the from end first. Splice before the pickets are marked."};
        return table;
    }

    Table feet() const {
        Table table{"feet", "THE FEET: under the lower rails", {}, {}, {}, {}};
        table.columns = {{"section", "section", Align::left},
                         {"piece", "piece", Align::left},
                         {"under picket", "picket"},
                         {"from post", cells_.in_unit("at")},
                         {"uphill side", cells_.in_unit("uphill_side")},
                         {"downhill side", cells_.in_unit("downhill_side")}};
        for (std::size_t s = 0; s < job_.sections.size(); ++s) {
            const std::vector<RailFoot>& feet = solution_.sections[s].feet;
            for (std::size_t f = 0; f < feet.size(); ++f)
                table.rows.push_back(
                    {{cells_.word(job_.sections[s].id.name),
                      cells_.word(foot_marks_.at({static_cast<int>(s), static_cast<int>(f)})),
                      feet[f].picket > 0 ? cells_.count(feet[f].picket) : Cell{"-", ""}, cells_.length(feet[f].at),
                      cells_.length(feet[f].uphill_side), cells_.length(feet[f].downhill_side)},
                     {}});
        }
        table.about = {
            "from post: level, from the from post's face to the foot's centre."};
        return table;
    }

    std::vector<Table> sticks() const {
        std::vector<Table> tables;
        if (!job_.story_stick) return tables;
        for (std::size_t s = 0; s < job_.sections.size(); ++s)
            if (const std::optional<StoryStick> stick = story_stick_of(solution_.sections[s]))
                tables.push_back(stick_of(job_.sections[s].id.name, *stick));
        return tables;
    }

 private:
    Row splice_row(std::size_t s, std::size_t m, std::size_t p) const {
        const Member& member = solution_.sections[s].members[m];
        const Splice& splice = member.splices[p];
        const auto number = [&](int at) { return at > 0 ? cells_.count(at) : Cell{}; };
        const auto mark = [&](std::size_t part) {
            return member_marks_.at({static_cast<int>(s), static_cast<int>(m), static_cast<int>(part)});
        };
        return {{cells_.word(job_.sections[s].id.name), cells_.word(member.name), cells_.word(words(member.group)),
                 cells_.length(splice.at), number(splice.picket), number(splice.foot),
                 cells_.word(mark(p) + " and " + mark(p + 1))},
                {}};
    }

    void add_holes(std::size_t s, const Pickets& pickets, Group group, bool any_bored, Table& table) const {
        const Marks& marks = group == Group::upper ? pickets.upper : pickets.lower;
        const double deep = !pickets.hole ? 0 : group == Group::upper ? pickets.hole->upper : pickets.hole->lower;
        if (marks.centres.empty() || !(pickets.at_pitch || pickets.slot || deep > 0)) return;
        const auto where = [&](End end) {
            return cells_.length(pickets.at_pitch ? std::optional(marks.first_centre(end)) : std::nullopt);
        };
        const auto slot = [&](double Slot::*size) {
            return pickets.slot ? cells_.number((*pickets.slot).*size, 3) : Cell{"-", ""};
        };
        table.rows.push_back({{cells_.word(job_.sections[s].id.name), cells_.word(words(group)),
                               cells_.count(pickets.count), cells_.length(pickets.pitch_on_slope), where(End::from),
                               where(End::to), slot(&Slot::length), slot(&Slot::width)},
                              {}});
        if (!any_bored) return;
        const auto bored = [&](double size) { return cells_.length(deep > 0 ? std::optional(size) : std::nullopt); };
        table.rows.back().cells.push_back(bored(pickets.hole ? pickets.hole->diameter : 0));
        table.rows.back().cells.push_back(bored(deep));
    }

    Table stick_of(const std::string& section, const StoryStick& stick) const {
        Table table{"story_stick", "STORY STICK: " + section, {}, {}, {}, {}};
        table.columns = {{"", "section", Align::left},
                         {"mark", "mark", Align::left},
                         {"reads", cells_.in_unit("reads")},
                         {"centre", cells_.in_unit("centre")}};
        const auto add = [&](const std::string& mark, double reads, const std::optional<double>& centre) {
            table.rows.push_back(
                {{{"", section}, cells_.word(mark), cells_.length(reads), centre ? cells_.length(*centre) : Cell{}},
                 {}});
        };
        const auto rail = [](const RailOnStick& on) { return std::string(words(on.group)) + " rail"; };
        for (const RailOnStick& on : stick.rails) add(rail(on) + " begins", on.from_end, {});
        for (std::size_t i = 0; i < stick.edges.size(); ++i)
            add("picket " + std::to_string(i + 1), stick.edges[i], stick.centres[i]);
        for (const RailOnStick& on : stick.rails) add(rail(on) + " ends", on.to_end, {});
        add("to post's face", stick.to_face, {});
        table.about = {
            "One strip for every rail: its zero is plumb under the from post's face, half-way up the pickets. Lay it "
            "along the face that the pickets meet, or the edge that is marked for them, by where that rail begins; "
            "mark each picket's near edge and set the "
            "picket on its far side. A picket is " +
            cells_.length(stick.picket).shown + " along it."};
        return table;
    }

    const Job& job_;
    const Solution& solution_;
    Cells cells_;
    std::map<std::pair<int, int>, std::string> foot_marks_;
    std::map<std::array<int, 3>, std::string> member_marks_;  // by section, member and piece of it
};

}  // namespace

std::vector<Table> shop_tables(const Job& job, const Solution& solution) {
    const ShopPage page(job, solution);
    std::vector<Table> tables{page.splices(), page.holes(), page.feet()};
    for (Table& stick : page.sticks()) tables.push_back(std::move(stick));
    return tables;
}

}  // namespace rakewright
