#include "job_pickets.hpp"

#include <algorithm>
#include <cmath>

#include "measure/compare.hpp"
#include "section_pickets.hpp"
#include "way.hpp"

namespace rakewright {
namespace {

/// One way of spacing: as asked for, or another to compare it with.
struct Variant {
    Spacing::By by = Spacing::By::fewest;
    std::optional<Centre> centre;
    bool asked = false;
};

std::optional<double> value_of(const std::optional<Reading>& reading) {
    return reading ? std::optional(reading->value) : std::nullopt;
}

/// The sections that take part in a job's spacing, in place.
class Spacers {
 public:
    Spacers(const Spacing& spacing, const Tape& tape, const std::vector<SectionInPlace>& sections)
        : spacing_(spacing), tape_(tape), sections_(sections) {
        ways_.reserve(sections.size());
        stands_.reserve(sections.size());
        for (std::size_t i = 0; i < sections.size(); ++i) add(i);
    }

    SpacedJob spaced(const Variant& variant) const {
        std::vector<SpacedSection> wished = spaced_;
        for (std::size_t i = 0; i < wished.size(); ++i) wished[i].centre = centre_in(i, variant);
        const std::optional<double> least_gap = value_of(spacing_.least_gap),
                                    least_end = value_of(spacing_.least_end_gap);
        switch (variant.by) {
            case Spacing::By::fewest: return fewest_each(wished);
            case Spacing::By::alike: return alike_in_all(wished, least_gap);
            case Spacing::By::block: break;
        }
        return spacing_.block ? with_block(wished, *spacing_.block, least_end)
                              : with_longest_block(wished, tape_, least_gap, least_end);
    }

    SpacingChoice choice(const Variant& variant) const {
        const SpacedJob job = spaced(variant);
        SpacingChoice choice{variant.by, variant.centre, variant.asked, job.block, {}, {}, {}, {}, {}, 0};
        if (job.without) {
            choice.without = place_in(*job.without).index;
            return choice;
        }
        for (std::size_t i = 0; i < spaced_.size(); ++i)
            if (job.sections[i].count > 0) add(i, job.sections[i], choice);
        return choice;
    }

    std::size_t count() const { return spaced_.size(); }
    const SpacedSection& section(std::size_t i) const { return spaced_[i]; }
    const std::vector<SpacedSection>& sections() const { return spaced_; }
    const PicketStand& stand(std::size_t i) const { return stands_[stand_of_[i]]; }
    const SectionInPlace& place_in(std::size_t i) const { return sections_[index_of_[i]]; }
    std::size_t index_of(std::size_t i) const { return index_of_[i]; }

 private:
    void add(std::size_t index) {
        const SectionInPlace& section = sections_[index];
        if (!section.task.build.pickets) return;
        const Way& way = ways_.emplace_back(
            way_of(section.task, section.around, section.choices.faces, section.task.lower_gap(section.choices)));
        if (!way.faces) return;
        stands_.push_back(stand_of(section.task, section.around, way.line, way.levels, *way.faces));
        std::optional<SpacedSection> spaced = spaced_section(stands_.back());
        if (!spaced) return;
        spaced_.push_back(std::move(*spaced));
        stand_of_.push_back(stands_.size() - 1);
        index_of_.push_back(index);
    }

    std::optional<Centre> centre_in(std::size_t i, const Variant& variant) const {
        const SectionTask& task = place_in(i).task;
        const std::optional<CentreWish>& own = task.section.centre;
        if (own) return own->centre;
        if (spaced_[i].fewest == 0) return std::nullopt;
        if (!variant.asked) return variant.centre;
        return task.centre ? std::optional(task.centre->centre) : std::nullopt;
    }

    void add(std::size_t i, const Spaced& spaced, SpacingChoice& choice) const {
        const SpacedSection& section = spaced_[i];
        const double end = end_gap(section.span, spaced), gap = spaced.between.value_or(end);
        const bool has_gaps = spaced.count > 1;
        SpacedResult result{place_in(i).index, spaced.count, {}, end, {}};
        if (has_gaps) result.gap = gap;
        if (!section.stops) result.below = section.limit - (has_gaps ? std::fmax(gap, end) : end);
        choice.sections.push_back(result);
        choice.pickets += spaced.count * section.alike;
        choice.ends.take(end);
        choice.all.take(end);
        if (!has_gaps) return;
        choice.gaps.take(gap);
        choice.all.take(gap);
    }

    const Spacing& spacing_;
    const Tape& tape_;
    const std::vector<SectionInPlace>& sections_;
    std::vector<Way> ways_;
    std::vector<PicketStand> stands_;
    // Of those that take part: how each is seen, its stand, its place in the list of sections.
    std::vector<SpacedSection> spaced_;
    std::vector<std::size_t> stand_of_, index_of_;
};

/// Says why a section cannot be spaced as asked for.
Finding against(const Spacing& spacing, const Spacers& spacers, std::size_t without) {
    const SectionInPlace& place = spacers.place_in(without);
    const Place section = place.task.section.id.place;
    Finding finding;
    if (!spacing.block) {
        finding = {Trouble::no_block,
                   spacing.place,
                   {shortest_block(spacers.sections(), value_of(spacing.least_gap))},
                   section};
    } else if (const double limit = spacers.section(without).limit; less_than(limit, *spacing.block)) {
        finding = {Trouble::block_over_limit, spacing.block->place, {*spacing.block, limit}, section};
    } else {
        const double least = spacing.least_end_gap ? spacing.least_end_gap->value : usual_least_end * *spacing.block;
        finding = {Trouble::block_does_not_fit, spacing.block->place, {*spacing.block, least}, section};
    }
    finding.section = place.index;
    return finding;
}

void note_without_effect(const Spacing& spacing, std::vector<Finding>& findings) {
    if (spacing.least_gap && (spacing.by == Spacing::By::fewest || spacing.block))
        findings.push_back({Trouble::least_gap_without_effect, spacing.least_gap->place, {0}, {}});
    if (spacing.least_end_gap && spacing.by != Spacing::By::block)
        findings.push_back({Trouble::least_end_gap_without_block, spacing.least_end_gap->place, {}, {}});
}

/// Gaps that are alike are looked for from the least to the limit of their section: says where there is nothing
/// between.
void note_least_gap(const Spacing& spacing, const Spacers& spacers, std::vector<Finding>& findings) {
    if (!spacing.least_gap || spacing.by != Spacing::By::alike || spacers.count() == 0) return;
    double widest = 0;
    for (const SpacedSection& section : spacers.sections()) widest = std::fmax(widest, section.limit);
    if (less_than(widest, *spacing.least_gap))
        findings.push_back(
            {Trouble::least_gap_without_effect, spacing.least_gap->place, {1, *spacing.least_gap, widest}, {}});
}

}  // namespace

void space_pickets(const Spacing& spacing, const Tape& tape, std::vector<SectionInPlace>& sections,
                   std::vector<Finding>& findings) {
    note_without_effect(spacing, findings);
    if (spacing.by == Spacing::By::fewest) return;  // each has them by itself
    const Spacers spacers(spacing, tape, sections);
    note_least_gap(spacing, spacers, findings);
    const SpacedJob job = spacers.spaced({spacing.by, {}, true});
    if (job.without) {
        findings.push_back(against(spacing, spacers, *job.without));
        return;
    }
    for (std::size_t i = 0; i < spacers.count(); ++i) {
        SectionChoices& choices = sections[spacers.index_of(i)].choices;
        choices.pickets = job.sections[i].count;
        choices.between = job.sections[i].between;
        const std::size_t before = findings.size();
        pickets_fit(spacers.stand(i), choices, findings);
        for (std::size_t f = before; f < findings.size(); ++f) findings[f].section = spacers.place_in(i).index;
    }
}

std::vector<SpacingChoice> compared(const Spacing& spacing, const Tape& tape,
                                    const std::vector<SectionInPlace>& sections) {
    using By = Spacing::By;
    std::vector<Variant> variants = {{By::fewest, {}, false},
                                     {By::alike, {}, false},
                                     {By::block, {}, false},
                                     {By::fewest, Centre::picket, false},
                                     {By::fewest, Centre::gap, false}};
    const std::optional<Centre> centre = spacing.centre ? std::optional(spacing.centre->centre) : std::nullopt;
    const auto asked = std::find_if(variants.begin(), variants.end(), [&](const Variant& variant) {
        return variant.by == spacing.by && variant.centre == centre;
    });
    if (asked == variants.end())
        variants.push_back({spacing.by, centre, true});
    else
        asked->asked = true;
    const Spacers spacers(spacing, tape, sections);
    std::vector<SpacingChoice> choices;
    if (spacers.count() == 0) return choices;
    choices.reserve(variants.size());
    for (const Variant& variant : variants) choices.push_back(spacers.choice(variant));
    return choices;
}

}  // namespace rakewright
