#include "section_screws.hpp"

#include <algorithm>
#include <cmath>

#include "measure/compare.hpp"
#include "section_rows.hpp"
#include "section_wood.hpp"
#include "way.hpp"

namespace rakewright {
namespace {

constexpr double diameters_that_hold = 6;

/// Members of a group from the bottom up.
std::vector<const Member*> from_below(const std::vector<Member>& members, Group group) {
    std::vector<const Member*> stacked;
    for (auto member = members.rbegin(); member != members.rend(); ++member)
        if (member->group == group) stacked.push_back(&*member);
    return stacked;
}

ComesOut out_of_rail(const Corner& side) {
    if (side.top != 0) return side.top > 0 ? ComesOut::top : ComesOut::bottom;
    return side.left != 0 ? ComesOut::side : ComesOut::end;
}

/// Keeps of screws that are alike the one that has the least room, with how near any of them comes to where wood may
/// split.
void keep_least(std::optional<ScrewHold>& least, ScrewHold hold) {
    const bool first = !least || hold.longest.value_or(INFINITY) < least->longest.value_or(INFINITY);
    if (first && least) narrow(hold, *least);
    if (!first) narrow(*least, hold);
    if (first) least = std::move(hold);
}

class Screwing {
 public:
    Screwing(const FixingRoom& room, SectionResult& result, std::vector<Finding>& findings)
        : room_(room), screws_(*room.task.build.screws), result_(result), findings_(findings) {}

    void add() {
        const bool picketed = result_.pickets && result_.pickets->count > 0;
        if (screws_.picket_to_upper && picketed) picket_screws(*screws_.picket_to_upper, Group::upper);
        if (screws_.picket_to_lower && picketed && room_.levels.has_lower)
            picket_screws(*screws_.picket_to_lower, Group::lower);
        if (screws_.between_members) {
            rows(*screws_.between_members, Joint::between_members, Group::upper);
            if (!screws_.apron_to_lower) rows(*screws_.between_members, Joint::between_members, Group::lower);
        }
        if (screws_.apron_to_lower) rows(*screws_.apron_to_lower, Joint::apron_to_lower, Group::lower);
        if (screws_.post_leg)
            for (const Bracket& bracket : result_.brackets) post_screws(*screws_.post_leg, bracket);
        if (screws_.rail_leg)
            for (const Bracket& bracket : result_.brackets) rail_screws(*screws_.rail_leg, bracket);
    }

 private:
    /// One of the pickets, as the first piece of them is cut; where its foot is not known it goes down to the nosing
    /// line.
    Stick picket(std::size_t index) const {
        const Pickets& pickets = *result_.pickets;
        const RailLine& line = room_.line;
        const double along = pickets.from_face + pickets.centres[index], uphill = line.slope < 0 ? -1 : 1;
        Frame frame = frame_plumb(line.at(along), uphill * line.x, uphill * line.y);
        if (pickets.beside) frame.origin += pickets.beside->off_centre * outward();
        if (!pickets.pieces.empty()) return {frame, pickets.pieces[0].piece};
        const Plane under{line.at(along, room_.levels.upper_underside), top()};
        return {frame, {{pickets.depth, pickets.width}, {}, *cut(frame, under)}};
    }

    /// The pickets whose screws are looked at in a member: one that is cut as the first piece is, both that stand
    /// nearest to the member's ends, and those at its splices.
    std::vector<std::size_t> told_of(const Member& member) const {
        const Pickets& pickets = *result_.pickets;
        std::vector<std::size_t> told{
            pickets.pieces.empty() ? 0 : static_cast<std::size_t>(pickets.pieces[0].at[0] - 1), 0,
            static_cast<std::size_t>(pickets.count - 1)};
        const std::vector<double>& marks = (member.group == Group::upper ? pickets.upper : pickets.lower).centres;
        for (const Splice& splice : member.splices)
            told.push_back(static_cast<std::size_t>(std::min_element(marks.begin(), marks.end(),
                                                                     [&](double a, double b) {
                                                                         return std::fabs(a - splice.at) <
                                                                                std::fabs(b - splice.at);
                                                                     }) -
                                                    marks.begin()));
        return told;
    }

    /// Level, away from the rail on the side that pickets beside it stand on.
    Vector outward() const { return (result_.pickets->beside->left ? 1 : -1) * Vector(-room_.line.y, room_.line.x, 0); }

    Vector top() const { return frame_on_slope(Vector::Zero(), room_.line.x, room_.line.y, room_.line.slope).top; }

    /// A screw through a picket into the side of its member, level, by the middle of that side.
    ScrewHold beside_screw(const ScrewSize& size, const Member& member, const Stick& stick, double aside) const {
        const Frame& rail = member.stick.frame;
        const Vector ahead(room_.line.x, room_.line.y, 0);
        const Vector level = stick.frame.origin + aside * ahead;
        const Vector middle = rail.origin + ahead.dot(level - rail.origin) / ahead.dot(rail.along) * rail.along;
        const BesideRail& beside = *result_.pickets->beside;
        const ScrewWay screw{middle + (beside.off_centre + result_.pickets->depth / 2) * outward(), -outward()};
        std::vector<Bored> things;
        if (const std::optional<Leaves> leaves = within_stick(stick, screw))
            things.push_back({"picket", leaves->within, ComesOut::side, timber_of(room_, stick)});
        for (Bored& thing : bored(member, screw)) things.push_back(std::move(thing));
        return held_by(things, screw, 1, size.length);
    }

    bool is_round() const { return room_.task.build.pickets->shape == PicketShape::round; }

    /// A screw through the member that a picket meets, by the middle of the joint; of two the one that holds less.
    void picket_screws(const ScrewSize& size, Group group) {
        const std::vector<const Member*> members = from_below(result_.members, group);
        const Member& member = group == Group::upper ? *members.front() : *members.back();
        const Joint joint = group == Group::upper ? Joint::picket_to_upper : Joint::picket_to_lower;
        const double width = result_.pickets->width;
        const int count = is_round() ? 1 : screws_in_picket(width, room_.task.tape.unit);
        std::optional<ScrewHold> least;
        for (const std::size_t index : told_of(member)) {
            const Stick stick = picket(index);
            for (int i = 0; i < count; ++i) {
                const double aside = count == 1 ? 0 : width * (i == 0 ? -0.25 : 0.25);
                keep_least(least, result_.pickets->beside ? beside_screw(size, member, stick, aside)
                                                          : picket_screw(size, group, member, stick, {0, aside}));
            }
        }
        add({joint, group, std::nullopt, 0, count, size.length, size.diameter, *least});
    }

    /// With the pilot holes that it wants.
    void add(JointScrew screw) {
        for (const Passed& passed : screw.hold.passed)
            screw.pilots.push_back(
                passed.room ? pilot_for(screws_, room_.task.tape.unit, *passed.room, screw.diameter, passed.fastened)
                            : Pilot());
        result_.screws.push_back(std::move(screw));
    }

    /// A member as a screw meets it; nothing where it misses it.
    std::vector<Bored> bored(const Member& member, const ScrewWay& screw) const {
        const std::optional<Leaves> leaves = within_stick(member.stick, screw);
        if (!leaves) return {};
        return {{member.name, leaves->within, out_of_rail(leaves->side), timber_of(room_, member)}};
    }

    ScrewHold picket_screw(const ScrewSize& size, Group group, const Member& member, const Stick& stick,
                           Spot spot) const {
        const Slant& end = group == Group::upper ? stick.piece.to : stick.piece.from;
        const Vector joint = point_on(stick.frame, reach(end, spot), spot);
        const Vector out = group == Group::upper ? top() : Vector(-top());
        const double back = (member.stick.frame.origin - joint).dot(out) + member.depth / 2;
        const ScrewWay screw{joint + back * out, -out};
        std::vector<Bored> things = bored(member, screw);
        if (const std::optional<Leaves> leaves = within_stick(stick, screw))
            things.push_back({"picket", leaves->within, leaves->side == Corner{} ? ComesOut::end : ComesOut::side,
                              timber_of(room_, stick)});
        return held_by(things, screw, 1, size.length);
    }

    /// Through each member of a group but the last that it is driven toward, into what lies next.
    void rows(const ScrewRow& row, Joint joint, Group group) {
        std::vector<const Member*> members = from_below(result_.members, group);
        if (row.driven == Driven::down) std::reverse(members.begin(), members.end());
        for (std::size_t i = 0; i + 1 < members.size(); ++i) {
            const Member &heads = *members[i], &onto = *members[i + 1];
            const std::optional<RowOfScrews> places = row_between(room_, result_, row, heads, onto);
            if (!places) {
                findings_.push_back(
                    {Trouble::too_many_screws, row.every.place, {double(most_in_row)}, room_.task.section.id.place});
                return;
            }
            if (places->places.empty()) continue;
            if (places->at_taken > 0)
                findings_.push_back(
                    {Trouble::screws_at_pickets, row.place, {double(joint), row.every, double(places->at_taken)}, {}});
            add_row(row, joint, members, i, places->places);
        }
    }

    void add_row(const ScrewRow& row, Joint joint, const std::vector<const Member*>& members, std::size_t first,
                 const std::vector<double>& places) {
        const Member& heads = *members[first];
        const double side = row.driven == Driven::up ? -1 : 1;
        const Spot face{0, side * heads.depth / 2};
        std::optional<ScrewHold> least;
        for (const double along : places) {
            const ScrewWay screw{point_on(heads.stick.frame, along, face), -side * heads.stick.frame.top};
            keep_least(least, held_by(stacked(members, first, screw), screw, 1, row.length));
        }
        RowMarks marks = marks_of(heads, face, places);
        marks.members = {heads.name, members[first + 1]->name};
        add({joint, heads.group, std::nullopt, 0, 1, row.length, row.diameter, *least, std::move(marks)});
    }

    std::vector<Bored> stacked(const std::vector<const Member*>& members, std::size_t first,
                               const ScrewWay& screw) const {
        std::vector<Bored> things;
        for (std::size_t i = first; i < members.size(); ++i)
            for (Bored& thing : bored(*members[i], screw)) things.push_back(std::move(thing));
        return things;
    }

    PlateAt plate_of(const Bracket& bracket) const {
        return *plate_at(*room_.task.build.bracket, room_.line, room_.levels, bracket.end, bracket.group, bracket.leg);
    }

    /// The leg of the bracket, through which a screw goes before anything else.
    Bored leg() const { return {"bracket", {0, room_.task.build.bracket->thickness}, ComesOut::nowhere}; }

    /// How thick a square post is behind the face met; 0 where that is not known.
    double thickness_of_post(End end) const {
        const std::size_t e = index_of(end);
        if (!room_.around.placed()) return room_.around.post_sizes[e];
        const StandingPost& post = end == End::from ? *room_.around.from : *room_.around.to;
        const Face face = room_.choices.faces[e];
        return 2 * (face == Face::uphill || face == Face::downhill ? post.half_along : post.half_across);
    }

    double far_side_of_post(End end, const PlateAt& plate, const ScrewWay& screw) const {
        if (room_.line.is_round(end)) {
            const std::optional<Bore> within = within_round(room_.line.round(end), screw);
            return within ? within->end : 0;
        }
        const double thick = thickness_of_post(end);
        return thick > 0 ? plate.off_post + thick : INFINITY;
    }

    void post_screws(const ScrewSize& size, const Bracket& bracket) {
        const PlateAt plate = plate_of(bracket);
        const std::vector<Reading>& holes = room_.task.build.bracket->post_hole;
        const std::optional<double> surface = surface_at(room_.around, room_.line, bracket.end);
        for (std::size_t i = 0; i < holes.size(); ++i) {
            const ScrewWay screw{plate.post_hole(holes[i]), -plate.face};
            const double far_side = far_side_of_post(bracket.end, plate, screw), skin = leg().within.end;
            const Bored post{"post", {skin, far_side}, ComesOut::far_face, post_timber(room_, bracket.end, plate)};
            const ScrewHold hold = held_by({leg(), post}, screw, 1, size.length);
            add({Joint::post_leg, bracket.group, bracket.end, static_cast<int>(i) + 1, 1, size.length, size.diameter,
                 hold});
            const Vector enters = screw.seat + skin * screw.way;
            result_.post_screws.push_back({bracket.end,
                                           {enters, screw.way},
                                           hold.hold,
                                           hold.hold + skin - plate.off_post,
                                           size.diameter,
                                           surface ? std::optional(enters.z() - *surface) : std::nullopt});
        }
    }

    void rail_screws(const ScrewSize& size, const Bracket& bracket) {
        const PlateAt plate = plate_of(bracket);
        const std::vector<Reading>& holes = room_.task.build.bracket->rail_hole;
        const std::vector<const Member*> members = from_below(result_.members, bracket.group);
        for (std::size_t i = 0; i < holes.size(); ++i) {
            const ScrewWay screw{rail_hole(plate, holes[i]), plate.top};
            std::vector<Bored> things = stacked(members, 0, screw);
            if (!things.empty()) things[0].within.begin = std::fmax(things[0].within.begin, leg().within.end);
            things.insert(things.begin(), leg());
            add({Joint::rail_leg, bracket.group, bracket.end, static_cast<int>(i) + 1, 1, size.length, size.diameter,
                 held_by(things, screw, 1, size.length)});
        }
    }

    const FixingRoom& room_;
    const ScrewBuild& screws_;
    SectionResult& result_;
    std::vector<Finding>& findings_;
};

/// What a crew should know of the screws of one joint: of those that come out the one that has the least room, of those
/// that hold too little the one that holds least.
void note_joint(const FixingRoom& room, Joint joint, const SectionResult& result, std::vector<Finding>& findings) {
    const ScrewBuild& screws = *room.task.build.screws;
    const JointScrew *comes_out = nullptr, *holds_least = nullptr;
    for (const JointScrew& screw : result.screws) {
        if (screw.joint != joint) continue;
        const bool out = screw.hold.comes_out != ComesOut::nowhere;
        if (out && (!comes_out || *screw.hold.longest < *comes_out->hold.longest)) comes_out = &screw;
        if (!holds_least || screw.hold.hold < holds_least->hold.hold) holds_least = &screw;
    }
    if (!holds_least) return;
    const Place& place = place_of(screws, joint);
    const double least = screws.least_hold ? screws.least_hold->value : diameters_that_hold * holds_least->diameter;
    if (comes_out) {
        const bool too_little = less_than(comes_out->hold.hold, least);
        findings.push_back({Trouble::screw_comes_out,
                            place,
                            {double(joint), comes_out->length, *comes_out->hold.longest, too_little ? 1.0 : 0.0},
                            {}});
    }
    if (less_than(holds_least->hold.hold, least))
        findings.push_back({Trouble::screw_holds_little, place, {double(joint), holds_least->hold.hold, least}, {}});
}

}  // namespace

const Place& place_of(const ScrewBuild& screws, Joint joint) {
    switch (joint) {
        case Joint::picket_to_upper: return screws.picket_to_upper->place;
        case Joint::picket_to_lower: return screws.picket_to_lower->place;
        case Joint::between_members: return screws.between_members->place;
        case Joint::apron_to_lower: return screws.apron_to_lower->place;
        case Joint::post_leg: return screws.post_leg->place;
        case Joint::rail_leg: break;
    }
    return screws.rail_leg->place;
}

void add_screws(const FixingRoom& room, SectionResult& result, std::vector<Finding>& findings) {
    Screwing(room, result, findings).add();
    for (const Joint joint : every_joint) note_joint(room, joint, result, findings);
}

}  // namespace rakewright
