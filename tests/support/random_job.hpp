#pragma once

#include <string_view>
#include <vector>

#include "../../solver/job.hpp"

namespace rakewright::tests {

/// An angle as somebody would have written it, so that a check can work from what was read instead of from what became
/// of it: degrees, or a slope of `rise` for each `run`.
struct DrawnAngle {
    bool in_degrees = false;
    double degrees = 0;
    double rise = 0, run = 1;
};

struct DrawnPost {
    DrawnAngle turn, along, across;
};

/// A job, and beside it its angles as drawn: of every post, and the rake of every stair (of none if it is not given).
struct DrawnJob {
    Job job;
    std::vector<DrawnPost> posts;
    std::vector<DrawnAngle> rakes;
};

/// What kinds of posts are drawn: all kinds, or none that leans or turns by more than a few degrees.
enum class Posts { of_every_kind, nearly_plumb };

/// A job of one stair, two posts on it and three sections: between the posts, over a floor, and up the stair with only
/// a distance known. The same name gives the same job on every machine. Sizes are those of real stairs, so that most of
/// the jobs can be solved; some cannot.
DrawnJob random_job(std::string_view name, Posts posts = Posts::of_every_kind);

}  // namespace rakewright::tests
