#include "job.hpp"

#include <numbers>

namespace rakewright {

Driver usual_driver(Unit unit) {
    const double inch = unit == Unit::inch ? 1 : millimetres_in_an_inch;
    return {{inch / 4, 3 * inch}, {2 * inch, 8 * inch}};
}

double usual_least_beside(Unit unit) { return unit == Unit::inch ? 0.5 : 12; }

PostSize size_of(const Post& post) {
    if (!post.around) return post.size;
    const double diameter = *post.around / std::numbers::pi;
    return {diameter, diameter, {}, post.around->place};
}

int stair_of(const Job& job, const Section& section) {
    if (section.stair.named()) return section.stair.index;
    return section.from.named() ? job.posts[static_cast<std::size_t>(section.from.index)].stair.index : -1;
}

std::optional<double> drop_beside(const Job& job, const std::optional<Reading>& own, int stair) {
    if (own) return own->value;
    if (stair < 0) return std::nullopt;
    const std::optional<Reading>& drop = job.stairs[static_cast<std::size_t>(stair)].drop;
    return drop ? std::optional(drop->value) : std::nullopt;
}

PicketLimit limit_of(const Section& section, const PicketBuild& pickets) {
    if (section.max_gap) return {PicketLimit::On::gap, *section.max_gap};
    if (section.max_sphere) return {PicketLimit::On::sphere, *section.max_sphere};
    if (pickets.max_sphere) return {PicketLimit::On::sphere, *pickets.max_sphere};
    return {PicketLimit::On::gap, pickets.max_gap.value_or(Reading())};
}

Tape tape_of(const Job& job) {
    const double usual = job.units == Unit::inch ? 1.0 / 16 : 1;
    return {job.units, job.round ? job.round->value : usual};
}

}  // namespace rakewright
