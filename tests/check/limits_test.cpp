#include <cmath>

#include "../../solver/check/judge.hpp"
#include "../support/catch.hpp"
#include "../support/even_example.hpp"
#include "../support/fixture.hpp"
#include "../support/near.hpp"
#include "../support/rule_sets.hpp"
#include "jobs_at.hpp"

// Every limit of every published rule set is held from both sides. What the limits are is read from a second
// transcription of the documents, not from the rule sets under test.

namespace rakewright::tests {
namespace {

/// One limit of the second transcription.
struct Limit {
    std::string set, rule, judges, word;
    double limit = 0;

    bool is_least() const { return word == "min" || word == "above"; }
    bool allows_itself() const { return word == "min" || word == "max"; }
};

/// "7 3/4", "1/48", "9.5".
double printed_figure(const std::string& text) {
    if (const std::size_t blank = text.find(' '); blank != std::string::npos)
        return printed_figure(text.substr(0, blank)) + printed_figure(text.substr(blank + 1));
    if (const std::size_t bar = text.find('/'); bar != std::string::npos)
        return printed_number(text.substr(0, bar)) / printed_number(text.substr(bar + 1));
    return printed_number(text);
}

std::vector<Limit> published_limits() {
    std::ifstream file(std::string(RAKEWRIGHT_FIXTURES) + "/published/rule_limits.csv");
    std::string line;
    REQUIRE(std::getline(file, line));
    REQUIRE(line == "set,rule,clause,judges,word,limit,unit,source");
    std::vector<Limit> limits;
    while (std::getline(file, line)) {
        const std::vector<std::string> f = fields_of(line);
        REQUIRE(f.size() == 8);
        limits.push_back({f[0], f[1], f[3], f[4], printed_figure(f[5])});
    }
    return limits;
}

const QuantityMeaning& meaning_of_word(const std::string& word) {
    for (const QuantityMeaning& meaning : quantities())
        if (word == meaning.word) return meaning;
    throw std::runtime_error("no quantity " + word);
}

const RuleSet& rules_of(const std::string& set) {
    static std::vector<RuleSet> sets;
    for (const RuleSet& read : sets)
        if (read.name == set) return read;
    if (sets.empty()) sets.reserve(100);
    return sets.emplace_back(published_rules(set));
}

const Rule& rule_of(const Limit& limit) {
    for (const Rule& rule : rules_of(limit.set).rules)
        if (rule.id.name == limit.rule) return rule;
    throw std::runtime_error("no rule " + limit.rule + " in " + limit.set);
}

/// Why no job can have what a rule judges at a value, or meet what it asks for first.
const char* untold(const Limit& limit) {
    if (limit.judges == "open_riser" && limit.limit == 0) return "a riser is open or not: see below";
    if (limit.set == "iso-14122-3" && limit.rule == "landing handrail height")
        return "a handrail is named over stairs only";
    return nullptr;
}

Verdicts judged(const Job& job, const std::string& set) {
    Solution solution = solve(job);
    REQUIRE_FALSE(solution.refused());
    measure_openings(job, solution);
    return judge(job, solution, {&rules_of(set), 1});
}

std::vector<Check> checks_by(const Verdicts& verdicts, const Limit& limit) {
    std::vector<Check> checks;
    for (const Check& check : verdicts.checks)
        if (check.rule->set == limit.set && check.rule->id.name == limit.rule) checks.push_back(check);
    return checks;
}

bool not_judged(const Verdicts& verdicts, const Limit& limit) {
    for (const NotJudged& it : verdicts.not_judged)
        if (it.rule->set == limit.set && it.rule->id.name == limit.rule) return true;
    return false;
}

/// The values at which a limit is held, and whether each is allowed.
std::vector<std::pair<double, bool>> values_about(const Limit& limit, Dimension dimension) {
    const double step =
        (limit.is_least() ? 1 : -1) * (dimension == Dimension::number && limit.limit == std::round(limit.limit) &&
                                               limit.judges != "extension_bottom_treads"
                                           ? 1
                                           : 1e-6 * limit.limit);
    return {{limit.limit + step, true}, {limit.limit, limit.allows_itself()}, {limit.limit - step, false}};
}

void hold(const Limit& limit, const Way& way) {
    for (const auto& [value, allowed] : values_about(limit, meaning_of_word(limit.judges).dimension)) {
        INFO(limit.set << ", " << limit.rule << ", " << limit.word << ": " << value << " by " << way.words);
        const bool is_sides = limit.judges == "handrail_sides";
        if (is_sides && value > 2) continue;
        const Verdicts verdicts = judged(way.job(value), limit.set);
        std::vector<Check> checks = checks_by(verdicts, limit);
        if (is_sides && value == 0) {
            // A job that names no handrail need not be of a stair that has none.
            CHECK(checks.empty());
            CHECK(not_judged(verdicts, limit));
            continue;
        }
        CHECK_FALSE(checks.empty());
        for (const Check& check : checks) {
            INFO(check.where() << ": " << check.value);
            CHECK(check.verdict == (allowed ? Verdict::pass : Verdict::fail));
            CHECK(check.known == Known::exactly);
            CHECK_THAT(check.value, within(value, 1e-10 * limit.limit));
            CHECK_THAT(check.margin.value(),
                       within((allowed ? 1 : -1) * std::fabs(value - limit.limit), 1e-10 * limit.limit));
        }
    }
}

std::vector<RulePlace> places_of(const Rule& rule) {
    if (rule.where && *rule.where != RulePlace::anywhere) return {*rule.where};
    const bool is_guard = meaning_of(*rule.judges).of == SubjectKind::guard;
    return is_guard ? std::vector{RulePlace::stair, RulePlace::level} : std::vector{RulePlace::stair};
}

}  // namespace

TEST_CASE("every published limit is held from both sides, in both units", "[check][limits]") {
    std::size_t held = 0, not_held = 0;
    for (const Limit& limit : published_limits()) {
        const Rule& rule = rule_of(limit);
        REQUIRE(std::string(meaning_of(rule.judges.value()).word) == limit.judges);
        if (untold(limit)) {
            ++not_held;
            continue;
        }
        ++held;
        for (const RulePlace place : places_of(rule))
            for (const Unit unit : {Unit::inch, Unit::millimetre}) {
                const Judged what{*rule.judges,
                                  place,
                                  limit.limit,
                                  rules_of(limit.set).units,
                                  limit.rule == "high guard height",
                                  limit.rule == "overlap at open risers"};
                const std::vector<Way> ways = ways_to(what, unit);
                INFO(limit.set << ", " << limit.rule);
                CHECK_FALSE(ways.empty());
                for (const Way& way : ways) hold(limit, way);
            }
    }
    std::size_t in_sets = 0;
    for (const char* name : {"ad-k-2013", "ada-2010", "ibc-2021", "ibc-2021-dwelling", "irc-2018", "irc-2021",
                             "irc-2024", "iso-14122-3", "nbc-9.8", "ncc-2022", "nz-d1-f4", "osha-1910"})
        for (const Rule& rule : rules_of(name).rules)
            in_sets += (rule.limit.least ? 1u : 0u) + (rule.limit.most ? 1u : 0u);
    CHECK(held + not_held == in_sets);
}

TEST_CASE("what no key tells is never passed", "[check][limits]") {
    const Job everything = [] {
        Job job = even_example();
        job.stairs[0].clear_width = 44;
        job.stairs[0].headroom = 84;
        job.stairs[0].drop = 60;
        FoundRail found;
        found.id = called("old-rail");
        found.height = Reading(44);
        found.drop = 60;
        job.as_found = {found};
        return job;
    }();
    for (const Limit& limit : published_limits()) {
        if (!untold(limit)) continue;
        INFO(limit.set << ", " << limit.rule << ": " << untold(limit));
        const Verdicts verdicts = judged(everything, limit.set);
        CHECK(checks_by(verdicts, limit).empty());
    }
}

TEST_CASE("balls tried at open risers show what they show", "[check][limits]") {
    const auto tried = [](const Limit& limit, double size, bool passes, Unit unit) {
        const Judged what{Quantity::guard_height, RulePlace::stair, 36, rules_of(limit.set).units, false};
        Job job = ways_to(what, unit)[1].job(36);
        const double factor = what.document == unit ? 1 : unit == Unit::inch ? 1 / 25.4 : 25.4;
        Ball ball;
        ball.said_at = Ball::At::riser;
        ball.tread = Count(2);
        ball.size = size * factor;
        ball.passes = passes;
        job.as_found[0].balls = {ball};
        const std::vector<Check> checks = checks_by(judged(job, limit.set), limit);
        REQUIRE(checks.size() == 1);
        CHECK(checks[0].known == (passes ? Known::at_least : Known::under));
        return checks[0].verdict;
    };
    int rules = 0;
    for (const Limit& limit : published_limits()) {
        if (limit.judges != "open_riser") continue;
        ++rules;
        for (const Unit unit : {Unit::inch, Unit::millimetre}) {
            INFO(limit.set << ", " << limit.rule);
            if (limit.limit == 0) {
                // Not at all open: any ball that passes shows that it is, none that does not that it is not.
                CHECK(tried(limit, 1e-3, true, unit) == Verdict::fail);
                CHECK(tried(limit, 1e-3, false, unit) == Verdict::unsure);
                continue;
            }
            REQUIRE(limit.word == "below");
            const double little = 1e-6 * limit.limit;
            CHECK(tried(limit, limit.limit - little, true, unit) == Verdict::unsure);
            CHECK(tried(limit, limit.limit, true, unit) == Verdict::fail);
            CHECK(tried(limit, limit.limit - little, false, unit) == Verdict::pass);
            CHECK(tried(limit, limit.limit, false, unit) == Verdict::pass);
            CHECK(tried(limit, limit.limit + little, false, unit) == Verdict::unsure);
        }
    }
    CHECK(rules == 9);
}

}  // namespace rakewright::tests
