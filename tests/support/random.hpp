#pragma once

#include <cstdint>
#include <random>
#include <string_view>

namespace rakewright::tests {

/// Numbers that are drawn alike by every compiler and library: seeded by a name, never by the clock.
class Random {
  public:
    explicit Random(std::string_view name) {
        std::uint64_t seed = 14695981039346656037u;
        for (const char c : name) seed = (seed ^ static_cast<unsigned char>(c)) * 1099511628211u;
        engine_.seed(seed);
    }

    /// From `low` up to and without `high`.
    double uniform(double low, double high) { return low + (high - low) * (static_cast<double>(engine_() >> 11) * 0x1p-53); }

    /// A whole number from `least` to `most`, both included.
    int whole(int least, int most) { return least + static_cast<int>(engine_() % static_cast<std::uint64_t>(most - least + 1)); }

  private:
    std::mt19937_64 engine_;
};

}  // namespace rakewright::tests
