#pragma once

#include <algorithm>
#include <cstdint>

#include "../../solver/stock/cutting.hpp"

namespace rakewright::tests {

/// Draws alike everywhere (splitmix64).
class CuttingDraw {
  public:
    explicit CuttingDraw(std::uint64_t seed) : seed_(seed) {}
    /// From 0 up to and without `end`.
    Whole under(Whole end) {
        std::uint64_t z = (seed_ += 0x9E3779B97F4A7C15ULL);
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9ULL;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBULL;
        return static_cast<Whole>((z ^ (z >> 31)) % static_cast<std::uint64_t>(end));
    }

  private:
    std::uint64_t seed_;
};

/// Cutting stock for the benches: 30 sizes of 10 to 80 in, 1 to 40 of each, out of 96, 144 and 192 in with a kerf of
/// 1/8 in, in so many parts to the inch.
inline Cutting random_cutting(std::uint64_t seed, int to_the_inch) {
    CuttingDraw draw(seed);
    Cutting cutting{{}, {{0, 0, to_the_inch / 8}}, {}};
    for (int i = 0; i < 30; ++i) {
        const Whole length = 10 * to_the_inch + draw.under(70 * to_the_inch);
        cutting.pieces.push_back({length + to_the_inch / 8, 1 + static_cast<int>(draw.under(40)), 0, false});
    }
    for (const int length : {96, 144, 192}) cutting.bars.push_back({length * to_the_inch, length});
    return cutting;
}

/// The same at prices that do not follow the lengths (of our invention).
inline Cutting by_price(Cutting cutting) {
    const Whole prices[] = {1051, 1439, 2017};
    for (std::size_t b = 0; b < cutting.bars.size(); ++b) cutting.bars[b].cost = prices[b];
    return cutting;
}

/// A house: 5 to 15 sizes of 8 to 90 in by the sixteenth, 80 pieces at most, out of one to four lengths with a kerf of
/// 1/8 in and a trim of 1/4 in at each end, in the parts that jobs are counted in.
inline Cutting random_house(std::uint64_t seed, bool priced) {
    CuttingDraw draw(seed);
    constexpr Whole inch = 6400000;
    Cutting cutting{{}, {{0, 0, inch / 8}}, {}};
    int left = 80;
    for (Whole kinds = 5 + draw.under(11); kinds > 0 && left > 0; --kinds) {
        const int count = std::min(left, 1 + static_cast<int>(draw.under(12)));
        left -= count;
        cutting.pieces.push_back({8 * inch + draw.under(82 * 16) * (inch / 16) + inch / 8, count, 0, false});
    }
    const Whole lengths[] = {96, 120, 144, 192};
    for (Whole i = draw.under(4); i < 4; ++i)
        cutting.bars.push_back({lengths[i] * inch - inch / 2,
                                priced ? lengths[i] * 100 - 800 + draw.under(2300) : lengths[i] * inch});
    return cutting;
}

}  // namespace rakewright::tests
