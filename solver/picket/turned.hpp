#pragma once

#include <optional>
#include <vector>

#include "../job.hpp"
#include "../space/stick.hpp"
#include "spacing.hpp"

namespace rakewright {

struct PicketRoom;

/// What is trimmed off a turned picket as bought, and what is left of its blocks, ploughs included: plumb, at the
/// picket's centre.
struct Trim {
    double lower_block = 0, upper_block = 0;
    double off_lower = 0, off_upper = 0;
};

/// Half of how wide a picket is, seen square to the rail, at a height over the lower end of its turning.
struct HalfWidth {
    double over = 0;
    double half = 0;
};

/// A turned picket as it is seen square to the rail: its blocks, and between them its turning from the bottom up,
/// straight from each place to the next. `level` is where its turning begins, plumb over the nosing line or floor at
/// the picket's centre: on a rake one for all, so that the turnings run along the rail. A turning as wide as the blocks
/// is left out: what is left is where it is hollow.
struct Silhouette {
    double level = 0;
    double half_block = 0;
    std::vector<HalfWidth> turning;

    /// Half its width at a height over the lower end of the turning; that of the blocks below and above.
    double half_at(double over) const;
};

/// The silhouette of turned pickets whose turnings begin at a level.
Silhouette silhouette_of(const PicketBuild& build, double level);

/// The level at which the turnings of a section begin, by its `upper_block`, or by what is trimmed: as much off either
/// block between two groups (common practice), else nothing off the lower block of the longest picket. None where there
/// is no picket, or where a length that is needed is not known.
std::optional<double> turning_level(const PicketRoom& room, const Layout& layout);

/// What is trimmed off a picket whose turning begins at a level.
Trim trim_of(const PicketBuild& build, const Piece& piece, double level);

/// Whether every picket of a layout comes out of one as bought and keeps enough of both blocks; if not, with the worst
/// of them in `findings`. `section` is the section's place.
bool trims_fit(const PicketRoom& room, const Layout& layout, double level, const Place& section,
               std::vector<Finding>& findings);

}  // namespace rakewright
