#include "section_screws.hpp"

#include <algorithm>
#include <cmath>

#include "measure/compare.hpp"
#include "way.hpp"

namespace rakewright {
namespace {

constexpr std::array both_groups{Group::upper, Group::lower};
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

/// A member as a screw meets it; nothing where it misses it.
std::vector<Bored> bored(const Member& member, const ScrewWay& screw) {
    const std::optional<Leaves> leaves = within_stick(member.stick, screw);
    if (!leaves) return {};
    return {{member.name, leaves->within, out_of_rail(leaves->side)}};
}

class Screwing {
 public:
    Screwing(const FixingRoom& room, SectionResult& result)
        : room_(room), screws_(*room.task.build.screws), result_(result) {}

    void add() {
        const bool picketed = result_.pickets && result_.pickets->count > 0;
        if (screws_.picket_to_upper && picketed) picket_screws(*screws_.picket_to_upper, Group::upper);
        if (screws_.picket_to_lower && picketed && room_.levels.has_lower)
            picket_screws(*screws_.picket_to_lower, Group::lower);
        if (screws_.between_members)
            for (const Group group : both_groups) member_screws(*screws_.between_members, group);
        if (screws_.post_leg)
            for (const Bracket& bracket : result_.brackets) post_screws(*screws_.post_leg, bracket);
        if (screws_.rail_leg)
            for (const Bracket& bracket : result_.brackets) rail_screws(*screws_.rail_leg, bracket);
    }

 private:
    /// A picket of the section; where its foot is not known it goes down to the nosing line.
    Stick picket() const {
        const Pickets& pickets = *result_.pickets;
        const RailLine& line = room_.line;
        const std::size_t first = pickets.pieces.empty() ? 0 : static_cast<std::size_t>(pickets.pieces[0].at[0] - 1);
        const double along = pickets.from_face + pickets.centres[first], uphill = line.slope < 0 ? -1 : 1;
        const Frame frame = frame_plumb(line.at(along), uphill * line.x, uphill * line.y);
        if (!pickets.pieces.empty()) return {frame, pickets.pieces[0].piece};
        const Plane under{line.at(along, room_.levels.upper_underside), top()};
        return {frame, {{pickets.depth, pickets.width}, {}, *cut(frame, under)}};
    }

    Vector top() const { return frame_on_slope(Vector::Zero(), room_.line.x, room_.line.y, room_.line.slope).top; }

    /// A screw through a picket into the side of its member, level.
    void beside_screws(const ScrewSize& size, Joint joint, const Member& member) {
        const Pickets& pickets = *result_.pickets;
        const double through = pickets.depth + member.width;
        const ScrewHold hold = held_by(
            {{"picket", {0, pickets.depth}, ComesOut::side}, {member.name, {pickets.depth, through}, ComesOut::side}},
            1, size.length);
        const int count = is_round() ? 1 : screws_in_picket(pickets.width, room_.task.tape.unit);
        result_.screws.push_back({joint, member.group, std::nullopt, 0, count, size.length, size.diameter, hold});
    }

    bool is_round() const { return room_.task.build.pickets->shape == PicketShape::round; }

    /// A screw through the member that a picket meets, by the middle of the joint; of two the one that holds less.
    void picket_screws(const ScrewSize& size, Group group) {
        const std::vector<const Member*> members = from_below(result_.members, group);
        const Member& member = group == Group::upper ? *members.front() : *members.back();
        const Joint joint = group == Group::upper ? Joint::picket_to_upper : Joint::picket_to_lower;
        if (result_.pickets->beside) return beside_screws(size, joint, member);
        const Stick stick = picket();
        const int count = is_round() ? 1 : screws_in_picket(stick.piece.section.depth, room_.task.tape.unit);
        std::optional<ScrewHold> least;
        for (int i = 0; i < count; ++i) {
            const double aside = count == 1 ? 0 : stick.piece.section.depth * (i == 0 ? -0.25 : 0.25);
            const ScrewHold hold = picket_screw(size, group, member, stick, {0, aside});
            if (!least || hold.longest.value_or(INFINITY) < least->longest.value_or(INFINITY)) least = hold;
        }
        result_.screws.push_back({joint, group, std::nullopt, 0, count, size.length, size.diameter, *least});
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
            things.push_back({"picket", leaves->within, leaves->side == Corner{} ? ComesOut::end : ComesOut::side});
        return held_by(things, 1, size.length);
    }

    /// Half-way along the rail, up through each member but the highest.
    void member_screws(const ScrewSize& size, Group group) {
        const std::vector<const Member*> members = from_below(result_.members, group);
        for (std::size_t i = 0; i + 1 < members.size(); ++i) {
            const auto& [frame, piece] = members[i]->stick;
            const ScrewWay screw{point_on(frame, (piece.from.at + piece.to.at) / 2, {0, -piece.section.depth / 2}),
                                 frame.top};
            const std::vector<Bored> things = stacked(members, i, screw);
            result_.screws.push_back({Joint::between_members, group, std::nullopt, 0, 1, size.length, size.diameter,
                                      held_by(things, 1, size.length)});
        }
    }

    static std::vector<Bored> stacked(const std::vector<const Member*>& members, std::size_t first,
                                      const ScrewWay& screw) {
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
        const std::size_t e = end == End::from ? 0 : 1;
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
            const ScrewHold hold = held_by({leg(), {"post", {skin, far_side}, ComesOut::far_face}}, 1, size.length);
            result_.screws.push_back({Joint::post_leg, bracket.group, bracket.end, static_cast<int>(i) + 1, 1,
                                      size.length, size.diameter, hold});
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
            std::vector<Bored> things = stacked(members, 0, {rail_hole(plate, holes[i]), plate.top});
            if (!things.empty()) things[0].within.begin = std::fmax(things[0].within.begin, leg().within.end);
            things.insert(things.begin(), leg());
            result_.screws.push_back({Joint::rail_leg, bracket.group, bracket.end, static_cast<int>(i) + 1, 1,
                                      size.length, size.diameter, held_by(things, 1, size.length)});
        }
    }

    const FixingRoom& room_;
    const ScrewBuild& screws_;
    SectionResult& result_;
};

const std::optional<ScrewSize>& size_of(const ScrewBuild& screws, Joint joint) {
    switch (joint) {
        case Joint::picket_to_upper: return screws.picket_to_upper;
        case Joint::picket_to_lower: return screws.picket_to_lower;
        case Joint::between_members: return screws.between_members;
        case Joint::post_leg: return screws.post_leg;
        case Joint::rail_leg: break;
    }
    return screws.rail_leg;
}

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
    const Place& place = size_of(screws, joint)->place;
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

void add_screws(const FixingRoom& room, SectionResult& result, std::vector<Finding>& findings) {
    Screwing(room, result).add();
    for (const Joint joint :
         {Joint::picket_to_upper, Joint::picket_to_lower, Joint::between_members, Joint::post_leg, Joint::rail_leg})
        note_joint(room, joint, result, findings);
}

}  // namespace rakewright
