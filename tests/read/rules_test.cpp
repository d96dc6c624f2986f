#include "../../cli/read/reader.hpp"

#include <algorithm>

#include "../support/catch.hpp"

namespace rakewright::tests {
namespace {

constexpr const char* head = "document: Bylaws of Fennel Wharf\nedition: 3\nplace: the wharf\nunits: in\nrules:\n";

std::string with_rule(const std::string& keys) { return std::string(head) + "  steep: {" + keys + "}\n"; }

ReadRules read(const std::string& text) { return read_rules(source_of("wharf.yaml", text), "wharf"); }

/// The only refusal of a file of rules, and the text under its place.
struct Refused {
    Refusal why;
    std::string under;
};
Refused refused(const std::string& text) {
    const ReadRules result = read(text);
    CHECK_FALSE(result.set);
    REQUIRE(result.refusals.size() == 1);
    const Refusal& why = result.refusals[0];
    return {why, text.substr(why.place.begin, why.place.size)};
}

}  // namespace

TEST_CASE("rules are read as they stand", "[read][rules]") {
    const ReadRules result =
        read(with_rule("clause: 4, judges: rise, above: 4, max: 7 3/4, where: stair, "
                       "only_if: {drop: {above: 30, max: 70}, risers: {min: 4}}, source: read, "
                       "measured: plumb, note: none"));
    REQUIRE(result.set);
    CHECK(result.refusals.empty());
    CHECK(result.set->name == "wharf");
    CHECK(result.set->document == "Bylaws of Fennel Wharf");
    CHECK(result.set->units == Unit::inch);
    REQUIRE(result.set->rules.size() == 1);
    const Rule& rule = result.set->rules[0];
    CHECK(rule.id.name == "steep");
    CHECK(rule.set == "wharf");
    CHECK(rule.judges == Quantity::rise);
    CHECK(rule.limit.least == 4.0);
    CHECK(rule.limit.least_excluded);
    CHECK(rule.limit.most == 7.75);
    CHECK_FALSE(rule.limit.most_excluded);
    CHECK(rule.where == RulePlace::stair);
    CHECK(rule.source == FigureSource::read);
    REQUIRE(rule.only_if);
    REQUIRE(rule.only_if->size() == 2);
    for (const Condition& condition : *rule.only_if) {
        const bool is_drop = condition.quantity == Quantity::drop;
        CHECK((is_drop || condition.quantity == Quantity::risers));
        CHECK(condition.bounds.least == (is_drop ? 30.0 : 4.0));
        CHECK(condition.bounds.least_excluded == is_drop);
        CHECK(condition.bounds.most.has_value() == is_drop);
    }
}

TEST_CASE("a quantity that nobody knows is refused with those that are known", "[read][rules]") {
    const Refused wrong = refused(with_rule("clause: 4, judges: steepness, max: 40"));
    CHECK(wrong.under == "steepness");
    CHECK(wrong.why.sentence == "`judges` cannot be 'steepness'");
    for (const QuantityMeaning& meaning : quantities())
        CHECK_THAT(wrong.why.expected, Catch::Matchers::Contains(std::string("`") + meaning.word + "`"));

    const std::string text = with_rule("clause: 4, judges: rake, max: 40, only_if: {dorp: {above: 30}}");
    const Refused condition = refused(text);
    CHECK(condition.under == "dorp");
    CHECK(condition.why.sentence == "unknown key `dorp`");
    CHECK_THAT(condition.why.nearest, Catch::Matchers::Contains("'drop'"));
}

TEST_CASE("a key that no rule has is refused with the nearest, or with all", "[read][rules]") {
    const Refused near = refused(with_rule("clause: 4, judges: rake, maxx: 40"));
    CHECK(near.under == "maxx");
    CHECK(near.why.sentence == "unknown key `maxx`");
    CHECK_THAT(near.why.nearest, Catch::Matchers::Contains("'max'"));
    const Refused far = refused(with_rule("clause: 4, judges: rake, tolerance: 1/8"));
    CHECK(far.under == "tolerance");
    for (const char* key : {"clause", "judges", "min", "above", "max", "below", "where", "only_if", "source"})
        CHECK_THAT(far.why.expected, Catch::Matchers::Contains(key));
    CHECK(refused(std::string("authors: us\n") + with_rule("clause: 4, judges: rake, max: 40")).under == "authors");
}

TEST_CASE("a limit that is no number is refused where it stands", "[read][rules]") {
    for (const char* key : {"min", "above", "max", "below"})
        for (const char* limit : {"wide", "40 deg", "1e3", "7 in 11"}) {
            INFO(key << ": " << limit);
            const Refused wrong = refused(with_rule(std::string("judges: rake, ") + key + ": " + limit));
            CHECK(wrong.under == limit);
            CHECK(wrong.why.sentence == std::string("`") + key + "` cannot be '" + limit + "'");
            CHECK(wrong.why.expected == "a number such as 7 3/4, 900 or 1/48");
        }
    CHECK(refused(with_rule("judges: rake, max: 40, only_if: {risers: {min: few}}")).under == "few");
    const Refused list = refused(with_rule("judges: rake, max: [40, 42]"));
    CHECK(list.why.sentence == "`max` cannot be a list");
    CHECK(refused(with_rule("judges: rake, where: outside, max: 40")).under == "outside");
}

TEST_CASE("every mistake of a file of rules is told in one run", "[read][rules]") {
    const std::string text = with_rule("clause: 4, judges: steepness, max: wide, tolerance: 1");
    const ReadRules result = read(text);
    CHECK_FALSE(result.set);
    std::vector<std::string> under;
    for (const Refusal& refusal : result.refusals)
        under.push_back(text.substr(refusal.place.begin, refusal.place.size));
    std::sort(under.begin(), under.end());
    CHECK(under == std::vector<std::string>{"steepness", "tolerance", "wide"});
    CHECK(refused("edition: 3\nplace: here\nunits: in\nrules: {r: {judges: rake, max: 40}}\n").why.sentence ==
          "the key `document` is missing");
}

TEST_CASE("an amendment that leaves a key out keeps it", "[read][rules]") {
    const ReadRules base = read(with_rule("clause: 4, judges: rake, min: 20, max: 40, where: stair, source: read"));
    const ReadRules change = read("amends: wharf\n" + with_rule("max: 42, source: government"));
    REQUIRE(base.set);
    REQUIRE(change.set);
    CHECK(change.set->amends == "wharf");
    const Rule rule = amended(*base.set, *change.set).rules[0];
    CHECK(rule.clause == "4");
    CHECK(rule.judges == Quantity::rake);
    CHECK(rule.where == RulePlace::stair);
    CHECK(rule.limit.least == 20.0);
    CHECK(rule.limit.most == 42.0);
    CHECK(rule.source == FigureSource::government);
}

}  // namespace rakewright::tests
