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
    if (piece.stuff == Stuff::round_handrail) return SectionShape::circle;
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

/// The posts that the job names, those of one size and shape together.
std::vector<OrderLine> posts_of(const Job& job, const Solution& solution) {
    std::vector<OrderLine> lines;
    for (std::size_t p = 0; p < job.posts.size(); ++p) {
        const Post& post = job.posts[p];
        if (post.shape == PostShape::joint) continue;
        const PostSize size = size_of(post);
        const SectionShape shape = post.shape == PostShape::round ? SectionShape::circle : SectionShape::rectangle;
        const auto of_it = [&](const OrderLine& line) {
            return line.shape == shape && same_section(line.section, {size.along, size.across});
        };
        auto mine = std::find_if(lines.begin(), lines.end(), of_it);
        if (mine == lines.end()) {
            OrderLine line;
            line.what = Ordered::post;
            line.shape = shape;
            line.section = {size.along, size.across};
            mine = lines.insert(lines.end(), line);
        }
        if (mine->nominal.empty()) mine->nominal = size.nominal;
        ++mine->needed;
        for (const RailAtPost& rail : solution.posts[p].rails)
            mine->reaches = std::fmax(mine->reaches.value_or(rail.heights.top), rail.heights.top);
    }
    return lines;
}

void add_posts(const Job& job, const Solution& solution, std::vector<OrderLine>& lines) {
    if (!job.order_list->posts) return;
    const std::vector<OrderLine> posts = posts_of(job, solution);
    lines.insert(lines.end(), posts.begin(), posts.end());
}

void add_caps(const Job& job, const Solution& solution, std::vector<OrderLine>& lines) {
    if (!job.order_list->caps) return;
    for (OrderLine line : posts_of(job, solution)) {
        line.what = Ordered::cap;
        line.reaches.reset();
        line.spare = to_spare(line.needed, *job.order_list);
        lines.push_back(line);
    }
}

}  // namespace

std::vector<OrderLine> order_list(const Job& job, const Solution& solution) {
    std::vector<OrderLine> lines;
    if (!job.order_list) return lines;
    for (auto* const add : {add_bars, add_sticks, add_turned_pickets, add_brackets, add_posts, add_caps})
        add(job, solution, lines);
    return lines;
}

}  // namespace rakewright
