#include "../../solver/solution_sheet.hpp"
#include "cut_sheet.hpp"

namespace rakewright {
namespace {

class SpacingPage {
 public:
    SpacingPage(const Job& job, const Solution& solution) : job_(job), choices_(solution.spacings), cells_(job) {}

    /// Each section as it is spaced, against the widest allowed.
    Table sections() const {
        Table table{"spacing", "THE SPACING: sections that are spaced together", {}, {}, {}, {}};
        table.columns = {{"section", "section", Align::left},    {"pickets", "pickets"},
                         {"gap", cells_.in_unit("gap")},         {"at each post", cells_.in_unit("end_gap")},
                         {"allowed", cells_.in_unit("allowed")}, {"under it by", cells_.in_unit("below_allowed")}};
        for (const SpacingChoice& choice : choices_) {
            if (!choice.taken) continue;
            for (const SpacedResult& section : choice.sections) table.rows.push_back(row_of(section));
            table.about = {"Spaced: " + name_of(choice, block_words(choice)) + "."};
        }
        return table;
    }

    /// The ways of spacing beside each other.
    Table choices() const {
        Table table{"spacings", "The ways to space them: what each would come to", {}, {}, {}, {}};
        table.columns = {{"spaced", "spaced", Align::left},
                         {"", "taken", Align::left},
                         {"pickets", "pickets"},
                         {"", cells_.in_unit("narrowest_gap")},
                         {"", cells_.in_unit("widest_gap")},
                         {"gaps", "gaps", Align::left},
                         {"", cells_.in_unit("narrowest_end_gap")},
                         {"", cells_.in_unit("widest_end_gap")},
                         {"at posts", "end_gaps", Align::left},
                         {"spread", cells_.in_unit("spread")},
                         {"", "sections", Align::left},
                         {"", "without", Align::left}};
        for (const SpacingChoice& choice : choices_) table.rows.push_back(row_of(choice));
        table.footnotes = {
            "spread: the widest of all gaps less the narrowest. *: taken. on a picket, on a gap: that is in the middle "
            "of every section that has no `centre` of its own; one that has keeps it in every row."};
        return table;
    }

 private:
    const Section& asked(int section) const { return job_.sections[static_cast<std::size_t>(section)]; }

    Cell allowed_in(const Section& section) const {
        const PicketBuild& pickets = *job_.builds[static_cast<std::size_t>(section.build.index)].pickets;
        const PicketLimit limit = *limit_of(section, pickets);
        const Cell length = cells_.size(limit.reading.value);
        return limit.on == PicketLimit::On::gap ? length : Cell{"ball " + length.shown, ""};
    }

    Row row_of(const SpacedResult& section) const {
        return {{cells_.word(asked(section.section).id.name), cells_.count(section.pickets), cells_.length(section.gap),
                 cells_.length(section.end), allowed_in(asked(section.section)), cells_.length(section.below)},
                {}};
    }

    static std::string name_of(const SpacingChoice& choice, const std::string& block = {}) {
        return words(choice.by) + block +
               (choice.centre ? std::string(", on a ") + words(*choice.centre) : std::string());
    }

    std::string block_words(const SpacingChoice& choice) const {
        return choice.block ? " of " + cells_.size(*choice.block).shown + " " + cells_.unit() : std::string();
    }

    Cell range(const LengthRange& range) const {
        if (!range.least) return {"-", ""};
        const std::string least = cells_.length(*range.least).shown, most = cells_.length(*range.most).shown;
        const std::string text = least == most ? least : least + " to " + most;
        return {text, text};
    }

    std::string counts_of(const SpacingChoice& choice) const {
        std::string text;
        for (const SpacedResult& section : choice.sections)
            text += (text.empty() ? "" : ", ") + asked(section.section).id.name + " " + std::to_string(section.pickets);
        return text;
    }

    Row row_of(const SpacingChoice& choice) const {
        const std::string name = name_of(choice);
        const std::string without = choice.without ? asked(*choice.without).id.name : std::string();
        const auto raw = [&](const std::optional<double>& value) { return Cell{"", value ? exact(*value) : ""}; };
        const bool fits = without.empty();
        return {{{(choice.taken ? "* " : "  ") + name, name},
                 {"", choice.taken ? "yes" : "no"},
                 fits ? cells_.count(choice.pickets) : Cell{"-", ""},
                 raw(choice.gaps.least),
                 raw(choice.gaps.most),
                 range(choice.gaps),
                 raw(choice.ends.least),
                 raw(choice.ends.most),
                 range(choice.ends),
                 fits ? cells_.length(choice.spread()) : Cell{"-", ""},
                 {"", counts_of(choice)},
                 {"", without}},
                fits ? counts_of(choice) : "none: " + without + " cannot be spaced so"};
    }

    const Job& job_;
    const std::vector<SpacingChoice>& choices_;
    Cells cells_;
};

}  // namespace

std::vector<Table> spacing_tables(const Job& job, const Solution& solution) {
    const SpacingPage page(job, solution);
    return {page.sections(), page.choices()};
}

}  // namespace rakewright
