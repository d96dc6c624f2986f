#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "measure/angle.hpp"
#include "measure/length.hpp"

// What was asked, in the words of the job file. The meaning, unit, range and default of every field stand in one place,
// where it is described: job_form.cpp. A program may fill a Job itself; what a reader would have refused is then its
// own affair.

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
};

/// Which end of a section a floor falls toward.
enum class Toward { to, from };

/// A floor that is not level, as it runs under a section.
struct Floor {
    Id id;
    AngleReading falls;
    Toward toward = Toward::to;
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

enum class PostShape { square, round };

/// What a level held along the stair and one held across it read.
struct Lean {
    AngleReading along, across;
};

/// `size` of a round post is its diameter both ways; or it has the girth taped round it in place of a size.
struct Post {
    Id id;
    PostSize size;
    PostShape shape = PostShape::square;
    std::optional<Reading> around;
    Ref stair;
    std::optional<Reading> at;
    NosingNumber nosing;
    PostFace face = PostFace::centre;
    Reading across = 0;
    AngleReading turn;
    Lean lean;
    Base base;
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

enum class PicketShape { square, turned };

/// The square blocks of a turned picket, as bought.
struct PicketBlocks {
    Reading lower, upper;
};

/// How thick a turned picket is at one height of its turning.
struct Turning {
    Reading at, diameter;
};

/// A limit on the gaps, or in its place one on the balls that pass through them. What is said of turned pickets means
/// nothing with square ones.
struct PicketBuild {
    Reading width, depth;
    std::optional<Reading> max_gap, max_sphere;
    std::optional<Count> per_tread;  // none: the fewest
    Plough plough;
    PicketShape shape = PicketShape::square;
    std::optional<Reading> length;
    std::optional<PicketBlocks> blocks;
    std::vector<Turning> turning;  // from the lower block up
    std::optional<Reading> least_block, upper_block;
    Place place;
};

enum class PostSeat { surface, mortise };
enum class RailSeat { surface, rabbet, mortise };
enum class LegWish { by_driver, up, down };

/// The least wood beside a mortise, in the job's unit: 1/2 in, or 12 mm. Common practice.
double usual_least_beside(Unit unit);

struct BracketBuild {
    Reading post_leg, rail_leg, width, thickness;
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
};

/// A side of a stair, seen walking up, and where it is named.
struct StairSide {
    bool left = true;
    Place place;
};

/// What a rail over a floor that falls runs parallel to.
enum class Follow { level, floor };

struct Section {
    Id id;
    Ref from, to, stair, floor, build;
    Follow follow = Follow::level;
    std::optional<StairSide> side;
    std::optional<Reading> clear, clear_on_slope;
    std::optional<Reading> height, max_gap, max_sphere, play;
    std::optional<LowerGap> lower_gap;
    std::optional<Reading> drop, side_gap;
    Count count = 1;
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
    std::optional<StairSide> side;  // left if it is not said
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
    std::optional<StairSide> side;  // left if it is not said
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

struct Job {
    std::string title;
    Unit units = Unit::inch;
    std::optional<Reading> round;
    std::vector<Stair> stairs;
    std::vector<Floor> floors;
    std::vector<Post> posts;
    std::vector<Build> builds;
    std::vector<Section> sections;
    std::vector<Handrail> handrails;
    std::vector<FoundRail> as_found;
    std::vector<Id> rules;
    std::vector<Stock> stock;
    std::vector<AlsoCut> also_cut;
};

/// The post's size; of a round one its diameter both ways, from its girth where that is what was taped.
PostSize size_of(const Post& post);

/// The stair that a section is over: its own, or its from post's; -1 if it is over none.
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

/// The section's own limit, or its build's.
PicketLimit limit_of(const Section& section, const PicketBuild& pickets);

/// The tape that the job's readings are printed on: `round`, or 1/16 in, or 1 mm.
Tape tape_of(const Job& job);

}  // namespace rakewright
