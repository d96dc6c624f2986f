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

/// What a level held along the stair and one held across it read.
struct Lean {
    AngleReading along, across;
};

struct Post {
    Id id;
    PostSize size;
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

/// How far the lowest member stands over the nosing line or floor: plumb, or a block square to the rail.
struct LowerGap {
    Reading size;
    bool is_block = false;
};

struct Plough {
    Reading upper = 0;
    Reading lower = 0;
};

struct PicketBuild {
    Reading width, depth, max_gap;
    std::optional<Count> per_tread;  // none: the fewest
    Plough plough;
};

enum class PostSeat { surface, mortise };
enum class RailSeat { surface, rabbet, mortise };
enum class LegWish { by_driver, up, down };

struct BracketBuild {
    Reading post_leg, rail_leg, width, thickness;
    std::vector<Reading> post_hole, rail_hole;
    PostSeat post_seat = PostSeat::surface;
    RailSeat rail_seat = RailSeat::surface;
    LegWish leg = LegWish::by_driver;
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
    std::optional<Reading> height, max_gap, play;
    std::optional<LowerGap> lower_gap;
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
};

/// The tape that the job's readings are printed on: `round`, or 1/16 in, or 1 mm.
Tape tape_of(const Job& job);

}  // namespace rakewright
