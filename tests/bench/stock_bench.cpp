#include <algorithm>
#include <chrono>
#include <cstdio>
#include <vector>

#include "../../solver/stock/plan.hpp"
#include "../support/random_cutting.hpp"

// Random cuttings: how many of 100 plans are proven, and how long they take.

namespace {

using namespace rakewright;

void run(int to_the_inch) {
    std::vector<double> times;
    int proven = 0, worse = 0;
    for (std::uint64_t seed = 1; seed <= 100; ++seed) {
        const Cutting cutting = tests::random_cutting(seed, to_the_inch);
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
