#pragma once

#include "../bracket_list.hpp"
#include "../cut_list.hpp"

namespace rakewright {

/// What a line of the order is for. A stick is bought by its length in all; the others by the piece.
enum class Ordered { bar, stick, turned_picket, bracket, screw, post, base_plate, rod, cap };

/// What a section is like: a rectangle, a circle, or anything else in the rectangle about it.
enum class SectionShape { rectangle, circle, profile };

/// One line of the order. `section` is what it is across: of a bracket's plate width and thickness, of a base plate its
/// two sides, of a screw or rod its diameter (0 where it is not given). `needed` counts
/// what goes into the job, for sticks the pieces; `spare` is to be bought besides.
struct OrderLine {
    Ordered what = Ordered::bar;
    SectionShape shape = SectionShape::rectangle;
    CrossSection section;
    std::string nominal;                 // a post's timber size, as the job has it
    std::optional<double> length;        // of one, where it is bought by it; of a base plate its thickness
    std::optional<double> in_all;        // of sticks: tip to tip together
    std::optional<double> reaches;       // of posts: the top of the highest rail on any, plumb above what it stands on
    std::optional<BracketKind> bracket;  // of brackets
    std::optional<CrossSection> holes;   // of base plates: centre to centre, both ways
    std::optional<double> hole;          // of base plates: the holes' diameter
    int needed = 0, spare = 0;

    int quantity() const { return needed + spare; }
};

/// What a solved job needs, its stock planned: bars, then sticks of sections that no stock is given for, turned
/// pickets, brackets, screws, posts with their plates and rods, and caps, each in the order of the job. Nothing if the
/// job does not ask for it.
std::vector<OrderLine> order_list(const Job& job, const Solution& solution);

}  // namespace rakewright
