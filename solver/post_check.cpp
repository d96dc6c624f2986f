#include "post_check.hpp"

#include <utility>

#include "measure/compare.hpp"
#include "surroundings.hpp"

namespace rakewright {
namespace {

class CheckingPost {
 public:
    CheckingPost(const Job& job, std::size_t post, std::vector<Finding>& findings)
        : job_(job), post_(job.posts[post]), index_(static_cast<int>(post)), findings_(findings) {}

    void all() {
        if (!shape_is_sound()) return;
        if (!post_.has_place()) check_unplaced();
        if (post_.floor.named()) check_on_floor();
    }

 private:
    /// Refuses what only a post at a stair can have, and a floor of which it is not known which way it falls.
    void check_on_floor() {
        const auto refuse = [&](Trouble trouble, const Place& place, const Place& also) {
            findings_.push_back({trouble, place, {}, also});
        };
        const Floor& floor = named(job_.floors, post_.floor);
        if (post_.nosing.place.size > 0) refuse(Trouble::stair_key_on_floor, post_.nosing.place, post_.id.place);
        if (post_.base.on == Base::On::tread && post_.base.tread > 0)
            refuse(Trouble::stair_key_on_floor, post_.base.place, post_.id.place);
        if (floor.falls.angle.rise != 0 && floor.toward != Toward::heading)
            refuse(Trouble::fall_needs_heading, post_.floor.place, floor.id.place);
    }

    /// Refuses what only a square or only a round post can have.
    bool shape_is_sound() {
        const std::size_t before = findings_.size();
        const auto refuse = [&](Trouble trouble, const Place& place, bool given) {
            if (given) findings_.push_back({trouble, place, {}, post_.id.place});
        };
        if (post_.shape == PostShape::joint) {
            refuse(Trouble::post_key_on_joint, post_.size.place, post_.size.along > 0);
            refuse(Trouble::post_key_on_joint, post_.around ? post_.around->place : Place{}, post_.around.has_value());
            refuse(Trouble::post_key_on_joint, post_.base_trim ? post_.base_trim->height.place : Place{},
                   post_.base_trim.has_value());
            refuse(Trouble::post_key_on_joint, post_.taper ? post_.taper->height.place : Place{},
                   post_.taper.has_value());
            refuse(Trouble::post_key_on_joint, post_.reveal ? post_.reveal->place : Place{}, post_.reveal.has_value());
            refuse(Trouble::post_key_on_joint, post_.fixing.place, post_.fixing.named());
            refuse(Trouble::post_key_on_joint, post_.turn.place, post_.turn.angle.rise != 0);
            refuse(Trouble::post_key_on_joint, post_.lean.along.place, post_.lean.along.angle.rise != 0);
            refuse(Trouble::post_key_on_joint, post_.lean.across.place, post_.lean.across.angle.rise != 0);
            const std::size_t ends = ends_at(job_, index_).size();
            if (ends != 2) findings_.push_back({Trouble::joint_of_two, post_.id.place, {double(ends)}, {}});
            return findings_.size() == before;
        }
        refuse(Trouble::size_missing, post_.id.place, !post_.around && !(post_.size.along > 0));
        const bool round = post_.shape == PostShape::round;
        refuse(Trouble::girth_of_square, post_.around ? post_.around->place : Place{}, post_.around && !round);
        refuse(Trouble::timber_size_of_round, post_.size.place, round && !post_.size.nominal.empty());
        refuse(Trouble::turn_of_round, post_.turn.place,
               round && post_.has_place() && (post_.turn.place.size > 0 || post_.turn.angle.rise != 0));
        const PostSize size = size_of(post_);
        refuse(Trouble::two_sizes_of_round, size.place, round && size.along != size.across);
        if (const std::optional<Taper>& taper = post_.taper) {
            if (!taper->size.empty())
                refuse(Trouble::two_sizes_of_round, taper->size.back().place,
                       round && taper->along() != taper->across());
            refuse(Trouble::girth_of_square, taper->around ? taper->around->place : Place{}, taper->around && !round);
            check_taper(*taper);
        }
        if (post_.base_trim) {
            const BaseTrim& trim = *post_.base_trim;
            refuse(Trouble::two_sizes_of_round, trim.size.back().place, round && trim.along() != trim.across());
            const bool thinner = !less_than(size.along, trim.along()) || !less_than(size.across, trim.across());
            if (thinner)
                findings_.push_back({Trouble::trim_not_thicker,
                                     trim.size.front().place,
                                     {trim.along(), size.along, trim.across(), size.across},
                                     post_.id.place});
        }
        return findings_.size() == before;
    }

    /// A post must have a foot, and be there as high as both its sizes were taken.
    void check_taper(const Taper& taper) {
        const double between = taper.height - taper.size_at;
        if (same(taper.height, taper.size_at)) {
            findings_.push_back(
                {Trouble::taper_between_nothing, taper.height.place, {taper.height, taper.size_at}, post_.id.place});
            return;
        }
        const PostSize size = size_of(post_);
        for (const auto& [own, other] :
             {std::pair(size.along, taper.along()), std::pair(size.across, taper.across())}) {
            const double growing = (other - own) / between, at_foot = own - growing * taper.size_at;
            if (less_than(0, at_foot, own)) continue;
            findings_.push_back({Trouble::tapered_away, taper.place, {taper.size_at - own / growing}, post_.id.place});
            return;
        }
    }

    /// Keys that say how a post stands mean nothing at one that has no place.
    void check_unplaced() {
        const auto refuse = [&](const Place& place, bool given) {
            if (given) findings_.push_back({Trouble::placed_without_stair, place, {}, post_.id.place});
        };
        refuse(post_.nosing.place, post_.nosing.place.size > 0);
        refuse(post_.across.place, post_.across != 0);
        refuse(post_.turn.place, post_.turn.angle.rise != 0);
        refuse(post_.lean.along.place, post_.lean.along.angle.rise != 0);
        refuse(post_.lean.across.place, post_.lean.across.angle.rise != 0);
        refuse(post_.base.place, post_.base.on != Base::On::what_is_under);
    }

    const Job& job_;
    const Post& post_;
    int index_;
    std::vector<Finding>& findings_;
};

}  // namespace

void check(const Job& job, std::size_t post, std::vector<Finding>& findings) {
    CheckingPost(job, post, findings).all();
}

}  // namespace rakewright
