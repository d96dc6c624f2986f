#include "whole_job.hpp"

#include <algorithm>
#include <cmath>

#include "../measure/compare.hpp"

namespace rakewright {
namespace {

bool has_part(const SpacedSection& section) { return section.fewest > 0 || section.centre == Centre::picket; }

bool is_centred(const SpacedSection& section, int count) {
    return !section.centre || (count % 2 == 1) == (*section.centre == Centre::picket);
}

bool goes_in(const SpacedSection& section, const Spaced& spaced) {
    return no_more_than(0, end_gap(section.span, spaced), section.span.clear);
}

bool keeps_limit(const SpacedSection& section, const Spaced& spaced) {
    if (section.stops) return section.stops(spaced);
    const double end = end_gap(section.span, spaced);
    return no_more_than(end, section.limit) && no_more_than(spaced.between.value_or(end), section.limit);
}

/// One way of spacing a section with equal gaps.
struct Candidate {
    double gap = 0;
    std::size_t section = 0;
    int count = 0;
};

void add_candidates(const SpacedSection& section, std::size_t index, const std::optional<double>& least_gap,
                    std::vector<Candidate>& candidates) {
    const std::optional<int> fewest = fewest_centred(section);
    if (!fewest) return;
    const double least = least_gap.value_or(usual_least_gap * section.limit);
    for (int count = *fewest; count <= most_pickets; ++count) {
        const double gap = equal_gap(section.span, count);
        const bool is_fewest = count == *fewest;
        if (!is_fewest && less_than(gap, least, section.span.clear)) return;
        if (is_fewest || (is_centred(section, count) && keeps_limit(section, count)))
            candidates.push_back({gap, index, count});
    }
}

/// Goes over ranges of gaps that have a candidate of every section.
class Ranges {
 public:
    Ranges(const std::vector<SpacedSection>& sections, std::vector<Candidate> candidates, std::size_t with_part)
        : sections_(sections), sorted_(std::move(candidates)), with_part_(with_part) {
        std::sort(sorted_.begin(), sorted_.end(), [](const Candidate& a, const Candidate& b) {
            return a.gap != b.gap ? a.gap < b.gap : a.section < b.section;
        });
        for (const SpacedSection& section : sections) scale_ = std::max(scale_, section.span.clear);
    }

    double narrowest() const {
        std::vector<int> within(sections_.size());
        std::size_t covered = 0, low = 0;
        double least = INFINITY;
        for (const Candidate& high : sorted_) {
            covered += within[high.section]++ == 0;
            for (; covered == with_part_; ++low) {
                least = std::min(least, high.gap - sorted_[low].gap);
                covered -= --within[sorted_[low].section] == 0;
            }
        }
        return least;
    }

    /// Where the range so wide begins that takes the fewest pickets.
    std::size_t with_fewest(double wide) const {
        std::vector<const Candidate*> widest(sections_.size());
        std::size_t covered = 0, high = 0, best = 0;
        double pickets = 0, fewest = INFINITY;
        for (std::size_t low = 0; low < sorted_.size(); ++low) {
            for (; high < sorted_.size() && is_within(wide, low, high); ++high) {
                const Candidate*& mine = widest[sorted_[high].section];
                pickets += all_of(sorted_[high]) - (mine ? all_of(*mine) : 0);
                covered += mine == nullptr;
                mine = &sorted_[high];
            }
            if (covered == with_part_ && pickets < fewest) {
                fewest = pickets;
                best = low;
            }
            const Candidate*& mine = widest[sorted_[low].section];
            if (mine != &sorted_[low]) continue;
            pickets -= all_of(*mine);
            mine = nullptr;
            --covered;
        }
        return best;
    }

    std::vector<Spaced> widest_in(std::size_t low, double wide) const {
        std::vector<Spaced> spaced(sections_.size());
        for (std::size_t i = low; i < sorted_.size() && is_within(wide, low, i); ++i)
            spaced[sorted_[i].section] = sorted_[i].count;
        return spaced;
    }

 private:
    double all_of(const Candidate& candidate) const {
        return double(candidate.count) * sections_[candidate.section].alike;
    }
    bool is_within(double wide, std::size_t low, std::size_t high) const {
        return no_more_than(sorted_[high].gap - sorted_[low].gap, wide, scale_);
    }

    const std::vector<SpacedSection>& sections_;
    std::vector<Candidate> sorted_;
    std::size_t with_part_;
    double scale_ = 0;
};

/// One section with a block; none where no count serves.
std::optional<Spaced> with_block(const SpacedSection& section, double block, const std::optional<double>& least_end) {
    if (!has_part(section)) return Spaced();
    const PicketSpan& span = section.span;
    const std::optional<int> most =
        most_at_pitch(span, span.width + block, least_end.value_or(usual_least_end * block));
    if (!most) return std::nullopt;
    std::optional<Spaced> best;
    double off = INFINITY;
    for (int count = *most; count > 0; --count) {
        const Spaced spaced(count, block);
        const double end = end_gap(span, spaced);
        if (!no_more_than(end, section.limit)) break;
        if (!is_centred(section, count) || !keeps_limit(section, spaced)) continue;
        if (less_than(off, std::fabs(end - block), span.clear)) break;
        off = std::fabs(end - block);
        best = spaced;
    }
    return best;
}

double widest_limit_everywhere(const std::vector<SpacedSection>& sections) {
    double limit = INFINITY;
    for (const SpacedSection& section : sections)
        if (has_part(section)) limit = std::min(limit, section.limit);
    return limit;
}

}  // namespace

std::optional<int> fewest_centred(const SpacedSection& section) {
    for (int count = section.fewest; count <= most_pickets && goes_in(section, count); ++count)
        if (is_centred(section, count) && (count == section.fewest || keeps_limit(section, count))) return count;
    return std::nullopt;
}

SpacedJob fewest_each(const std::vector<SpacedSection>& sections) {
    SpacedJob job;
    for (const SpacedSection& section : sections) {
        const std::optional<int> fewest = fewest_centred(section);
        if (!fewest && !job.without) job.without = job.sections.size();
        job.sections.emplace_back(fewest.value_or(0));
    }
    return job;
}

SpacedJob alike_in_all(const std::vector<SpacedSection>& sections, const std::optional<double>& least_gap) {
    SpacedJob job{std::vector<Spaced>(sections.size()), {}, {}};
    std::vector<Candidate> candidates;
    std::size_t with_part = 0;
    for (std::size_t i = 0; i < sections.size(); ++i) {
        if (!has_part(sections[i])) continue;
        const std::size_t before = candidates.size();
        add_candidates(sections[i], i, least_gap, candidates);
        ++with_part;
        if (candidates.size() == before && !job.without) job.without = i;
    }
    if (job.without || with_part == 0) return job;
    const Ranges ranges(sections, std::move(candidates), with_part);
    const double wide = ranges.narrowest();
    job.sections = ranges.widest_in(ranges.with_fewest(wide), wide);
    return job;
}

SpacedJob with_block(const std::vector<SpacedSection>& sections, double block, const std::optional<double>& least_end) {
    SpacedJob job{{}, block, {}};
    for (const SpacedSection& section : sections) {
        const std::optional<Spaced> spaced = with_block(section, block, least_end);
        if (!spaced && !job.without) job.without = job.sections.size();
        job.sections.push_back(spaced.value_or(Spaced()));
    }
    return job;
}

double shortest_block(const std::vector<SpacedSection>& sections, const std::optional<double>& least_gap) {
    return least_gap.value_or(usual_least_gap * widest_limit_everywhere(sections));
}

SpacedJob with_longest_block(const std::vector<SpacedSection>& sections, const Tape& tape,
                             const std::optional<double>& least_gap, const std::optional<double>& least_end) {
    const double widest = widest_limit_everywhere(sections), least = shortest_block(sections, least_gap);
    if (!std::isfinite(widest)) return {std::vector<Spaced>(sections.size()), {}, {}};
    std::vector<bool> served(sections.size());
    for (std::size_t i = 0; i < sections.size(); ++i) served[i] = !has_part(sections[i]);
    SpacedJob last{std::vector<Spaced>(sections.size()), {}, {}};
    for (long long mark = fitting_mark(widest, 0, tape); mark > 0 && no_more_than(least, at_mark(mark, tape)); --mark) {
        last = with_block(sections, at_mark(mark, tape), least_end);
        if (!last.without) return last;
        for (std::size_t i = 0; i < sections.size(); ++i) served[i] = served[i] || last.sections[i].count > 0;
    }
    // Where each has a block, and none serves all, the one that refuses the shortest is named.
    const auto never = std::find(served.begin(), served.end(), false);
    if (never != served.end()) last.without = static_cast<std::size_t>(never - served.begin());
    last.block.reset();
    return last;
}

}  // namespace rakewright
