#include <algorithm>
#include <cmath>

#include "../../solver/check/verdict_sheet.hpp"
#include "../../solver/measure/compare.hpp"
#include "../../solver/solution_sheet.hpp"
#include "cut_sheet.hpp"

namespace rakewright {
namespace {

/// A figure of a document as people read it there: a length in inches as a fraction if it is one, else decimals, as
/// many as tell it from 0, and from limits that it is not.
std::string figure(double value, Quantity quantity, Unit unit, const std::vector<double>& apart_from = {}) {
    const bool in_inches = unit == Unit::inch && meaning_of(quantity).dimension == Dimension::length;
    const Tape fine{Unit::inch, 1.0 / 64};
    if (in_inches && std::fabs(value - at_mark(nearest_mark(value, fine), fine)) < 1e-9)
        return words_of_length(value, fine);
    if (std::fabs(value - std::round(value)) < 1e-9) return rounded(value, 0);
    const auto tells = [&](const std::string& words, int decimals) {
        return words.find_first_of("123456789") != std::string::npos &&
               std::none_of(apart_from.begin(), apart_from.end(),
                            [&](double other) { return rounded(other, decimals) == words; });
    };
    int decimals = unit == Unit::inch ? 3 : 1;
    while (decimals < 6 && !tells(rounded(value, decimals), decimals)) ++decimals;
    return rounded(value, decimals);
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

/// The limits that a figure is not equal to.
std::vector<double> limits_beside(const Check& check) {
    std::vector<double> beside;
    const Bounds& limit = check.rule->limit;
    for (const std::optional<double>& bound : {limit.least, limit.most})
        if (bound && !same(*bound, check.value)) beside.push_back(*bound);
    return beside;
}

std::string value_words(const Check& check) {
    const std::string value = figure(check.value, *check.rule->judges, check.rule->units, limits_beside(check));
    switch (check.known) {
        case Known::exactly: return value;
        case Known::at_least: return value + " or more";
        case Known::under: return "under " + value;
    }
    return value;
}

/// A margin that a ball tells is a bound: the opening may be larger than one that passed, smaller than one that did
/// not.
std::string margin_words(const Check& check) {
    if (!check.margin) return "-";
    const std::string margin = figure(*check.margin, *check.rule->judges, check.rule->units);
    if (check.known == Known::exactly) return margin;
    return check.verdict == Verdict::fail ? margin + " or worse" : margin + " or more";
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

/// What stands under a check: what and where, the figure in the job's unit if it is another, and what to know about it;
/// what the document says besides where the check does not pass.
std::string under(const Job& job, const Check& check, Assumptions& assumptions) {
    const Rule& rule = *check.rule;
    std::string text = rule.id.name + ": " + check.subject;
    if (!check.places.empty()) text += ", " + check.places.front();
    if (check.rule->units != job.units && meaning_of(*rule.judges).dimension == Dimension::length)
        text += " (" + figure(check.in_job_unit, *rule.judges, job.units) + (job.units == Unit::inch ? " in)" : " mm)");
    if (check.places.size() > 1) text += "; and " + std::to_string(check.places.size() - 1) + " more there";
    if (rule.source != FigureSource::read) text += "; the limit is " + std::string(source_words(rule));
    text += assumptions.marks(check);
    if (check.verdict != Verdict::pass && !rule.note.empty()) text += ". Note: " + rule.note;
    return text;
}

/// The worst of the places of one thing at which one rule fails, with the names of the others behind its own.
Verdicts worst_of_each(const Verdicts& verdicts) {
    Verdicts worst = verdicts;
    worst.checks.clear();
    for (const Check& check : verdicts.checks) {
        const auto first = std::find_if(worst.checks.begin(), worst.checks.end(), [&](const Check& other) {
            return check.verdict == Verdict::fail && other.verdict == Verdict::fail && other.rule == check.rule &&
                   other.subject == check.subject;
        });
        if (first == worst.checks.end())
            worst.checks.push_back(check);
        else
            first->places.insert(first->places.end(), check.places.begin(), check.places.end());
    }
    return worst;
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
                     {"", "assumed", Align::left},
                     {"", "note", Align::left}};
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
                               {margin_words(check), check.margin ? exact(*check.margin) : ""},
                               cells.word(unit_of(rule)),
                               cells.word(rule.clause),
                               cells.word(rule.set),
                               {"", rule.id.name},
                               {"", meaning_of(*rule.judges).word},
                               {"", check.where()},
                               {"", exact(check.in_job_unit)},
                               {"", source_words(rule)},
                               {"", joined(check.assumed)},
                               {"", rule.note}},
                              under(job, check, assumptions)});
    }
    table.footnotes = assumptions.footnotes();
    return table;
}

Table unguarded_table(const Job& job, const Verdicts& verdicts) {
    const Cells cells(job);
    Table table{"unguarded", "NO GUARD: the fall asks for one, and the job has none there", {}, {}, {}, {}};
    table.columns = {{"of", "where", Align::left},    {"falls", "drop"},
                     {"unit", "unit", Align::left},   {"clause", "clause", Align::left},
                     {"rules", "rules", Align::left}, {"", "what", Align::left}};
    for (const Unguarded& stair : verdicts.unguarded)
        table.rows.push_back({{cells.word(stair.where),
                               {figure(stair.drop, Quantity::drop, stair.rule->units), exact(stair.drop)},
                               cells.word(unit_of(*stair.rule)),
                               cells.word(stair.rule->clause),
                               cells.word(stair.rule->set),
                               {"", stair.rule->id.name}},
                              {}});
    table.footnotes = {"If one stands there, name it in `sections` or `as_found`; nothing of it has been judged."};
    return table;
}

Table not_judged_table(const Job& job, const Verdicts& verdicts) {
    const Cells cells(job);
    Table table{"not_judged", "", {}, {}, {}, {}};
    for (const char* const name : {"what", "clause", "rules", "where", "missing"})
        table.columns.push_back({"", name, Align::left});
    for (const NotJudged& rule : verdicts.not_judged)
        table.rows.push_back({{cells.word(rule.rule->id.name), cells.word(rule.rule->clause),
                               cells.word(rule.rule->set), cells.word(rule.where), cells.word(rule.missing)},
                              {}});
    return table;
}

/// Rules that gave no verdict by the reason that they share: under it, of what, and which they are.
class ByReason {
 public:
    ByReason(Table table) : table_(std::move(table)) {}

    void add(const std::string& reason, const std::string& where, const Rule& rule) {
        auto row = std::find_if(table_.rows.begin(), table_.rows.end(),
                                [&](const Row& other) { return other.cells[0].shown == reason; });
        if (row == table_.rows.end()) {
            table_.rows.push_back({{{reason, reason}}, {}});
            last_.emplace_back();
            row = table_.rows.end() - 1;
        }
        std::string& last = last_[static_cast<std::size_t>(row - table_.rows.begin())];
        if (!row->under.empty()) row->under += "; ";
        if (!where.empty() && where != last) row->under += where + ": ";
        last = where;
        row->under += rule.id.name + ", " + rule.clause;
    }

    Table take() && { return std::move(table_); }

 private:
    Table table_;
    std::vector<std::string> last_;
};

/// The same by what somebody has to measure for them.
Table missing_table(const Verdicts& verdicts) {
    ByReason table(
        {"not_judged", "NOT JUDGED: the job does not tell enough", {{"needs", "missing", Align::left}}, {}, {}, {}});
    for (const NotJudged& rule : verdicts.not_judged) table.add(rule.missing, rule.where, *rule.rule);
    return std::move(table).take();
}

/// How many checks there are of each verdict, and how many rules wait for a measurement.
std::string tally(const Verdicts& verdicts) {
    const auto count = [&](Verdict verdict) {
        return std::to_string(std::count_if(verdicts.checks.begin(), verdicts.checks.end(),
                                            [&](const Check& check) { return check.verdict == verdict; }));
    };
    return count(Verdict::fail) + " FAIL, " + count(Verdict::unsure) + " UNSURE, " + count(Verdict::pass) + " pass; " +
           std::to_string(verdicts.not_judged.size()) + " NOT JUDGED.";
}

/// Why a rule does not apply, in few words.
std::string why_words(const NotApplied& rule) {
    switch (rule.why) {
        case NotApplied::Why::condition: return std::string("by ") + meaning_of(rule.because).word;
        case NotApplied::Why::none_there: return "there is none in the job";
        case NotApplied::Why::elsewhere:
            return rule.rule->where == RulePlace::level ? "there is none over a floor" : "there is none over steps";
    }
    return {};
}

Table not_applied_table(const Job& job, const Verdicts& verdicts) {
    const Cells cells(job);
    Table table{"not_applied", "", {}, {}, {}, {}};
    for (const char* const name : {"what", "clause", "rules", "where", "because", "why"})
        table.columns.push_back({"", name, Align::left});
    for (const NotApplied& rule : verdicts.not_applied)
        table.rows.push_back(
            {{cells.word(rule.rule->id.name), cells.word(rule.rule->clause), cells.word(rule.rule->set),
              cells.word(rule.where), cells.word(meaning_of(rule.because).word), cells.word(words(rule.why))},
             {}});
    return table;
}

/// The same by what decides it.
Table why_not_table(const Verdicts& verdicts) {
    ByReason table({"not_applied", "DOES NOT APPLY: by what the job tells", {{"why", "why", Align::left}}, {}, {}, {}});
    for (const NotApplied& rule : verdicts.not_applied) table.add(why_words(rule), rule.where, *rule.rule);
    return std::move(table).take();
}

}  // namespace

std::vector<Table> checks_for_a_crew(const Job& job, const Verdicts& verdicts) {
    std::vector<Table> tables;
    if (!verdicts.unguarded.empty()) tables.push_back(unguarded_table(job, verdicts));
    if (verdicts.checks.empty()) return tables;
    Verdicts to_know;
    std::copy_if(verdicts.checks.begin(), verdicts.checks.end(), std::back_inserter(to_know.checks),
                 [](const Check& check) { return check.verdict != Verdict::pass; });
    Table table = checks_table(job, worst_of_each(to_know));
    const std::size_t passed = verdicts.checks.size() - to_know.checks.size();
    table.about = {std::to_string(passed) + (passed == 1 ? " check passes" : " checks pass") + ", " +
                   (to_know.checks.empty() ? std::string("none fails")
                                           : std::to_string(to_know.checks.size()) + " fail or are unsure") +
                   "; `rakewright check` prints all of them, and what could not be judged."};
    tables.push_back(std::move(table));
    return tables;
}

std::vector<Table> check_tables(const Job& job, const Verdicts& verdicts) {
    return {unguarded_table(job, verdicts), checks_table(job, verdicts), not_judged_table(job, verdicts),
            not_applied_table(job, verdicts)};
}

std::vector<Table> check_pages(const Job& job, const Verdicts& verdicts) {
    const Verdicts worst = worst_of_each(verdicts);
    Table checks = checks_table(job, worst);
    checks.about = {tally(worst)};
    return {unguarded_table(job, verdicts), std::move(checks), missing_table(verdicts), why_not_table(verdicts)};
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
        const auto shown = [&](const FigureNow& now) {
            const std::string words = figure(now.value, range.quantity, job.units);
            return now.known == Known::exactly ? words
                   : now.known == Known::under ? "under " + words
                                               : words + " or more";
        };
        std::string now = "-", by;
        if (range.least_now) {
            const std::string least = shown(*range.least_now), most = shown(*range.most_now);
            now = least == most ? least : least + " to " + most;
        }
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
