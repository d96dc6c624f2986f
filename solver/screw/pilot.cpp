#include "pilot.hpp"

#include "../measure/compare.hpp"

namespace rakewright {
namespace {

/// Whether a distance is known and under so many diameters.
bool under(const std::optional<double>& distance, double diameters, double diameter) {
    return distance && less_than(*distance, diameters * diameter);
}

}  // namespace

double thick_screw(Unit unit) { return unit == Unit::inch ? 6 / millimetres_in_an_inch : 6; }

Pilot pilot_for(const ScrewBuild& screws, Unit unit, const SplitRoom& room, double diameter, bool fastened) {
    const PilotRule& rule = screws.pilot;
    Pilot pilot;
    if (under(room.end, rule.end, diameter))
        pilot.why = PilotFor::end;
    else if (under(room.edge, rule.edge, diameter))
        pilot.why = PilotFor::edge;
    else if (room.end_grain)
        pilot.why = PilotFor::end_grain;
    else if (screws.wood == Wood::hardwood)
        pilot.why = PilotFor::hardwood;
    else if (less_than(thick_screw(unit), diameter))
        pilot.why = PilotFor::thick;
    if (pilot.why != PilotFor::nothing) pilot.hole = diameter * (fastened ? rule.clearance_hole : rule.hole);
    pilot.near_end = under(room.end, rule.drilled_end, diameter);
    pilot.near_edge = under(room.edge, rule.drilled_edge, diameter);
    return pilot;
}

}  // namespace rakewright
