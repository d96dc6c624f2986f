#include "solution_sheet.hpp"

#include <array>
#include <map>
#include <numeric>

#include "crew/crew_sheet.hpp"
#include "cut_list.hpp"
#include "fixing_sheet.hpp"
#include "post_sheet.hpp"
#include "rail/splice.hpp"
#include "piece_sheet.hpp"
#include "spacing_sheet.hpp"
#include "stock_sheet.hpp"

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

/// The marks of the saw's table, of every use of a piece.
class PieceMarks {
 public:
    explicit PieceMarks(const std::vector<CutPiece>& pieces) {
        for (std::size_t i = 0; i < pieces.size(); ++i)
            for (const Use& use : pieces[i].uses) marks_[key(pieces[i].stuff, use)] = mark_of(i);
    }

    /// None of a picket whose length is not known.
    void describe_one(Sheet& sheet, Stuff stuff, const Use& use) const {
        if (const auto mark = marks_.find(key(stuff, use)); mark != marks_.end())
            sheet.word("mark", mark->second, "as in the saw's table");
    }

 private:
    static std::array<int, 4> key(Stuff stuff, const Use& use) {
        if (stuff == Stuff::round_handrail) stuff = Stuff::handrail;
        return {static_cast<int>(stuff), use.of, use.index, use.part};
    }

    std::map<std::array<int, 4>, std::string> marks_;
};

/// A section's own pieces among the marks.
struct SectionMarks {
    const PieceMarks& marks;
    int section = 0;

    void describe_one(Sheet& sheet, Stuff stuff, std::size_t index, std::size_t part = 0) const {
        marks.describe_one(sheet, stuff, {section, static_cast<int>(index), static_cast<int>(part)});
    }
};

void describe(Sheet& sheet, const Member& member, std::size_t m, const SectionMarks& marks,
              const std::optional<SawLimits>& saw) {
    if (member.splices.empty()) marks.describe_one(sheet, Stuff::member, m);
    sheet.word("name", member.name, "as the job calls it");
    sheet.word("group", words(member.group), "upper or lower");
    describe(sheet, member.stick.piece, {member.length, member.top_edge, member.bottom_edge, member.overall},
             member.from_end, member.to_end, member.measure, member.copes, saw);
    const auto cost = [&](std::size_t end) {
        return member.shortened[end] > 0 ? std::optional(member.shortened[end]) : std::nullopt;
    };
    sheet.length("from_shortened", cost(0), "what a bracket leg on the post takes off the from end, along the member");
    sheet.length("to_shortened", cost(1), "what a bracket leg on the post takes off the to end");
    sheet.list("splices", member.splices,
               "where it is put together of shorter sticks, from its from end; the joints are plumb",
               [](Sheet& row, const Splice& splice) {
                   row.length("at", splice.at, "along its centre line, from its from end");
                   row.count("picket", splice.picket > 0 ? std::optional(splice.picket) : std::nullopt,
                             "the picket at whose centre it is, from 1");
                   row.count("foot", splice.foot > 0 ? std::optional(splice.foot) : std::nullopt,
                             "the foot over whose centre it is, from 1");
               });
    std::size_t part = 0;
    if (!member.splices.empty())
        sheet.list("spliced_of", pieces_of(member),
                   "its pieces, from its from end; they are cut as the pieces of the saw's table",
                   [&](Sheet& row, const MemberPiece& piece) {
                       marks.describe_one(row, Stuff::member, m, part++);
                       row.length("length", length(piece.piece), "along its centre line, from cut to cut");
                       row.length("overall", piece.overall, "tip to tip");
                   });
}

void describe(Sheet& sheet, const PicketPiece& piece, const std::optional<SawLimits>& saw) {
    sheet.count("count", piece.count, "how many are cut alike");
    sheet.counts("at", piece.at, "which pickets, from 1, counted from the from end");
    sheet.length("uphill_side", piece.uphill_side,
                 "plumb length of the side that looks up the rail, in its middle, ploughs included");
    sheet.length("downhill_side", piece.downhill_side,
                 "plumb length of the side that looks down the rail, in its middle, ploughs included");
    const auto across = [&](int left) {
        return piece.outer ? std::optional(edge_length(piece.piece, {left, 0})) : std::nullopt;
    };
    sheet.length("outer_side", across(piece.outer),
                 "of one with a bevelled foot: plumb length of the side away from the rail, in its middle");
    sheet.length("rail_side", across(-piece.outer), "of one with a bevelled foot: of the side that lies on the rail");
    sheet.length("overall", piece.overall, "tip to tip");
    const auto trimmed = [&](double Trim::*length) {
        return piece.trim ? std::optional((*piece.trim).*length) : std::nullopt;
    };
    sheet.length("lower_block", trimmed(&Trim::lower_block),
                 "what is left of a turned picket's lower block, plumb at its centre, plough included");
    sheet.length("upper_block", trimmed(&Trim::upper_block), "what is left of its upper block, likewise");
    sheet.length("off_lower", trimmed(&Trim::off_lower), "what is trimmed off its lower block, plumb at its centre");
    sheet.length("off_upper", trimmed(&Trim::off_upper), "what is trimmed off its upper block, likewise");
    const SawAtEnds reach = saw_at(saw, piece.piece);
    describe_reach(sheet, "foot_reach", reach.from);
    describe_reach(sheet, "head_reach", reach.to);
}

/// The groups whose rails pickets are marked on.
std::vector<Group> rails_marked(const Pickets& pickets) {
    std::vector<Group> groups;
    if (!pickets.upper.centres.empty()) groups.push_back(Group::upper);
    if (!pickets.lower.centres.empty()) groups.push_back(Group::lower);
    return groups;
}

void describe(Sheet& sheet, const Pickets& pickets, const SectionMarks& marks, const std::optional<SawLimits>& saw) {
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
    if (pickets.at_pitch && pickets.count > 0)
        sheet.list("first_holes", rails_marked(pickets),
                   "where to cut a rail that comes drilled, along the face that the pickets meet",
                   [&](Sheet& row, Group group) {
                       const Marks& on_rail = group == Group::upper ? pickets.upper : pickets.lower;
                       row.word("group", words(group), "upper or lower");
                       row.length("from", on_rail.first_centre(End::from),
                                  "from the cut at the from end to the first hole's centre");
                       row.length("to", on_rail.first_centre(End::to),
                                  "from the cut at the to end to the last hole's centre");
                   });
    if (pickets.slot)
        sheet.part("slot", "the hole in a punched channel", [&](Sheet& part) {
            part.length("length", pickets.slot->length, "along the rail: lengthened by the rake, clearance included");
            part.length("width", pickets.slot->width, "across the rail, clearance included");
        });
    if (pickets.hole)
        sheet.part("hole", "the hole that a round picket is bored into, plumb", [&](Sheet& part) {
            const auto deep = [](double depth) { return depth > 0 ? std::optional(depth) : std::nullopt; };
            part.length("diameter", pickets.hole->diameter, "the picket's");
            part.length("upper", deep(pickets.hole->upper),
                        "how deep in the upper group, plumb along the middle of the hole, the picket's tip included");
            part.length("lower", deep(pickets.hole->lower), "the same in what the pickets stand on");
        });
    if (pickets.beside)
        sheet.part("beside", "how pickets stand that are fixed to the side of the rail", [&](Sheet& part) {
            part.word("side", pickets.beside->left ? "left" : "right", "left or right, seen from the from end");
            part.length("off_centre", pickets.beside->off_centre, "level, from the rail's centre line to the pickets'");
            part.length("past_upper", pickets.beside->past.upper,
                        "plumb, from the top of the upper group's lowest member up to the head; negative below it");
            part.word("past", words(pickets.beside->foot),
                      "what the feet run down past: lower rail, floor, nosing line or string");
            part.length("past_lower", pickets.beside->past.lower,
                        "plumb, from its underside or top down to the foot's lowest point");
        });
    sheet.angle("cut_deg", pickets.cut, "of the head, off square: the rail's own rake");
    sheet.lengths("centres", pickets.centres, "level from the from post's face to each picket's centre");
    sheet.lengths("marks_upper", pickets.upper.centres,
                  "centres along the underside of the upper group, from its own from end; of pickets on the rail's "
                  "side, along that side's lower edge of the upper group's lowest member");
    sheet.lengths("marks_lower", pickets.lower.centres,
                  "centres along the top of the lower group, from its own from end; of pickets on the rail's side, "
                  "along that side's upper edge of the lower group's highest member");
    sheet.list("feet", pickets.feet, "where each picket stands on a tread", [](Sheet& row, const Foot& foot) {
        row.count("tread", foot.tread, "the tread's number, from 1");
        row.length("from_riser", foot.from_riser,
                   "level from the riser face under the tread's nosing to the picket's downhill face");
    });
    std::size_t index = 0;
    sheet.list("pieces", pickets.pieces, "equal pieces together, in order of first use",
               [&](Sheet& row, const PicketPiece& piece) {
                   marks.describe_one(row, Stuff::picket, index++);
                   describe(row, piece, saw);
               });
    index = 0;
    sheet.list("fillets", pickets.fillets, "strips that fill the ploughs between the pickets",
               [&](Sheet& row, const Fillet& fillet) {
                   marks.describe_one(row, Stuff::fillet, index++);
                   row.word("group", words(fillet.group), "whose plough it fills");
                   row.count("count", fillet.count, "how many are cut alike");
                   row.counts("at", fillet.at, "which gaps, from 0, the one at the from post");
                   row.length("length", fillet.length, "along its centre line, from cut to cut");
                   row.length("overall", fillet.overall, "tip to tip");
                   const SawAtEnds reach = saw_at(saw, fillet.piece);
                   describe_reach(row, "from_reach", reach.from);
                   describe_reach(row, "to_reach", reach.to);
               });
}

void describe(Sheet& sheet, const Blank& blank) {
    sheet.length("allowance", blank.allowance, "the bend allowance: how much of the plate's length goes into the bend");
    sheet.length("inside_setback", blank.inside_setback,
                 "from where the inner faces of the legs would meet to where the bend begins");
    sheet.length("setback", blank.setback, "from where the outer faces would meet to where the bend begins");
    sheet.length("deduction", blank.deduction,
                 "what the two legs, measured outside, are together longer than the blank");
    sheet.length("length", blank.length, "of the plate before it is bent");
    sheet.length("bend_start", blank.bend_start, "from the post leg's end to where the bend begins");
    sheet.length("bend_middle", blank.bend_middle, "from the post leg's end to the middle of the bend");
    sheet.length("bend_end", blank.bend_end, "from the post leg's end to where the bend ends");
    sheet.lengths("post_holes", blank.post_holes, "from the post leg's end to each hole's centre in that leg");
    sheet.lengths("rail_holes", blank.rail_holes, "from the post leg's end to each hole's centre in the rail leg");
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
    if (!bracket.square()) {
        sheet.angle("tilt_deg", bracket.tilt, "of the bend line, in which post face and underside meet, off level");
        if (bracket.tilt != 0)
            sheet.word("tilt_high", words(side_of(bracket.tilt)),
                       "which end of the bend line is the higher, seen looking at the face: left or right");
        sheet.angle("skew_deg", bracket.skew,
                    "of the rail leg, square to the bend line, off the rail's centre line, in the underside");
        if (bracket.skew != 0)
            sheet.word("skew_toward", words(side_of(bracket.skew)),
                       "to which side it runs off, seen looking at the post's face: left or right");
        sheet.length("mark_left", bracket.mark_left, "of the bend line at the left edge of the plate, as mark_height");
        sheet.length("mark_right", bracket.mark_right, "of the bend line at its right edge");
    }
    sheet.length("stands_off", bracket.stands_off,
                 "how far a round post's surface lies behind the post leg's farthest corner, square to the plate");
    if (bracket.blank)
        sheet.part("blank", "the plate before it is bent", [&](Sheet& part) { describe(part, *bracket.blank); });
}

void describe(Sheet& sheet, const Job& job, const Section& section, const SectionResult& result,
              const SectionMarks& marks) {
    const std::optional<SawLimits> saw = saw_limits(job);
    sheet.word("kind", result.raked() ? "raked" : "level", "raked or level");
    sheet.word("build", job.builds[static_cast<std::size_t>(section.build.index)].id.name, "how it is made up");
    sheet.count("count", section.count.value, "how many sections alike");
    sheet.angle("rake_deg", result.slope, "of the rail itself over level");
    sheet.number("rake_in_12", result.slope < 0 ? -result.slope * 12 : result.slope * 12, "the rake as so much in 12");
    sheet.length("clear", result.clear, "level between the post faces, half-way up the pickets");
    sheet.length("clear_on_slope", result.clear_on_slope, "the same along the rake");
    sheet.length("lower_gap", result.lower_gap, "plumb, where it was left to the rules");
    sheet.length("floor_falls", result.floor_falls, "how far the floor that is named falls across the clear, plumb");
    std::size_t index = 0;
    sheet.list("members", result.members, "top to bottom",
               [&](Sheet& row, const Member& member) { describe(row, member, index++, marks, saw); });
    if (result.pickets)
        sheet.part("pickets", "the pickets of one section",
                   [&](Sheet& part) { describe(part, *result.pickets, marks, saw); });
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
    index = 0;
    sheet.list("feet", result.feet, "the feet under the lower group", [&](Sheet& row, const RailFoot& foot) {
        marks.describe_one(row, Stuff::foot, index++);
        describe(row, foot);
    });
    if (const std::optional<StoryStick> stick = job.story_stick ? story_stick_of(result) : std::nullopt)
        sheet.part("story_stick",
                   "a strip laid along each rail, its zero plumb under the from post's face half-way up the pickets",
                   [&](Sheet& part) { describe(part, *stick); });
    sheet.list(
        "openings", result.openings, "each opening as a ball would find it", [](Sheet& row, const Opening& opening) {
            row.word("kind", words(opening.kind),
                     "picket_gap, the largest between neighbours; post_gap; under_rail; or over_string, under the "
                     "lower rail over a closed string");
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

void describe(Sheet& sheet, const Job& job, const Solution& solution, const CutPiece& piece) {
    sheet.word("name", names_of(piece), "as the job calls it, each name once");
    sheet.word("of", words(piece.stuff), "member, picket, round picket, foot, fillet, handrail or round handrail");
    sheet.count("count", piece.quantity, "how many in all");
    describe(sheet, piece.piece,
             {length(piece.piece), edge_length(piece.piece, {0, 1}), edge_length(piece.piece, {0, -1}), piece.overall},
             piece.from_end, piece.to_end, piece.measure, piece.copes, saw_limits(job));
    const bool of_handrail = is_handrail(piece.stuff);
    sheet.list("for", shares_of(job, solution, piece), "where they go, in the order of the job",
               [&](Sheet& row, const Share& share) {
                   const auto of = static_cast<std::size_t>(share.of);
                   row.word(of_handrail ? "handrail" : "section",
                            of_handrail ? job.handrails[of].id.name : job.sections[of].id.name, "its name");
                   row.count("count", share.count, "how many, sections that are alike counted");
               });
}

void describe(Sheet& sheet, const char* key, const std::vector<RimPoint>& rim) {
    sheet.list(
        key, rim,
        "where a round handrail that is not square there is cut, over one turn of its girth in equal parts, from "
        "the line underneath by the right side",
        [](Sheet& point, const RimPoint& at) {
            point.length("around", at.around,
                         "along the girth from the line on top, to the left positive, seen from the from end");
            point.length("along", at.along, "past the cut at the centre line, along the piece; shorter is negative");
        });
}

}  // namespace

void describe(Sheet& sheet, const Job& job, const Solution& solution) {
    sheet.word("job", job.title, "the job's title");
    sheet.word("units", job.units == Unit::inch ? "in" : "mm", "the unit of every length");
    sheet.named(
        "stairs", solution.stairs.size(), [&](std::size_t i) -> std::string_view { return job.stairs[i].id.name; },
        "each stair, as measured", [&](Sheet& part, std::size_t i) { describe(part, solution.stairs[i]); });
    describe_posts(sheet, job, solution);
    const std::vector<CutPiece> pieces = cut_list(job, solution);
    const PieceMarks marks(pieces);
    sheet.named(
        "sections", solution.sections.size(),
        [&](std::size_t i) -> std::string_view { return job.sections[i].id.name; }, "each section",
        [&](Sheet& part, std::size_t i) {
            describe(part, job, job.sections[i], solution.sections[i], {marks, static_cast<int>(i)});
        });
    if (!solution.handrails.empty())
        sheet.named(
            "handrails", solution.handrails.size(),
            [&](std::size_t i) -> std::string_view { return job.handrails[i].id.name; }, "each handrail",
            [&](Sheet& part, std::size_t i) {
                const HandrailResult& result = solution.handrails[i];
                part.angle("rake_deg", result.slope, "of the rail over level");
                int index = 0;
                part.list("pieces", result.pieces, "its sticks, in the order in which a hand meets them walking up",
                          [&](Sheet& row, const HandrailPiece& piece) {
                              marks.describe_one(row, Stuff::handrail, {static_cast<int>(i), index++});
                              row.word("name", words(piece.part),
                                       "handrail, top extension, top return or bottom return");
                              describe(row, piece.stick.piece, lengths_of(piece.stick.piece), piece.from_end,
                                       piece.to_end, piece.measure, {}, saw_limits(job));
                              if (!is_round(job.handrails[i].profile)) return;
                              describe(row, "from_outline", rim_of(piece.stick.piece, End::from));
                              describe(row, "to_outline", rim_of(piece.stick.piece, End::to));
                          });
            });
    std::size_t row_number = 0;
    if (job.piece_list)
        sheet.list("pieces", pieces,
                   "every piece of the job, equal ones together (turned over or end for end, never mirrored), in the "
                   "order of the saw's table",
                   [&](Sheet& row, const CutPiece& piece) {
                       row.word("mark", mark_of(row_number++), "as in the saw's table");
                       describe(row, job, solution, piece);
                   });
    sheet.list("spacings", solution.spacings, "ways of spacing the pickets of the whole job, where it asks for one",
               [&](Sheet& row, const SpacingChoice& choice) { describe(row, job, choice); });
    std::vector<std::size_t> planned(solution.stock.size());
    for (std::size_t s = 0; s < planned.size(); ++s) planned[s] = s;
    sheet.list("stock", planned, "what to buy and how to cut it, in the order of the job",
               [&](Sheet& row, std::size_t s) { describe(row, job.stock[s], solution.stock[s], pieces.size()); });
    describe_crew(sheet, job, solution);
}

}  // namespace rakewright
