#include "verdict_sheet.hpp"

namespace rakewright {

static void describe_rule(Sheet& sheet, const Rule& rule) {
    sheet.word("rules", rule.set, "the rule set or amendment that it comes from");
    sheet.word("clause", rule.clause, "the document's own number");
    sheet.word("what", rule.id.name, "the rule's name");
    sheet.word("judges", meaning_of(*rule.judges).word, "the quantity that it judges");
}

void describe(Sheet& sheet, const Verdicts& verdicts) {
    sheet.list("checks", verdicts.checks, "each limit held against its figure, worst first",
               [](Sheet& row, const Check& check) {
                   describe_rule(row, *check.rule);
                   row.word("where", check.where, "of what, and at which of its parts");
                   row.word("unit", unit_of(*check.rule),
                            "of value, limits and margin, the document's own: in, mm, deg or number");
                   row.number("value", check.value, "the figure");
                   row.word("known", words(check.known), "exactly; at_least, a ball passed; or under, it did not");
                   const Bounds& limit = check.rule->limit;
                   row.number("min", limit.least, "the least allowed");
                   row.number("max", limit.most, "the most allowed");
                   if (limit.least_excluded || limit.most_excluded)
                       row.word("excludes", limit.least_excluded ? "min" : "max",
                                "the limit that is itself not allowed");
                   row.number("margin", check.margin, "how far inside the nearer limit; outside, negative");
                   row.word("verdict", words(check.verdict), "pass, fail or unsure");
                   row.word("source", source_words(*check.rule),
                            "where the limit was read, or that it is from memory or derived");
                   row.word("measured", check.rule->measured, "how the document measures it");
                   row.list("assumed", check.assumed, "what was taken for granted",
                            [](Sheet& assumed, const std::string& text) { assumed.word("text", text, "in words"); });
               });
    sheet.list("not_judged", verdicts.not_judged, "rules that the job tells too little for",
               [](Sheet& row, const NotJudged& rule) {
                   describe_rule(row, *rule.rule);
                   if (!rule.where.empty()) row.word("where", rule.where, "of what");
                   row.word("missing", rule.missing, "what would tell it");
               });
    sheet.list("not_applied", verdicts.not_applied, "rules whose conditions do not hold",
               [](Sheet& row, const NotApplied& rule) {
                   describe_rule(row, *rule.rule);
                   row.word("where", rule.where, "of what");
                   row.word("because", meaning_of(rule.because).word, "the quantity that is outside its condition");
               });
}

void describe(Sheet& sheet, const std::vector<PassingRange>& ranges) {
    sheet.list("ranges", ranges, "what each quantity may be for every rule to pass, in the job's unit",
               [](Sheet& row, const PassingRange& range) {
                   row.word("judges", meaning_of(range.quantity).word, "the quantity");
                   row.word("place", words(range.place), "anywhere, stair or level");
                   row.number("min", range.bounds.least, "the least that passes");
                   row.number("max", range.bounds.most, "the most that passes");
                   if (range.bounds.least_excluded) row.word("excludes_min", "yes", "where the least itself fails");
                   if (range.bounds.most_excluded) row.word("excludes_max", "yes", "where the most itself fails");
                   if (range.least_by) row.word("min_clause", range.least_by->clause, "the clause that asks for it");
                   if (range.most_by) row.word("max_clause", range.most_by->clause, "the clause that asks for it");
                   row.number("least_now", range.least_now, "the least that was judged");
                   row.number("most_now", range.most_now, "the most that was judged");
               });
}

const char* words(RulePlace place) {
    switch (place) {
        case RulePlace::anywhere: return "anywhere";
        case RulePlace::stair: return "stair";
        case RulePlace::level: return "level";
    }
    return "anywhere";
}

const char* words(Verdict verdict) {
    switch (verdict) {
        case Verdict::pass: return "pass";
        case Verdict::fail: return "fail";
        case Verdict::unsure: return "unsure";
    }
    return "unsure";
}

const char* words(Known known) {
    switch (known) {
        case Known::exactly: return "exactly";
        case Known::at_least: return "at_least";
        case Known::under: return "under";
    }
    return "exactly";
}

const char* unit_of(const Rule& rule) {
    switch (meaning_of(*rule.judges).dimension) {
        case Dimension::length: return rule.units == Unit::inch ? "in" : "mm";
        case Dimension::angle: return "deg";
        case Dimension::number: return "number";
    }
    return "number";
}

}  // namespace rakewright
