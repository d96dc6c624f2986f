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
        for (const Rule& rule : set_.rules) {
            for (const Subject& subject : subjects_) judge(rule, subject);
            const SubjectKind kind = meaning_of(*rule.judges).of;
            if (std::none_of(subjects_.begin(), subjects_.end(), [&](const Subject& it) { return it.is(kind); }))
                verdicts_.not_judged.push_back({&rule, {}, meaning_of(*rule.judges).told_by});
        }
    }

 private:
    static std::span<const Condition> conditions(const Rule& rule) {
        return rule.only_if ? std::span<const Condition>(*rule.only_if) : std::span<const Condition>();
    }

    /// What a fact is to these rules: without a rule for triangles, their openings are openings like others.
    Quantity quantity_of(const Fact& fact) const {
        return fact.quantity == Quantity::under_rail_opening && !has_triangle_ ? Quantity::picket_opening
                                                                               : fact.quantity;
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
        const bool is_missing = facts.empty() && tells(subject, *rule.judges) && applies_there(rule, subject.place) &&
                                std::none_of(subject.facts.begin(), subject.facts.end(),
                                             [&](const Fact& fact) { return quantity_of(fact) == *rule.judges; });
        if (facts.empty() && !is_missing) return;
        if (has_recess_ && subject.has_recess && of_plain_grip(*rule.judges)) {
            verdicts_.not_applied.push_back({&rule, subject.words, Quantity::recess_depth});
            return;
        }
        std::string taken;
        for (const Condition& condition : conditions(rule)) {
            switch (holds(condition, subject)) {
                case Holds::yes: break;
                case Holds::taken: taken = words_of_taken(condition); break;
                case Holds::no: verdicts_.not_applied.push_back({&rule, subject.words, condition.quantity}); return;
                case Holds::unknown:
                    verdicts_.not_judged.push_back({&rule, subject.words, meaning_of(condition.quantity).told_by});
                    return;
            }
        }
        if (is_missing) {
            verdicts_.not_judged.push_back({&rule, subject.words, meaning_of(*rule.judges).told_by});
            return;
        }
        add_checks(rule, subject, facts, taken);
    }

    void add_checks(const Rule& rule, const Subject& subject, const std::vector<const Fact*>& facts,
                    const std::string& taken) {
        std::vector<Check> checks;
        for (const Fact* fact : facts) checks.push_back(checked(rule, subject, *fact, taken));
        const auto fails = [](const Check& check) { return check.verdict == Verdict::fail; };
        if (std::none_of(checks.begin(), checks.end(), fails)) {
            verdicts_.checks.push_back(
                *std::min_element(checks.begin(), checks.end(), [](const Check& a, const Check& b) {
                    const bool a_sure = a.verdict == Verdict::pass, b_sure = b.verdict == Verdict::pass;
                    return a_sure != b_sure ? b_sure : a.margin < b.margin;
                }));
            return;
        }
        std::vector<Check>& all = verdicts_.checks;
        const auto first = static_cast<std::ptrdiff_t>(all.size());
        for (std::size_t i = 0; i < checks.size(); ++i) {
            if (!fails(checks[i])) continue;
            // Equal figures are one check that names all places.
            const auto alike = std::find_if(all.begin() + first, all.end(), [&](const Check& other) {
                return same(other.value, checks[i].value) && other.known == checks[i].known;
            });
            if (alike == all.end())
                all.push_back(checks[i]);
            else
                alike->where += ", " + facts[i]->where;
        }
    }

    Check checked(const Rule& rule, const Subject& subject, const Fact& fact, const std::string& taken) const {
        Check check;
        check.rule = &rule;
        check.where = subject.words + (fact.where.empty() ? "" : ", " + fact.where);
        check.value = in_document(fact);
        check.in_job_unit = fact.value;
        check.known = fact.known;
        const Margin margin = margin_in(rule.limit, check.value);
        check.margin = margin.size;
        check.verdict = verdict(rule.limit, margin, fact.known, check.value);
        if (!taken.empty()) check.assumed.push_back(taken);
        if (of_handrail(*rule.judges) && !subject.assumed.empty()) check.assumed.push_back(subject.assumed);
        return check;
    }

    /// A ball that passed shows at least so much, one that did not, less: either may settle a limit or not.
    static Verdict verdict(const Bounds& limit, const Margin& margin, Known known, double value) {
        if (known == Known::exactly) return margin.allowed ? Verdict::pass : Verdict::fail;
        if (known == Known::at_least) {
            if (limit.most && !margin.allowed) return Verdict::fail;
            return limit.most ? Verdict::unsure : Verdict::pass;
        }
        return limit.most && no_more_than(value, *limit.most) ? Verdict::pass : Verdict::unsure;
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
        // Risers are closed unless the stair says otherwise.
        return condition.quantity == Quantity::open_riser ? Holds::no : Holds::unknown;
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
    const Bounds& limit = check.rule->limit;
    const double size = std::fmax(std::fabs(limit.least.value_or(0)), std::fabs(limit.most.value_or(0)));
    return size > 0 ? check.margin / size : check.margin;
}

int rank(Verdict verdict) {
    switch (verdict) {
        case Verdict::fail: return 0;
        case Verdict::unsure: return 1;
        case Verdict::pass: return 2;
    }
    return 2;
}

}  // namespace

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
        return nearness(a) < nearness(b);
    });
    return verdicts;
}

}  // namespace rakewright
