#include "judge.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "../measure/compare.hpp"

namespace rakewright {
namespace {

enum class Holds { yes, no, taken, unknown };

bool tells(const Subject& subject, Quantity quantity) {
    return std::find(subject.tells.begin(), subject.tells.end(), quantity) != subject.tells.end();
}

class Judging {
 public:
    Judging(const Job& job, const std::vector<Subject>& subjects, const RuleSet& set, Verdicts& verdicts)
        : job_(job), subjects_(subjects), set_(set), verdicts_(verdicts) {
        for (const Rule& rule : set.rules) {
            has_triangle_ = has_triangle_ || rule.judges == Quantity::under_rail_opening;
            has_recess_ = has_recess_ || rule.judges == Quantity::recess_depth;
            for (const Condition& condition : conditions(rule))
                if (condition.quantity == Quantity::drop && condition.bounds.least &&
                    (!least_drop_ || *condition.bounds.least < *least_drop_))
                    least_drop_ = *condition.bounds.least;
        }
    }

    void all() {
        find_unguarded();
        for (const Rule& rule : set_.rules) {
            const std::size_t before = told();
            for (const Subject& subject : subjects_) judge(rule, subject);
            if (told() == before) tell_why_not(rule);
        }
    }

 private:
    static std::span<const Condition> conditions(const Rule& rule) {
        return rule.only_if ? std::span<const Condition>(*rule.only_if) : std::span<const Condition>();
    }

    std::size_t told() const {
        return verdicts_.checks.size() + verdicts_.not_judged.size() + verdicts_.not_applied.size();
    }

    /// A guard whose rules the fall beside a stair puts in force, where none stands at that stair: one rule tells it.
    void find_unguarded() {
        for (const Subject& stair : subjects_) {
            if (!stair.is_stair || !stair.drop) continue;
            if (std::any_of(subjects_.begin(), subjects_.end(),
                            [&](const Subject& it) { return it.is_guard && it.stair == stair.stair; }))
                continue;
            const auto asks = [&](const Rule& rule) {
                const std::span<const Condition> all = conditions(rule);
                return rule.judges == Quantity::guard_height && applies_there(rule, RulePlace::stair) &&
                       std::any_of(all.begin(), all.end(), [&](const Condition& condition) {
                           return condition.quantity == Quantity::drop &&
                                  drop_is_in(condition.bounds, stair) == Holds::yes;
                       });
            };
            const auto rule = std::find_if(set_.rules.begin(), set_.rules.end(), asks);
            if (rule != set_.rules.end())
                verdicts_.unguarded.push_back({&*rule, stair.words, in_unit(*stair.drop, job_.units, set_.units)});
        }
    }

    /// Of a rule that met nothing it could judge: whether the job has no such thing, has none where the rule applies,
    /// or has one in which what is judged does not occur.
    void tell_why_not(const Rule& rule) {
        const QuantityMeaning& meaning = meaning_of(*rule.judges);
        const auto has = [&](const auto& is_so) { return std::any_of(subjects_.begin(), subjects_.end(), is_so); };
        if (!has([&](const Subject& it) { return it.is(meaning.of); }))
            verdicts_.not_judged.push_back({&rule, {}, meaning.told_by});
        else if (!has([&](const Subject& it) { return it.is(meaning.of) && applies_there(rule, it.place); }))
            verdicts_.not_applied.push_back({&rule, {}, *rule.judges, NotApplied::Why::elsewhere});
        else if (may_be_absent(*rule.judges))
            verdicts_.not_applied.push_back({&rule, {}, *rule.judges, NotApplied::Why::none_there});
        else
            verdicts_.not_judged.push_back({&rule, {}, meaning.told_by});
    }

    /// What need not occur in a stair or rail: treads where there is one riser, open risers, a kind of section.
    static bool may_be_absent(Quantity quantity) {
        using Q = Quantity;
        static constexpr std::array all{Q::rise_variation,
                                        Q::rise_step,
                                        Q::run,
                                        Q::run_variation,
                                        Q::run_step,
                                        Q::two_rises_and_run,
                                        Q::nosing_variation,
                                        Q::rake,
                                        Q::open_riser,
                                        Q::open_riser_height,
                                        Q::guard_top_height,
                                        Q::under_rail_opening,
                                        Q::grip_diameter,
                                        Q::grip_perimeter,
                                        Q::grip_width,
                                        Q::grip_least,
                                        Q::recess_start,
                                        Q::recess_depth,
                                        Q::recess_reach,
                                        Q::recess_held,
                                        Q::recess_end,
                                        Q::width_above_recess,
                                        Q::extension_bottom_treads};
        return std::find(all.begin(), all.end(), quantity) != all.end();
    }

    /// What a fact is to these rules: without a rule for triangles, their openings are openings like others.
    Quantity quantity_of(const Fact& fact) const { return quantity_of(fact.quantity); }
    Quantity quantity_of(Quantity quantity) const {
        return quantity == Quantity::under_rail_opening && !has_triangle_ ? Quantity::picket_opening : quantity;
    }

    static bool applies_there(const Rule& rule, RulePlace place) {
        const RulePlace where = rule.where.value_or(RulePlace::anywhere);
        return where == RulePlace::anywhere || where == place || place == RulePlace::anywhere;
    }

    double in_document(const Fact& fact) const { return in_unit(fact.value, fact.quantity, job_.units, set_.units); }

    void judge(const Rule& rule, const Subject& subject) {
        std::vector<const Fact*> facts;
        for (const Fact& fact : subject.facts)
            if (quantity_of(fact) == *rule.judges && applies_there(rule, fact.place)) facts.push_back(&fact);
        std::vector<const Untold*> untold;
        for (const Untold& place : subject.untold)
            if (quantity_of(place.quantity) == *rule.judges && applies_there(rule, place.place))
                untold.push_back(&place);
        const bool is_missing = facts.empty() && untold.empty() && tells(subject, *rule.judges) &&
                                applies_there(rule, subject.place) &&
                                std::none_of(subject.facts.begin(), subject.facts.end(),
                                             [&](const Fact& fact) { return quantity_of(fact) == *rule.judges; });
        if (facts.empty() && untold.empty() && !is_missing) return;
        if (has_recess_ && subject.has_recess && of_plain_grip(*rule.judges)) {
            verdicts_.not_applied.push_back({&rule, subject.words, Quantity::recess_depth});
            return;
        }
        std::string taken;
        for (const Condition& condition : conditions(rule)) {
            if (condition.quantity == Quantity::open_riser_height) {
                if (!keep_so_high(rule, condition, subject, facts)) return;
                if (!subject.drop)
                    taken =
                        "no `drop` is given: the ground under the stair is taken as level with the floor at its foot";
                continue;
            }
            switch (holds(condition, subject)) {
                case Holds::yes: break;
                case Holds::taken: taken = words_of_taken(condition); break;
                case Holds::no: verdicts_.not_applied.push_back({&rule, subject.words, condition.quantity}); return;
                case Holds::unknown:
                    verdicts_.not_judged.push_back(
                        {&rule, subject.words, meaning_of(condition.quantity).told_by, false});
                    return;
            }
        }
        if (is_missing) {
            verdicts_.not_judged.push_back({&rule, subject.words, meaning_of(*rule.judges).told_by});
            return;
        }
        for (const Untold* place : untold)
            verdicts_.not_judged.push_back({&rule, joined(subject.words, place->where), place->needs});
        if (!facts.empty()) add_checks(rule, subject, facts, taken);
    }

    /// Leaves the openings that a rule for the height over the ground speaks of; whether there are any.
    bool keep_so_high(const Rule& rule, const Condition& condition, const Subject& subject,
                      std::vector<const Fact*>& facts) {
        std::vector<const Fact*> kept;
        bool unknown = false;
        for (const Fact* fact : facts) {
            if (!fact->over_ground)
                unknown = true;
            else if (margin_in(condition.bounds, in_unit(*fact->over_ground, job_.units, set_.units)).allowed)
                kept.push_back(fact);
        }
        if (unknown) verdicts_.not_judged.push_back({&rule, subject.words, "`tread` of the ball", false});
        if (!unknown && kept.empty())
            verdicts_.not_applied.push_back({&rule, subject.words, condition.quantity, NotApplied::Why::condition});
        facts = std::move(kept);
        return !facts.empty();
    }

    static std::string joined(const std::string& subject, const std::string& where) {
        return where.empty() ? subject : subject + ", " + where;
    }

    /// How much a verdict settles of an opening that was tried more than once.
    static int settles(const Check& check) {
        switch (check.verdict) {
            case Verdict::fail: return 2;
            case Verdict::pass: return 1;
            case Verdict::unsure: return 0;
        }
        return 0;
    }

    /// The checks of the facts, of each opening the one that settles most.
    std::vector<Check> checks_of(const Rule& rule, const Subject& subject, const std::vector<const Fact*>& facts,
                                 const std::string& taken) const {
        std::vector<Check> checks;
        std::vector<const std::string*> openings;
        for (const Fact* fact : facts) {
            Check check = checked(rule, subject, *fact, taken);
            const auto same_opening = fact->opening.empty()
                                          ? openings.end()
                                          : std::find_if(openings.begin(), openings.end(),
                                                         [&](const std::string* it) { return *it == fact->opening; });
            if (same_opening == openings.end()) {
                checks.push_back(std::move(check));
                openings.push_back(&fact->opening);
                continue;
            }
            Check& other = checks[static_cast<std::size_t>(same_opening - openings.begin())];
            if (settles(check) > settles(other) || (settles(check) == settles(other) && tells_more(check, other)))
                other = std::move(check);
        }
        return checks;
    }

    /// Of two that settle alike: an exact figure, the largest ball that passed, the smallest that did not.
    static bool tells_more(const Check& check, const Check& other) {
        if (check.known != other.known) return check.known < other.known;
        return check.known == Known::at_least ? check.value > other.value : check.value < other.value;
    }

    void add_checks(const Rule& rule, const Subject& subject, const std::vector<const Fact*>& facts,
                    const std::string& taken) {
        std::vector<Check> checks = checks_of(rule, subject, facts, taken);
        const auto fails = [](const Check& check) { return check.verdict == Verdict::fail; };
        std::vector<Check>& all = verdicts_.checks;
        if (std::none_of(checks.begin(), checks.end(), fails)) {
            all.push_back(*std::min_element(checks.begin(), checks.end(), [](const Check& a, const Check& b) {
                if (a.verdict != b.verdict) return a.verdict == Verdict::unsure;
                return a.margin.value_or(0) < b.margin.value_or(0);
            }));
            return;
        }
        const auto first = static_cast<std::ptrdiff_t>(all.size());
        for (Check& check : checks) {
            if (!fails(check)) continue;
            // Equal figures are one check that names all places.
            const auto alike = std::find_if(all.begin() + first, all.end(), [&](const Check& other) {
                return same(other.value, check.value) && other.known == check.known;
            });
            if (alike == all.end())
                all.push_back(std::move(check));
            else
                alike->places.insert(alike->places.end(), check.places.begin(), check.places.end());
        }
    }

    Check checked(const Rule& rule, const Subject& subject, const Fact& fact, const std::string& taken) const {
        Check check;
        check.rule = &rule;
        check.subject = subject.words;
        if (!fact.where.empty()) check.places = {fact.where};
        check.value = in_document(fact);
        check.in_job_unit = fact.value;
        check.known = fact.known;
        const Margin margin = margin_in(rule.limit, check.value);
        check.verdict = verdict(rule.limit, margin, fact.known, check.value);
        if (check.verdict != Verdict::unsure) check.margin = margin.size;
        if (!taken.empty()) check.assumed.push_back(taken);
        if (of_handrail(*rule.judges) && !subject.assumed.empty()) check.assumed.push_back(subject.assumed);
        return check;
    }

    /// A ball that passed shows at least so much, one that did not, less: either may settle a limit or not.
    static Verdict verdict(const Bounds& limit, const Margin& margin, Known known, double value) {
        if (known == Known::exactly) return margin.allowed ? Verdict::pass : Verdict::fail;
        if (known == Known::at_least) {
            if (limit.most && !margin_in({{}, limit.most, false, limit.most_excluded}, value).allowed)
                return Verdict::fail;
            return limit.most || !margin.allowed ? Verdict::unsure : Verdict::pass;
        }
        return limit.most && !limit.least && no_more_than(value, *limit.most) ? Verdict::pass : Verdict::unsure;
    }

    /// What documents that judge finger recesses do not judge of a rail that has some.
    static bool of_plain_grip(Quantity quantity) {
        return quantity == Quantity::grip_perimeter || quantity == Quantity::grip_width ||
               quantity == Quantity::grip_least;
    }

    /// Whether a quantity is judged of the top rail because it is taken for a handrail.
    static bool of_handrail(Quantity quantity) {
        static constexpr std::array all{Quantity::handrail_height, Quantity::guard_top_height, Quantity::grip_perimeter,
                                        Quantity::grip_width, Quantity::grip_least};
        return std::find(all.begin(), all.end(), quantity) != all.end();
    }

    Holds holds(const Condition& condition, const Subject& subject) const {
        if (condition.quantity == Quantity::drop) return drop_is_in(condition.bounds, subject);
        bool known = false;
        const auto any_in = [&](const Subject& told) {
            for (const Fact& fact : told.facts) {
                if (fact.quantity != condition.quantity) continue;
                known = true;
                if (margin_in(condition.bounds, in_document(fact)).allowed) return true;
            }
            return false;
        };
        if (any_in(subject)) return Holds::yes;
        // The stairs come first, in the job's order.
        if (subject.stair >= 0 && any_in(subjects_[static_cast<std::size_t>(subject.stair)])) return Holds::yes;
        if (known) return Holds::no;
        const bool asked =
            tells(subject, condition.quantity) ||
            (subject.stair >= 0 && tells(subjects_[static_cast<std::size_t>(subject.stair)], condition.quantity));
        if (!asked && may_be_absent(condition.quantity) && condition.quantity != Quantity::open_riser) return Holds::no;
        if (condition.quantity != Quantity::open_riser) return Holds::unknown;
        // Risers are closed unless the stair says otherwise: no ball passes.
        return margin_in(condition.bounds, 0).allowed ? Holds::yes : Holds::no;
    }

    Holds drop_is_in(const Bounds& bounds, const Subject& subject) const {
        if (subject.drop)
            return margin_in(bounds, in_unit(*subject.drop, job_.units, set_.units)).allowed ? Holds::yes : Holds::no;
        return bounds.least && *bounds.least == *least_drop_ ? Holds::taken : Holds::unknown;
    }

    std::string words_of_taken(const Condition& condition) const {
        const Tape tape{set_.units, set_.units == Unit::inch ? 1.0 / 16 : 1};
        return std::string("no `drop` is given: it is taken as ") +
               (condition.bounds.least_excluded ? "more than " : "at least ") +
               words_of_length(*condition.bounds.least, tape) + (set_.units == Unit::inch ? " in" : " mm");
    }

    const Job& job_;
    const std::vector<Subject>& subjects_;
    const RuleSet& set_;
    Verdicts& verdicts_;
    bool has_triangle_ = false, has_recess_ = false;
    std::optional<double> least_drop_;
};

/// How near a check is to its limit, whatever its unit.
double nearness(const Check& check) {
    if (!check.margin || *check.margin == 0) return 0;
    const Bounds& limit = check.rule->limit;
    const double size = std::fmax(std::fabs(limit.least.value_or(0)), std::fabs(limit.most.value_or(0)));
    return *check.margin / (size > 0 ? size : std::fabs(check.value));
}

/// A ball that passed only shows how much a limit is missed by at least.
bool is_bound(const Check& check) { return check.verdict == Verdict::fail && check.known == Known::at_least; }

int rank(Verdict verdict) {
    switch (verdict) {
        case Verdict::fail: return 0;
        case Verdict::unsure: return 1;
        case Verdict::pass: return 2;
    }
    return 2;
}

}  // namespace

std::string Check::where() const {
    std::string words = subject;
    for (const std::string& place : places) words += ", " + place;
    return words;
}

bool Verdicts::any_fails() const {
    return std::any_of(checks.begin(), checks.end(), [](const Check& check) { return check.verdict == Verdict::fail; });
}

Verdicts judge(const Job& job, const Solution& solution, std::span<const RuleSet> sets) {
    Verdicts verdicts;
    if (sets.empty()) return verdicts;
    const std::vector<Subject> subjects = subjects_of(job, solution);
    for (const RuleSet& set : sets) Judging(job, subjects, set, verdicts).all();
    std::stable_sort(verdicts.checks.begin(), verdicts.checks.end(), [](const Check& a, const Check& b) {
        if (a.verdict != b.verdict) return rank(a.verdict) < rank(b.verdict);
        return is_bound(a) != is_bound(b) ? is_bound(a) : nearness(a) < nearness(b);
    });
    return verdicts;
}

}  // namespace rakewright
