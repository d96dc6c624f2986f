#include <algorithm>
#include <chrono>
#include <cstdio>
#include <vector>

#include "../../solver/stock/plan.hpp"
#include "../support/random_cutting.hpp"

// Random cuttings: how many of 100 plans are proven, how far the others may be from the least, and how long they take.

namespace {

using namespace rakewright;

template <class Make>
void run(const char* name, const Make& cutting_of) {
    std::vector<double> times;
    int proven = 0, worse = 0;
    double gap = 0;
    for (std::uint64_t seed = 1; seed <= 100; ++seed) {
        const Cutting cutting = cutting_of(seed);
        const auto start = std::chrono::steady_clock::now();
        const CuttingPlan plan = plan_of(cutting);
        times.push_back(std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count());
        proven += plan.proven() ? 1 : 0;
        worse += plan.cost > first_fit_decreasing(cutting).cost ? 1 : 0;
        gap = std::max(gap, static_cast<double>(plan.cost - plan.bound) / static_cast<double>(plan.cost));
        if (!plan.proven())
            std::printf("  seed %d: %lld bought, bound %lld\n", static_cast<int>(seed),
                        static_cast<long long>(plan.cost), static_cast<long long>(plan.bound));
    }
    std::sort(times.begin(), times.end());
    std::printf("%s: %d of 100 proven, the others within %.3f %%, %d worse than first-fit decreasing; median %.1f ms, "
                "95th %.1f ms, most %.1f ms\n",
                name, proven, 100 * gap, worse, times[50], times[94], times[99]);
}

}  // namespace

int main() {
    using tests::random_cutting, tests::by_price, tests::random_house;
    run("houses", [](std::uint64_t seed) { return random_house(seed, false); });
    run("houses by price", [](std::uint64_t seed) { return random_house(seed, true); });
    run("1/8 in", [](std::uint64_t seed) { return random_cutting(seed, 8); });
    run("1/32 in", [](std::uint64_t seed) { return random_cutting(seed, 32); });
    run("1/8192 in", [](std::uint64_t seed) { return random_cutting(seed, 8192); });
    run("1/8 in by price", [](std::uint64_t seed) { return by_price(random_cutting(seed, 8)); });
    run("1/8192 in by price", [](std::uint64_t seed) { return by_price(random_cutting(seed, 8192)); });
}
