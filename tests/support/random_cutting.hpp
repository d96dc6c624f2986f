#pragma once

#include "../../solver/stock/cutting.hpp"

namespace rakewright::tests {

/// Cutting stock for the benches: 30 sizes of 10 to 80 in, 1 to 40 of each, out of 96, 144 and 192 in with a kerf of
/// 1/8 in, in so many parts to the inch. A seed gives the same cutting everywhere (splitmix64).
inline Cutting random_cutting(std::uint64_t seed, int to_the_inch) {
    const auto next = [&seed] {
        std::uint64_t z = (seed += 0x9E3779B97F4A7C15ULL);
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9ULL;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBULL;
        return z ^ (z >> 31);
    };
    Cutting cutting{{}, {{0, 0, to_the_inch / 8}}, {}};
    for (int i = 0; i < 30; ++i) {
        const Whole length =
            10 * to_the_inch + static_cast<Whole>(next() % static_cast<std::uint64_t>(70 * to_the_inch));
        cutting.pieces.push_back({length + to_the_inch / 8, 1 + static_cast<int>(next() % 40), 0, false});
    }
    for (const int length : {96, 144, 192}) cutting.bars.push_back({length * to_the_inch, length});
    return cutting;
}

}  // namespace rakewright::tests
