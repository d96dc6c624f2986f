#pragma once

#include "../cut_list.hpp"
#include "surface.hpp"

namespace rakewright {

/// Pieces to be painted that are alike: how many, and the surface of each, in square feet in inch jobs, in square
/// metres in mm jobs.
struct PaintedPiece {
    std::string mark;
    std::string name;
    int count = 0;
    Surface each;
    double in_all() const { return count * each.all(); }
};

/// The pieces of the cut list, in its order, and the job's `also_cut` behind them; their surface in all; and, where a
/// coverage is given, all coats of that paint, in gallons or litres.
struct PaintList {
    std::vector<PaintedPiece> pieces;
    Surface all;
    std::optional<double> volume;
};

/// The surface to prime and paint of a solved job: of its pieces as they come off the saw, all round, what later lies
/// against another included; not of posts, whose length is not known, nor of brackets.
PaintList paint_list(const Job& job, const Solution& solution);

}  // namespace rakewright
