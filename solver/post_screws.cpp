#include "post_screws.hpp"

#include <algorithm>
#include <cmath>

#include "measure/compare.hpp"
#include "surroundings.hpp"

namespace rakewright {
namespace {

/// An end of a section at a post, with its screws in it.
struct EndAtPost {
    std::size_t section = 0;
    End end = End::from;
    Ground ground;  // whose axes its screws are in; none without a place
    std::vector<PostScrew> screws;
};

/// The place within 0 and `length` on a line from `start` that is nearest to a point.
Vector nearest_on(const ScrewWay& line, double length, const Vector& point) {
    return line.seat + std::clamp((point - line.seat).dot(line.way), 0.0, length) * line.way;
}

std::vector<EndAtPost> screws_at(const Job& job, const Solution& solution, int post) {
    std::vector<EndAtPost> ends;
    for (const SectionEnd& at : ends_at(job, post)) {
        const std::size_t index = static_cast<std::size_t>(at.section);
        const Section& section = job.sections[index];
        const bool placed = standing_of(solution, section.from) && standing_of(solution, section.to);
        EndAtPost end{index, at.end, placed ? ground_of(job, section) : Ground{}, {}};
        for (const PostScrew& screw : solution.sections[index].post_screws)
            if (screw.end == at.end) end.screws.push_back(screw);
        ends.push_back(std::move(end));
    }
    return ends;
}

/// From the axes of one end's screws to those of another's; none where it is not known how they lie to each other.
std::optional<Carrying> between_ends(const Job& job, const EndAtPost& own, const EndAtPost& other) {
    if (own.ground.kind == Ground::Kind::none || other.ground.kind == Ground::Kind::none) return std::nullopt;
    return carrying(job, own.ground, other.ground);
}

struct NearScrews {
    double apart = 0, least = 0;
};

/// How near two screws come in a post, however their rails lie to each other; none where they cannot meet.
std::optional<NearScrews> may_meet(const PostScrew& one, const PostScrew& other, double post) {
    if (!one.height || !other.height) return std::nullopt;
    const NearScrews meeting{std::fabs(*one.height - *other.height), (one.diameter + other.diameter) / 2};
    const bool opposite = less_than(post, one.deep + other.deep),
               square = less_than(post / 2, one.deep + other.diameter / 2) &&
                        less_than(post / 2, other.deep + one.diameter / 2);
    return opposite || square ? std::optional(meeting) : std::nullopt;
}

std::optional<NearScrews> nearest(const EndAtPost& one, const EndAtPost& other, const std::optional<Carrying>& carry,
                                  double post) {
    std::optional<NearScrews> worst;
    for (const PostScrew& a : one.screws)
        for (PostScrew b : other.screws) {
            if (carry) b.way = {carry->point(b.way.seat), carry->way(b.way.way)};
            const std::optional<NearScrews> meeting =
                carry ? NearScrews{between_screws(a, b), (a.diameter + b.diameter) / 2} : may_meet(a, b, post);
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
        const std::vector<EndAtPost> ends = screws_at(job, solution, static_cast<int>(p));
        const PostSize size = size_of(job.posts[p]);
        for (std::size_t i = 0; i < ends.size(); ++i)
            for (std::size_t j = i + 1; j < ends.size(); ++j) {
                const std::optional<Carrying> carry = between_ends(job, ends[j], ends[i]);
                const std::optional<NearScrews> meeting =
                    nearest(ends[i], ends[j], carry, std::min(size.along, size.across));
                if (!meeting) continue;
                solution.findings.push_back(
                    {Trouble::screws_meet,
                     job.sections[ends[i].section].id.place,
                     {meeting->apart, meeting->least, double(ends[j].section), carry ? 1.0 : 0.0},
                     {},
                     static_cast<int>(ends[i].section),
                     static_cast<int>(index_of(ends[i].end))});
            }
    }
}

}  // namespace rakewright
