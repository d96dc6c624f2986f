#include "post_fixing.hpp"

#include <algorithm>
#include <cmath>

#include "measure/compare.hpp"

namespace rakewright {
namespace {

/// Adds what is wrong with a fixing by itself, or worth knowing; whether it can be made.
bool check(const PostFixing& fixing, Unit unit, std::vector<Finding>& findings) {
    const std::size_t before = findings.size();
    if (fixing.wood_under && fixing.anchored_in == AnchoredIn::concrete)
        findings.push_back({Trouble::wood_under_concrete, fixing.wood_under->place, {}, fixing.id.place});
    else if (fixing.wood_under && less_than(*fixing.wood_under, usual_wood_under(unit)))
        findings.push_back({Trouble::little_wood_under,
                            fixing.wood_under->place,
                            {*fixing.wood_under, usual_wood_under(unit)},
                            fixing.id.place});
    const auto hold = [&](const BasePlate& plate, const Reading& spacing, const Reading& size) {
        if (!less_than(spacing + plate.hole, size))
            findings.push_back({Trouble::holes_off_plate, spacing.place, {spacing, plate.hole, size}, size.place});
    };
    if (const std::optional<BasePlate>& plate = fixing.base_plate) {
        hold(*plate, plate->holes.front(), plate->size.front());
        if (plate->holes.size() > 1 || plate->size.size() > 1) hold(*plate, plate->holes.back(), plate->size.back());
    }
    return std::none_of(findings.begin() + static_cast<std::ptrdiff_t>(before), findings.end(),
                        [](const Finding& finding) { return refuses(finding.trouble); });
}

/// Whether some of each of its holes lies under the post.
bool covers_holes(const PostSize& size, bool round, const BasePlate& plate) {
    const double along = plate.holes_along() / 2, across = plate.holes_across() / 2, radius = plate.hole / 2;
    if (round) return less_than(std::sqrt(along * along + across * across) - radius, size.along / 2);
    return less_than(along - radius, size.along / 2) && less_than(across - radius, size.across / 2);
}

class FixingOfPost {
 public:
    FixingOfPost(const Job& job, std::size_t post, Solution& solution)
        : job_(job), asked_(job.posts[post]), solution_(solution), post_(solution.posts[post]) {
        if (asked_.fixing.named()) fixing_ = &job.post_fixings[static_cast<std::size_t>(asked_.fixing.index)];
        if (post_.standing) upright_ = post_.standing->tipped.upright.z();
    }

    void measure() {
        if (asked_.reveal && !post_.tops.empty()) {
            const Section& over = job_.sections[static_cast<std::size_t>(post_.tops.front().under.section)];
            add(Trouble::reveal_under_rail, asked_.reveal->place, {}, over.id.place);
            return;
        }
        if (fixing_ && !is_sound()) return;
        const std::optional<double> rail = post_.highest_rail();
        if (!rail) {
            if (fixing_ || asked_.reveal) add(Trouble::post_top_unknown, asked_.id.place);
        } else {
            if (const std::optional<double> height = height_under(*rail); height && !find_length(*height)) return;
            if (fixing_) post_.fixed = pushed_at(*rail);
        }
        if (plate() && post_.standing) mark_holes();
        if (fixing_ && fixing_->rod && post_.length) post_.rod = rod(*fixing_->rod);
    }

 private:
    const BasePlate* plate() const { return fixing_ && fixing_->base_plate ? &*fixing_->base_plate : nullptr; }
    double thickness() const { return plate() ? plate()->thickness.value : 0; }

    void add(Trouble trouble, const Place& place, const std::array<double, 4>& numbers = {}, const Place& also = {}) {
        solution_.findings.push_back({trouble, place, numbers, also});
    }

    /// Adds what is wrong with the fixing at this post.
    bool is_sound() {
        const std::size_t before = solution_.findings.size();
        if (fixing_->rod && !asked_.reveal && post_.tops.empty())
            add(Trouble::rod_without_reveal, asked_.fixing.place, {}, fixing_->rod->place);
        if (!plate()) return solution_.findings.size() == before;
        PostSize size = size_of(asked_);
        if (const std::optional<StandingPost>& standing = post_.standing) {
            // At its foot, where it may taper.
            size.along = 2 * standing->half_along;
            size.across = 2 * standing->half_across;
        }
        if (fixing_->rod && (less_than(plate()->along(), size.along) || less_than(plate()->across(), size.across)))
            add(Trouble::plate_under_hollow_post, plate()->size.front().place,
                {plate()->along(), size.along, plate()->across(), size.across}, asked_.id.place);
        const bool sound = solution_.findings.size() == before;
        if (sound && covers_holes(size, asked_.shape == PostShape::round, *plate()))
            add(Trouble::holes_under_post, asked_.id.place);
        return sound;
    }

    /// Of its top above what it stands on: what rails over it leave of it on its axis, or the reveal over the highest.
    std::optional<double> height_under(double rail) const {
        if (post_.tops.empty()) return asked_.reveal ? std::optional(rail + *asked_.reveal) : std::nullopt;
        double height = 0;
        for (const PostTop& top : post_.tops) height = std::max(height, top.centre * upright_);
        return height;
    }

    bool find_length(double height) {
        if (!less_than(thickness(), height)) {
            add(Trouble::no_post_left, asked_.reveal ? asked_.reveal->place : asked_.id.place, {height, thickness()},
                asked_.id.place);
            return false;
        }
        post_.height = height;
        post_.length = (height - thickness()) / upright_;
        post_.stick = post_.length;
        for (const PostTop& top : post_.tops)
            post_.stick = std::max(*post_.stick, top.overall - thickness() / upright_);
        return true;
    }

    FixedPost pushed_at(double height) const {
        const double load = concentrated_load(job_.units);
        const double lengths_in_arm = job_.units == Unit::inch ? 1 : 1000;  // in in an inch, mm in a metre
        FixedPost fixed{load, load * height / lengths_in_arm, {}, {}};
        if (!plate()) return fixed;
        fixed.along = bolt_pull(load, height, plate()->along(), plate()->holes_along());
        fixed.across = bolt_pull(load, height, plate()->across(), plate()->holes_across());
        return fixed;
    }

    void mark_holes() {
        const std::optional<Plan>& plan = plan_of(job_, ground_of(asked_));
        for (const Vector& at : plate_holes(*plate(), *post_.standing))
            post_.holes.push_back({at, plan ? std::optional(in_plan(placed(*plan), at)) : std::nullopt});
    }

    RodLength rod(const PostRod& parts) const {
        return {parts.below,
                parts.floor / upright_,
                thickness() / upright_,
                *post_.length,
                parts.channel / upright_,
                parts.washer,
                parts.nut,
                parts.spare};
    }

    const Job& job_;
    const Post& asked_;
    Solution& solution_;
    PostResult& post_;
    const PostFixing* fixing_ = nullptr;
    double upright_ = 1;  // how far up the post's axis goes for each unit along it
};

}  // namespace

double concentrated_load(Unit unit) { return unit == Unit::inch ? 200 : 0.89; }

double usual_wood_under(Unit unit) { return unit == Unit::inch ? 3 : 76; }

std::vector<Vector> plate_holes(const BasePlate& plate, const StandingPost& post) {
    const Vector along = plate.holes_along() / 2 * post.plumb.first;
    const Vector across = plate.holes_across() / 2 * post.plumb.second;
    return {post.foot + along + across, post.foot - along + across, post.foot - along - across,
            post.foot + along - across};
}

BoltPull bolt_pull(double load, double height, double size, double spacing) {
    const double arm = (size + spacing) / 2;
    return {arm, load * height / (2 * arm)};
}

void fix_posts(const Job& job, Solution& solution) {
    std::vector<char> can_be_made;
    can_be_made.reserve(job.post_fixings.size());
    for (const PostFixing& fixing : job.post_fixings)
        can_be_made.push_back(check(fixing, job.units, solution.findings));
    for (std::size_t f = 0; f < job.post_fixings.size(); ++f)
        if (std::none_of(job.posts.begin(), job.posts.end(),
                         [&](const Post& post) { return post.fixing.index == static_cast<int>(f); }))
            solution.findings.push_back({Trouble::fixing_without_post, job.post_fixings[f].id.place, {}, {}});
    for (std::size_t p = 0; p < job.posts.size(); ++p) {
        const Post& post = job.posts[p];
        if (post.shape == PostShape::joint) continue;
        if (!post.reveal && !post.fixing.named() && solution.posts[p].tops.empty()) continue;
        if (post.fixing.named() && !can_be_made[static_cast<std::size_t>(post.fixing.index)]) continue;
        FixingOfPost(job, p, solution).measure();
    }
}

}  // namespace rakewright
