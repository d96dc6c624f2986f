#include "refused.hpp"

#include <map>

#include "told.hpp"

namespace rakewright {
namespace {

/// One refusal, and the sections that it concerns.
struct Joined {
    Refusal refusal;
    std::vector<std::string> sections;
    bool differs = false;  // in its figures, from section to section
};

std::string sentence_of(const Joined& joined) {
    if (joined.sections.size() < 2) return joined.refusal.sentence;
    if (!joined.differs) return joined.refusal.sentence + " (sections " + some_of(joined.sections) + ")";
    const std::vector<std::string> others(joined.sections.begin() + 1, joined.sections.end());
    return joined.refusal.sentence + " (section " + joined.sections.front() + "; likewise, by other figures, " +
           some_of(others) + ")";
}

}  // namespace

std::vector<Refusal> refusals_of(const Job& job, const Solution& solution) {
    std::vector<Joined> found;
    std::map<std::pair<Trouble, std::uint32_t>, std::size_t> of_key;
    for (const Finding& finding : solution.findings) {
        if (!refuses(finding.trouble)) continue;
        const Told told = tell(job, finding);
        const std::string section =
            finding.section < 0 ? std::string() : job.sections[static_cast<std::size_t>(finding.section)].id.name;
        const auto [at, is_new] = of_key.try_emplace({finding.trouble, finding.place.begin}, found.size());
        Joined* const joined = is_new ? nullptr : &found[at->second];
        if (joined && !section.empty() && !joined->sections.empty() && joined->sections.back() != section) {
            joined->sections.push_back(section);
            joined->differs = joined->differs || joined->refusal.sentence != told.sentence;
            continue;
        }
        if (joined && joined->refusal.sentence == told.sentence) continue;
        Refusal refusal;
        refusal.place = finding.place;
        refusal.sentence = told.sentence;
        refusal.expected = told.remedy;
        if (finding.also.size > 0) refusal.also.push_back({finding.also, "see also"});
        found.push_back({std::move(refusal), {}, false});
        if (!section.empty()) found.back().sections.push_back(section);
    }
    std::vector<Refusal> refusals;
    for (Joined& joined : found) {
        joined.refusal.sentence = sentence_of(joined);
        refusals.push_back(std::move(joined.refusal));
    }
    return refusals;
}

}  // namespace rakewright
