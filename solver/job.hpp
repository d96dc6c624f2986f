#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "measure/angle.hpp"
#include "measure/length.hpp"

// What was asked, in the words of the job file. The meaning, unit, range and default of every field stand in one place,
// where it is described: job_form.cpp and its kin. A program may fill a Job itself; what a reader would have refused is
// then its own affair.

namespace rakewright {

/// Where in the job's text a value stands, in bytes. The solver never looks at it: it hands it back in its findings.
struct Place {
    std::uint32_t begin = 0;
    std::uint32_t size = 0;
};

/// A number that somebody read off a tape or chose, and where it is written.
struct Reading {
    double value = 0;
    Place place;
    Reading() = default;
    Reading(double number) : value(number) {}
    Reading(double number, Place where) : value(number), place(where) {}
    operator double() const { return value; }
};

/// An angle that somebody read off a level or chose, and where it is written.
struct AngleReading {
    Angle angle;
    Place place;
};

/// A count that somebody gave, and where it is written.
struct Count {
    int value = 0;
    Place place;
    Count() = default;
    Count(int number) : value(number) {}
    Count(int number, Place where) : value(number), place(where) {}
    operator int() const { return value; }
};

/// What something in the job is called.
struct Id {
    std::string name;
    Place place;
};

/// Another thing of the job, named: its index in the job's list, or -1 where none is named.
struct Ref {
    int index = -1;
    Place place;
    bool named() const { return index >= 0; }
};

/// The line drawn through nosings that do not lie on one.
enum class LineThrough { minimax, fit, ends, straightedge };

struct Step {
    Place place;
    std::optional<Reading> rise, run, tread, nosing;
};

/// Whether there are boards between the treads.
enum class RiserKind { closed, open };

/// Whether a string is cut to the steps, or stands up past them.
enum class StringKind { open, closed };

/// Where the own axes of a stair or floor stand in the plan of the job: their origin, the way their first axis looks,
/// counter-clockwise from the plan's x, and the height of the floor at their origin.
struct Plan {
    Reading x = 0, y = 0, level = 0;
    AngleReading heading;
};

/// The strings of a stair, seen walking up.
struct Strings {
    StringKind left = StringKind::open, right = StringKind::open;
};

struct Stair {
    Id id;
    std::optional<Count> risers;
    std::optional<Reading> rise, total_rise, run, tread, nosing_to_nosing;
    std::optional<AngleReading> rake;
    std::vector<Step> steps;
    Reading nosing = 0;
    LineThrough line = LineThrough::minimax;
    std::optional<Reading> clear_width, headroom, drop;
    AngleReading wash;
    RiserKind riser = RiserKind::closed;
    std::optional<Reading> tread_thickness;
    Strings strings;
    std::optional<Reading> string_above;
    std::optional<Plan> plan;
};

/// Which end of a section a floor falls toward, or that it falls the way its own first axis looks.
enum class Toward { to, from, heading };

/// A floor: one that is not level, as it runs under a section, or one that posts stand on.
struct Floor {
    Id id;
    AngleReading falls;
    Toward toward = Toward::to;
    std::optional<Plan> plan;
};

enum class PostFace { centre, downhill, uphill };

/// Which nosing of a stair, from 1; 0 is the last, whatever its number.
struct NosingNumber {
    int value = 1;
    Place place;
};

/// The surface a post stands on: the tread under its centre, a tread by its number, or a height above the floor at the
/// foot.
struct Base {
    enum class On { what_is_under, tread, height };
    On on = On::what_is_under;
    int tread = 0;
    double height = 0;
    Place place;
};

/// A post's section, along the stair and across it before it is turned; `nominal` keeps a timber size as it was
/// written.
struct PostSize {
    double along = 0;
    double across = 0;
    std::string nominal;
    Place place;
};

/// A joint is a place without a post, where two rails meet.
enum class PostShape { square, round, joint };

/// What a level held along the stair and one held across it read.
struct Lean {
    AngleReading along, across;
};

/// Boards round the foot of a post: as the post is sized, and how high they reach above what it stands on.
struct BaseTrim {
    std::vector<Reading> size;  // along and across, or one for both
    Reading height;

    double along() const { return size.front(); }
    double across() const { return size.back(); }
};

/// A post that grows thicker or thinner evenly up its length: how thick it is at a second height above what it stands
/// on, and at which one its own size was taken.
struct Taper {
    std::vector<Reading> size;  // along and across, or one for both
    std::optional<Reading> around;
    Reading height;
    Reading size_at = 0;
    Place place;

    double along() const;
    double across() const;
};

/// A plate under a post, turned with it; four holes of one diameter in a rectangle about its middle.
struct BasePlate {
    std::vector<Reading> size, holes;  // along and across, or one for both; `holes` centre to centre
    Reading thickness, hole;

    double along() const { return size.front(); }
    double across() const { return size.back(); }
    double holes_along() const { return holes.front(); }
    double holes_across() const { return holes.back(); }
};

/// A threaded rod up through a hollow post: what it passes beside the plate and the post.
struct PostRod {
    Place place;
    Reading below = 0, floor, channel = 0, washer, nut, spare;
};

/// What a post's bolts or rod hold in.
enum class AnchoredIn { wood, concrete };

/// How posts are fixed to what they stand on.
struct PostFixing {
    Id id;
    AnchoredIn anchored_in = AnchoredIn::wood;
    std::optional<Reading> wood_under;
    std::optional<BasePlate> base_plate;
    std::optional<PostRod> rod;
};

/// `size` of a round post is its diameter both ways; or it has the girth taped round it in place of a size. It stands
/// at a stair or on a floor, or has no place.
struct Post {
    Id id;
    PostSize size;
    PostShape shape = PostShape::square;
    std::optional<Reading> around;
    std::optional<BaseTrim> base_trim;
    std::optional<Taper> taper;
    Ref stair, floor;
    std::optional<Reading> at;
    NosingNumber nosing;
    PostFace face = PostFace::centre;
    Reading across = 0;
    AngleReading turn;
    Lean lean;
    Base base;
    std::optional<Reading> reveal;  // its top over the highest rail's
    Ref fixing;

    bool has_place() const { return stair.named() || floor.named(); }
};

struct MemberSize {
    std::string name;
    Reading width, depth;
};

/// How far the lowest member stands over the nosing line or floor: plumb, or a block square to the rail, or as high as
/// the rules allow.
struct LowerGap {
    Reading size;
    bool is_block = false;
    bool is_auto = false;  // the largest whose spheres stay `size` and more below the limit in force
};

struct Plough {
    Reading upper = 0;
    Reading lower = 0;
};

enum class PicketShape { square, turned, round };

/// What pickets are fixed to: the underside and top of the rails that they stand between, or the side of the rails.
enum class PicketsFixed { between, face };

/// How far pickets that are fixed to the side of the rails run past them, plumb.
struct PicketPast {
    Reading upper = 0, lower = 0;
    Place place;
};

/// How the foot of a picket is cut that is fixed to the side of the rails. A bevel falls away from the rail.
struct LowerEnd {
    enum class Cut { square, rail, bevel };
    Cut cut = Cut::square;
    AngleReading bevel;  // off square
    Place place;
};

/// The square blocks of a turned picket, as bought.
struct PicketBlocks {
    Reading lower, upper;
};

/// How thick a turned picket is at one height of its turning.
struct Turning {
    Reading at, diameter;
};

/// A hole punched through the web of a channel for each picket.
struct Punched {
    Reading web;
    Reading clearance = 0;
};

/// A side of a rail, seen from its section's from end, or of a stair, seen walking up; and where it is named.
struct NamedSide {
    bool left = true;
    Place place;
};

/// A limit on the gaps, or in its place one on the balls that pass through them; with a pitch there may be none. What
/// is said of turned pickets, or of those on the side of the rails, means nothing with others.
struct PicketBuild {
    Reading width, depth;
    std::optional<Reading> max_gap, max_sphere;
    std::optional<Reading> pitch, pitch_on_slope;  // of rails that come drilled
    std::optional<Reading> least_end_gap;          // with a pitch; none: half the gap between two pickets
    std::optional<Punched> slot;
    Reading weld_gap = 0;
    std::optional<Count> per_tread;  // none: the fewest
    Plough plough;
    PicketShape shape = PicketShape::square;
    std::optional<Reading> length;
    std::optional<PicketBlocks> blocks;
    std::vector<Turning> turning;  // from the lower block up
    std::optional<Reading> least_block, upper_block;
    PicketsFixed fixed = PicketsFixed::between;
    std::optional<PicketPast> past;
    std::optional<LowerEnd> lower_end;
    std::optional<NamedSide> side;  // none: the left
    Place place;

    bool on_face() const { return fixed == PicketsFixed::face; }
    /// The pitch, whichever way it is given; none where the limit sets the spacing.
    const std::optional<Reading>& any_pitch() const { return pitch ? pitch : pitch_on_slope; }
};

/// Feet under the lowest member, no farther apart than `every`; of the pickets' section if none is given.
struct FeetBuild {
    Reading every;
    std::optional<Reading> width, depth;
    Place place;
};

enum class PostSeat { surface, mortise };
enum class RailSeat { surface, rabbet, mortise };
enum class LegWish { by_driver, up, down };

/// The least wood beside a mortise, in the job's unit: 1/2 in, or 12 mm. Common practice.
double usual_least_beside(Unit unit);

/// `k_factor` means nothing without `inside_radius`: then nothing is said of the plate before it is bent.
struct BracketBuild {
    Reading post_leg, rail_leg, width, thickness;
    std::optional<Reading> inside_radius;
    Reading k_factor = 0.45;
    std::vector<Reading> post_hole, rail_hole;
    PostSeat post_seat = PostSeat::surface;
    RailSeat rail_seat = RailSeat::surface;
    LegWish leg = LegWish::by_driver;
    Reading least_beside = usual_least_beside(Unit::inch);
};

/// A screw of a joint, from under its head's seat to its point.
struct ScrewSize {
    Place place;
    Reading length, diameter;
};

/// The screws of a build, joint by joint; one that is left out is not reckoned with.
struct ScrewBuild {
    std::optional<ScrewSize> picket_to_upper, picket_to_lower, between_members, post_leg, rail_leg;
    std::optional<Reading> least_hold;  // none: six diameters of the screw
};

struct DriverBit {
    Reading diameter, reach;
};

struct DriverBody {
    Reading diameter, length;
};

/// A straight driver: a bit, and the body that turns it.
struct Driver {
    DriverBit bit;
    DriverBody body;
};

/// The usual driver, in the job's unit: a bit of 1/4 in that reaches 3 in, a body of 2 in by 8 in.
Driver usual_driver(Unit unit);

struct Build {
    Id id;
    Reading height;
    std::vector<MemberSize> upper, lower;  // from the top down
    std::optional<LowerGap> lower_gap;
    Reading play = 0;
    std::optional<PicketBuild> pickets;
    std::optional<BracketBuild> bracket;
    std::optional<ScrewBuild> screws;
    Driver driver = usual_driver(Unit::inch);
    std::optional<FeetBuild> feet;
    std::optional<Reading> longest_stick;
    bool tube = false, galvanised = false;
};

/// What stands in the middle of a section: a picket, where their count is odd, or a gap.
enum class Centre { picket, gap };

/// What stands in the middle, as asked for, and where it is written.
struct CentreWish {
    Centre centre = Centre::picket;
    Place place;
};

/// What a rail over a floor that falls runs parallel to.
enum class Follow { level, floor };

/// Which of a section's posts stands plumb.
enum class PlumbPost { neither, from, to };

/// A clear distance that was taken twice, because the posts lean or taper: half-way up the lower group (without one, on
/// what the pickets stand on) and half-way up the upper group.
struct ClearTwice {
    Reading low, high;
    PlumbPost plumb = PlumbPost::neither;
    Place place;
};

/// How far a rail's line runs to the left of the centres of its posts, seen from the from end.
struct Offset {
    Reading from = 0, to = 0;
};

/// What an end of a rail is cut to: the post's face, plumb through the post's centre, plumb so far past it, square to
/// the rail so far short of the centre (where a bought fitting begins), or a block of that thickness on the face.
struct EndWish {
    enum class Meets { face, centre, past, square, pad };
    Meets meets = Meets::face;
    Reading by;
    Place place;
};

struct EndWishes {
    EndWish from, to;
};

struct Section {
    Id id;
    Ref from, to, stair, floor, build;
    Follow follow = Follow::level;
    std::optional<NamedSide> side;
    std::optional<Reading> clear, clear_on_slope;
    std::optional<ClearTwice> clear_twice;
    Offset offset;
    EndWishes ends;
    std::optional<Reading> height, max_gap, max_sphere, play;
    std::optional<LowerGap> lower_gap;
    std::optional<NamedSide> picket_side;
    std::optional<Reading> drop, side_gap;
    Count count = 1;
    std::optional<CentreWish> centre;
};

/// How the pickets of the whole job are spaced, where they follow neither treads nor a fixed pitch: the fewest in each
/// section; gaps as like each other as can be; or one gap for all, as a block is cut.
struct Spacing {
    enum class By { fewest, alike, block };
    By by = By::fewest;
    std::optional<Reading> block;  // its length; none: the longest that serves everywhere
    std::optional<Reading> least_gap, least_end_gap;
    std::optional<CentreWish> centre;
    Place place;
};

/// Finger recesses in both sides of a profile, measured on it: `start`, `end` plumb from its top, `reach` plumb from
/// its widest part, `held` plumb, `depth` and `width_above` level.
struct Recess {
    Reading start, depth, reach, held, end, width_above;
};

/// What a hand grips: round (a diameter, or the girth taped round it), a rectangle of width and depth, or any other
/// section by its perimeter and its largest width; and the recesses for the fingers in it.
struct Profile {
    Place place;
    std::optional<Reading> diameter, around, width, depth, perimeter;
    std::optional<Recess> recess;
};

/// How far a handrail runs on past the flight: level beyond the last nosing, and level over the floor at the foot,
/// there still on the rake.
struct Extension {
    Reading top = 0;
    Reading bottom = 0;
};

/// What the end of a handrail turns to.
enum class Return { none, wall };

struct Returns {
    Return top = Return::none;
    Return bottom = Return::none;
};

/// A rail that hands grip, beside a stair or on a guard.
struct Handrail {
    Id id;
    Ref stair;
    std::optional<NamedSide> side;  // left if it is not said
    Reading height;
    Profile profile;
    std::optional<Reading> clearance;
    Extension extend;
    Returns returned;
};

/// A reading at a numbered thing, such as a nosing.
struct Numbered {
    int number = 0;
    Reading reading;
};

/// A ball that was tried: at a tread (under the rail or, where risers are open, through the riser) or between pickets.
struct Ball {
    enum class At { pickets, under_rail, riser };
    Place place;
    At at = At::pickets;
    std::optional<Count> tread;
    Reading size;
    bool passes = false;
};

/// A rail as it stands, whatever it was meant to be: over a stair by its heights at nosings, over a floor by one
/// height.
struct FoundRail {
    enum class Serves { both, guard, handrail };
    Id id;
    Ref stair;
    Serves serves = Serves::both;
    std::optional<NamedSide> side;  // left if it is not said
    std::vector<Numbered> heights;
    std::optional<Reading> height, widest_gap, clearance, drop, side_gap;
    std::vector<Ball> balls;
    std::optional<Profile> profile;
    std::optional<Extension> extend;
};

/// What can be bought to cut sticks from: one section in some lengths. A price for each length, or none at all.
struct Stock {
    Place place;
    std::vector<Reading> section, lengths, prices;  // section: width and depth, or one for both
    Reading kerf = 0, trim = 0;

    double width() const { return section.front(); }
    double depth() const { return section.back(); }
};

/// A square-ended stick that comes out of the same stock.
struct AlsoCut {
    std::string name;
    Place place;
    std::vector<Reading> section;
    Reading length;
    Count count = 1;
};

/// How far a saw goes: a quarter turn is as far as any does. The depth is that of a square cut.
struct Saw {
    AngleReading largest_miter{{1, 0}, {}}, largest_bevel{{1, 0}, {}};
    std::optional<Reading> depth_of_cut;
};

/// What is bought: so many percent to spare of what is bought by the piece, whether the posts are bought, and a cap for
/// each.
struct OrderWish {
    Count spare = 0;
    bool posts = true, caps = false;
    Place place;
};

/// What the pieces are painted with: square feet a gallon in inch jobs, square metres a litre in mm jobs; none if only
/// their surface is asked for.
struct PaintWish {
    std::optional<Reading> coverage;
    Count coats = 2;
    Place place;
};

struct Job {
    std::string title;
    Unit units = Unit::inch;
    std::optional<Reading> round;
    std::optional<Saw> saw;
    std::vector<Stair> stairs;
    std::vector<Floor> floors;
    std::vector<PostFixing> post_fixings;
    std::vector<Post> posts;
    std::vector<Build> builds;
    std::vector<Section> sections;
    std::vector<Handrail> handrails;
    std::vector<FoundRail> as_found;
    std::vector<Id> rules;
    std::vector<Stock> stock;
    std::vector<AlsoCut> also_cut;
    std::optional<Spacing> spacing;
    bool story_stick = false;
    bool piece_list = false;
    std::optional<OrderWish> order_list;
    std::optional<PaintWish> paint;
    bool order_of_work = false;
};

/// The post's size; of a round one its diameter both ways, from its girth where that is what was taped.
PostSize size_of(const Post& post);

/// Whether what is named there is a joint, and no post.
bool is_joint(const Job& job, const Ref& post);

/// What a post stands on, or a section is over: one of the job's stairs or floors, whose own axes it is solved in.
struct Ground {
    enum class Kind { none, stair, floor };
    Kind kind = Kind::none;
    int index = -1;
    friend bool operator==(const Ground&, const Ground&) = default;
};
Ground ground_of(const Post& post);

/// What a section is over: the stair that it names; the floor that it names, if that has a plan or one of the posts
/// stands on it; what both posts stand on; or the floor that one of them stands on. None if it does not follow.
Ground ground_of(const Job& job, const Section& section);

/// Where a ground stands in plan; none if that is not said.
const std::optional<Plan>& plan_of(const Job& job, const Ground& ground);

/// The stair that a section is over; -1 if it is over none.
int stair_of(const Job& job, const Section& section);

/// The greatest fall beside something at a stair (-1: at none): its own, or the stair's; none if neither is given.
std::optional<double> drop_beside(const Job& job, const std::optional<Reading>& own, int stair);

/// What the pickets of a section are set out to: none of their gaps wider, or every ball that passes smaller, than
/// this.
struct PicketLimit {
    enum class On { gap, sphere };
    On on = On::gap;
    Reading reading;
};

/// The section's own limit, or its build's; none where a pitch sets the spacing and nothing limits the gaps.
std::optional<PicketLimit> limit_of(const Section& section, const PicketBuild& pickets);

/// The tape that the job's readings are printed on: `round`, or 1/16 in, or 1 mm.
Tape tape_of(const Job& job);

}  // namespace rakewright
