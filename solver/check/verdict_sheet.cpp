#include "verdict_sheet.hpp"

namespace rakewright {

static void describe_rule(Sheet& sheet, const Rule& rule) {
    sheet.word("rules", rule.set, "the rule set or amendment that it comes from");
    sheet.word("clause", rule.clause, "the document's own number");
    sheet.word("what", rule.id.name, "the rule's name");
    sheet.word("judges", meaning_of(*rule.judges).word, "the quantity that it judges");
}

/// Limits of which the figure itself may not be allowed.
static void describe_bounds(Sheet& row, const Bounds& bounds) {
    row.number("min", bounds.least, "the least allowed");
    row.number("max", bounds.most, "the most allowed");
    if (bounds.least) row.truth("excludes_min", bounds.least_excluded, "whether the least itself is not allowed");
    if (bounds.most) row.truth("excludes_max", bounds.most_excluded, "whether the most itself is not allowed");
}

void describe(Sheet& sheet, const Verdicts& verdicts) {
    sheet.list("unguarded", verdicts.unguarded, "stairs whose fall asks for a guard, and that have none in the job",
               [](Sheet& row, const Unguarded& stair) {
                   describe_rule(row, *stair.rule);
                   row.word("where", stair.where, "which stair");
                   row.word("unit", unit_of(*stair.rule), "of the drop, the document's own");
                   row.number("drop", stair.drop, "the greatest fall beside it");
               });
    sheet.list("checks", verdicts.checks, "each limit held against its figure, worst first",
               [](Sheet& row, const Check& check) {
                   describe_rule(row, *check.rule);
                   row.word("where", check.where(), "of what, and at which of its parts");
                   row.word("unit", unit_of(*check.rule),
                            "of value, limits and margin, the document's own: in, mm, deg or number");
                   row.number("value", check.value, "the figure");
                   row.word("known", words(check.known), "exactly; at_least, a ball passed; or under, it did not");
                   describe_bounds(row, check.rule->limit);
                   row.number("margin", check.margin,
                              "how far inside the nearer limit; outside, negative; a bound where a ball tells the "
                              "figure, and none where the verdict is unsure");
                   row.word("verdict", words(check.verdict), "pass, fail or unsure");
                   row.word("source", source_words(*check.rule),
                            "where the limit was read, or that it is from memory or derived");
                   row.word("measured", check.rule->measured, "how the document measures it");
                   if (!check.rule->note.empty()) row.word("note", check.rule->note, "what else the document says");
                   row.list("assumed", check.assumed, "what was taken for granted",
                            [](Sheet& assumed, const std::string& text) { assumed.word("text", text, "in words"); });
               });
    sheet.list("not_judged", verdicts.not_judged, "rules that the job tells too little for",
               [](Sheet& row, const NotJudged& rule) {
                   describe_rule(row, *rule.rule);
                   if (!rule.where.empty()) row.word("where", rule.where, "of what");
                   row.word("missing", rule.missing, "what would tell it: keys of the job");
               });
    sheet.list("not_applied", verdicts.not_applied, "rules whose conditions do not hold",
               [](Sheet& row, const NotApplied& rule) {
                   describe_rule(row, *rule.rule);
                   if (!rule.where.empty()) row.word("where", rule.where, "of what; none: nothing in the job");
                   row.word("because", meaning_of(rule.because).word, "the quantity that decides it");
                   row.word("why", words(rule.why),
                            "condition: that quantity is outside the rule's condition; none_there: it does not occur; "
                            "elsewhere: not over what the rule speaks of, steps or a floor");
               });
}

static void describe_now(Sheet& row, const std::optional<FigureNow>& now, const char* key, const char* about) {
    if (!now) return;
    row.part(key, about, [&](Sheet& part) {
        part.number("value", now->value, "the figure");
        part.word("known", words(now->known), "exactly; at_least, a ball passed; or under, it did not");
    });
}

void describe(Sheet& sheet, const std::vector<PassingRange>& ranges) {
    sheet.list("ranges", ranges, "what each quantity may be for every rule to pass, in the job's unit",
               [](Sheet& row, const PassingRange& range) {
                   row.word("judges", meaning_of(range.quantity).word, "the quantity");
                   row.word("place", words(range.place), "anywhere, stair or level");
                   describe_bounds(row, range.bounds);
                   if (range.least_by) row.word("min_clause", range.least_by->clause, "the clause that asks for it");
                   if (range.most_by) row.word("max_clause", range.most_by->clause, "the clause that asks for it");
                   describe_now(row, range.least_now, "least_now", "the least that was judged");
                   describe_now(row, range.most_now, "most_now", "the most that was judged");
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

const char* words(NotApplied::Why why) {
    switch (why) {
        case NotApplied::Why::condition: return "condition";
        case NotApplied::Why::none_there: return "none_there";
        case NotApplied::Why::elsewhere: return "elsewhere";
    }
    return "condition";
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
