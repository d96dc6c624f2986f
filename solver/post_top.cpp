#include "post_top.hpp"

#include <cmath>

#include "surroundings.hpp"
#include "way.hpp"

namespace rakewright {
namespace {

/// The post as it stands in the axes of a section's line; none where that is not known.
std::optional<StandingPost> standing_at(const Post& post, const Surroundings& around, const Way& way, End end) {
    const RailLine& line = way.line;
    const Vector ahead(line.x, line.y, 0), left(-line.y, line.x, 0);
    const std::size_t e = index_of(end);
    if (around.placed()) {
        StandingPost standing = end == End::from ? *around.from : *around.to;
        if (end == End::to) standing.foot += way.moved * ahead;
        return standing;
    }
    const PostSize size = size_of(post);
    const std::optional<double> surface = surface_at(around, line, end);
    if (size.along == 0 || !surface) return std::nullopt;
    const Axes axes{ahead, left, Vector::UnitZ()};
    const Vector beside = line.at(line.centres[e]) - around.beside[e] * left;
    StandingPost standing;
    standing.foot = Vector(beside.x(), beside.y(), *surface);
    standing.plumb = standing.tipped = axes;
    standing.half_along = size.along / 2;
    standing.half_across = size.across / 2;
    standing.radius = post.shape == PostShape::round ? size.along / 2 : 0;
    return standing;
}

/// Where the line at a level over it leaves a post on the side that looks away from the section.
std::optional<Vector> far_side(const StandingPost& post, const RailLine& line, End end, double above, double beside) {
    const double away = end == End::from ? -1 : 1;
    const LeavingBy leaving = leaving_by(post, away * line.x, away * line.y, away * beside);
    if (!leaving.face) return std::nullopt;
    RailLine past = line;
    if (post.round()) {
        const Vector begin = line.at(0, above), way = Vector(line.x, line.y, line.slope) / line.lengthened();
        const std::optional<OnShaft> out = met_on(line.round(end), begin, way, away > 0);
        return out ? std::optional<Vector>(begin + out->along * way) : std::nullopt;
    }
    (end == End::from ? past.from : past.to) = face_plane(post, *leaving.face);
    const std::optional<double> along = face_along(past, end, above);
    return along ? std::optional<Vector>(line.at(*along, above)) : std::nullopt;
}

std::optional<PostTop> top_under(const StandingPost& post, const Way& way, const SectionEnd& under, double beside) {
    const RailLine& line = way.line;
    const double above = way.levels.upper_underside;
    const std::optional<double> near = face_along(line, under.end, above);
    if (!near) return std::nullopt;
    const Vector up = post.tipped.upright;
    const auto up_post = [&](const Vector& point) { return up.dot(point - post.foot); };
    const Frame frame{post.foot, up, post.tipped.first, post.tipped.second};
    const Plane underside{line.at(0, above), frame_on_slope(Vector::Zero(), line.x, line.y, line.slope).top};
    const std::optional<Slant> slant = cut(frame, underside);
    if (!slant) return std::nullopt;
    const Piece piece{{2 * post.half_along, 2 * post.half_across}, {}, *slant};
    PostTop top{under, up_post(line.at(*near, above)), slant->at, {}, overall(piece), end_cut(piece, End::to).flat};
    if (const std::optional<Vector> far = far_side(post, line, under.end, above, beside)) top.far = up_post(*far);
    return top;
}

/// The level direction away from the post at which a section ends, in the section's own axes.
Vector away_from(const Job& job, const Solution& solution, const SectionEnd& at) {
    const std::size_t s = static_cast<std::size_t>(at.section);
    const SectionTask task = task_of(job, job.sections[s], {});
    const SectionChoices& choices = solution.choices.sections[s];
    const Way way = way_of(task, surroundings_of(job, solution, s), choices.faces, task.lower_gap(choices));
    return (at.end == End::from ? 1 : -1) * Vector(way.line.x, way.line.y, 0);
}

/// Whether two sections that end at one post run on in one plumb plane; so they do where that is not known.
bool in_line(const Job& job, const Solution& solution, const SectionEnd& one, const SectionEnd& other) {
    const Section &first = job.sections[static_cast<std::size_t>(one.section)],
                  &second = job.sections[static_cast<std::size_t>(other.section)];
    const bool placed = standing_of(solution, first.from) && standing_of(solution, first.to) &&
                        standing_of(solution, second.from) && standing_of(solution, second.to);
    const std::optional<Carrying> carry = carrying(job, ground_of(job, second), ground_of(job, first));
    if (!placed || !carry) return true;
    return away_from(job, solution, one).dot(carry->way(away_from(job, solution, other))) < -1 + alike_within;
}

/// Notes rails that do not go together over a post: one that ends at a face that is cut away, two round a corner.
void note_over(const Job& job, std::size_t post, Solution& solution) {
    if (solution.posts[post].tops.empty()) return;
    const Place place = job.posts[post].id.place;
    std::optional<SectionEnd> over;
    for (const SectionEnd& at : ends_at(job, static_cast<int>(post))) {
        const Section& section = job.sections[static_cast<std::size_t>(at.section)];
        const EndWish& wish = at.end == End::from ? section.ends.from : section.ends.to;
        if (wish.meets == EndWish::Meets::face || wish.meets == EndWish::Meets::pad) {
            solution.findings.push_back({Trouble::over_beside_face, place, {}, section.id.place});
        } else if (wish.meets == EndWish::Meets::over) {
            if (over && !in_line(job, solution, *over, at))
                solution.findings.push_back({Trouble::over_round_corner, place, {}, {}});
            over = at;
        }
    }
}

}  // namespace

void cut_tops(const Job& job, Solution& solution) {
    for (std::size_t s = 0; s < job.sections.size(); ++s) {
        const Section& section = job.sections[s];
        for (const End end : both_ends) {
            const Ref& post = end == End::from ? section.from : section.to;
            const EndWish& wish = end == End::from ? section.ends.from : section.ends.to;
            if (wish.meets != EndWish::Meets::over || !post.named()) continue;
            const SectionTask task = task_of(job, section, {});
            const SectionChoices& choices = solution.choices.sections[s];
            const Surroundings around = surroundings_of(job, solution, s);
            const Way way = way_of(task, around, choices.faces, task.lower_gap(choices));
            const std::optional<StandingPost> standing = standing_at(named(job.posts, post), around, way, end);
            if (!standing) continue;
            const std::optional<PostTop> top =
                top_under(*standing, way, {static_cast<int>(s), end}, around.beside[index_of(end)]);
            if (top) named(solution.posts, post).tops.push_back(*top);
        }
    }
    for (std::size_t p = 0; p < job.posts.size(); ++p) note_over(job, p, solution);
}

}  // namespace rakewright
