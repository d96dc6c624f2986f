#include "judged.hpp"

namespace rakewright::tests {

TEST_CASE("an amendment changes what it gives and keeps the rest", "[check]") {
    const RuleSet& base = rules("irc-2021");
    RuleSet amendment;
    amendment.name = "county";
    amendment.amends = base.name;
    Rule change;
    change.id = called("riser height");
    change.set = "county";
    change.limit.most = 8.25;
    change.note = "an older stock of stairs";
    Rule grown;
    grown.id = called("rake");
    grown.set = "county";
    grown.clause = "1";
    grown.judges = Quantity::rake;
    grown.limit.most = 40;
    grown.limit.most_excluded = true;
    grown.source = FigureSource::read;
    Rule rounder;
    rounder.id = called("grip cross-section");  // judged of small perimeters only
    rounder.set = "county";
    rounder.limit.most = 2.5;
    amendment.rules = {change, grown, rounder};
    const RuleSet whole = amended(base, amendment);
    CHECK(incomplete_rule(whole) == nullptr);
    REQUIRE(whole.rules.size() == base.rules.size() + 1);
    for (std::size_t i = 0; i < base.rules.size(); ++i) {
        const Rule &was = base.rules[i], &is = whole.rules[i];
        INFO(was.id.name);
        CHECK(is.id.name == was.id.name);
        CHECK(is.clause == was.clause);
        CHECK(is.judges == was.judges);
        CHECK(is.where == was.where);
        CHECK((is.only_if ? is.only_if->size() : 0) == (was.only_if ? was.only_if->size() : 0));
        CHECK(is.measured == was.measured);
        CHECK(is.limit.least == was.limit.least);
        const bool is_rounder = was.id.name == "grip cross-section";
        const bool changed = was.id.name == "riser height" || is_rounder;
        CHECK(is.set == (changed ? "county" : "irc-2021"));
        // Nobody said where the new figures were read.
        CHECK(is.source == (changed ? std::nullopt : was.source));
        CHECK(is.limit.most == (is_rounder ? 2.5 : changed ? 8.25 : was.limit.most));
        CHECK(is.limit.most_excluded == was.limit.most_excluded);
        CHECK(is.note == (changed && !is_rounder ? "an older stock of stairs" : was.note));
    }
    CHECK(whole.rules.back().set == "county");

    Stair stair = even_stair();
    stair.rise = Reading(8.25);
    CHECK(only_check(judged(only_stair(stair), base), "riser height").verdict == Verdict::fail);
    const Verdicts by_county = judged(only_stair(stair), whole);
    CHECK(only_check(by_county, "riser height").verdict == Verdict::pass);
    CHECK(only_check(by_county, "riser height").rule->set == "county");
    CHECK(only_check(by_county, "rake").verdict == Verdict::pass);  // 36.87 degrees

    // Only its note: then its figure stays as it was read.
    Rule noted;
    noted.id = called("riser height");
    noted.note = "measured at both sides";
    amendment.rules = {noted};
    for (const Rule& rule : amended(base, amendment).rules)
        if (rule.id.name == "riser height") CHECK(rule.source == FigureSource::read);

    // What was allowed itself is not any more, and the other bound stays.
    Rule strict;
    strict.id = called("handrail height");
    strict.limit.most = 38;
    strict.limit.most_excluded = true;
    amendment.rules = {strict};
    for (const Rule& rule : amended(base, amendment).rules)
        if (rule.id.name == "handrail height") {
            CHECK(rule.limit.least == 34.0);
            CHECK_FALSE(rule.limit.least_excluded);
            CHECK(rule.limit.most_excluded);
        }
}

TEST_CASE("a new rule of an amendment that is not whole is found", "[check]") {
    Rule whole;
    whole.id = called("rake");
    whole.clause = "1";
    whole.judges = Quantity::rake;
    whole.limit.most = 40;
    whole.source = FigureSource::read;
    const auto with = [](const Rule& rule) {
        RuleSet amendment;
        amendment.rules = {rule};
        return amended(rules("irc-2021"), amendment);
    };
    CHECK(incomplete_rule(with(whole)) == nullptr);
    Rule without[3] = {whole, whole, whole};
    without[0].clause.clear();
    without[1].judges.reset();
    without[2].limit = {};
    for (const Rule& rule : without) {
        const RuleSet set = with(rule);
        const Rule* const found = incomplete_rule(set);
        REQUIRE(found != nullptr);
        CHECK(found->id.name == "rake");
    }
    // A misspelt name of a rule that was to be changed is such a one.
    Rule misspelt;
    misspelt.id = called("riser hight");
    misspelt.limit.most = 8;
    const RuleSet set = with(misspelt);
    REQUIRE(incomplete_rule(set) != nullptr);
    CHECK(incomplete_rule(set)->id.name == "riser hight");
}

TEST_CASE("an amendment that leaves nothing allowed is found", "[check]") {
    const auto with_least = [](double least, bool excluded) {
        Rule change;
        change.id = called("handrail height");  // 34 to 38
        change.limit.least = least;
        change.limit.least_excluded = excluded;
        RuleSet amendment;
        amendment.amends = "irc-2021";
        amendment.rules = {change};
        return amended(rules("irc-2021"), amendment);
    };
    CHECK(crossed_rule(rules("irc-2021")) == nullptr);
    const RuleSet beyond = with_least(40, false), at = with_least(38, false), above = with_least(38, true);
    REQUIRE(crossed_rule(beyond) != nullptr);
    CHECK(crossed_rule(beyond)->id.name == "handrail height");
    CHECK(crossed_rule(at) == nullptr);
    CHECK(crossed_rule(above) != nullptr);
    CHECK(beyond.amends == "irc-2021");
}

}  // namespace rakewright::tests
