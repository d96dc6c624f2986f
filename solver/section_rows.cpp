#include "section_rows.hpp"

#include <algorithm>
#include <cmath>

#include "measure/compare.hpp"

namespace rakewright {
namespace {

/// The least distance between two screws along the grain, in diameters: predrilled, EN 1995-1-1 table 8.2, from memory.
constexpr double diameters_apart = 5;

/// Rows along two members of one rail. Places are along the axis of the member that the heads lie on, from its frame's
/// origin; a screw is at one place all along its way.
class RowRoom {
 public:
    RowRoom(const FixingRoom& room, const SectionResult& result, const ScrewRow& row, const Member& heads,
            const Member& onto)
        : room_(room), result_(result), row_(row), heads_(heads), onto_(onto) {}

    std::optional<RowOfScrews> row() const {
        RowOfScrews whole;
        const std::vector<Bore> taken = at_pickets();
        for (const Bore& stretch : stretches()) {
            if (stretch.end - stretch.begin > (most_in_row - 1) * row_.every) return std::nullopt;
            const RowOfScrews part = row_in(stretch, row_.every, diameters_apart * row_.diameter, taken);
            whole.places.insert(whole.places.end(), part.places.begin(), part.places.end());
            whole.at_taken += part.at_taken;
        }
        if (whole.places.size() > static_cast<std::size_t>(most_in_row)) return std::nullopt;
        return whole;
    }

 private:
    double place_of(const Vector& point) const {
        return (point - heads_.stick.frame.origin).dot(heads_.stick.frame.along);
    }

    /// From where to where a cut through a member lies.
    Bore over(const Member& member, const Slant& cut) const {
        const double origin = place_of(member.stick.frame.origin), half = member.depth / 2,
                     low = origin + reach(cut, {0, -half}), high = origin + reach(cut, {0, half});
        return {std::fmin(low, high), std::fmax(low, high)};
    }

    /// What is whole of both members between ends and splices.
    std::vector<Bore> whole_parts() const {
        Bore both{-INFINITY, INFINITY};
        std::vector<Bore> splices;
        for (const Member* member : {&heads_, &onto_}) {
            both.begin = std::fmax(both.begin, over(*member, member->stick.piece.from).end);
            both.end = std::fmin(both.end, over(*member, member->stick.piece.to).begin);
            for (const Splice& splice : member->splices) splices.push_back(over(*member, splice.cut));
        }
        std::sort(splices.begin(), splices.end(), [](const Bore& a, const Bore& b) { return a.begin < b.begin; });
        std::vector<Bore> parts;
        for (const Bore& splice : splices) {
            parts.push_back({both.begin, splice.begin});
            both.begin = std::fmax(both.begin, splice.end);
        }
        parts.push_back(both);
        return parts;
    }

    std::vector<Bore> stretches() const {
        std::vector<Bore> parts = whole_parts();
        for (Bore& part : parts) part = {part.begin + row_.from_end, part.end - row_.from_end};
        keep_off_legs(parts);
        std::vector<Bore> stretches;
        for (const Bore& part : parts) {
            const double middle = (part.begin + part.end) / 2;
            if (part.begin <= part.end)
                stretches.push_back(part);
            else if (part.begin - part.end < 2 * row_.from_end)
                stretches.push_back({middle, middle});
        }
        return stretches;
    }

    void keep_off_legs(std::vector<Bore>& parts) const {
        if (row_.driven == Driven::down || &heads_ != &lowest_of(result_.members, heads_.group)) return;
        const std::optional<BracketBuild>& build = room_.task.build.bracket;
        for (const Bracket& bracket : result_.brackets) {
            if (bracket.group != heads_.group) continue;
            const PlateAt plate =
                *plate_at(*build, room_.line, room_.levels, bracket.end, bracket.group, bracket.leg);
            const double tip = place_of(rail_leg_tip(plate, room_.line, build->rail_leg));
            if (bracket.end == End::from) parts.front().begin = std::fmax(parts.front().begin, tip + row_.diameter);
            if (bracket.end == End::to) parts.back().end = std::fmin(parts.back().end, tip - row_.diameter);
        }
    }

    /// What pickets and their screws take up, with room for half a head, which is two diameters wide (common practice).
    std::vector<Bore> at_pickets() const {
        if (!result_.pickets || result_.pickets->count == 0) return {};
        const bool upper = heads_.group == Group::upper;
        const Member& meets = upper ? lowest_of(result_.members, Group::upper) : highest_of_lower();
        if (&meets != &heads_ && &meets != &onto_) return {};
        const Marks& marks = upper ? result_.pickets->upper : result_.pickets->lower;
        const double origin = place_of(meets.stick.frame.origin) +
                              reach(meets, End::from, {0, upper ? -meets.depth / 2 : meets.depth / 2}),
                     half = marks.half_width + row_.diameter;
        std::vector<Bore> taken;
        for (const double centre : marks.centres) {
            const double begin = origin + centre - half;
            if (!taken.empty() && begin <= taken.back().end)
                taken.back().end = origin + centre + half;
            else
                taken.push_back({begin, origin + centre + half});
        }
        return taken;
    }

    const Member& highest_of_lower() const {
        return *std::find_if(result_.members.begin(), result_.members.end(),
                             [](const Member& member) { return member.group == Group::lower; });
    }

    const FixingRoom& room_;
    const SectionResult& result_;
    const ScrewRow& row_;
    const Member &heads_, &onto_;
};

}  // namespace

std::optional<RowOfScrews> row_between(const FixingRoom& room, const SectionResult& result, const ScrewRow& row,
                               const Member& heads, const Member& onto) {
    return RowRoom(room, result, row, heads, onto).row();
}

RowMarks marks_of(const Member& heads, Spot face, const std::vector<double>& places) {
    RowMarks marks;
    marks.hook = hook_on(heads, face);
    const double end = reach(heads, marks.hook, face);
    for (const double place : places) marks.places.push_back(std::fabs(place - end));
    std::sort(marks.places.begin(), marks.places.end());
    return marks;
}

}  // namespace rakewright
