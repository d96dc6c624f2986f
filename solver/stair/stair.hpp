#pragma once

#include <array>
#include <optional>
#include <vector>

#include "../finding.hpp"
#include "../job.hpp"

namespace rakewright {

/// A nosing as it stands on its stair: level from the first nosing and plumb above the floor at the foot. `off_line` is
/// its plumb distance over the nosing line, 0 where there is no line; `projection` how far it stands out past its riser
/// face.
struct Nosing {
    double x = 0;
    double z = 0;
    double off_line = 0;
    double projection = 0;
};

/// The nosing line: z = height + slope x.
struct NosingLine {
    double height = 0;
    double slope = 0;
    double at(double x) const { return height + slope * x; }
};

/// Which nosings hold the line, by number from 1: two for a line through two, three for minimax, none (0) where all do
/// or where no nosing does.
using LineHolders = std::array<int, 3>;

/// A riser without a board: the largest ball that passes between its two treads.
struct OpenRiser {
    int number = 0;
    double sphere = 0;
};

/// A stair as measured, and the line drawn through it; none over a single measured step.
struct StairShape {
    std::vector<Nosing> nosings;
    std::optional<NosingLine> line;
    LineHolders held_by{};
    double wash = 0;                     // rise of the treads toward their risers, as a slope
    double thickness = 0;                // plumb, of the treads where the risers are open; 0 where they are closed
    std::vector<OpenRiser> open_risers;  // every one, where they are open

    bool open() const { return thickness > 0; }
    int risers() const { return static_cast<int>(nosings.size()); }
    const Nosing& nosing(int number) const { return nosings[static_cast<std::size_t>(number - 1)]; }
    double run_total() const { return nosings.back().x; }
    double rise_total() const { return nosings.back().z; }
};

/// The stair from its figures, in its own axes: every nosing, and the line by the stair's own rule, which chooses the
/// nosings that hold it. Adds what is wrong to `findings`; the shape is empty then.
StairShape shape_of(const Stair& stair, std::vector<Finding>& findings);

/// The same stair with the nosings that hold its line already chosen.
StairShape shape_of(const Stair& stair, const LineHolders& held_by, std::vector<Finding>& findings);

/// The tread under a place: 0 the floor at the foot, i from nosing i on, exactly over a nosing the upper one.
int tread_under(const StairShape& shape, double x);

/// Height of a tread, 0..N, at its nosing, over the floor at the foot.
double tread_height(const StairShape& shape, int tread);

/// Height of a tread's surface under a place, over the floor at the foot: a tread that washes rises from its nosing to
/// the next riser face. A place beyond the tread's ends counts as that end.
double surface_height(const StairShape& shape, int tread, double x);

}  // namespace rakewright
