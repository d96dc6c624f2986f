#pragma once

#include <optional>
#include <string>
#include <vector>

#include "job/handrail.hpp"
#include "job/post.hpp"
#include "job/section.hpp"
#include "job/stair.hpp"
#include "job/stock.hpp"

// What was asked, in the words of the job file. The meaning, unit, range and default of every field stand in one place,
// where it is described: job_form.cpp and its kin. A program may fill a Job itself; what a reader would have refused is then its
// own affair.

namespace rakewright {

struct Job {
    std::string title;
    Unit units = Unit::inch;
    std::optional<Reading> round;
    std::optional<Saw> saw;
    std::vector<Stair> stairs;
    std::vector<Floor> floors;
    std::vector<PostFixing> post_fixings;
    std::vector<Post> posts;
    std::vector<Build> builds;
    std::vector<Section> sections;
    std::vector<Handrail> handrails;
    std::vector<FoundRail> as_found;
    std::vector<Id> rules;
    std::vector<Stock> stock;
    std::vector<AlsoCut> also_cut;
    std::optional<Spacing> spacing;
    bool story_stick = false;
    bool piece_list = false;
    std::optional<OrderWish> order_list;
    std::optional<PaintWish> paint;
    bool order_of_work = false;
};

/// The post's size; of a round one its diameter both ways, from its girth where that is what was taped.
PostSize size_of(const Post& post);

/// Whether what is named there is a joint, and no post.
bool is_joint(const Job& job, const Ref& post);

/// What a post stands on, or a section is over: one of the job's stairs or floors, whose own axes it is solved in.
struct Ground {
    enum class Kind { none, stair, floor };
    Kind kind = Kind::none;
    int index = -1;
    friend bool operator==(const Ground&, const Ground&) = default;
};
Ground ground_of(const Post& post);

/// What a section is over: the stair that it names; the floor that it names, if that has a plan or one of the posts
/// stands on it; what both posts stand on; or the floor that one of them stands on. None if it does not follow.
Ground ground_of(const Job& job, const Section& section);

/// Where a ground stands in plan; none if that is not said.
const std::optional<Plan>& plan_of(const Job& job, const Ground& ground);

/// The stair that a section is over; -1 if it is over none.
int stair_of(const Job& job, const Section& section);

/// The greatest fall beside something at a stair (-1: at none): its own, or the stair's; none if neither is given.
std::optional<double> drop_beside(const Job& job, const std::optional<Reading>& own, int stair);

/// What the pickets of a section are set out to: none of their gaps wider, or every ball that passes smaller, than
/// this.
struct PicketLimit {
    enum class On { gap, sphere };
    On on = On::gap;
    Reading reading;
};

/// The section's own limit, or its build's; none where a pitch sets the spacing and nothing limits the gaps.
std::optional<PicketLimit> limit_of(const Section& section, const PicketBuild& pickets);

/// The tape that the job's readings are printed on: `round`, or 1/16 in, or 1 mm.
Tape tape_of(const Job& job);

}  // namespace rakewright
