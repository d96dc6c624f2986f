#pragma once

#include "handrail/handrail.hpp"
#include "section.hpp"
#include "stock/stock.hpp"

namespace rakewright {

/// A rail that meets a post: which section, which of its ends, which group, and where, plumb above the surface that the
/// post stands on.
struct RailAtPost {
    int section = 0;
    End end = End::from;
    Group group = Group::upper;
    GroupHeights heights;
};

/// A post, solved: how it stands, none where it has no place, and every rail that meets it, in the order of the
/// sections.
struct PostResult {
    std::optional<StandingPost> standing;
    std::optional<Vector> in_plan;  // the centre of its foot, where its stair or floor has a plan
    std::vector<RailAtPost> rails;

    /// Height of the surface that it stands on above its stair's floor, or its floor's origin.
    std::optional<double> base() const { return standing ? std::optional(standing->foot.z()) : std::nullopt; }
};

/// Everything that was decided, in the order of the job: `solve` takes it back.
struct Choices {
    std::vector<LineHolders> lines;
    std::vector<SectionChoices> sections;
};

/// What came out, each list in the order of the job's. A job is refused if one of the findings refuses it; its results
/// are then not to be used.
struct Solution {
    std::vector<StairShape> stairs;
    std::vector<PostResult> posts;
    std::vector<SectionResult> sections;
    std::vector<HandrailResult> handrails;
    std::vector<StockResult> stock;  // none until plan_stock
    Choices choices;
    std::vector<Finding> findings;

    bool refused() const;
};

}  // namespace rakewright
