#include "rule_form.hpp"

namespace rakewright {
namespace {

/// A figure of a rule: a length of the set's unit, or a plain number.
class Figure : public Grammar {
 public:
    bool take(std::string_view text, Unit unit, Place) override {
        figure_ = read_length(text, unit);
        return figure_.has_value();
    }
    const char* expected() const override { return "a number such as 7 3/4, 900 or 1/48"; }
    std::string pattern() const override { return length_pattern(true); }
    bool may_be_number() const override { return true; }
    std::optional<double> figure() const { return figure_; }

 private:
    std::optional<double> figure_;
};

/// The word of a quantity.
class QuantityWord : public Grammar {
 public:
    explicit QuantityWord(std::optional<Quantity>& quantity) : quantity_(quantity) {}
    bool take(std::string_view text, Unit, Place) override {
        for (const QuantityMeaning& meaning : quantities())
            if (text == meaning.word) {
                quantity_ = meaning.quantity;
                return true;
            }
        return false;
    }
    const char* expected() const override {
        static const std::string all = [] {
            std::string words = "one of ";
            for (const QuantityMeaning& meaning : quantities())
                words += (words.size() > 7 ? ", `" : "`") + std::string(meaning.word) + "`";
            return words;
        }();
        return all.c_str();
    }
    std::string pattern() const override {
        std::string words = "^(";
        for (const QuantityMeaning& meaning : quantities())
            words += (words.size() > 2 ? "|" : "") + std::string(meaning.word);
        return words + ")$";
    }
    bool may_be_number() const override { return false; }

 private:
    std::optional<Quantity>& quantity_;
};

void bounds(Form& form, Bounds& bounds) {
    const auto figure = [&](const char* key, std::optional<double>& limit, bool& excluded, bool excludes,
                            const char* about) {
        Figure given;
        form.written(key, given, may_be_left_out, about);
        if (!given.figure()) return;
        limit = given.figure();
        excluded = excludes;
    };
    figure("min", bounds.least, bounds.least_excluded, false, "the least that is allowed");
    figure("above", bounds.least, bounds.least_excluded, true, "what it must be more than");
    figure("max", bounds.most, bounds.most_excluded, false, "the most that is allowed");
    figure("below", bounds.most, bounds.most_excluded, true, "what it must be less than");
}

}  // namespace

static void describe(Form& form, Bounds& given) {
    form.about("The figures for which the rule applies.");
    bounds(form, given);
}

static void describe(Form& form, std::vector<Condition>& conditions) {
    form.about("Quantities that decide whether the rule applies.");
    for (const QuantityMeaning& meaning : quantities()) {
        std::optional<Bounds> given;
        form.part(meaning.word, given, meaning.about);
        if (given) conditions.push_back({meaning.quantity, *given});
    }
}

static void describe(Form& form, Rule& rule) {
    form.about("One limit. In an amendment, a rule of the same name keeps what is left out.");
    form.id(rule.id);
    form.text("clause", rule.clause, may_be_left_out, "the document's own number");
    QuantityWord judges(rule.judges);
    form.written("judges", judges, may_be_left_out, "the quantity that is judged");
    bounds(form, rule.limit);
    form.choice(
        "where", rule.where,
        {{"anywhere", "on stairs and floors"}, {"stair", "over the steps"}, {"level", "over a floor or landing"}},
        "where it applies; anywhere if left out");
    form.part("only_if", rule.only_if, "when it applies");
    form.choice("source", rule.source,
                {{"read", "in the document itself"},
                 {"government", "on a page of its government"},
                 {"secondary", "in a secondary source"},
                 {"memory", "nowhere: from memory"},
                 {"derived", "reckoned from its other figures"}},
                "where the figure was read; from memory if left out");
    form.text("measured", rule.measured, may_be_left_out, "how it is measured");
    form.text("note", rule.note, may_be_left_out, "what else the document says");
}

void describe(Form& form, RuleSet& set) {
    form.about(
        "The rules of one document and edition; or, with `amends`, what a local amendment changes in one and adds to "
        "it.");
    form.text("amends", set.amends, may_be_left_out, "the rule set that is amended");
    form.text("document", set.document, be_given, "its title");
    form.text("edition", set.edition, be_given, "its edition, or the date from which it is in force");
    form.text("place", set.place, be_given, "where it is in force");
    form.choice("units", set.units, {{"in", "inches"}, {"mm", "millimetres"}}, be_given, "the unit of its figures");
    form.named("rules", set.rules, 1000, be_given, "the rules, each under a name of its own");
}

}  // namespace rakewright
