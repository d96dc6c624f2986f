#include "solution_sheet.hpp"

#include <numeric>

#include "fixing_sheet.hpp"

namespace rakewright {
namespace {

void describe(Sheet& sheet, const StairShape& stair) {
    sheet.angle("rake_deg", stair.line ? std::optional(stair.line->slope) : std::nullopt,
                "of the nosing line over level");
    sheet.number("rake_in_12", stair.line ? std::optional(stair.line->slope * 12) : std::nullopt,
                 "the rake as so much in 12");
    sheet.angle("wash_deg", stair.wash > 0 ? std::optional(stair.wash) : std::nullopt,
                "of the treads, from their nosings up toward the next riser");
    sheet.length("rise_total", stair.rise_total(), "plumb, from the floor at the foot to the landing");
    sheet.length("run_total", stair.run_total(), "level, from the first nosing to the last");
    sheet.list("nosings", stair.nosings, "lowest first", [&](Sheet& row, const Nosing& nosing) {
        row.length("x", nosing.x, "level from the first nosing");
        row.length("z", nosing.z, "plumb above the floor at the foot");
        row.length("off_line", stair.line ? std::optional(nosing.off_line) : std::nullopt,
                   "plumb above the nosing line, below it negative");
    });
    sheet.list("open_risers", stair.open_risers, "where there are no boards between the treads",
               [](Sheet& row, const OpenRiser& riser) {
                   row.count("riser", riser.number, "its number, from 1");
                   row.length("sphere", riser.sphere,
                              "the diameter of the largest ball that passes between its treads");
               });
    sheet.counts(
        "line_held_by",
        [&] {
            std::vector<int> holders;
            for (const int number : stair.held_by)
                if (number > 0) holders.push_back(number);
            return holders;
        }(),
        "the nosings that hold the line, where it does not pass through all of them");
}

void describe(Sheet& sheet, const GroupHeights& heights, const char* above) {
    sheet.length("underside", heights.underside, above);
    sheet.length("top", heights.top, above);
}

void describe(Sheet& sheet, const SawSetting& setting) {
    sheet.angle("miter_deg", setting.miter, "how far the blade is swung from a square cut, seen from above the table");
    sheet.angle("bevel_deg", setting.bevel, "how far the blade is tilted from plumb");
}

void describe(Sheet& sheet, const Cope& cope, const CrossSection& section) {
    sheet.length("depth", cope.depth(), "longest less shortest, along the member, over the whole section");
    const auto arris = [&](const char* key, Corner corner) {
        sheet.length(key, outward(cope, spot_of(corner, section)),
                     "along that arris, past the cut at the centre line; shorter is negative");
    };
    arris("top_left", {1, 1});
    arris("top_right", {-1, 1});
    arris("bottom_left", {1, -1});
    arris("bottom_right", {-1, -1});
    sheet.list("outline", faces_of(section), "of the cope on each face, exact on the post's surface",
               [&](Sheet& row, const StickFace& face) {
                   row.word("face", words(face.side), "top, right, bottom or left, seen from the from end");
                   row.list("points", outline_on(cope, face, section), "from arris to arris, in equal parts across",
                            [](Sheet& point, const OutlinePoint& at) {
                                point.length("across", at.across,
                                             "from the middle of the face: left positive on top and bottom, up "
                                             "positive on the sides");
                                point.length("along", at.along,
                                             "past the cut at the centre line, along the member; shorter is negative");
                            });
               });
}

void describe(Sheet& sheet, const EndCut& cut, const std::optional<Cope>& cope, const CrossSection& section) {
    sheet.part("flat", "bottom face on the saw table, a side against the fence",
               [&](Sheet& part) { describe(part, cut.flat); });
    sheet.part("edge", "a side on the table, bottom or top against the fence",
               [&](Sheet& part) { describe(part, cut.edge); });
    sheet.word("long_point", words(cut.long_point),
               "the edge or corner that the cut leaves longest, seen from the from end");
    if (cope)
        sheet.part("cope", "at a round post: how the end is hollowed; the cut is of the plane that touches the post",
                   [&](Sheet& part) { describe(part, *cope, section); });
}

/// The lengths of a stick; of a coped one to its copes.
struct StickLengths {
    double length = 0, top_edge = 0, bottom_edge = 0, overall = 0;
};

StickLengths lengths_of(const Piece& piece) {
    return {length(piece), edge_length(piece, {0, 1}), edge_length(piece, {0, -1}), overall(piece)};
}

void describe(Sheet& sheet, const Piece& piece, const StickLengths& lengths, const EndCut& from_end,
              const EndCut& to_end, const SetOut& measure, const std::array<std::optional<Cope>, 2>& copes) {
    sheet.length("width", piece.section.width, "level, across the rail");
    sheet.length("depth", piece.section.depth, "square to the rail");
    sheet.length("length", lengths.length, "along the centre line, from cut to cut");
    sheet.length("top_edge", lengths.top_edge, "along the middle of the top face");
    sheet.length("bottom_edge", lengths.bottom_edge, "along the middle of the bottom face");
    sheet.length("overall", lengths.overall,
                 "tip to tip along the axis: the shortest square-ended stick that it comes from");
    sheet.part("from_end", "the cut at the from end",
               [&](Sheet& part) { describe(part, from_end, copes[0], piece.section); });
    sheet.part("to_end", "the cut at the to end",
               [&](Sheet& part) { describe(part, to_end, copes[1], piece.section); });
    sheet.part("measure", "what to set out on the stick", [&](Sheet& part) {
        part.word("edge", words(measure.edge), "the edge to measure along");
        part.word("from", words(measure.from), "how the from end lies on that edge: long, short or square");
        part.word("to", words(measure.to), "how the to end lies there");
        part.length("length", measure.length, "along that edge");
    });
}

void describe(Sheet& sheet, const Member& member) {
    sheet.word("name", member.name, "as the job calls it");
    sheet.word("group", words(member.group), "upper or lower");
    describe(sheet, member.stick.piece, {member.length, member.top_edge, member.bottom_edge, member.overall},
             member.from_end, member.to_end, member.measure, member.copes);
    const auto cost = [&](std::size_t end) {
        return member.shortened[end] > 0 ? std::optional(member.shortened[end]) : std::nullopt;
    };
    sheet.length("from_shortened", cost(0), "what a bracket leg on the post takes off the from end, along the member");
    sheet.length("to_shortened", cost(1), "what a bracket leg on the post takes off the to end");
}

void describe(Sheet& sheet, const PicketPiece& piece) {
    sheet.count("count", piece.count, "how many are cut alike");
    sheet.counts("at", piece.at, "which pickets, from 1, counted from the from end");
    sheet.length("uphill_side", piece.uphill_side, "plumb length of the side that looks up the rail, ploughs included");
    sheet.length("downhill_side", piece.downhill_side,
                 "plumb length of the side that looks down the rail, ploughs included");
    sheet.length("overall", piece.overall, "tip to tip");
    const auto trimmed = [&](double Trim::*length) {
        return piece.trim ? std::optional((*piece.trim).*length) : std::nullopt;
    };
    sheet.length("lower_block", trimmed(&Trim::lower_block),
                 "what is left of a turned picket's lower block, plumb at its centre, plough included");
    sheet.length("upper_block", trimmed(&Trim::upper_block), "what is left of its upper block, likewise");
    sheet.length("off_lower", trimmed(&Trim::off_lower), "what is trimmed off its lower block, plumb at its centre");
    sheet.length("off_upper", trimmed(&Trim::off_upper), "what is trimmed off its upper block, likewise");
}

void describe(Sheet& sheet, const Pickets& pickets) {
    sheet.count("count", pickets.count, "how many in one section");
    sheet.length("gap", pickets.gap, "level and clear, between neighbours, where they are all alike");
    sheet.length("from_gap", pickets.from_gap, "level and clear, from the from post's face to the first picket");
    sheet.length("to_gap", pickets.to_gap, "level and clear, from the last picket to the to post's face");
    sheet.length("widest_gap", pickets.widest_gap, "the widest of all gaps, as computed");
    sheet.length("widest_gap_marked", pickets.widest_marked,
                 "the widest of all gaps when every mark is rounded to the tape");
    sheet.length("pitch", pickets.pitch, "level, from centre to centre");
    sheet.length("pitch_on_slope", pickets.pitch_on_slope, "along the rail, from centre to centre");
    sheet.count("per_tread", pickets.per_tread > 0 ? std::optional(pickets.per_tread) : std::nullopt,
                "how many stand on each tread");
    sheet.angle("cut_deg", pickets.cut, "of the head, off square: the rail's own rake");
    sheet.lengths("centres", pickets.centres, "level from the from post's face to each picket's centre");
    sheet.lengths("marks_upper", pickets.upper.centres,
                  "centres along the underside of the upper group, from its own from end");
    sheet.lengths("marks_lower", pickets.lower.centres,
                  "centres along the top of the lower group, from its own from end");
    sheet.list("feet", pickets.feet, "where each picket stands on a tread", [](Sheet& row, const Foot& foot) {
        row.count("tread", foot.tread, "the tread's number, from 1");
        row.length("from_riser", foot.from_riser,
                   "level from the riser face under the tread's nosing to the picket's downhill face");
    });
    sheet.list("pieces", pickets.pieces, "equal pieces together, in order of first use",
               [](Sheet& row, const PicketPiece& piece) { describe(row, piece); });
    sheet.list("fillets", pickets.fillets, "strips that fill the ploughs between the pickets",
               [](Sheet& row, const Fillet& fillet) {
                   row.word("group", words(fillet.group), "whose plough it fills");
                   row.count("count", fillet.count, "how many are cut alike");
                   row.counts("at", fillet.at, "which gaps, from 0, the one at the from post");
                   row.length("length", fillet.length, "along its centre line, from cut to cut");
                   row.length("overall", fillet.overall, "tip to tip");
               });
}

void describe(Sheet& sheet, const Bracket& bracket) {
    sheet.word("end", words(bracket.end), "from or to");
    sheet.word("group", words(bracket.group), "upper or lower");
    sheet.word("leg", words(bracket.leg), "which way the leg on the post is turned");
    sheet.over_square("included_deg", bracket.over_square, "between the legs, on the inside");
    sheet.over_square("bend_deg", -bracket.over_square, "how far the plate is bent from flat");
    sheet.word("post_driver", bracket.driver_clear ? "clear" : "blocked",
               "whether a straight driver gets home at the screw in the post");
    sheet.length("mark_height", bracket.mark_height,
                 "of the group's underside at the face, plumb above the surface that the post stands on");
}

void describe(Sheet& sheet, const Job& job, const Section& section, const SectionResult& result) {
    sheet.word("kind", result.raked() ? "raked" : "level", "raked or level");
    sheet.word("build", job.builds[static_cast<std::size_t>(section.build.index)].id.name, "how it is made up");
    sheet.count("count", section.count.value, "how many sections alike");
    sheet.angle("rake_deg", result.slope, "of the rail itself over level");
    sheet.number("rake_in_12", result.slope < 0 ? -result.slope * 12 : result.slope * 12, "the rake as so much in 12");
    sheet.length("clear", result.clear, "level between the post faces, half-way up the pickets");
    sheet.length("clear_on_slope", result.clear_on_slope, "the same along the rake");
    sheet.length("lower_gap", result.lower_gap, "plumb, where it was left to the rules");
    sheet.length("floor_falls", result.floor_falls, "how far the floor that is named falls across the clear, plumb");
    sheet.list("members", result.members, "top to bottom",
               [](Sheet& row, const Member& member) { describe(row, member); });
    if (result.pickets)
        sheet.part("pickets", "the pickets of one section", [&](Sheet& part) { describe(part, *result.pickets); });
    std::vector<std::size_t> brackets(result.brackets.size());
    std::iota(brackets.begin(), brackets.end(), std::size_t{0});
    sheet.list("brackets", brackets, "from end first, upper group first", [&](Sheet& row, std::size_t i) {
        describe(row, result.brackets[i]);
        describe(row, result.fixings[i].seat);
        if (result.fixings[i].driving) describe(row, *result.fixings[i].driving);
    });
    sheet.list("screws", result.screws, "each screw that the build names, joint by joint",
               [](Sheet& row, const JointScrew& screw) {
                   row.word("joint", words(screw.joint), "its key in the build");
                   row.word("group", words(screw.group), "upper or lower");
                   if (screw.end) row.word("end", words(*screw.end), "from or to, of a bracket's screw");
                   describe(row, screw);
               });
    sheet.list("over_nosings", result.over_nosings, "the rail over each nosing that it passes",
               [](Sheet& row, const OverNosing& over) {
                   row.count("nosing", over.nosing, "its number, from 1");
                   row.part("upper", "the upper group",
                            [&](Sheet& part) { describe(part, over.upper, "plumb above the nosing"); });
                   if (over.lower)
                       row.part("lower", "the lower group",
                                [&](Sheet& part) { describe(part, *over.lower, "plumb above the nosing"); });
               });
    sheet.list("openings", result.openings, "each opening as a ball would find it",
               [](Sheet& row, const Opening& opening) {
                   row.word("kind", words(opening.kind),
                            "picket_gap, the largest between neighbours; post_gap; or under_rail");
                   if (opening.end) row.word("end", words(*opening.end), "at which end, of a post_gap");
                   row.count("tread", opening.tread,
                             "over which tread of the stair, of an under_rail; 0 is the floor at its foot");
                   row.length("sphere", opening.sphere, "the diameter of the largest ball that passes square through");
               });
    if (result.diagonals)
        sheet.part("diagonals", "of the assembled panel, between the facing edges of its rails", [&](Sheet& part) {
            part.length("from_foot", result.diagonals->from_foot,
                        "from the lower rail's from end to the upper rail's to end");
            part.length("to_foot", result.diagonals->to_foot,
                        "from the lower rail's to end to the upper rail's from end");
        });
}

void describe(Sheet& sheet, const BarResult& bar) {
    sheet.length("length", bar.length, "of the bar as bought");
    sheet.list("pieces", bar.pieces, "in the order in which they are cut", [](Sheet& row, const PieceOnBar& piece) {
        row.word("name", piece.name, "as the job calls it");
        row.length("at", piece.at, "where its first tip lies, from the bar's own end");
        row.length("length", piece.length, "from tip to tip; nested pieces overlap by their tips");
    });
    sheet.length("offcut", bar.offcut, "what is left beyond the last cut, tip to end, without the trim");
}

void describe(Sheet& sheet, const Stock& stock, const StockResult& result) {
    sheet.lengths("section", {stock.width(), stock.depth()}, "width and depth");
    std::vector<const BarResult*> bars;
    for (const BarResult& bar : result.bars) bars.insert(bars.end(), static_cast<std::size_t>(bar.times), &bar);
    sheet.list("bars", bars, "each bar to be bought", [](Sheet& row, const BarResult* bar) { describe(row, *bar); });
    const auto total = [&](const char* key, double value, const char* about) {
        if (stock.prices.empty())
            sheet.length(key, value, about);
        else
            sheet.number(key, value, about);
    };
    total("bought", result.bought, "length of all bars together; their price, where the stock has prices");
    total("bound", result.bound, "what no plan laid out like this is under");
    sheet.truth("proven", result.proven, "whether bought is the least there is: it equals the bound");
    sheet.length("total_length", stock.prices.empty() ? std::nullopt : std::optional(result.total_length),
                 "length of all bars together, where the stock has prices");
}

}  // namespace

void describe(Sheet& sheet, const Job& job, const Solution& solution) {
    sheet.word("job", job.title, "the job's title");
    sheet.word("units", job.units == Unit::inch ? "in" : "mm", "the unit of every length");
    sheet.named(
        "stairs", solution.stairs.size(), [&](std::size_t i) -> std::string_view { return job.stairs[i].id.name; },
        "each stair, as measured", [&](Sheet& part, std::size_t i) { describe(part, solution.stairs[i]); });
    sheet.named(
        "posts", solution.posts.size(), [&](std::size_t i) -> std::string_view { return job.posts[i].id.name; },
        "each post and the rails that meet it",
        [&](Sheet& part, std::size_t i) {
            const PostResult& post = solution.posts[i];
            part.length("base", post.base(), "height of the surface that it stands on above its stair's floor");
            part.list("rails", post.rails, "in the order of the sections", [&](Sheet& row, const RailAtPost& rail) {
                row.word("section", job.sections[static_cast<std::size_t>(rail.section)].id.name, "whose rail it is");
                row.word("end", words(rail.end), "from or to");
                row.word("group", words(rail.group), "upper or lower");
                describe(row, rail.heights, "plumb above the surface that the post stands on, at the face met");
            });
        });
    sheet.named(
        "sections", solution.sections.size(),
        [&](std::size_t i) -> std::string_view { return job.sections[i].id.name; }, "each section",
        [&](Sheet& part, std::size_t i) { describe(part, job, job.sections[i], solution.sections[i]); });
    if (!solution.handrails.empty())
        sheet.named(
            "handrails", solution.handrails.size(),
            [&](std::size_t i) -> std::string_view { return job.handrails[i].id.name; }, "each handrail",
            [&](Sheet& part, std::size_t i) {
                const HandrailResult& result = solution.handrails[i];
                part.angle("rake_deg", result.slope, "of the rail over level");
                part.list("pieces", result.pieces, "its sticks, in the order in which a hand meets them walking up",
                          [](Sheet& row, const HandrailPiece& piece) {
                              row.word("name", words(piece.part),
                                       "handrail, top extension, top return or bottom return");
                              describe(row, piece.stick.piece, lengths_of(piece.stick.piece), piece.from_end,
                                       piece.to_end, piece.measure, {});
                          });
            });
    std::vector<std::size_t> planned(solution.stock.size());
    for (std::size_t s = 0; s < planned.size(); ++s) planned[s] = s;
    sheet.list("stock", planned, "what to buy and how to cut it, in the order of the job",
               [&](Sheet& row, std::size_t s) { describe(row, job.stock[s], solution.stock[s]); });
}

const char* words(const Corner& corner) {
    static constexpr const char* names[3][3] = {
        {"bottom right", "bottom", "bottom left"}, {"right", "none", "left"}, {"top right", "top", "top left"}};
    return names[corner.top + 1][corner.left + 1];
}

const char* words(End end) { return end == End::from ? "from" : "to"; }

const char* words(Group group) { return group == Group::upper ? "upper" : "lower"; }

const char* words(Leg leg) { return leg == Leg::up ? "up" : "down"; }

const char* words(Opening::Kind kind) {
    switch (kind) {
        case Opening::Kind::picket_gap: return "picket_gap";
        case Opening::Kind::post_gap: return "post_gap";
        case Opening::Kind::under_rail: return "under_rail";
    }
    return "";
}

const char* words(Reaching reaching) {
    switch (reaching) {
        case Reaching::long_there: return "long";
        case Reaching::short_there: return "short";
        case Reaching::square: return "square";
    }
    return "square";
}

}  // namespace rakewright
