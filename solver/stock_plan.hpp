#pragma once

#include "solution.hpp"

namespace rakewright {

/// Plans what to buy and how to cut it, for each of the job's `stock`, into `solution.stock`. The job must be solved
/// and not refused; what cannot be cut is refused in the findings. Does nothing to a job without `stock` and
/// `also_cut`. Sticks: members, pickets (not round ones, nor turned ones, which are bought as such), fillets, handrails
/// of a rectangle, `also_cut`.
///
/// What is modelled. Lengths are whole 6 400 000ths of the unit: pieces and kerfs rounded up, bars down. Pieces whose
/// ends both show one slant (parallel or opposed; a rectangular stick may be rolled and turned end for end, a square
/// one also by a quarter) nest in one row on a bar and share their cuts; pieces square at one end pair up head to head,
/// or close such a row. With the tops up only parallel slants down the sides and opposed ones across the top do, and so
/// for a handrail with recesses. Any other piece, and one with a coped end, takes its overall length. Between rows the piece on the left keeps its own
/// cut, and the row with the steepest cut lies last. A plan is laid out so and no other way, and the bound is for such
/// plans: another way of nesting could save a part of a tip.
void plan_stock(const Job& job, Solution& solution);

}  // namespace rakewright
