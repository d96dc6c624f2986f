#pragma once

#include "seat.hpp"
#include "sweep.hpp"

namespace rakewright {

/// In which order a bracket's screws can be driven straight: `post_first` with the rail laid on it after; `rail_first`
/// with the bracket on the rail before that is lifted in; or neither.
enum class DrivingOrder { none, post_first, rail_first };

/// What a straight driver finds at a bracket. `rail` is how far it is free, square to the underside, from the leg under
/// the rail at the hole where that is least; `rail_clear` whether its reach, body and the screw fit in there. With the
/// order that works, whether the first picket has to go in after: the driver of the second screw would meet it.
struct Driving {
    FreeWay rail;
    bool rail_clear = false;
    DrivingOrder order = DrivingOrder::none;
    bool picket_after = false;
};

/// Where a bracket is driven. `ground` is what is under the rail, and for the upper group the lower rail;
/// `picket` the near face of the first picket, where there is one under the group. Screws of 0 are not known.
struct DrivingRoom {
    const BracketBuild& build;
    const Driver& driver;
    InTheWay ground;
    std::optional<Plane> picket;
    double post_screw = 0, rail_screw = 0;
};

/// Both screws in both orders. A bracket is put on the post first where that works. On the rail first it can go only
/// with its leg turned down; then the post's screw passes under the whole rail. The driver for the rail's screw must
/// also pass the post.
Driving driving_at(const DrivingRoom& room, const PlateAt& plate, double over_square, Leg leg);

}  // namespace rakewright
