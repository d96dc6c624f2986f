#include "post_screws.hpp"

#include <algorithm>
#include <cmath>

#include "measure/compare.hpp"

namespace rakewright {
namespace {

/// An end of a section at a post, with its screws in it.
struct EndAtPost {
    std::size_t section = 0;
    End end = End::from;
    bool placed = false;
    std::vector<PostScrew> screws;
};

/// The place within 0 and `length` on a line from `start` that is nearest to a point.
Vector nearest_on(const ScrewWay& line, double length, const Vector& point) {
    return line.seat + std::clamp((point - line.seat).dot(line.way), 0.0, length) * line.way;
}

bool is_placed(const Job& job, const Ref& post) {
    return post.named() && job.posts[static_cast<std::size_t>(post.index)].stair.named();
}

std::vector<EndAtPost> ends_at(const Job& job, const Solution& solution, int post) {
    std::vector<EndAtPost> ends;
    for (std::size_t s = 0; s < job.sections.size(); ++s) {
        const Section& section = job.sections[s];
        const bool placed = is_placed(job, section.from) && is_placed(job, section.to);
        for (const End end : {End::from, End::to}) {
            if ((end == End::from ? section.from : section.to).index != post) continue;
            EndAtPost at{s, end, placed, {}};
            for (const PostScrew& screw : solution.sections[s].post_screws)
                if (screw.end == end) at.screws.push_back(screw);
            ends.push_back(std::move(at));
        }
    }
    return ends;
}

struct Meeting {
    double apart = 0, least = 0;
};

/// How near two screws come in a post, however their rails lie to each other; none where they cannot meet.
std::optional<Meeting> may_meet(const PostScrew& one, const PostScrew& other, double post) {
    if (!one.height || !other.height) return std::nullopt;
    const Meeting meeting{std::fabs(*one.height - *other.height), (one.diameter + other.diameter) / 2};
    const bool opposite = less_than(post, one.deep + other.deep),
               square = less_than(post / 2, one.deep + other.diameter / 2) &&
                        less_than(post / 2, other.deep + one.diameter / 2);
    return opposite || square ? std::optional(meeting) : std::nullopt;
}

std::optional<Meeting> nearest(const EndAtPost& one, const EndAtPost& other, double post) {
    std::optional<Meeting> worst;
    for (const PostScrew& a : one.screws)
        for (const PostScrew& b : other.screws) {
            const std::optional<Meeting> meeting = one.placed && other.placed
                                                       ? Meeting{between_screws(a, b), (a.diameter + b.diameter) / 2}
                                                       : may_meet(a, b, post);
            if (!meeting || !less_than(meeting->apart, meeting->least)) continue;
            if (!worst || meeting->apart < worst->apart) worst = meeting;
        }
    return worst;
}

}  // namespace

double between_screws(const PostScrew& one, const PostScrew& other) {
    // Where both nearest points lie inside the two, else at one of four ends.
    double least = INFINITY;
    const auto try_end = [&](const PostScrew& a, const PostScrew& b, double along) {
        const Vector end = a.way.seat + along * a.way.way;
        least = std::fmin(least, (end - nearest_on(b.way, b.inside, end)).norm());
    };
    for (const double share : {0.0, 1.0}) {
        try_end(one, other, share * one.inside);
        try_end(other, one, share * other.inside);
    }
    const double across = one.way.way.dot(other.way.way), turn = 1 - across * across;
    if (turn < rounding) return least;
    const Vector apart = other.way.seat - one.way.seat;
    const double along = (apart.dot(one.way.way) - across * apart.dot(other.way.way)) / turn;
    if (along > 0 && along < one.inside) try_end(one, other, along);
    return least;
}

void note_screws_that_meet(const Job& job, Solution& solution) {
    for (std::size_t p = 0; p < job.posts.size(); ++p) {
        const std::vector<EndAtPost> ends = ends_at(job, solution, static_cast<int>(p));
        const PostSize size = size_of(job.posts[p]);
        for (std::size_t i = 0; i < ends.size(); ++i)
            for (std::size_t j = i + 1; j < ends.size(); ++j) {
                const std::optional<Meeting> meeting = nearest(ends[i], ends[j], std::min(size.along, size.across));
                if (!meeting) continue;
                const bool known = ends[i].placed && ends[j].placed;
                solution.findings.push_back(
                    {Trouble::screws_meet,
                     job.sections[ends[i].section].id.place,
                     {meeting->apart, meeting->least, double(ends[j].section), known ? 1.0 : 0.0},
                     {},
                     static_cast<int>(ends[i].section),
                     ends[i].end == End::from ? 0 : 1});
            }
    }
}

}  // namespace rakewright
