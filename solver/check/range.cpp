#include "range.hpp"

#include <algorithm>

namespace rakewright {
namespace {

class Ranging {
 public:
    explicit Ranging(const Job& job) : job_(job) {}

    void add(const Rule& rule) {
        const RulePlace place = rule.where.value_or(RulePlace::anywhere);
        if (place != RulePlace::anywhere) {
            narrow(at(*rule.judges, place), rule);
            return;
        }
        // A rule for everywhere narrows what rules for one place leave.
        narrow(at(*rule.judges, RulePlace::anywhere), rule);
        for (PassingRange& range : ranges_)
            if (range.quantity == *rule.judges && range.place != RulePlace::anywhere) narrow(range, rule);
    }

    void tell(const Check& check) {
        for (PassingRange& range : ranges_) {
            const RulePlace place = check.rule->where.value_or(RulePlace::anywhere);
            if (range.quantity != *check.rule->judges || range.place != place) continue;
            const FigureNow now{check.in_job_unit, check.known};
            if (!range.least_now || now.value < range.least_now->value) range.least_now = now;
            if (!range.most_now || now.value > range.most_now->value) range.most_now = now;
        }
    }

    std::vector<PassingRange> take() && {
        std::stable_sort(ranges_.begin(), ranges_.end(), [](const PassingRange& a, const PassingRange& b) {
            return std::pair(a.quantity, a.place) < std::pair(b.quantity, b.place);
        });
        return std::move(ranges_);
    }

 private:
    PassingRange& at(Quantity quantity, RulePlace place) {
        for (PassingRange& range : ranges_)
            if (range.quantity == quantity && range.place == place) return range;
        PassingRange& range = ranges_.emplace_back();
        range.quantity = quantity;
        range.place = place;
        if (place != RulePlace::anywhere)
            for (const PassingRange& other : ranges_)
                if (other.quantity == quantity && other.place == RulePlace::anywhere) {
                    ranges_.back() = other;
                    ranges_.back().place = place;
                    break;
                }
        return ranges_.back();
    }

    void narrow(PassingRange& range, const Rule& rule) const {
        Bounds& bounds = range.bounds;
        if (rule.limit.least) {
            const double least = in_unit(*rule.limit.least, *rule.judges, rule.units, job_.units);
            if (!bounds.least || least > *bounds.least || (least == *bounds.least && rule.limit.least_excluded)) {
                bounds.least = least;
                bounds.least_excluded = rule.limit.least_excluded;
                range.least_by = &rule;
            }
        }
        if (rule.limit.most) {
            const double most = in_unit(*rule.limit.most, *rule.judges, rule.units, job_.units);
            if (!bounds.most || most < *bounds.most || (most == *bounds.most && rule.limit.most_excluded)) {
                bounds.most = most;
                bounds.most_excluded = rule.limit.most_excluded;
                range.most_by = &rule;
            }
        }
    }

    const Job& job_;
    std::vector<PassingRange> ranges_;
};

}  // namespace

std::vector<PassingRange> ranges_of(const Job& job, const Verdicts& verdicts) {
    Ranging ranging(job);
    for (const Check& check : verdicts.checks) ranging.add(*check.rule);
    // What is missing for a condition leaves open whether the rule applies at all.
    for (const NotJudged& rule : verdicts.not_judged)
        if (rule.judges_missing) ranging.add(*rule.rule);
    for (const Check& check : verdicts.checks) ranging.tell(check);
    return std::move(ranging).take();
}

}  // namespace rakewright
