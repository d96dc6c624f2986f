#include "order.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <map>

namespace rakewright {
namespace {

int to_spare(int needed, const OrderWish& wish) {
    return static_cast<int>((static_cast<long long>(needed) * wish.spare + 99) / 100);
}

void add_bars(const Job& job, const Solution& solution, std::vector<OrderLine>& lines) {
    for (std::size_t s = 0; s < solution.stock.size(); ++s) {
        std::map<double, int, std::greater<>> of_length;
        for (const BarResult& bar : solution.stock[s].bars) of_length[bar.length] += bar.times;
        for (const auto& [length, count] : of_length) {
            OrderLine line;
            line.section = {job.stock[s].width(), job.stock[s].depth()};
            line.length = length;
            line.needed = count;
            lines.push_back(line);
        }
    }
}

/// Sticks by their length in all, those of one section together.
class Sticks {
 public:
    void add(SectionShape shape, const CrossSection& section, double length, int count) {
        const auto of_it = [&](const OrderLine& line) {
            return line.shape == shape && same_section(line.section, section);
        };
        auto mine = std::find_if(lines_.begin(), lines_.end(), of_it);
        if (mine == lines_.end()) {
            OrderLine line;
            line.what = Ordered::stick;
            line.shape = shape;
            line.section = section;
            line.in_all = 0;
            mine = lines_.insert(lines_.end(), line);
        }
        mine->needed += count;
        *mine->in_all += count * length;
    }

    const std::vector<OrderLine>& lines() const { return lines_; }

 private:
    std::vector<OrderLine> lines_;
};

SectionShape shape_of(const Job& job, const CutPiece& piece) {
    if (is_round(piece.stuff)) return SectionShape::circle;
    const bool by_perimeter = piece.stuff == Stuff::handrail && profile_of(job, piece).perimeter;
    return by_perimeter ? SectionShape::profile : SectionShape::rectangle;
}

void add_sticks(const Job& job, const Solution& solution, std::vector<OrderLine>& lines) {
    const auto in_stock = [&](SectionShape shape, const CrossSection& section) {
        return shape == SectionShape::rectangle &&
               std::any_of(job.stock.begin(), job.stock.end(), [&](const Stock& stock) {
                   return same_section(section, {stock.width(), stock.depth()});
               });
    };
    Sticks sticks;
    const auto add = [&](SectionShape shape, const CrossSection& section, double length, int count) {
        if (!in_stock(shape, section)) sticks.add(shape, section, length, count);
    };
    for (const CutPiece& piece : cut_list(job, solution))
        if (!piece.trim) add(shape_of(job, piece), piece.piece.section, piece.overall, piece.quantity);
    for (const AlsoCut& stick : job.also_cut)
        add(SectionShape::rectangle, {stick.section.front(), stick.section.back()}, stick.length, stick.count);
    lines.insert(lines.end(), sticks.lines().begin(), sticks.lines().end());
}

void add_turned_pickets(const Job& job, const Solution& solution, std::vector<OrderLine>& lines) {
    struct Bought {
        const PicketBuild* build;
        int count;
    };
    std::vector<Bought> kinds;
    for (std::size_t s = 0; s < solution.sections.size(); ++s) {
        const std::optional<PicketBuild>& build =
            job.builds[static_cast<std::size_t>(job.sections[s].build.index)].pickets;
        const std::optional<Pickets>& pickets = solution.sections[s].pickets;
        if (!pickets || pickets->count == 0 || build->shape != PicketShape::turned) continue;
        const auto of_it = [&](const Bought& kind) {
            return same_section({kind.build->width, kind.build->depth}, {build->width, build->depth}) &&
                   bought_alike(*kind.build, *build);
        };
        auto mine = std::find_if(kinds.begin(), kinds.end(), of_it);
        if (mine == kinds.end()) mine = kinds.insert(kinds.end(), {&*build, 0});
        mine->count += pickets->count * job.sections[s].count;
    }
    for (const Bought& kind : kinds) {
        OrderLine line;
        line.what = Ordered::turned_picket;
        line.section = {kind.build->width, kind.build->depth};
        line.length = *kind.build->length;
        line.needed = kind.count;
        line.spare = to_spare(kind.count, *job.order_list);
        lines.push_back(line);
    }
}

void add_brackets(const Job& job, const Solution& solution, std::vector<OrderLine>& lines) {
    for (BracketKind& kind : bracket_list(job, solution)) {
        const BracketBuild& build = bracket_build_of(job, kind.uses.front().section);
        OrderLine line;
        line.what = Ordered::bracket;
        line.section = {build.width, build.thickness};
        line.needed = kind.quantity;
        line.spare = to_spare(kind.quantity, *job.order_list);
        line.bracket = std::move(kind);
        lines.push_back(line);
    }
}

/// The line of its kind that is like this one, or a new one that is.
OrderLine& line_like(std::vector<OrderLine>& lines, const OrderLine& like) {
    const auto alike_or_unknown = [](const std::optional<double>& a, const std::optional<double>& b) {
        return a.has_value() == b.has_value() && (!a || alike(*a, *b));
    };
    const auto of_it = [&](const OrderLine& line) {
        return line.what == like.what && line.shape == like.shape && same_section(line.section, like.section) &&
               alike_or_unknown(line.length, like.length) && alike_or_unknown(line.hole, like.hole) &&
               (!line.holes || same_section(*line.holes, *like.holes));
    };
    const auto mine = std::find_if(lines.begin(), lines.end(), of_it);
    return mine == lines.end() ? lines.emplace_back(like) : *mine;
}

int screws_in(const SectionResult& section, const JointScrew& screw) {
    switch (screw.joint) {
        case Joint::picket_to_upper:
        case Joint::picket_to_lower: return screw.count * section.pickets->count;
        case Joint::post_leg:
        case Joint::rail_leg: return screw.count;
        case Joint::between_members:
        case Joint::apron_to_lower: break;
    }
    return static_cast<int>(screw.row->places.size());
}

void add_screws(const Job& job, const Solution& solution, std::vector<OrderLine>& lines) {
    std::vector<OrderLine> screws;
    for (std::size_t s = 0; s < solution.sections.size(); ++s)
        for (const JointScrew& screw : solution.sections[s].screws) {
            const int count = screws_in(solution.sections[s], screw) * job.sections[s].count;
            OrderLine like;
            like.what = Ordered::screw;
            like.shape = SectionShape::circle;
            like.section = {screw.diameter, screw.diameter};
            like.length = screw.length;
            line_like(screws, like).needed += count;
        }
    for (OrderLine& line : screws) {
        line.spare = to_spare(line.needed, *job.order_list);
        lines.push_back(std::move(line));
    }
}

/// The plates under the job's posts, and the rods up through them.
void add_plates_and_rods(const Job& job, const Solution& solution, std::vector<OrderLine>& lines) {
    std::vector<OrderLine> found;
    for (std::size_t p = 0; p < job.posts.size(); ++p) {
        if (!job.posts[p].fixing.named()) continue;
        const PostFixing& fixing = job.post_fixings[static_cast<std::size_t>(job.posts[p].fixing.index)];
        OrderLine like;
        if (const std::optional<BasePlate>& plate = fixing.base_plate) {
            like.what = Ordered::base_plate;
            like.section = {plate->along(), plate->across()};
            like.length = plate->thickness;
            like.holes = CrossSection{plate->holes_along(), plate->holes_across()};
            like.hole = plate->hole;
            ++line_like(found, like).needed;
        }
        if (const std::optional<RodLength>& rod = solution.posts[p].rod) {
            like = {};
            like.what = Ordered::rod;
            like.shape = SectionShape::circle;
            if (const std::optional<Reading>& diameter = fixing.rod->diameter) like.section = {*diameter, *diameter};
            like.length = rod->whole();
            ++line_like(found, like).needed;
        }
    }
    std::stable_sort(found.begin(), found.end(),
                     [](const OrderLine& a, const OrderLine& b) { return a.what < b.what; });
    lines.insert(lines.end(), found.begin(), found.end());
}

/// The posts that the job names, those of one size, shape and length together.
std::vector<OrderLine> posts_of(const Job& job, const Solution& solution, bool under_rails) {
    std::vector<OrderLine> lines;
    for (std::size_t p = 0; p < job.posts.size(); ++p) {
        const Post& post = job.posts[p];
        if (post.shape == PostShape::joint || (!under_rails && !solution.posts[p].tops.empty())) continue;
        const PostSize size = size_of(post);
        OrderLine like;
        like.what = Ordered::post;
        like.shape = post.shape == PostShape::round ? SectionShape::circle : SectionShape::rectangle;
        like.section = {size.along, size.across};
        like.length = solution.posts[p].stick;
        OrderLine& mine = line_like(lines, like);
        if (mine.nominal.empty()) mine.nominal = size.nominal;
        ++mine.needed;
        for (const RailAtPost& rail : solution.posts[p].rails)
            mine.reaches = std::fmax(mine.reaches.value_or(rail.heights.top), rail.heights.top);
    }
    return lines;
}

void add_posts(const Job& job, const Solution& solution, std::vector<OrderLine>& lines) {
    if (!job.order_list->posts) return;
    const std::vector<OrderLine> posts = posts_of(job, solution, true);
    lines.insert(lines.end(), posts.begin(), posts.end());
}

/// A cap for each post that no rail runs over, those of one size together.
void add_caps(const Job& job, const Solution& solution, std::vector<OrderLine>& lines) {
    if (!job.order_list->caps) return;
    std::vector<OrderLine> caps;
    for (OrderLine post : posts_of(job, solution, false)) {
        const int count = post.needed;
        post.what = Ordered::cap;
        post.reaches.reset();
        post.length.reset();
        post.needed = 0;
        line_like(caps, post).needed += count;
    }
    for (OrderLine& line : caps) {
        line.spare = to_spare(line.needed, *job.order_list);
        lines.push_back(std::move(line));
    }
}

}  // namespace

std::vector<OrderLine> order_list(const Job& job, const Solution& solution) {
    std::vector<OrderLine> lines;
    if (!job.order_list) return lines;
    for (auto* const add :
         {add_bars, add_sticks, add_turned_pickets, add_brackets, add_screws, add_posts, add_plates_and_rods, add_caps})
        add(job, solution, lines);
    return lines;
}

}  // namespace rakewright
