#include "spacing_sheet.hpp"

#include "solution_sheet.hpp"

namespace rakewright {

void describe(Sheet& sheet, const RailFoot& foot) {
    sheet.count("picket", foot.picket > 0 ? std::optional(foot.picket) : std::nullopt,
                "the picket that it stands under, from 1");
    sheet.length("at", foot.at, "level from the from post's face to its centre");
    sheet.length("uphill_side", foot.uphill_side, "plumb length of the side that looks up the rail");
    sheet.length("downhill_side", foot.downhill_side, "plumb length of the side that looks down the rail");
    sheet.length("overall", foot.overall, "tip to tip");
}

void describe(Sheet& sheet, const StoryStick& stick) {
    sheet.lengths("edges", stick.edges, "of each picket, the one nearer to zero");
    sheet.lengths("centres", stick.centres, "of each picket");
    sheet.length("to_face", stick.to_face, "plumb under the to post's face, half-way up the pickets");
    sheet.list("rails", stick.rails, "the rails that it is laid along", [](Sheet& row, const RailOnStick& rail) {
        row.word("group", words(rail.group), "upper or lower");
        row.length("from_end", rail.from_end,
                   "where the middle of its picket face begins; negative before the stick's zero");
        row.length("to_end", rail.to_end, "where it ends");
    });
}

void describe(Sheet& sheet, const Job& job, const SpacingChoice& choice) {
    const auto name_of = [&](int section) -> std::string_view {
        return job.sections[static_cast<std::size_t>(section)].id.name;
    };
    sheet.word("by", words(choice.by), "fewest, alike or block");
    if (choice.centre) sheet.word("centre", words(*choice.centre), "picket or gap, in the middle of every section that asks for none itself");
    sheet.truth("taken", choice.taken, "whether the job is spaced so");
    if (choice.without) sheet.word("without", name_of(*choice.without), "a section that cannot be spaced so");
    sheet.length("block", choice.block, "its length, level");
    if (choice.without) return;
    sheet.count("pickets", choice.pickets, "in all, sections that are alike counted");
    sheet.length("narrowest_gap", choice.gaps.least, "between two pickets");
    sheet.length("widest_gap", choice.gaps.most, "between two pickets");
    sheet.length("narrowest_end_gap", choice.ends.least, "at a post");
    sheet.length("widest_end_gap", choice.ends.most, "at a post");
    sheet.length("spread", choice.spread(), "the widest of all gaps less the narrowest");
    sheet.list("sections", choice.sections, "those that are spaced together", [&](Sheet& row, const SpacedResult& in) {
        row.word("section", name_of(in.section), "its name");
        row.count("pickets", in.pickets, "in one section");
        row.length("gap", in.gap, "between two pickets");
        row.length("end_gap", in.end, "at each post");
        row.length("below_allowed", in.below, "how far its widest gap stays below the widest allowed");
    });
}

}  // namespace rakewright
