#include "build_form.hpp"

#include "job_grammar.hpp"
#include "spacing_form.hpp"

namespace rakewright {
namespace {

constexpr int most_members = 20, most_turnings = 100;

/// A lower gap given as a group of keys.
struct LowerGapKeys {
    std::optional<Reading> block, automatic;
};

}  // namespace

void describe(Form& form, MemberSize& member) {
    form.about("One member of a rail, from the top down.");
    form.text("name", member.name, be_given, "what it is called in the tables");
    form.length("width", member.width, Range::positive, be_given, "level, across the rail");
    form.length("depth", member.depth, Range::positive, be_given, "square to the rail, top to bottom");
}

static void describe(Form& form, LowerGapKeys& keys) {
    form.about("The gap as the thickness of a block laid on the nosings, or as high as the rules allow.");
    form.ways({{"block"}, {"auto"}}, "`block` or `auto`");
    form.length("block", keys.block, Range::positive, "square to the rail");
    form.length("auto", keys.automatic, Range::not_negative,
                "the largest that the tape marks and whose balls stay below the limit in force by this much at least");
}

void describe_lower_gap(Form& form, std::optional<LowerGap>& gap, const char* about) {
    WrittenLowerGap written(gap);
    LowerGapKeys keys;
    form.written_or_part("lower_gap", written, keys, about);
    if (keys.block) gap = LowerGap{*keys.block, true, false};
    if (keys.automatic) gap = LowerGap{*keys.automatic, false, true};
}

void describe(Form& form, Plough& plough) {
    form.about("How far the pickets enter the rails.");
    form.length("upper", plough.upper, Range::not_negative, may_be_left_out,
                "into the upper group, square to the rail");
    form.length("lower", plough.lower, Range::not_negative, may_be_left_out,
                "into the lower group, square to the rail; into a tread or floor, plumb");
}

void describe(Form& form, PicketBlocks& blocks) {
    form.about("The square blocks of a turned picket, `width` by `depth`, as bought.");
    form.length("lower", blocks.lower, Range::positive, be_given, "along the picket, from its lower end");
    form.length("upper", blocks.upper, Range::positive, be_given, "along the picket, from its upper end");
}

void describe(Form& form, Turning& spot) {
    form.about("How thick a turned picket is at one place; straight to the next, and to the blocks' edges.");
    form.length("at", spot.at, Range::not_negative, be_given,
                "along the picket, from the top of the lower block; more than the one before, and no more than what is "
                "between the blocks");
    form.length("diameter", spot.diameter, Range::positive, be_given, "there; no more than the picket's `width`");
}

void describe(Form& form, PicketPast& past) {
    form.about("How far pickets on the side of the rails run past them, plumb, in the middle of a picket's width.");
    form.place(past.place);
    form.length(
        "upper", past.upper, Range::any, may_be_left_out,
        "from the top of the upper group's lowest member up to the head; negative where the head stays below it");
    form.length(
        "lower", past.lower, Range::not_negative, may_be_left_out,
        "down to the foot's lowest point: from the underside of the lower group; without one from the floor, or "
        "over a stair from the nosing line or the top of a closed string, and more than 0");
}

void describe(Form& form, LowerEnd& end) {
    form.about("A foot that is cut at an angle, as a drip edge.");
    form.place(end.place);
    form.angle("bevel", end.bevel, {1, 75}, be_given,
               "off square, falling away from the rail: the long point is on the outer side");
    if (end.place.size > 0) end.cut = LowerEnd::Cut::bevel;
}

/// What is said of pickets that are fixed to the side of the rails.
static void describe_face(Form& form, PicketBuild& pickets) {
    form.choice(
        "fixed", pickets.fixed,
        {{"between", "to the underside of the upper group and the top of the lower one, a tread or a floor"},
         {"face",
          "to the side of the upper group's lowest member, and of the lower group or of what bounds the floor "
          "or stair below; they run past both, and follow no treads. The gaps at the posts are taken along that "
          "side of the rail; how a picket lies to a post's own sides is not looked at, and openings under a "
          "lower group are measured as if the pickets ended at it"}},
        may_be_left_out, "what they are fixed to");
    form.part("past", pickets.past, "with `fixed: face`: how far they run past the rails");
    LowerEnd end;
    form.choice_or_part("lower_end", end.cut,
                        {{"square", "square to the picket"}, {"rail", "parallel to the rail, as the head"}}, end,
                        "with `fixed: face`: how the foot is cut");
    if (end.cut != LowerEnd::Cut::square) pickets.lower_end = end;
    WrittenSide side(pickets.side);
    form.written("side", side, may_be_left_out,
                 "with `fixed: face`: `left` or `right`, which side of the rail, seen from its from end; the left if "
                 "left out");
}

void describe(Form& form, PicketBuild& pickets) {
    form.about("Plumb pickets between the rails, from the rail to the treads, or on the side of the rails.");
    form.place(pickets.place);
    form.ways({{"max_gap"},
               {"max_sphere"},
               {"pitch"},
               {"pitch", "max_gap"},
               {"pitch", "max_sphere"},
               {"pitch_on_slope"},
               {"pitch_on_slope", "max_gap"},
               {"pitch_on_slope", "max_sphere"}},
              "exactly one of `max_gap` and `max_sphere`; or a `pitch` or `pitch_on_slope`, with one of them or none");
    form.length("width", pickets.width, Range::positive, be_given, "level, along the rail");
    std::optional<Reading> depth;
    form.length("depth", depth, Range::positive,
                "across the rail; a round picket's is its `width`, and may be left out");
    form.length("max_gap", pickets.max_gap, Range::positive,
                "the widest clear gap allowed, level; one equal to it is allowed");
    form.length("max_sphere", pickets.max_sphere, Range::positive,
                "in its place: the ball that may not pass between pickets or at a post; one equal to it passes");
    describe_metal(form, pickets);
    CountOrWord per_tread(100, "fewest", "a count of pickets, or `fewest`");
    form.written("per_tread", per_tread, may_be_left_out, "how many stand on each tread where there is no lower group");
    if (per_tread.number()) pickets.per_tread = Count(*per_tread.number(), per_tread.place());
    form.part("plough", pickets.plough, may_be_left_out,
              "how far the pickets enter the rails; round ones enter holes that are bored for them, plumb");
    form.choice("shape", pickets.shape,
                {{"square", "of one section all along"},
                 {"turned",
                  "turned between square blocks, bought, and trimmed at the blocks; needs the keys `length`, "
                  "`blocks` and `turning`"},
                 {"round", "round bars or dowels: `width` is their diameter"}},
                may_be_left_out, "what they are like");
    if (depth || pickets.shape == PicketShape::round) pickets.depth = depth ? *depth : pickets.width;
    form.length("length", pickets.length, Range::positive, "of a turned picket as bought, both blocks included");
    form.part("blocks", pickets.blocks, "the blocks of a turned picket");
    form.list("turning", pickets.turning, {1, most_turnings}, may_be_left_out,
              "what is turned between the blocks, from the lower one up");
    form.length("least_block", pickets.least_block, Range::not_negative,
                "the least that must be seen of each block, plumb at its short side; 0 if left out");
    form.length("upper_block", pickets.upper_block, Range::positive,
                "how much of the upper block is seen, plumb from the rail's underside down, at the picket's centre; if "
                "left out, between two groups as much is trimmed off one block as off the other, else the longest "
                "picket of the section keeps its whole lower block");
    describe_face(form, pickets);
}

void describe(Form& form, BracketBuild& bracket) {
    form.about("A bent plate at each end of each group: one leg flat on the post, one flat under the lowest member.");
    form.length("post_leg", bracket.post_leg, Range::positive, be_given, "from the inside of the bend");
    form.length("rail_leg", bracket.rail_leg, Range::positive, be_given, "from the inside of the bend");
    form.length("width", bracket.width, Range::positive, be_given, "of the plate");
    form.length("thickness", bracket.thickness, Range::positive, be_given, "of the plate");
    form.length("inside_radius", bracket.inside_radius, Range::positive,
                "of the bend; given, the plate is laid out flat as well: its blank, bend lines and holes");
    form.part_of_one("k_factor", bracket.k_factor, may_be_left_out,
                     "where the plate keeps its length in the bend: from its inner face, as a part of the thickness; "
                     "the default is common practice, a trial bend tells it better");
    form.lengths("post_hole", bracket.post_hole, Range::positive, {1, 10}, be_given,
                 "from the inside of the bend to the hole's centre");
    form.lengths("rail_hole", bracket.rail_hole, Range::positive, {1, 10}, may_be_left_out,
                 "from the inside of the bend to the hole's centre");
    form.choice("post_seat", bracket.post_seat,
                {{"surface", "on the post: turned up, it stands between post and rail"},
                 {"mortise", "let into the post, flush"}},
                may_be_left_out, "how the leg lies on the post");
    form.choice("rail_seat", bracket.rail_seat,
                {{"surface", "under the member"},
                 {"rabbet", "let in from the end"},
                 {"mortise", "let in, with wood on both sides"}},
                may_be_left_out, "how the leg lies under the rail");
    form.choice("leg", bracket.leg,
                {{"auto", "up, where the rail hides it, if a driver reaches its screw; else down"},
                 {"up", "turned up"},
                 {"down", "turned down"}},
                may_be_left_out, "which way the leg on the post is turned");
    bracket.least_beside = usual_least_beside(form.unit());
    form.length("least_beside", bracket.least_beside, Range::not_negative, may_be_left_out,
                "the least wood left on each side of a mortise in the rail; the default is common practice");
}

void describe(Form& form, ScrewSize& screw) {
    form.about("A screw, as a straight line from the middle of its joint, square to the face that its head lies on.");
    form.place(screw.place);
    form.length("length", screw.length, Range::positive, be_given, "from its head's seat to its point");
    form.length("diameter", screw.diameter, Range::positive, be_given, "of its thread");
}

void describe(Form& form, ScrewRow& row) {
    form.about(
        "A row of screws along two members that lie on each other, half-way across, square to them. They stand evenly "
        "between the ends, and between splices; one that a picket is in the way of stands half-way to the next "
        "picket, and none stands on a bracket's leg.");
    form.place(row.place);
    form.length("length", row.length, Range::positive, be_given, "from its head's seat to its point");
    form.length("diameter", row.diameter, Range::positive, be_given, "of its thread");
    const UsualRow usual = usual_row(form.unit());
    row.every = usual.every;
    row.from_end = usual.from_end;
    form.length("every", row.every, Range::positive, may_be_left_out,
                "the farthest from one to the next, along the rail; the default is common practice");
    form.length("from_end", row.from_end, Range::not_negative, may_be_left_out,
                "the first and last: as far at least from the ends and splices of both members, along the grain, all "
                "along the screw; in a piece too short for that one stands in the middle; the default is common "
                "practice");
    form.choice("driven", row.driven,
                {{"up", "its head under the lower of the two"}, {"down", "its head on top of the upper one"}},
                may_be_left_out, "which way");
}

void describe(Form& form, PilotRule& pilot) {
    form.about(
        "When a screw wants a pilot hole, and how wide. The distances are in diameters of the screw: along the grain "
        "to an end or a splice of the piece, and to a side that the screw does not go in or out by. In end grain it "
        "always wants one (common practice); so do all in hardwood, and those over 6 mm in softwood (EN 1995-1-1 "
        "10.4.5, from memory). The defaults are of EN 1995-1-1 table 8.2 for an unloaded end and edge of wood of no "
        "more than 420 kg/m3, and of 10.4.5; from memory.");
    form.number("end", pilot.end, may_be_left_out, "nearer to an end than this many diameters: drill");
    form.number("edge", pilot.edge, may_be_left_out, "nearer to an edge than this many diameters: drill");
    form.number("drilled_end", pilot.drilled_end, may_be_left_out,
                "nearer to an end than this it may split although it is drilled; no more than `end`");
    form.number("drilled_edge", pilot.drilled_edge, may_be_left_out,
                "nearer to an edge than this, likewise; no more than `edge`");
    form.part_of_one("hole", pilot.hole, may_be_left_out,
                     "the hole's diameter in what the screw holds in, as a share of the screw's");
    form.number("clearance_hole", pilot.clearance_hole, may_be_left_out,
                "the hole's diameter in what it fastens, likewise");
}

void describe(Form& form, ScrewBuild& screws) {
    form.about(
        "The screws, joint by joint: how deep each holds, whether its point comes out, and where it wants a pilot "
        "hole.");
    form.part(
        "picket_to_upper", screws.picket_to_upper,
        "down through the upper group's lowest member into a picket's head, before what lies on that member; with "
        "`fixed: face` level, through a picket into that member");
    form.part("picket_to_lower", screws.picket_to_lower,
              "up through the lower group's highest member into a picket's foot, before what lies under that member; "
              "with `fixed: face` level, through a picket into that member");
    form.part("between_members", screws.between_members,
              "through each member of a group into what lies on it: sub rail to cap rail");
    form.part("apron_to_lower", screws.apron_to_lower,
              "in place of those in the lower group: through an apron, a member under that group's highest, into what "
              "lies on it");
    form.part("post_leg", screws.post_leg, "through each `post_hole` of a bracket into the post");
    form.part("rail_leg", screws.rail_leg, "through each `rail_hole` of a bracket up into the group");
    form.length("least_hold", screws.least_hold, Range::not_negative,
                "the least length of a screw in what it ends in; if left out six of its diameters, which is common "
                "practice");
    form.choice("wood", screws.wood,
                {{"softwood", "pine, fir, cedar and their like"}, {"hardwood", "oak, ash and their like"}},
                may_be_left_out, "what rails, pickets and posts are of");
    form.part("pilot", screws.pilot, may_be_left_out, "when a screw wants a pilot hole; tubes are not reckoned with");
}

void describe(Form& form, DriverBit& bit) {
    form.about("The bit of the driver.");
    form.length("diameter", bit.diameter, Range::positive, may_be_left_out, "of the bit");
    form.length("reach", bit.reach, Range::positive, may_be_left_out, "from the screw's seat to the body");
}

void describe(Form& form, DriverBody& body) {
    form.about("The body of the driver.");
    form.length("diameter", body.diameter, Range::positive, may_be_left_out, "of the body");
    form.length("length", body.length, Range::positive, may_be_left_out, "of the body");
}

void describe(Form& form, Driver& driver) {
    form.about("The straight driver that has to reach the brackets' screws.");
    form.part("bit", driver.bit, may_be_left_out, "its bit");
    form.part("body", driver.body, may_be_left_out, "its body");
}

void describe(Form& form, Build& build) {
    form.about("How a section is made up.");
    form.id(build.id);
    form.length("height", build.height, Range::positive, be_given,
                "plumb, from the nosing line or floor to the top of the rail");
    form.list("upper", build.upper, {1, most_members}, be_given, "the members of the upper group, from the top down");
    form.list("lower", build.lower, {1, most_members}, may_be_left_out,
              "the members of the lower group, from the top down; absent, pickets stand on treads or floor");
    describe_lower_gap(form, build.lower_gap,
                       "plumb, from the nosing line or floor to the underside of the lowest member");
    form.length("play", build.play, Range::not_negative, may_be_left_out,
                "taken off each member in all, half at each end, level along the rail");
    form.part("pickets", build.pickets, "the pickets; absent, there are none");
    form.part("bracket", build.bracket, "the bracket at each end of each group; absent, there are none");
    form.part("screws", build.screws, "the screws to be judged; absent, none are");
    build.driver = usual_driver(form.unit());
    form.part("driver", build.driver, may_be_left_out, "the driver for the brackets' screws");
    form.part("feet", build.feet, "the feet under the lower group; absent, there are none");
    form.length(
        "longest_stick", build.longest_stick, Range::positive,
        "tip to tip: a longer member is spliced, plumb, at the pickets nearest to equal divisions, of the lower "
        "group at feet where there are enough; what lies on it elsewhere if it can be (common practice)");
    form.choice("tube", build.tube, {{"no", "they are solid or open"}, {"yes", "they are closed tubes"}},
                may_be_left_out, "whether members and pickets are tubes");
    form.choice("galvanised", build.galvanised,
                {{"no", "not"}, {"yes", "a line in the notes then says what tubes need"}}, may_be_left_out,
                "whether what is built is dipped in a zinc bath");
}

}  // namespace rakewright
