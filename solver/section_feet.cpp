#include "section_feet.hpp"

#include <algorithm>

namespace rakewright {
namespace {

/// A foot's section: its own, or that of the pickets.
CrossSection section_of(const Build& build) {
    const FeetBuild& feet = *build.feet;
    return {feet.depth ? *feet.depth : build.pickets->depth, feet.width ? *feet.width : build.pickets->width};
}

}  // namespace

std::vector<RailFoot> feet_of(const SectionTask& task, const Surroundings& around, const RailLine& line,
                              const Levels& levels, const std::array<double, 2>& faces,
                              const std::vector<double>& pickets, std::vector<Finding>& findings) {
    std::vector<RailFoot> feet;
    const Place place = task.section.id.place;
    const double clear = faces[1] - faces[0];
    const FeetBuild& build = *task.build.feet;
    const std::optional<int> count = feet_under(clear, build.every);
    if (!count) {
        findings.push_back({Trouble::too_many_feet, build.every.place, {double(most_feet)}, place});
        return feet;
    }
    const bool on_known =
        around.closed_string ? around.string_above.has_value() : around.placed() || !around.treads() || line.slope == 0;
    if (*count > 0 && !on_known) {
        findings.push_back({Trouble::feet_unplaced, place, {}, {}});
        return feet;
    }
    const std::optional<double> string_above =
        around.string_above ? std::optional(around.string_above->value) : std::nullopt;
    const StairShape* const treads = around.placed() ? around.treads() : nullptr;
    const FootRoom room{section_of(task.build), line, levels, treads, string_above, faces[0], faces[1]};
    int number = 0;
    for (std::optional<RailFoot>& foot : feet_placed(room, *count, pickets)) {
        ++number;
        if (foot)
            feet.push_back(std::move(*foot));
        else
            findings.push_back(
                {Trouble::foot_without_place, place, {double(number), clear * number / (*count + 1)}, {}});
    }
    return feet;
}

std::vector<Upright> uprights_of(const std::vector<RailFoot>& feet, double from_face) {
    std::vector<Upright> uprights;
    for (const RailFoot& foot : feet) {
        const double centre = from_face + foot.at, half = foot.piece.section.depth / 2;
        uprights.push_back({centre - half, centre + half});
    }
    std::sort(uprights.begin(), uprights.end(), [](const Upright& a, const Upright& b) { return a.from < b.from; });
    return uprights;
}

}  // namespace rakewright
