#include <algorithm>
#include <cmath>

#include "../../solver/check/verdict_sheet.hpp"
#include "../../solver/solution_sheet.hpp"
#include "cut_sheet.hpp"

namespace rakewright {
namespace {

/// A figure of a document as people read it there: a length in inches as a fraction if it is one, else decimals, as
/// many as tell it from 0.
std::string figure(double value, Quantity quantity, Unit unit) {
    const bool in_inches = unit == Unit::inch && meaning_of(quantity).dimension == Dimension::length;
    const Tape fine{Unit::inch, 1.0 / 64};
    if (in_inches && std::fabs(value - at_mark(nearest_mark(value, fine), fine)) < 1e-9)
        return words_of_length(value, fine);
    if (std::fabs(value - std::round(value)) < 1e-9) return rounded(value, 0);
    const int usual = unit == Unit::inch ? 3 : 1;
    for (int decimals = usual; decimals < 6; ++decimals)
        if (std::string words = rounded(value, decimals); words.find_first_of("123456789") != std::string::npos)
            return words;
    return rounded(value, 6);
}

std::string limit_words(const Bounds& limit, Quantity quantity, Unit unit) {
    const auto side = [&](const std::optional<double>& bound, const char* words) {
        return bound ? words + figure(*bound, quantity, unit) : std::string();
    };
    const std::string least = side(limit.least, limit.least_excluded ? "over " : "from "),
                      most = side(limit.most, limit.most_excluded ? "under " : "to ");
    if (least.empty()) return limit.most_excluded ? most : "at most " + most.substr(3);
    if (most.empty()) return limit.least_excluded ? least : "at least " + least.substr(5);
    return least + " " + most;
}

std::string value_words(const Check& check) {
    const std::string value = figure(check.value, *check.rule->judges, check.rule->units);
    switch (check.known) {
        case Known::exactly: return value;
        case Known::at_least: return value + " or more";
        case Known::under: return "under " + value;
    }
    return value;
}

std::string joined(const std::vector<std::string>& sentences) {
    std::string all;
    for (const std::string& sentence : sentences) all += (all.empty() ? "" : "; ") + sentence;
    return all;
}

std::string capitals(std::string word) {
    for (char& c : word) c = static_cast<char>(c - 'a' + 'A');
    return word;
}

/// What was taken for granted, each once, by a letter.
class Assumptions {
 public:
    /// Letters in brackets for what a check takes for granted; empty if that is nothing.
    std::string marks(const Check& check) {
        std::string letters;
        for (const std::string& assumed : check.assumed) {
            const auto found = std::find(all_.begin(), all_.end(), assumed);
            letters += (letters.empty() ? "" : " ") + letter(static_cast<std::size_t>(found - all_.begin()));
            if (found == all_.end()) all_.push_back(assumed);
        }
        return letters.empty() ? letters : " [" + letters + "]";
    }
    std::vector<std::string> footnotes() const {
        std::vector<std::string> notes;
        for (std::size_t i = 0; i < all_.size(); ++i) notes.push_back("[" + letter(i) + "] " + all_[i]);
        return notes;
    }

 private:
    static std::string letter(std::size_t number) {
        const std::string last(1, static_cast<char>('a' + number % 26));
        return number < 26 ? last : letter(number / 26 - 1) + last;
    }
    std::vector<std::string> all_;
};

/// What stands under a check: what and where, the figure in the job's unit if it is another, and what to know about it.
std::string under(const Job& job, const Check& check, Assumptions& assumptions) {
    const Rule& rule = *check.rule;
    std::string text = rule.id.name + ": " + check.where;
    if (check.rule->units != job.units && meaning_of(*rule.judges).dimension == Dimension::length)
        text += " (" + figure(check.in_job_unit, *rule.judges, job.units) + (job.units == Unit::inch ? " in)" : " mm)");
    if (rule.source != FigureSource::read) text += "; the limit is " + std::string(source_words(rule));
    return text + assumptions.marks(check);
}

Table checks_table(const Job& job, const Verdicts& verdicts) {
    const Cells cells(job);
    Assumptions assumptions;
    const bool one_set = std::all_of(verdicts.checks.begin(), verdicts.checks.end(), [&](const Check& check) {
        return check.rule->set == verdicts.checks.front().rule->set;
    });
    Table table{"checks", "THE CHECKS: worst first, in the units of each document", {}, {}, {}, {}};
    table.columns = {{"verdict", "verdict", Align::left},
                     {"value", "value"},
                     {"", "known", Align::left},
                     {"limit", "limit", Align::left},
                     {"", "min"},
                     {"", "max"},
                     {"margin", "margin"},
                     {"unit", "unit", Align::left},
                     {"clause", "clause", Align::left},
                     {one_set ? "" : "rules", "rules", Align::left},
                     {"", "what", Align::left},
                     {"", "judges", Align::left},
                     {"", "where", Align::left},
                     {"", cells.in_unit("value"), Align::right},
                     {"", "source", Align::left},
                     {"", "assumed", Align::left}};
    const auto raw = [](const std::optional<double>& value) { return Cell{"", value ? exact(*value) : ""}; };
    for (const Check& check : verdicts.checks) {
        const Rule& rule = *check.rule;
        const std::string limit = limit_words(rule.limit, *rule.judges, check.rule->units);
        const std::string verdict = words(check.verdict);
        table.rows.push_back({{{check.verdict == Verdict::pass ? verdict : capitals(verdict), verdict},
                               {value_words(check), exact(check.value)},
                               {"", words(check.known)},
                               cells.word(limit),
                               raw(rule.limit.least),
                               raw(rule.limit.most),
                               {figure(check.margin, *rule.judges, check.rule->units), exact(check.margin)},
                               cells.word(unit_of(rule)),
                               cells.word(rule.clause),
                               cells.word(rule.set),
                               {"", rule.id.name},
                               {"", meaning_of(*rule.judges).word},
                               {"", check.where},
                               {"", exact(check.in_job_unit)},
                               {"", source_words(rule)},
                               {"", joined(check.assumed)}},
                              under(job, check, assumptions)});
    }
    table.footnotes = assumptions.footnotes();
    return table;
}

/// Rules that gave no verdict, with the reason.
Table table_without_verdict(const char* name, const char* title, const char* why_heading, const char* why) {
    Table table{name, title, {}, {}, {}, {}};
    table.columns = {{"rule", "what", Align::left},
                     {"clause", "clause", Align::left},
                     {"", "rules", Align::left},
                     {"of", "where", Align::left},
                     {why_heading, why, Align::left}};
    return table;
}

Table not_judged_table(const Job& job, const Verdicts& verdicts) {
    const Cells cells(job);
    Table table = table_without_verdict("not_judged", "NOT JUDGED: the job does not tell enough", "needs", "missing");
    for (const NotJudged& rule : verdicts.not_judged)
        table.rows.push_back({{cells.word(rule.rule->id.name), cells.word(rule.rule->clause),
                               cells.word(rule.rule->set), cells.word(rule.where), cells.word(rule.missing)},
                              {}});
    return table;
}

Table not_applied_table(const Job& job, const Verdicts& verdicts) {
    const Cells cells(job);
    Table table =
        table_without_verdict("not_applied", "DOES NOT APPLY: by what the job tells", "because of", "because");
    for (const NotApplied& rule : verdicts.not_applied)
        table.rows.push_back(
            {{cells.word(rule.rule->id.name), cells.word(rule.rule->clause), cells.word(rule.rule->set),
              cells.word(rule.where), cells.word(meaning_of(rule.because).word)},
             {}});
    return table;
}

}  // namespace

std::vector<Table> checks_for_a_crew(const Job& job, const Verdicts& verdicts) {
    if (verdicts.checks.empty()) return {};
    Verdicts to_know;
    std::copy_if(verdicts.checks.begin(), verdicts.checks.end(), std::back_inserter(to_know.checks),
                 [](const Check& check) { return check.verdict != Verdict::pass; });
    Table table = checks_table(job, to_know);
    const std::size_t passed = verdicts.checks.size() - to_know.checks.size();
    table.about = {std::to_string(passed) + (passed == 1 ? " check passes" : " checks pass") + ", " +
                   (to_know.checks.empty() ? std::string("none fails")
                                           : std::to_string(to_know.checks.size()) + " fail or are unsure") +
                   "; `rakewright check` prints all of them, and what could not be judged."};
    return {table};
}

std::vector<Table> check_tables(const Job& job, const Verdicts& verdicts) {
    return {checks_table(job, verdicts), not_judged_table(job, verdicts), not_applied_table(job, verdicts)};
}

Table range_table(const Job& job, const std::vector<PassingRange>& ranges) {
    const Cells cells(job);
    Table table{"ranges", "WHAT WOULD PASS: each quantity, in the job's unit", {}, {}, {}, {}};
    table.columns = {{"quantity", "judges", Align::left},
                     {"where", "place", Align::left},
                     {"passes", "range", Align::left},
                     {"", "min"},
                     {"", "max"},
                     {"now", "now", Align::left},
                     {"by", "clauses", Align::left}};
    const auto raw = [](const std::optional<double>& value) { return Cell{"", value ? exact(*value) : ""}; };
    for (const PassingRange& range : ranges) {
        const auto shown = [&](double value) { return figure(value, range.quantity, job.units); };
        std::string now = "-", by;
        if (range.least_now)
            now = *range.least_now == *range.most_now ? shown(*range.least_now)
                                                      : shown(*range.least_now) + " to " + shown(*range.most_now);
        for (const Rule* rule : {range.least_by, range.most_by})
            if (rule && by.find(rule->clause) == std::string::npos) by += (by.empty() ? "" : ", ") + rule->clause;
        table.rows.push_back({{cells.word(meaning_of(range.quantity).word), cells.word(words(range.place)),
                               cells.word(limit_words(range.bounds, range.quantity, job.units)),
                               raw(range.bounds.least), raw(range.bounds.most), cells.word(now), cells.word(by)},
                              {}});
    }
    table.footnotes = {
        "now: the figures of the job, of each quantity the one nearest to its limit and those that fail."};
    return table;
}

}  // namespace rakewright
