#include <chrono>
#include <cstdio>
#include <string>

#include "../../solver/stock/plan.hpp"
#include "../oracle/arc_flow.hpp"
#include "../support/random_cutting.hpp"

// The cuttings of stock_bench, in eighths, by our plan and by a general integer-programming solver in one run.
// arc_flow_bench [HOW MANY] [MOST SECONDS OF THE OTHER EACH]: 2 and 30 if left out.

namespace {

using namespace rakewright;

/// A result, and how many milliseconds it took.
template <class Make>
auto timed(const Make& make, double& milliseconds) {
    const auto start = std::chrono::steady_clock::now();
    auto made = make();
    milliseconds = std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count();
    return made;
}

}  // namespace

int main(int argc, char** argv) {
    const int how_many = argc > 1 ? std::stoi(argv[1]) : 2, seconds = argc > 2 ? std::stoi(argv[2]) : 30;
    for (int seed = 1; seed <= how_many; ++seed) {
        const Cutting cutting = tests::random_cutting(static_cast<std::uint64_t>(seed), 8);
        double ours = 0, theirs = 0;
        const CuttingPlan plan = timed([&] { return plan_of(cutting); }, ours);
        const tests::ArcFlow flow = timed([&] { return tests::arc_flow(cutting, seconds); }, theirs);
        std::printf("seed %d: plan %lld, bound %lld, %.1f ms; flow of %d columns ", seed,
                    static_cast<long long>(plan.cost), static_cast<long long>(plan.bound), ours, flow.columns);
        if (flow.found)
            std::printf("%.0f, bound %.1f%s, %.0f ms\n", flow.cost, flow.bound, flow.proven ? ", proven" : "", theirs);
        else
            std::printf("found none, bound %.1f, %.0f ms\n", flow.bound, theirs);
        std::fflush(stdout);
    }
}
