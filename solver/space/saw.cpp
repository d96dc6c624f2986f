#include "saw.hpp"

#include <cmath>

namespace rakewright {

EndCut end_cut(const Piece& piece, End end) {
    const Slant& cut = end == End::from ? piece.from : piece.to;
    const auto lying = [](double along_face, double across_face) {
        return SawSetting{along_face, across_face / std::sqrt(1 + along_face * along_face)};
    };
    return {lying(cut.per_left, cut.per_top), lying(cut.per_top, cut.per_left), long_point(piece, end)};
}

}  // namespace rakewright
