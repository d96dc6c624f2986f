#pragma once

#include "even_example.hpp"

// Builds whose pickets are not square sticks between two rails: on the side of the rails, or round and bored in.

namespace rakewright::tests {

/// A wide cap on a rail on edge, and a lower rail as thick; pickets 1 1/2 square on their left side, heads 1/8 under
/// the cap, feet 1 past the lower rail, bevelled at 45.
inline Build face_build() {
    Build build;
    build.id = called("screwed");
    build.height = 36;
    build.upper = {{"cap", 5.5, 1}, {"top rail", 1.5, 3.5}};
    build.lower = {{"bottom rail", 1.5, 3.5}};
    build.lower_gap = LowerGap{3, false};
    build.play = 0.0625;
    build.pickets = square_pickets();
    build.pickets->fixed = PicketsFixed::face;
    build.pickets->past = PicketPast{-0.125, 1, {}};
    build.pickets->lower_end = LowerEnd{LowerEnd::Cut::bevel, in_degrees(45), {}};
    return build;
}

/// The same without a lower rail, feet parallel to the rail and 8 down.
inline Build string_build() {
    Build build = face_build();
    build.lower.clear();
    build.lower_gap.reset();
    build.pickets->past = PicketPast{0, 8, {}};
    build.pickets->lower_end = LowerEnd{LowerEnd::Cut::rail, {}, {}};
    return build;
}

/// Round bars 3/4 thick, bored 1 into the upper rail and 1/2 into the lower one.
inline Build round_build() {
    Build build = square_build();
    build.upper = {{"top rail", 2.5, 2}};
    build.pickets->shape = PicketShape::round;
    build.pickets->width = 0.75;
    build.pickets->depth = 0.75;
    build.pickets->plough = {1, 0.5};
    return build;
}

}  // namespace rakewright::tests
