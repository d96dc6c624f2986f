#include "job_form.hpp"

#include "crew_form.hpp"
#include "handrail_form.hpp"
#include "job_grammar.hpp"
#include "post_fixing_form.hpp"
#include "spacing_form.hpp"

namespace rakewright {
namespace {

constexpr Counts leaning{-44, 44}, turning{-360, 360}, draining{0, 10};
constexpr int most_steps = 1000, most_members = 20, most_named = 100000, most_turnings = 100;

/// A lower gap given as a group of keys.
struct LowerGapKeys {
    std::optional<Reading> block, automatic;
};

}  // namespace

void describe(Form& form, Step& step) {
    form.about("One step, as measured: a riser and, but for the last, what is level from its nosing to the next.");
    form.place(step.place);
    form.length("rise", step.rise, Range::positive, "plumb, from tread to tread at the nosing");
    form.length("run", step.run, Range::positive, "level, nosing to nosing");
    form.length("tread", step.tread, Range::positive,
                "level, from the nosing back to the next riser face, as a butted tape reads");
    form.length("nosing", step.nosing, Range::not_negative,
                "projection of this step's nosing past its riser face, where it differs");
}

static constexpr std::initializer_list<Word> string_words = {
    {"open", "cut to the steps: what is between the lower group and the steps is open"},
    {"closed", "it stands up past the nosings: nothing is open under a lower group"}};

void describe(Form& form, Strings& strings) {
    form.about("The two strings, where they differ.");
    form.choice("left", strings.left, string_words, may_be_left_out, "the one on the left, seen walking up");
    form.choice("right", strings.right, string_words, may_be_left_out, "the one on the right");
}

/// Describes the strings, by one word for both or each by itself.
static void strings(Form& form, Strings& strings) {
    StringKind both = StringKind::open;
    form.choice_or_part("string", both, string_words, strings,
                        "what the steps end in at the sides, at both or at each");
    if (both == StringKind::closed) strings = {both, both};
}

void describe(Form& form, Plan& plan) {
    form.about(
        "Where it stands in the plan of the job: needed where a rail runs between posts of two stairs or floors. A "
        "stair's own origin is plumb under the edge of its first nosing, on the floor at its foot; its first axis runs "
        "up it.");
    form.length("x", plan.x, Range::any, may_be_left_out, "of its origin, level");
    form.length("y", plan.y, Range::any, may_be_left_out, "of its origin, level, to the left of x");
    form.angle("heading", plan.heading, turning, may_be_left_out,
               "the way its first axis looks, counter-clockwise from x, seen from above");
    form.length("level", plan.level, Range::any, may_be_left_out, "height of its floor at its origin");
}

void describe(Form& form, Stair& stair) {
    form.about("A straight flight: even steps from two of its figures, or every step as measured.");
    form.id(stair.id);
    form.ways({{"steps"},
               {"risers", "rise", "run"},
               {"risers", "rise", "tread"},
               {"risers", "rise", "rake"},
               {"risers", "rise", "nosing_to_nosing"},
               {"risers", "total_rise", "run"},
               {"risers", "total_rise", "tread"},
               {"risers", "total_rise", "rake"},
               {"risers", "total_rise", "nosing_to_nosing"},
               {"risers", "run", "rake"},
               {"risers", "run", "nosing_to_nosing"},
               {"risers", "tread", "rake"},
               {"risers", "tread", "nosing_to_nosing"},
               {"risers", "rake", "nosing_to_nosing"}},
              "`steps`, or `risers` with exactly two of `rise` (or `total_rise`), `run` (or `tread`), `rake` and "
              "`nosing_to_nosing`");
    form.count("risers", stair.risers, {1, most_steps}, "how many risers, the one up to the landing included");
    form.length("rise", stair.rise, Range::positive, "plumb, from tread to tread");
    form.length("total_rise", stair.total_rise, Range::positive, "plumb, from the floor at the foot to the landing");
    form.length("run", stair.run, Range::positive, "level, nosing to nosing");
    form.length("tread", stair.tread, Range::positive,
                "level, from a nosing back to the next riser face, as a butted tape reads");
    form.angle("rake", stair.rake, {0, 89}, "of the nosing line over level");
    form.length("nosing_to_nosing", stair.nosing_to_nosing, Range::positive, "along the nosing line");
    form.list("steps", stair.steps, {1, most_steps}, may_be_left_out,
              "the steps as measured, lowest first; the last has no run");
    form.length("nosing", stair.nosing, Range::not_negative, may_be_left_out,
                "projection of the nosings past their riser faces");
    form.choice("line", stair.line,
                {{"minimax", "the largest plumb distance of any nosing from it is as small as possible"},
                 {"fit", "least squares, plumb"},
                 {"ends", "through the first and the last nosing"},
                 {"straightedge", "where a straightedge laid on the nosings rests, over the middle of the flight"}},
                may_be_left_out, "the nosing line that is drawn through steps that differ");
    form.length("clear_width", stair.clear_width, Range::positive, "level, between what bounds the way, for the rules");
    form.length("headroom", stair.headroom, Range::positive,
                "plumb, the least from the nosing line to what stands over it, for the rules");
    form.length("drop", stair.drop, Range::not_negative,
                "plumb, the greatest fall beside the open side, for the rules that ask for a guard");
    form.angle(
        "wash", stair.wash, draining, may_be_left_out,
        "how much the treads rise from their nosings toward the next riser; the floor and the landing are level");
    form.choice(
        "riser", stair.riser,
        {{"closed", "a board from each tread to the next"}, {"open", "nothing: treads alone, `tread_thickness`"}},
        may_be_left_out, "what is between the treads");
    form.length("tread_thickness", stair.tread_thickness, Range::positive,
                "plumb, of the treads and of the landing's edge; needed where the risers are open");
    strings(form, stair.strings);
    form.length("string_above", stair.string_above, Range::not_negative,
                "the top of a closed string, plumb above the nosing line; pickets without a lower group stand on it");
    form.part("plan", stair.plan, "where it stands in plan");
}

void describe(Form& form, Floor& floor) {
    form.about("A floor that posts stand on, or that drains: it falls along the sections over it.");
    form.id(floor.id);
    form.ways({{"falls", "toward"}, {"plan"}, {"falls", "toward", "plan"}},
              "`falls` and `toward` of a floor that drains, `plan` of one that has a place, or all three");
    form.angle("falls", floor.falls, draining, may_be_left_out, "how much it falls");
    form.choice("toward", floor.toward,
                {{"to", "it is lowest at the section's to end"},
                 {"from", "it is lowest at the section's from end"},
                 {"heading", "it falls the way its first axis looks, `at` of the posts on it"}},
                may_be_left_out, "where it falls to");
    form.part("plan", floor.plan, "where it stands in plan");
}

void describe(Form& form, Lean& lean) {
    form.about("Which way a post leans, as a level held on it reads: degrees, or so much in so much.");
    form.angle("along", lean.along, leaning, may_be_left_out, "along the stair, uphill positive");
    form.angle("across", lean.across, leaning, may_be_left_out, "across the stair, left positive, seen walking up");
}

void describe(Form& form, BaseTrim& trim) {
    form.about("Boards round the foot of the post: a member that reaches down to them is cut to them.");
    form.lengths("size", trim.size, Range::positive, {2, 2}, be_given,
                 "over all, along and across the post's first axis; one length: both alike, or the diameter");
    form.length("height", trim.height, Range::positive, be_given, "plumb, above what the post stands on");
}

void describe(Form& form, Taper& taper) {
    form.about("A post that grows thinner or thicker evenly up its length: each member is cut where it meets it.");
    form.place(taper.place);
    form.ways({{"size"}, {"around"}}, "`size`, or `around` of a round post");
    form.lengths("size", taper.size, Range::positive, {2, 2}, may_be_left_out,
                 "at `height`: along and across; one length: both alike, or the diameter");
    form.length("around", taper.around, Range::positive, "the girth of a round post at `height`");
    form.length("height", taper.height, Range::positive, be_given,
                "along the post, above what it stands on: where that was taken");
    form.length("size_at", taper.size_at, Range::not_negative, may_be_left_out, "where the post's own size was taken");
}

void describe(Form& form, Post& post) {
    form.about(
        "A post that rails run between. Without a place it only names the marks, and sections at it say their clear "
        "distance.");
    form.id(post.id);
    WrittenPostSize size(post.size);
    std::vector<Reading> sides;
    form.ways({{"size"},
               {"around"},
               {"size", "stair", "at"},
               {"around", "stair", "at"},
               {"size", "floor", "at"},
               {"around", "floor", "at"},
               {"stair", "at"},
               {"floor", "at"}},
              "`size`, or `around` of a round one, but not of a joint; and `at` with `stair` or `floor`, or none of "
              "them");
    form.written_or_lengths(
        "size", size, sides, Range::positive, {2, 2}, may_be_left_out,
        "of its section: a square post's side, or its nominal timber size, read as dressed; two lengths: along and "
        "across; a round post's diameter");
    if (sides.size() == 2) post.size = {sides[0], sides[1], {}, sides[0].place};
    form.choice("shape", post.shape,
                {{"square", "its section has four faces"},
                 {"round", "a cylinder"},
                 {"joint", "no post: the place in plan where two sections' rails meet and are mitered to each other"}},
                may_be_left_out, "what its section is");
    form.length("around", post.around, Range::positive, "the girth taped round a round post, in place of its `size`");
    form.name_of(Kind::stair, "stair", post.stair, may_be_left_out, "the stair that it stands at");
    form.name_of(Kind::floor, "floor", post.floor, may_be_left_out, "or the floor that it stands on");
    form.length("at", post.at, Range::any,
                "level from its nosing to its face or centre, uphill positive; on a floor from its origin, along its "
                "first axis");
    CountOrWord nosing(most_steps, "last", "a nosing's number, from 1, or `last`");
    nosing.number(post.nosing.value);
    form.written("nosing", nosing, may_be_left_out, "which nosing `at` is measured from");
    post.nosing = {nosing.number().value_or(0), nosing.place()};
    form.choice("face", post.face,
                {{"centre", "to the post's centre"},
                 {"downhill", "to its face that looks down the stair; of a round post its farthest line down it"},
                 {"uphill", "to its face that looks up the stair; of a round post its farthest line up it"}},
                may_be_left_out, "what `at` is measured to, before the post is turned or tipped");
    form.length("across", post.across, Range::any, may_be_left_out,
                "level from the stair's or floor's axis to the post's centre, left positive, seen walking up");
    form.angle("turn", post.turn, turning, may_be_left_out,
               "about plumb, counter-clockwise from above, its size with it; not of a round post");
    form.part("lean", post.lean, may_be_left_out, "how far it is out of plumb");
    WrittenBase base(post.base);
    form.written("base", base, may_be_left_out,
                 "the surface that it stands on, where that is not the tread under its centre");
    form.part("base_trim", post.base_trim, "where it is thicker below");
    form.part("taper", post.taper, "where it grows thinner or thicker");
    form.length("reveal", post.reveal, Range::any,
                "plumb, from the highest top of the rails that meet it up to the post's own top, under its cap; "
                "negative where the post stops below that");
    form.name_of(Kind::post_fixing, "fixing", post.fixing, may_be_left_out, "how it is fixed to what it stands on");
}

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

/// Describes a lower gap that may be left out.
static void lower_gap(Form& form, std::optional<LowerGap>& gap, const char* about) {
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

void describe(Form& form, PicketBuild& pickets) {
    form.about("Plumb pickets between the rails, or from the rail to the treads.");
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
    form.length("depth", pickets.depth, Range::positive, be_given, "across the rail");
    form.length("max_gap", pickets.max_gap, Range::positive,
                "the widest clear gap allowed, level; one equal to it is allowed");
    form.length("max_sphere", pickets.max_sphere, Range::positive,
                "in its place: the ball that may not pass between pickets or at a post; one equal to it passes");
    describe_metal(form, pickets);
    CountOrWord per_tread(100, "fewest", "a count of pickets, or `fewest`");
    form.written("per_tread", per_tread, may_be_left_out, "how many stand on each tread where there is no lower group");
    if (per_tread.number()) pickets.per_tread = Count(*per_tread.number(), per_tread.place());
    form.part("plough", pickets.plough, may_be_left_out, "how far the pickets enter the rails");
    form.choice("shape", pickets.shape,
                {{"square", "of one section all along"},
                 {"turned",
                  "turned between square blocks, bought, and trimmed at the blocks; needs the keys `length`, "
                  "`blocks` and `turning`"}},
                may_be_left_out, "what they are like");
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

void describe(Form& form, ScrewBuild& screws) {
    form.about("The screws, joint by joint: how deep each holds, and whether its point comes out.");
    form.part("picket_to_upper", screws.picket_to_upper,
              "down through the upper group's lowest member into a picket's head, before what lies on that member");
    form.part("picket_to_lower", screws.picket_to_lower,
              "up through the lower group's highest member into a picket's foot, before what lies under that member");
    form.part("between_members", screws.between_members, "up through each member of a group into what lies on it");
    form.part("post_leg", screws.post_leg, "through each `post_hole` of a bracket into the post");
    form.part("rail_leg", screws.rail_leg, "through each `rail_hole` of a bracket up into the group");
    form.length("least_hold", screws.least_hold, Range::not_negative,
                "the least length of a screw in what it ends in; if left out six of its diameters, which is common "
                "practice");
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
    lower_gap(form, build.lower_gap, "plumb, from the nosing line or floor to the underside of the lowest member");
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

void describe(Form& form, ClearTwice& clear) {
    form.about("The clear distance taken at two heights, where the posts lean or taper.");
    form.place(clear.place);
    form.length("low", clear.low, Range::positive, be_given,
                "half-way up the lower group; without one, on what the pickets stand on");
    form.length("high", clear.high, Range::positive, be_given, "half-way up the upper group");
    form.choice("plumb", clear.plumb,
                {{"neither", "both are out of plumb alike"},
                 {"from", "the post at the from end stands plumb"},
                 {"to", "the post at the to end stands plumb"}},
                may_be_left_out, "which of the two posts stands plumb");
}

void describe(Form& form, Offset& offset) {
    form.about(
        "How far the rail's centre line runs to the left of the posts' centres, seen from the from end, square to the "
        "rail: two sizes of post flush on one side.");
    form.length("from", offset.from, Range::any, may_be_left_out, "at the from post; to the right negative");
    form.length("to", offset.to, Range::any, may_be_left_out, "at the to post; to the right negative");
}

void describe(Form& form, EndWish& end) {
    form.about("What the members are cut to at this end, where that is not the post's face.");
    form.place(end.place);
    form.ways({{"past"}, {"square"}, {"pad"}}, "one of `past`, `square` and `pad`");
    std::optional<Reading> past, square, pad;
    form.length("past", past, Range::positive, "plumb, so far past the post's centre, level: a rail that runs by it");
    form.length("square", square, Range::positive,
                "square to the rail, so far short of the post's centre, level, on each member's centre line: where a "
                "bought fitting begins");
    form.length("pad", pad, Range::positive, "to a block or rosette on the post's face: how thick it is");
    using Meets = EndWish::Meets;
    if (past) end = {Meets::past, *past, end.place};
    if (square) end = {Meets::square, *square, end.place};
    if (pad) end = {Meets::pad, *pad, end.place};
}

static void end_wish(Form& form, const char* key, EndWish& end, const char* about) {
    form.choice_or_part(key, end.meets,
                        {{"face", "to the post's face"}, {"centre", "plumb, through the centre of the post's foot"}},
                        end, about);
}

void describe(Form& form, EndWishes& ends) {
    form.about("What the members are cut to at their ends; there are brackets only at a post's face.");
    end_wish(form, "from", ends.from, "at the from end");
    end_wish(form, "to", ends.to, "at the to end");
}

void describe(Form& form, Section& section) {
    form.about("A rail between two posts, or over a clear distance.");
    form.id(section.id);
    form.ways({{}, {"max_gap"}, {"max_sphere"}}, "at most one of `max_gap` and `max_sphere`");
    form.name_of(Kind::post, "from", section.from, may_be_left_out, "the post at one end");
    form.name_of(Kind::post, "to", section.to, may_be_left_out, "the post at the other end");
    form.name_of(Kind::stair, "stair", section.stair, may_be_left_out,
                 "the stair that a section with a clear distance climbs, from its from end");
    form.name_of(Kind::floor, "floor", section.floor, may_be_left_out,
                 "the floor that falls under a section that is over no stair, or straight across its landing; heights "
                 "then count from that floor");
    form.choice("follow", section.follow,
                {{"level", "the rail is level: heights and `lower_gap` count from the highest floor at its ends"},
                 {"floor", "it runs parallel to the floor: they are plumb above the floor everywhere"}},
                may_be_left_out, "how the rail runs over a floor that falls");
    WrittenSide side(section.side);
    form.written("side", side, may_be_left_out,
                 "which side of its stair it is on, seen walking up, where the two strings differ");
    form.name_of(Kind::build, "build", section.build, be_given, "how it is made up");
    WrittenClear clear(section.clear);
    ClearTwice twice;
    form.written_or_part("clear", clear, twice,
                         "level, between the two post faces; where both posts have a place, it is used in its stead");
    if (twice.low > 0) section.clear_twice = twice;
    form.length("clear_on_slope", section.clear_on_slope, Range::positive,
                "along the rake, between the two post faces");
    form.length("height", section.height, Range::positive, "in place of the build's");
    lower_gap(form, section.lower_gap, "in place of the build's");
    form.length("max_gap", section.max_gap, Range::positive, "in place of the build's, or of its `max_sphere`");
    form.length("max_sphere", section.max_sphere, Range::positive, "in place of the build's, or of its `max_gap`");
    describe_centre(form, section.centre);
    form.length("play", section.play, Range::not_negative, "in place of the build's");
    form.length("drop", section.drop, Range::not_negative,
                "plumb, the greatest fall beside it, for the rules; else its stair's");
    form.length("side_gap", section.side_gap, Range::not_negative,
                "level, from the walking surface's edge to the guard, for the rules");
    form.count("count", section.count, {1, 10000}, may_be_left_out, "how many alike");
    form.part("ends", section.ends, may_be_left_out, "what the members are cut to, where that is not a post's face");
    form.part("offset", section.offset, may_be_left_out, "where the rail runs beside the posts' centres");
}

void describe(Form& form, Stock& stock) {
    form.about("Bars of one section, to be cut into the job's sticks: which to buy, and what to cut from each.");
    form.place(stock.place);
    form.lengths("section", stock.section, Range::positive, {2, 2}, be_given,
                 "width and depth; one length: both alike");
    form.lengths("lengths", stock.lengths, Range::positive, {1, 20}, be_given, "that can be bought");
    form.length("kerf", stock.kerf, Range::not_negative, may_be_left_out,
                "what the saw takes square across; a raked cut takes more along the bar");
    form.length("trim", stock.trim, Range::not_negative, may_be_left_out,
                "what comes off each end of a bar before use");
    form.numbers("prices", stock.prices, {1, 20},
                 "of each length, in their order: then the least price is sought, and not the least length");
}

void describe(Form& form, AlsoCut& stick) {
    form.about("A square-ended stick that is none of the job's rails.");
    form.place(stick.place);
    form.text("name", stick.name, be_given, "what the plan calls it");
    form.lengths("section", stick.section, Range::positive, {2, 2}, be_given,
                 "width and depth; one length: both alike");
    form.length("length", stick.length, Range::positive, be_given, "from end to end");
    form.count("count", stick.count, {1, 10000}, may_be_left_out, "how many");
}

void describe(Form& form, Saw& saw) {
    form.about("How far the saw goes, to say of each end how it is cut on it.");
    form.angle("largest_miter", saw.largest_miter, {0, 90}, may_be_left_out,
               "how far the blade swings from a square cut, to either side");
    form.angle("largest_bevel", saw.largest_bevel, {0, 90}, may_be_left_out, "how far it tilts from plumb");
    form.length("depth_of_cut", saw.depth_of_cut, Range::positive,
                "plumb over the table, how thick a piece it cuts through with the blade plumb; tilted, that times the "
                "cosine of the bevel; no limit if left out");
}

void describe(Form& form, Job& job) {
    form.about("A job: the stairs and posts as measured, how the rails are made up, and the sections to be cut.");
    form.text("job", job.title, may_be_left_out, "the title that heads the tables");
    form.choice("units", job.units, {{"in", "inches"}, {"mm", "millimetres"}}, be_given,
                "the unit of bare numbers and of the results");
    form.length("round", job.round, Range::positive,
                "the tape division that printed readings are rounded to; 1/16 in, or 1 mm, if left out");
    form.part("saw", job.saw, "the saw that the pieces are cut on; absent, nothing is said of its reach");
    form.named("stairs", job.stairs, most_named, may_be_left_out, "the stairs, each under a name of its own");
    form.named("floors", job.floors, most_named, may_be_left_out,
               "the floors that are not level, each under a name of its own");
    form.named("post_fixings", job.post_fixings, most_named, may_be_left_out,
               "how posts are fixed to what they stand on, each under a name of its own");
    form.named("posts", job.posts, most_named, may_be_left_out, "the posts, each under a name of its own");
    form.named("builds", job.builds, most_named, may_be_left_out, "the builds, each under a name of its own");
    form.named("sections", job.sections, most_named, may_be_left_out, "the sections, each under a name of its own");
    form.named("handrails", job.handrails, most_named, may_be_left_out, "the handrails, each under a name of its own");
    form.named("as_found", job.as_found, most_named, may_be_left_out,
               "rails as they stand, for the rules, each under a name of its own");
    form.texts("rules", job.rules, 20,
               "what to judge by: rule sets by name, or the path of a local amendment, relative to the job file");
    form.later("accuracy", "doubt of the results from the accuracy of the tape");
    form.list("stock", job.stock, {1, 50}, may_be_left_out, "what can be bought for cutting, a section each");
    form.list("also_cut", job.also_cut, {1, 1000}, may_be_left_out,
              "other square-ended sticks to come out of the same stock");
    describe_spacing(form, job.spacing);
    form.choice("story_stick", job.story_stick,
                {{"no", "not"}, {"yes", "one strip of marks for all rails of each section that has pickets"}},
                may_be_left_out, "whether a story stick is set out for each section");
    form.choice("piece_list", job.piece_list,
                {{"no", "not; the tables have them at the saw"},
                 {"yes", "every piece of the job, equal ones together, as `pieces`"}},
                may_be_left_out, "whether JSON lists the pieces over all sections");
    describe_crew(form, job);
}

}  // namespace rakewright
