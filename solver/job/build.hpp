#pragma once

#include <optional>
#include <string>
#include <vector>

#include "reading.hpp"

// Builds: what a section is made of, as asked.

namespace rakewright {

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

/// Which way screws are driven through members that lie on each other.
enum class Driven { up, down };

/// How a row of screws along two members is spaced unless it is said, in the job's unit. Common practice.
struct UsualRow {
    double every = 0, from_end = 0;
};
UsualRow usual_row(Unit unit);

/// A row of screws along two members that lie on each other.
struct ScrewRow : ScrewSize {
    Reading every = usual_row(Unit::inch).every, from_end = usual_row(Unit::inch).from_end;
    Driven driven = Driven::up;
};

/// What the wood is as screws see it.
enum class Wood { softwood, hardwood };

/// When a screw wants a pilot hole: its distances to ends and edges as so many of its diameters, not drilled and drilled;
/// and the hole's diameter as a share of its own, in what it holds in and in what it fastens.
struct PilotRule {
    Reading end = 10, edge = 5, drilled_end = 7, drilled_edge = 3;
    Reading hole = 0.7, clearance_hole = 1;
};

/// The screws of a build, joint by joint; one that is left out is not reckoned with.
struct ScrewBuild {
    std::optional<ScrewSize> picket_to_upper, picket_to_lower;
    std::optional<ScrewRow> between_members, apron_to_lower;
    std::optional<ScrewSize> post_leg, rail_leg;
    std::optional<Reading> least_hold;  // none: six diameters of the screw
    Wood wood = Wood::softwood;
    PilotRule pilot;
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

}  // namespace rakewright
