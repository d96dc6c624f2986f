#include "told.hpp"

#include "told/telling.hpp"

namespace rakewright {

Told tell(const Job& job, const Finding& finding) { return Telling(job, finding).told(); }

std::vector<Note> notes_of(const Job& job, const Solution& solution) {
    std::vector<Note> notes;
    for (const Finding& finding : solution.findings) {
        if (refuses(finding.trouble)) continue;
        const std::string section =
            finding.section < 0 ? std::string() : job.sections[static_cast<std::size_t>(finding.section)].id.name;
        notes.push_back({section, tell(job, finding).sentence});
    }
    return notes;
}

}  // namespace rakewright
