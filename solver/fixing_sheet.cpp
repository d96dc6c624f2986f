#include "fixing_sheet.hpp"

namespace rakewright {

void describe(Sheet& sheet, const Seat& seat) {
    sheet.lengths("screw_height", seat.screw_heights,
                  "of each screw in the post at its face, plumb above the surface that the post stands on");
    sheet.lengths("screw_from_mark", seat.screw_from_mark,
                  "of each screw in the post, along the face from where the middle of the underside meets it, the way "
                  "the leg is turned");
    if (const std::optional<PostMortise>& mortise = seat.mortise)
        sheet.part("mortise", "what lets the leg into the post", [&](Sheet& part) {
            part.length("width", mortise->width, "across");
            part.length("height", mortise->height, "along the face, the bend with it");
            part.length("depth", mortise->depth, "square to the face");
            part.length("top", mortise->top,
                        "its upper edge, along the face, above the underside's mark; below it negative");
            part.length("bottom", mortise->bottom, "its lower edge, likewise");
        });
    sheet.word("rail_seat", words(seat.possible),
               "what can be cut in the rail: the seat that the job asks for, or what is left of it");
    if (const std::optional<RailCut>& cut = seat.rail_cut)
        sheet.part("rail_cut", "what lets the leg into the rail", [&](Sheet& part) {
            part.length("width", cut->width, "across the rail");
            part.length("length", cut->length,
                        "on the slope, from the rail's own end along any edge of its bottom face");
            part.length("depth", cut->depth, "square to the rail");
        });
    sheet.length("beside", seat.beside(),
                 "wood of the lowest member beside the leg under it, on the side and at the place where that is least; "
                 "negative where the leg stands out");
    sheet.length("beside_left", seat.beside_left, "likewise to its left, seen looking at the post's face");
    sheet.length("beside_right", seat.beside_right, "likewise to its right");
}

void describe(Sheet& sheet, const Driving& driving) {
    sheet.word("rail_driver", driving.rail_clear ? "clear" : "blocked",
               "whether a straight driver, square to the rail, gets home at the screws in the rail, the bracket on the "
               "post");
    const bool met = driving.rail.meets != Meets::nothing;
    sheet.length("rail_room", met ? std::optional(driving.rail.length) : std::nullopt,
                 "how far from the leg it is free there, at the hole where that is least; it needs its reach, its body "
                 "and the screw");
    if (met) sheet.word("rail_room_to", words(driving.rail.meets), "what it meets first");
    sheet.word("order", words(driving.order),
               "in which order both screws can be driven straight: post first, rail first or none");
    if (driving.picket_after)
        sheet.truth("picket_after", true, "the first picket has to go in after: it stands in the second screw's way");
}

void describe(Sheet& sheet, const JointScrew& screw) {
    sheet.count("hole", screw.hole > 0 ? std::optional(screw.hole) : std::nullopt,
                "of a bracket's screw, from 1 in the order of the job");
    sheet.count("count", screw.count, "how many stand side by side");
    sheet.length("length", screw.length, "of the screw");
    sheet.length("diameter", screw.diameter, "of its thread");
    sheet.list("passes", screw.hold.passed, "what it is in, in the order in which it meets it",
               [](Sheet& row, const Passed& passed) {
                   row.word("piece", passed.name, "a member by its name, bracket, picket or post");
                   row.length("length", passed.length, "of the screw in it");
                   row.length("end", passed.room ? passed.room->end : std::nullopt,
                              "how near it comes to an end or splice of it, along the grain");
                   row.length("edge", passed.room ? passed.room->edge : std::nullopt,
                              "how near it comes to a side of it that it does not go in or out by");
                   if (passed.room && passed.room->end_grain)
                       row.truth("end_grain", true, "it is driven into its end");
               });
    sheet.list("pilots", screw.pilots, "the pilot hole in each of them",
               [](Sheet& row, const Pilot& pilot) {
                   row.word("why", words(pilot.why),
                            "why it wants one: near end, near edge, end grain, hardwood or thick screw; or none");
                   row.length("hole", pilot.why == PilotFor::nothing ? std::nullopt : std::optional(pilot.hole),
                              "its diameter");
                   row.word("still_near", words_of_near(pilot),
                            "whether drilled it is still too near: an end, an edge, both; or neither");
               });
    if (const std::optional<RowMarks>& marks = screw.row)
        sheet.part("row", "where those of a row stand, between members", [&](Sheet& part) {
            part.word("from", marks->members[0], "the member that their heads lie on");
            part.word("into", marks->members[1], "the member that lies next");
            part.word("hook", marks->hook == End::from ? "from" : "to", "at which end the tape is hooked");
            part.lengths("places", marks->places, "from there along the middle of the face that their heads lie on");
        });
    sheet.length("hold", screw.hold.hold, "of the screw in what it holds in: what comes behind the first it passes");
    sheet.length("longest", screw.hold.longest, "the longest whose point does not come out");
    sheet.word("comes_out", words(screw.hold.comes_out),
               "through which face its point comes out: nowhere, side, end, top, bottom or far face");
}

const char* words(RailSeat seat) {
    switch (seat) {
        case RailSeat::rabbet: return "rabbet";
        case RailSeat::mortise: return "mortise";
        case RailSeat::surface: break;
    }
    return "surface";
}

const char* words(Meets meets) {
    switch (meets) {
        case Meets::nothing: break;
        case Meets::post: return "post";
        case Meets::picket: return "picket";
        case Meets::lower_rail: return "lower rail";
        case Meets::rail: return "rail";
        case Meets::string: return "string";
        case Meets::tread: return "tread";
        case Meets::floor: return "floor";
        case Meets::nosing_line: return "nosing line";
    }
    return "nothing";
}

const char* words(DrivingOrder order) {
    switch (order) {
        case DrivingOrder::post_first: return "post first";
        case DrivingOrder::rail_first: return "rail first";
        case DrivingOrder::none: break;
    }
    return "none";
}

const char* words(Joint joint) {
    switch (joint) {
        case Joint::picket_to_upper: return "picket_to_upper";
        case Joint::picket_to_lower: return "picket_to_lower";
        case Joint::between_members: return "between_members";
        case Joint::apron_to_lower: return "apron_to_lower";
        case Joint::post_leg: return "post_leg";
        case Joint::rail_leg: break;
    }
    return "rail_leg";
}

const char* words(PilotFor why) {
    switch (why) {
        case PilotFor::nothing: break;
        case PilotFor::end: return "near end";
        case PilotFor::edge: return "near edge";
        case PilotFor::end_grain: return "end grain";
        case PilotFor::hardwood: return "hardwood";
        case PilotFor::thick: return "thick screw";
    }
    return "none";
}

const char* words_of_near(const Pilot& pilot) {
    if (pilot.near_end) return pilot.near_edge ? "both" : "end";
    return pilot.near_edge ? "edge" : "neither";
}

const char* words(ComesOut out) {
    switch (out) {
        case ComesOut::nowhere: break;
        case ComesOut::side: return "side";
        case ComesOut::end: return "end";
        case ComesOut::top: return "top";
        case ComesOut::bottom: return "bottom";
        case ComesOut::far_face: return "far face";
    }
    return "nowhere";
}

}  // namespace rakewright
