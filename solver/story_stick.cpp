#include "story_stick.hpp"

#include <cmath>

namespace rakewright {

std::optional<StoryStick> story_stick_of(const SectionResult& section) {
    if (!section.pickets || section.pickets->centres.empty()) return std::nullopt;
    const Pickets& pickets = *section.pickets;
    const double lengthened = std::sqrt(1 + section.slope * section.slope);
    StoryStick stick;
    stick.picket = pickets.width * lengthened;
    stick.to_face = section.clear_on_slope;
    if (pickets.beside) stick.to_face = (pickets.centres.back() + pickets.width / 2 + pickets.to_gap) * lengthened;
    for (const double centre : pickets.centres) {
        stick.centres.push_back(centre * lengthened);
        stick.edges.push_back(stick.centres.back() - stick.picket / 2);
    }
    const auto lay = [&](Group group, const Marks& marks) {
        if (marks.centres.empty()) return;
        const double from_end = stick.centres.front() - marks.centres.front();
        stick.rails.push_back({group, from_end, from_end + marks.face_length});
    };
    lay(Group::upper, pickets.upper);
    lay(Group::lower, pickets.lower);
    return stick;
}

}  // namespace rakewright
