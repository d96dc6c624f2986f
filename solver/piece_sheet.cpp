#include "piece_sheet.hpp"

#include "solution_sheet.hpp"

namespace rakewright {
namespace {

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

void describe(Sheet& sheet, const EndCut& cut, const std::optional<SawReach>& reach, const std::optional<Cope>& cope,
              const CrossSection& section) {
    sheet.part("flat", "bottom face on the saw table, a side against the fence",
               [&](Sheet& part) { describe(part, cut.flat); });
    sheet.part("edge", "a side on the table, bottom or top against the fence",
               [&](Sheet& part) { describe(part, cut.edge); });
    sheet.word("long_point", words(cut.long_point),
               "the edge or corner that the cut leaves longest, seen from the from end");
    describe_reach(sheet, "reach", reach);
    if (reach && held_against_block(reach->laid))
        sheet.part("against_block", "what the saw is set to where the piece is held square to the fence",
                   [&](Sheet& part) { describe(part, reach->setting); });
    if (cope)
        sheet.part("cope", "at a round post: how the end is hollowed; the cut is of the plane that touches the post",
                   [&](Sheet& part) { describe(part, *cope, section); });
}

}  // namespace

SawAtEnds saw_at(const std::optional<SawLimits>& saw, const Piece& piece, const Copes& copes) {
    return {reach_of_end(saw, end_cut(piece, End::from), piece.section, copes[0].has_value()),
            reach_of_end(saw, end_cut(piece, End::to), piece.section, copes[1].has_value())};
}

void describe_reach(Sheet& sheet, const char* key, const std::optional<SawReach>& reach) {
    if (reach)
        sheet.word(
            key, words(reach->laid),
            "how the job's saw reaches it: flat, edge, flat against a block or edge against a block, held square "
            "to the fence; or none");
}

StickLengths lengths_of(const Piece& piece) {
    return {length(piece), edge_length(piece, {0, 1}), edge_length(piece, {0, -1}), overall(piece)};
}

void describe(Sheet& sheet, const Piece& piece, const StickLengths& lengths, const EndCut& from_end,
              const EndCut& to_end, const SetOut& measure, const Copes& copes, const std::optional<SawLimits>& saw) {
    const SawAtEnds reach = saw_at(saw, piece, copes);
    sheet.length("width", piece.section.width, "level, across the rail");
    sheet.length("depth", piece.section.depth, "square to the rail");
    sheet.length("length", lengths.length, "along the centre line, from cut to cut");
    sheet.length("top_edge", lengths.top_edge, "along the middle of the top face");
    sheet.length("bottom_edge", lengths.bottom_edge, "along the middle of the bottom face");
    sheet.length("overall", lengths.overall,
                 "tip to tip along the axis: the shortest square-ended stick that it comes from");
    if (arrises_differ(piece, copes))
        sheet.part("arrises", "the four, where the edges do not tell them: an end is cut askew or coped",
                   [&](Sheet& part) {
                       const auto arris = [&](const char* key, const Corner& corner) {
                           part.length(key, length_over(piece, copes, spot_of(corner, piece.section)),
                                       "along that arris; left and right seen from the from end");
                       };
                       arris("top_left", {1, 1});
                       arris("top_right", {-1, 1});
                       arris("bottom_left", {1, -1});
                       arris("bottom_right", {-1, -1});
                   });
    sheet.part("from_end", "the cut at the from end",
               [&](Sheet& part) { describe(part, from_end, reach.from, copes[0], piece.section); });
    sheet.part("to_end", "the cut at the to end",
               [&](Sheet& part) { describe(part, to_end, reach.to, copes[1], piece.section); });
    sheet.part("measure", "what to set out on the stick", [&](Sheet& part) {
        part.word("edge", words(measure.edge), "the edge to measure along");
        part.word("from", words(measure.from), "how the from end lies on that edge: long, short or square");
        part.word("to", words(measure.to), "how the to end lies there");
        part.length("length", measure.length, "along that edge");
    });
}

}  // namespace rakewright
