#pragma once

#include <string>
#include <vector>

#include "../rail/member.hpp"

namespace rakewright {

/// A screw as a straight line: where its head is seated, and its unit direction.
struct ScrewWay {
    Vector seat, way;
};

/// From where to where along a screw's way something lies.
struct Bore {
    double begin = 0, end = 0;
};

/// Where a line is within a stick, and the side through which it leaves: left, right, top or bottom; an end where that
/// is {0, 0}.
struct Leaves {
    Bore within;
    Corner side;
};

/// Where a line is within a stick; none where it misses it. A coped end counts as the flat cut that touches the post.
std::optional<Leaves> within_stick(const Stick& stick, const ScrewWay& screw);

/// Where a line is within a round post without ends; none where it misses it.
std::optional<Bore> within_round(const Shaft& post, const ScrewWay& screw);

/// Wood that a screw goes into and that may split: a stick with the splices in it, its ends unknown where it is a post;
/// or a round post.
struct Timber {
    Stick stick;
    std::vector<Slant> splices;
    bool ends_known = true;
    Shaft round;
};

/// How near a stretch of a screw comes to where wood may split: to the nearest end or splice, along the grain, and to
/// the nearest side that it does not go in or out by. None where it is not known. A screw that runs more along the
/// grain than across it is in end grain, and has no distance to an end.
struct SplitRoom {
    std::optional<double> end, edge;
    bool end_grain = false;

    /// The least of both.
    void narrow(const SplitRoom& other);
};
SplitRoom split_room(const Timber& timber, const ScrewWay& screw, const Bore& within);

/// Through which of a thing's faces a screw's point comes out.
enum class ComesOut { nowhere, side, end, top, bottom, far_face };

/// One thing that a screw goes into, and where it would leave it.
struct Bored {
    std::string name;
    Bore within;
    ComesOut leaving = ComesOut::nowhere;
    std::optional<Timber> timber = std::nullopt;
};

/// How much of a screw is in one thing, whether that is what it fastens, and how near it comes to where that may split;
/// none of what does not.
struct Passed {
    std::string name;
    double length = 0;
    bool fastened = false;
    std::optional<SplitRoom> room;
};

/// A screw in its joint: what it is in, in the order in which it meets it; how much of it is in what it holds in; the
/// longest whose point does not come out, none where that is not known; and where the point of this one comes out.
struct ScrewHold {
    std::vector<Passed> passed;
    double hold = 0;
    std::optional<double> longest;
    ComesOut comes_out = ComesOut::nowhere;
};

/// How a screw holds that goes through things one behind the other, in the order in which it meets them; the first
/// `fastened` of them are what it fastens. It comes out where one ends and the next has not begun; one whose end is
/// infinite is never left. What lies in another, as a picket in its plough, begins where it begins.
ScrewHold held_by(const std::vector<Bored>& things, const ScrewWay& screw, std::size_t fastened, double length);

/// Takes over how near a screw that is alike comes to where wood may split, where that is nearer.
void narrow(ScrewHold& hold, const ScrewHold& other);

/// How many screws stand in each end of a picket of that width: two, each a quarter of the width from its side, from
/// 2 1/2 in or 64 mm up; else one, in the middle. Common practice.
int screws_in_picket(double width, Unit unit);

}  // namespace rakewright
