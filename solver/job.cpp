#include "job.hpp"

#include <numbers>

namespace rakewright {

Driver usual_driver(Unit unit) {
    const double inch = unit == Unit::inch ? 1 : millimetres_in_an_inch;
    return {{inch / 4, 3 * inch}, {2 * inch, 8 * inch}};
}

UsualRow usual_row(Unit unit) { return unit == Unit::inch ? UsualRow{12, 3} : UsualRow{300, 75}; }

double usual_least_beside(Unit unit) { return unit == Unit::inch ? 0.5 : 12; }

double Taper::along() const { return around ? *around / std::numbers::pi : size.front().value; }
double Taper::across() const { return around ? along() : size.back().value; }

PostSize size_of(const Post& post) {
    if (!post.around) return post.size;
    const double diameter = *post.around / std::numbers::pi;
    return {diameter, diameter, {}, post.around->place};
}

bool is_joint(const Job& job, const Ref& post) {
    return post.named() && job.posts[static_cast<std::size_t>(post.index)].shape == PostShape::joint;
}

Ground ground_of(const Post& post) {
    if (post.stair.named()) return {Ground::Kind::stair, post.stair.index};
    if (post.floor.named()) return {Ground::Kind::floor, post.floor.index};
    return {};
}

Ground ground_of(const Job& job, const Section& section) {
    if (section.stair.named()) return {Ground::Kind::stair, section.stair.index};
    const auto under = [&](const Ref& post) {
        return post.named() ? ground_of(job.posts[static_cast<std::size_t>(post.index)]) : Ground{};
    };
    const Ground from = under(section.from), to = under(section.to);
    const Ground floor{Ground::Kind::floor, section.floor.index};
    if (section.floor.named() &&
        (from == floor || to == floor || job.floors[static_cast<std::size_t>(section.floor.index)].plan))
        return floor;
    if (from == to || to.kind == Ground::Kind::none) return from;
    if (from.kind == Ground::Kind::none) return to;
    if (from.kind == to.kind) return {};
    return from.kind == Ground::Kind::floor ? from : to;
}

const std::optional<Plan>& plan_of(const Job& job, const Ground& ground) {
    static const std::optional<Plan> nowhere;
    if (ground.kind == Ground::Kind::none) return nowhere;
    const std::size_t index = static_cast<std::size_t>(ground.index);
    return ground.kind == Ground::Kind::stair ? job.stairs[index].plan : job.floors[index].plan;
}

int stair_of(const Job& job, const Section& section) {
    const Ground ground = ground_of(job, section);
    return ground.kind == Ground::Kind::stair ? ground.index : -1;
}

std::optional<double> drop_beside(const Job& job, const std::optional<Reading>& own, int stair) {
    if (own) return own->value;
    if (stair < 0) return std::nullopt;
    const std::optional<Reading>& drop = job.stairs[static_cast<std::size_t>(stair)].drop;
    return drop ? std::optional(drop->value) : std::nullopt;
}

std::optional<PicketLimit> limit_of(const Section& section, const PicketBuild& pickets) {
    if (section.max_gap) return PicketLimit{PicketLimit::On::gap, *section.max_gap};
    if (section.max_sphere) return PicketLimit{PicketLimit::On::sphere, *section.max_sphere};
    if (pickets.max_sphere) return PicketLimit{PicketLimit::On::sphere, *pickets.max_sphere};
    if (pickets.max_gap) return PicketLimit{PicketLimit::On::gap, *pickets.max_gap};
    return std::nullopt;
}

Tape tape_of(const Job& job) {
    const double usual = job.units == Unit::inch ? 1.0 / 16 : 1;
    return {job.units, job.round ? job.round->value : usual};
}

}  // namespace rakewright
