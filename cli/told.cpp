#include "told.hpp"

#include <algorithm>

#include "told/telling.hpp"

namespace rakewright {

const char* joint_on_paper(Joint joint) {
    switch (joint) {
        case Joint::picket_to_upper: return "rail to picket head";
        case Joint::picket_to_lower: return "rail to picket foot";
        case Joint::between_members: return "member to member";
        case Joint::apron_to_lower: return "apron to lower rail";
        case Joint::post_leg: return "bracket to post";
        case Joint::rail_leg: return "bracket to rail";
    }
    return "";
}

std::string some_of(const std::vector<std::string>& names) {
    constexpr std::size_t most = 3;
    std::string text;
    for (std::size_t i = 0; i < std::min(most, names.size()); ++i) text += (i == 0 ? "" : ", ") + names[i];
    return names.size() > most ? text + " and " + std::to_string(names.size() - most) + " more" : text;
}

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
