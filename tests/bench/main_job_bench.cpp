#include <sys/resource.h>
#include <yaml-cpp/eventhandler.h>
#include <yaml-cpp/parser.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <sstream>

#include "../../cli/read/reader.hpp"
#include "../../cli/show/json.hpp"
#include "../../solver/check/judge.hpp"
#include "../../solver/solve.hpp"
#include "../support/rule_sets.hpp"

// Prints how long the main job takes: one raked section in memory, and a job of 10,000 sections from text to text beside the bare event
// parser on the same text. Read ratios taken in one run.

namespace {

using namespace rakewright;
using Clock = std::chrono::steady_clock;

/// The median of several runs, in seconds.
template <class Run>
double seconds(int runs, const Run& run) {
    std::vector<double> times;
    for (int i = 0; i < runs; ++i) {
        const auto start = Clock::now();
        run();
        times.push_back(std::chrono::duration<double>(Clock::now() - start).count());
    }
    std::nth_element(times.begin(), times.begin() + runs / 2, times.end());
    return times[static_cast<std::size_t>(runs / 2)];
}

class Empty : public YAML::EventHandler {
  public:
    void OnDocumentStart(const YAML::Mark&) override {}
    void OnDocumentEnd() override {}
    void OnNull(const YAML::Mark&, YAML::anchor_t) override {}
    void OnAlias(const YAML::Mark&, YAML::anchor_t) override {}
    void OnScalar(const YAML::Mark&, const std::string&, YAML::anchor_t, const std::string&) override {}
    void OnSequenceStart(const YAML::Mark&, const std::string&, YAML::anchor_t, YAML::EmitterStyle::value) override {}
    void OnSequenceEnd() override {}
    void OnMapStart(const YAML::Mark&, const std::string&, YAML::anchor_t, YAML::EmitterStyle::value) override {}
    void OnMapEnd() override {}
};

constexpr const char* builds =
    "builds:\n"
    "  square:\n"
    "    height: 36\n"
    "    upper: [{name: cap rail, width: 3 1/2, depth: 1 1/4}, {name: sub rail, width: 2 1/2, depth: 1 1/2}]\n"
    "    lower: [{name: bottom rail, width: 2 1/2, depth: 1 1/2}]\n"
    "    lower_gap: 1/2\n"
    "    play: 1/16\n"
    "    pickets: {width: 1 1/2, depth: 1 1/2, max_gap: 3 7/8}\n"
    "    bracket: {post_leg: 1 1/4, rail_leg: 2 1/2, width: 1 1/2, thickness: 1/8, post_hole: 3/4, post_seat: mortise}\n";

std::string job_text(int sections) {
    std::string text = "units: in\nstairs: {lake: {risers: 5, rise: 7 1/4, run: 11, nosing: 1}}\nposts:\n";
    for (int i = 0; i < sections; ++i) {
        const std::string number = std::to_string(i);
        text += "  foot" + number + ": {stair: lake, at: -5, size: 3 1/2}\n  head" + number + ": {stair: lake, at: 4, nosing: last, size: 4x4}\n";
    }
    text += std::string(builds) + "sections:\n";
    for (int i = 0; i < sections; ++i) {
        const std::string number = std::to_string(i);
        text += "  s" + number + ": {from: foot" + number + ", to: head" + number + ", build: square}\n";
    }
    return text;
}

/// One section in memory, over and over: its time in seconds.
double solve_one(const Job& job, const char* what) {
    constexpr int times = 20000;
    double sum = 0;
    const double each = seconds(9, [&] {
                            for (int i = 0; i < times; ++i) sum += solve(job).sections[0].clear;
                        }) /
                        times;
    const Solution solution = solve(job);
    const SectionResult& section = solution.sections[0];
    std::printf("one raked section %s, %d pickets, %zu brackets, from a job in memory: %.2f us\n", what,
                section.pickets->count, section.brackets.size(), each * 1e6);
    if (sum <= 0 || solution.refused()) std::puts("nothing was solved");
    return each;
}

/// Between square posts, between round ones, and askew between round ones that lean, the rail beside their centres.
void solve_one_of_each() {
    const Job square = *read_job({"one", job_text(1)}).job;
    Job round = square;
    for (Post& post : round.posts) {
        post.shape = PostShape::round;
        post.size.nominal.clear();
    }
    Job askew = round;
    for (Post& post : askew.posts) {
        post.size.along = post.size.across = 4.5;
        post.lean = {{Angle{0.25, 48}, {}}, {Angle{-0.125, 48}, {}}};
    }
    askew.posts[1].across = 4;
    askew.sections[0].offset = {0.25, -0.375};
    const double plain = solve_one(square, "between square posts");
    solve_one(round, "between round posts");
    const double skew = solve_one(askew, "askew, coped, beside the centres of round posts that lean");
    std::printf("  askew and coped over square: %.2f\n", skew / plain);
}

/// The example job, all of it: solved, every opening measured, judged by one set of rules.
void check_example() {
    std::ifstream file(std::string(RAKEWRIGHT_FIXTURES) + "/jobs/fennel-wharf.yaml", std::ios::binary);
    std::stringstream text;
    text << file.rdbuf();
    const ReadJob read = read_job(source_of("example", text.str()));
    const RuleSet rules = tests::published_rules("irc-2021");
    constexpr int times = 500;
    std::size_t checks = 0;
    const double each = seconds(9, [&] {
                            for (int i = 0; i < times; ++i) {
                                Solution solution = solve(*read.job);
                                measure_openings(*read.job, solution);
                                checks = judge(*read.job, solution, {&rules, 1}).checks.size();
                            }
                        }) /
                        times;
    std::printf("the example, solved, measured and judged: %zu checks in %.0f us\n", checks, each * 1e6);
}

long peak_kib() {
    rusage usage{};
    getrusage(RUSAGE_SELF, &usage);
    return usage.ru_maxrss;
}

void whole_job() {
    constexpr int sections = 10000;
    const Source source{"many", job_text(sections)};
    const double events = seconds(5, [&] {
        std::istringstream stream(source.text);
        YAML::Parser parser(stream);
        Empty handler;
        parser.HandleNextDocument(handler);
    });
    const long before = peak_kib();
    const ReadJob read = read_job(source);
    const long after = peak_kib();
    const double reading = seconds(5, [&] { read_job(source); });
    std::size_t size = 0;
    const double all = seconds(5, [&] {
        const ReadJob again = read_job(source);
        size = json(*again.job, solve(*again.job), {}).size();
    });
    const double with_openings = seconds(3, [&] {
        const ReadJob again = read_job(source);
        Solution solution = solve(*again.job);
        measure_openings(*again.job, solution);
        size = json(*again.job, solution, {}).size();
    });
    const double mebibyte = 1024.0 * 1024;
    std::printf("%d sections, %.2f MiB of YAML to %.1f MiB of JSON\n", sections, double(source.text.size()) / mebibyte, double(size) / mebibyte);
    std::printf("  event parser alone    %7.1f ms   1.00\n", events * 1e3);
    std::printf("  text to job           %7.1f ms   %.2f\n", reading * 1e3, reading / events);
    std::printf("  text to JSON          %7.1f ms   %.2f\n", all * 1e3, all / events);
    std::printf("  with every opening    %7.1f ms   %.2f\n", with_openings * 1e3, with_openings / events);
    std::printf("  reading took %.1f bytes for each byte of text, the job itself included\n", double(after - before) * 1024 / double(source.text.size()));
}

}  // namespace

int main() {
    solve_one_of_each();
    check_example();
    whole_job();
}
