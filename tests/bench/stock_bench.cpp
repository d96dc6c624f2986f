#include <algorithm>
#include <chrono>
#include <cstdio>
#include <vector>

#include "../../solver/stock/plan.hpp"

// Cutting stock: 30 sizes of 10 to 80 in, 1 to 40 of each, out of 96, 144 and 192 in with a kerf of 1/8 in, in
// eighths: how many of 100 plans are proven, and how long they take.

namespace {

using namespace rakewright;

std::uint64_t state = 0;
std::uint64_t next() {  // splitmix64
    std::uint64_t z = (state += 0x9E3779B97F4A7C15ULL);
    z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9ULL;
    z = (z ^ (z >> 27)) * 0x94D049BB133111EBULL;
    return z ^ (z >> 31);
}

Cutting cutting_of(std::uint64_t seed, int to_the_inch) {
    state = seed;
    Cutting cutting{{}, {{0, 0, to_the_inch / 8}}, {}};
    for (int i = 0; i < 30; ++i) {
        const Whole length =
            10 * to_the_inch + static_cast<Whole>(next() % static_cast<std::uint64_t>(70 * to_the_inch));
        cutting.pieces.push_back({length + to_the_inch / 8, 1 + static_cast<int>(next() % 40), 0, false});
    }
    for (const int length : {96, 144, 192}) cutting.bars.push_back({length * to_the_inch, length});
    return cutting;
}

void run(int to_the_inch) {
    std::vector<double> times;
    int proven = 0, worse = 0;
    for (std::uint64_t seed = 1; seed <= 100; ++seed) {
        const Cutting cutting = cutting_of(seed, to_the_inch);
        const auto start = std::chrono::steady_clock::now();
        const CuttingPlan plan = plan_of(cutting);
        times.push_back(std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count());
        proven += plan.proven() ? 1 : 0;
        worse += plan.cost > first_fit_decreasing(cutting).cost ? 1 : 0;
        if (!plan.proven())
            std::printf("  seed %d: %lld bought, bound %lld\n", static_cast<int>(seed),
                        static_cast<long long>(plan.cost), static_cast<long long>(plan.bound));
    }
    std::sort(times.begin(), times.end());
    std::printf(
        "1/%d in: %d of 100 proven, %d worse than first-fit decreasing; median %.1f ms, 95th %.1f ms, most %.1f ms\n",
        to_the_inch, proven, worse, times[50], times[94], times[99]);
}

}  // namespace

int main() {
    for (const int to_the_inch : {8, 32, 8192}) run(to_the_inch);
}
