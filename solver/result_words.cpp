#include "solution_sheet.hpp"

namespace rakewright {

const char* words(const Corner& corner) {
    static constexpr const char* names[3][3] = {
        {"bottom right", "bottom", "bottom left"}, {"right", "none", "left"}, {"top right", "top", "top left"}};
    return names[corner.top + 1][corner.left + 1];
}

const char* words(End end) { return end == End::from ? "from" : "to"; }

const char* words(Group group) { return group == Group::upper ? "upper" : "lower"; }

const char* words(Spacing::By by) {
    switch (by) {
        case Spacing::By::fewest: return "fewest";
        case Spacing::By::alike: return "alike";
        case Spacing::By::block: return "block";
    }
    return "";
}

const char* words(Centre centre) { return centre == Centre::picket ? "picket" : "gap"; }

const char* words(Stuff stuff) {
    switch (stuff) {
        case Stuff::member: return "member";
        case Stuff::picket: return "picket";
        case Stuff::round_picket: return "round picket";
        case Stuff::foot: return "foot";
        case Stuff::fillet: return "fillet";
        case Stuff::handrail: return "handrail";
        case Stuff::round_handrail: return "round handrail";
    }
    return "";
}

const char* words(FootPast past) {
    switch (past) {
        case FootPast::lower_rail: return "lower rail";
        case FootPast::floor: return "floor";
        case FootPast::nosing_line: return "nosing line";
        case FootPast::string: return "string";
    }
    return "";
}

const char* words(Leg leg) { return leg == Leg::up ? "up" : "down"; }

const char* words(SideSeen side) { return side == SideSeen::left ? "left" : "right"; }

const char* words(LaidOn laid) {
    switch (laid) {
        case LaidOn::flat: return "flat";
        case LaidOn::edge: return "edge";
        case LaidOn::flat_against_block: return "flat against a block";
        case LaidOn::edge_against_block: return "edge against a block";
        case LaidOn::none: return "none";
    }
    return "none";
}

const char* words(Opening::Kind kind) {
    switch (kind) {
        case Opening::Kind::picket_gap: return "picket_gap";
        case Opening::Kind::post_gap: return "post_gap";
        case Opening::Kind::under_rail: return "under_rail";
        case Opening::Kind::over_string: return "over_string";
    }
    return "";
}

const char* words(AnchoredIn where) { return where == AnchoredIn::wood ? "wood" : "concrete"; }

const char* words(Reaching reaching) {
    switch (reaching) {
        case Reaching::long_there: return "long";
        case Reaching::short_there: return "short";
        case Reaching::square: return "square";
    }
    return "square";
}

}  // namespace rakewright
