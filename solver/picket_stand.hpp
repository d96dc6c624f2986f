#pragma once

#include "section.hpp"

namespace rakewright {

/// What the pickets of a section stand in; `faces` are the level places of the two post faces half-way up them. Its
/// build has pickets.
struct PicketStand {
    const SectionTask& task;
    const Surroundings& around;
    const RailLine& line;
    const Levels& levels;
    std::array<double, 2> faces;
};

inline const PicketBuild& pickets_in(const PicketStand& stand) { return *stand.task.build.pickets; }
inline const Place& place_of(const PicketStand& stand) { return stand.task.section.id.place; }
inline bool is_turned(const PicketStand& stand) { return pickets_in(stand).shape == PicketShape::turned; }
inline PicketSpan span_of(const PicketStand& stand) {
    return {stand.faces[1] - stand.faces[0], pickets_in(stand).width, stand.line.joints};
}

/// The stand of a section's pickets, whose rail's line meets its posts half-way up them at these places; the faces are
/// then taken along the side of the rail where that is what the pickets are fixed to.
PicketStand stand_of(const SectionTask& task, const Surroundings& around, const RailLine& line, const Levels& levels,
                     const std::array<double, 2>& faces);

/// How pickets stand in this section: `beside_treads` on the side of a rail without a lower group.
enum class Standing { between_groups, on_floor, on_treads, beside_treads, heights_unknown };
Standing standing_of(const PicketStand& stand);

TreadRoom tread_room(const PicketStand& stand);
PicketRoom picket_room(const PicketStand& stand, const std::vector<Member>& members);

/// Pickets that do not follow treads, in place.
Layout laid_out(const PicketStand& stand, const Spaced& spaced);

/// The pickets of the section as chosen, in place.
TreadLayout layout_of(const PicketStand& stand, const SectionChoices& choices);

/// The level of the turnings; none of square pickets.
std::optional<double> turnings_of(const PicketStand& stand, const Layout& layout);

/// The balls that pass through the gaps of a layout; those between pickets only as far as it takes to know of one as
/// large as `enough`.
GapBalls balls_of(const PicketStand& stand, const Layout& layout, double enough = INFINITY);

/// The fewest pickets, equally spaced, through which no ball of the limit passes, and the smallest ball that passes
/// between more than one of those that were tried.
struct FewestForBall {
    std::optional<int> count;
    double smallest = 0;
};
FewestForBall fewest_for_ball(const PicketStand& stand, double limit);

/// Pickets on each tread through which no ball of the limit passes.
struct OnTreadsBalls {
    std::optional<int> between_and_at_posts, between_alone;
    int most = 0;  // that do not reach past their nosing

    OnTreadsBalls(const PicketStand& stand, double limit);
};

/// Every opening that the section leaves with its pickets as chosen, and feet under its lower group.
std::vector<Opening> openings_of_pickets(const PicketStand& stand, const SectionChoices& choices,
                                         const std::vector<Upright>& feet);

}  // namespace rakewright
