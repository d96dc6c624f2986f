#include "telling.hpp"

#include <algorithm>
#include <cmath>

#include "../measure/compare.hpp"

namespace rakewright {

using Q = Quantity;

std::string numbered(const char* word, int number) { return std::string(word) + ' ' + std::to_string(number); }

std::string numbered(const char* word, const std::vector<int>& numbers) {
    std::string list;
    for (std::size_t i = 0; i < numbers.size();) {
        std::size_t last = i;
        while (last + 1 < numbers.size() && numbers[last + 1] == numbers[last] + 1) ++last;
        list += (list.empty() ? "" : ", ") + std::to_string(numbers[i]);
        if (last > i) list += (last > i + 1 ? " to " : ", ") + std::to_string(numbers[last]);
        i = last + 1;
    }
    return std::string(word) + (numbers.size() > 1 ? "s " : " ") + list;
}

std::string reading_words(double value, Unit unit) {
    const Tape fractions{Unit::inch, 1.0 / 64}, decimals{Unit::millimetre, 1e-6};
    const double marked = at_mark(nearest_mark(value, fractions), fractions);
    if (unit == Unit::inch && same(value, marked)) return words_of_length(value, fractions);
    std::string words = words_of_length(value, decimals);
    if (words.find('.') == std::string::npos) return words;
    words.erase(words.find_last_not_of('0') + 1);
    if (words.back() == '.') words.pop_back();
    return words;
}

void tell(Subject& subject, Q quantity, std::string where, double value, Known known) {
    subject.facts.push_back({quantity, subject.place, std::move(where), value, known, {}, {}});
}

void tell(Subject& subject, Q quantity, const std::optional<Reading>& reading) {
    subject.tells.push_back(quantity);
    if (reading) tell(subject, quantity, {}, *reading);
}

void leave_untold(Subject& subject, Q quantity, std::string where, std::string needs) {
    subject.untold.push_back({quantity, subject.place, std::move(where), std::move(needs)});
}

void tell_under_rail(Subject& subject, UnderRail kind, std::string where, double sphere, Known known,
                     std::string opening) {
    subject.facts.push_back({kind == UnderRail::triangle ? Q::under_rail_opening : Q::picket_opening,
                             kind == UnderRail::level ? RulePlace::level : RulePlace::stair,
                             std::move(where),
                             sphere,
                             known,
                             std::move(opening),
                             {}});
}

void tell_rectangle(Subject& subject, double width, double depth) {
    subject.tells.insert(subject.tells.end(), {Q::grip_perimeter, Q::grip_width, Q::grip_least});
    tell(subject, Q::grip_perimeter, {}, 2 * (width + depth));
    tell(subject, Q::grip_width, "the diagonal", std::sqrt(width * width + depth * depth));
    tell(subject, Q::grip_least, {}, std::fmin(width, depth));
}

static void tell_recess(Subject& subject, const Recess& recess) {
    subject.has_recess = true;
    tell(subject, Q::recess_start, {}, recess.start);
    tell(subject, Q::recess_depth, {}, recess.depth);
    tell(subject, Q::recess_reach, {}, recess.reach);
    tell(subject, Q::recess_held, {}, recess.held);
    tell(subject, Q::recess_end, {}, recess.end);
    tell(subject, Q::width_above_recess, {}, recess.width_above);
}

double tell_profile(Subject& subject, const Profile& profile) {
    const CrossSection section = section_of(profile);
    if (is_round(profile)) {
        subject.tells.push_back(Q::grip_diameter);
        tell(subject, Q::grip_diameter, {}, section.width);
    } else if (profile.depth) {
        tell_rectangle(subject, section.width, section.depth);
    } else {
        subject.tells.insert(subject.tells.end(), {Q::grip_perimeter, Q::grip_width, Q::grip_least});
        tell(subject, Q::grip_perimeter, {}, *profile.perimeter);
        tell(subject, Q::grip_width, {}, section.width);
    }
    if (profile.recess) tell_recess(subject, *profile.recess);
    return section.width;
}

void tell_wall(Subject& subject, const std::optional<Reading>& clearance, std::optional<double> across) {
    tell(subject, Q::wall_clearance, clearance);
    subject.tells.push_back(Q::handrail_projection);
    if (clearance && across) tell(subject, Q::handrail_projection, {}, *clearance + *across);
}

void tell_extension(Subject& subject, const Extension& extension, const StairShape& stair) {
    tell(subject, Q::extension_top, extension.top);
    if (stair.risers() < 2) return;
    subject.tells.push_back(Q::extension_bottom_treads);
    if (extension.bottom) tell(subject, Q::extension_bottom_treads, {}, *extension.bottom / stair.nosing(2).x);
}

double riser_over_ground(const StairShape& stair, int riser, const std::optional<double>& drop) {
    const double top = stair.nosing(riser).z - stair.thickness;
    if (!drop) return top;
    return std::fmin(*drop, top + std::fmax(0, *drop - stair.rise_total()));
}

}  // namespace rakewright
