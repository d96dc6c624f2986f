#include "row.hpp"

#include <algorithm>
#include <cmath>

#include "../measure/compare.hpp"

namespace rakewright {
namespace {

std::vector<double> evenly(const Bore& stretch, int count) {
    std::vector<double> places;
    if (count == 1) return {(stretch.begin + stretch.end) / 2};
    for (int i = 0; i + 1 < count; ++i)
        places.push_back(stretch.begin + (stretch.end - stretch.begin) * i / (count - 1));
    places.push_back(stretch.end);
    return places;
}

bool stands_in(const Bore& taken, double place) { return less_than(taken.begin, place) && less_than(place, taken.end); }

/// What is left of a stretch beside what is taken.
std::vector<Bore> gaps_in(const Bore& stretch, const std::vector<Bore>& taken) {
    std::vector<Bore> gaps;
    double begin = stretch.begin;
    for (const Bore& one : taken) {
        if (one.end <= stretch.begin || one.begin >= stretch.end) continue;
        if (less_than(begin, one.begin)) gaps.push_back({begin, one.begin});
        begin = std::fmax(begin, one.end);
    }
    if (no_more_than(begin, stretch.end)) gaps.push_back({begin, stretch.end});
    return gaps;
}

double middle_of_nearest(const std::vector<Bore>& gaps, double place) {
    const auto off = [&](const Bore& gap) { return std::fabs((gap.begin + gap.end) / 2 - place); };
    const auto nearest =
        std::min_element(gaps.begin(), gaps.end(), [&](const Bore& a, const Bore& b) { return less_than(off(a), off(b)); });
    return (nearest->begin + nearest->end) / 2;
}

/// The same places, those that stand in what is taken moved; what falls together is one.
std::vector<double> moved(std::vector<double> places, const std::vector<Bore>& gaps, const std::vector<Bore>& taken) {
    for (double& place : places)
        if (std::any_of(taken.begin(), taken.end(), [&](const Bore& one) { return stands_in(one, place); }))
            place = middle_of_nearest(gaps, place);
    std::sort(places.begin(), places.end());
    places.erase(std::unique(places.begin(), places.end(), [](double a, double b) { return alike(a, b); }),
                 places.end());
    return places;
}

double widest_apart(const std::vector<double>& places) {
    double widest = 0;
    for (std::size_t i = 1; i < places.size(); ++i) widest = std::fmax(widest, places[i] - places[i - 1]);
    return widest;
}

}  // namespace

RowOfScrews row_in(const Bore& stretch, double every, double least, const std::vector<Bore>& taken) {
    const double length = stretch.end - stretch.begin, steps = length / every;
    const bool single = less_than(length, least);
    const int fewest = single ? 1 : std::max(2, static_cast<int>(std::ceil(steps * (1 - rounding))) + 1);
    const std::vector<Bore> gaps = gaps_in(stretch, taken);
    const int most = fewest + 2 * static_cast<int>(taken.size()) + 2;
    for (int count = fewest; count <= most && !gaps.empty(); ++count) {
        std::vector<double> places = moved(evenly(stretch, count), gaps, taken);
        const bool ends_near = no_more_than(places.front() - stretch.begin, every) &&
                               no_more_than(stretch.end - places.back(), every);
        if ((single || places.size() > 1) && ends_near && no_more_than(widest_apart(places), every, length))
            return {std::move(places), 0};
    }
    RowOfScrews row{evenly(stretch, fewest), 0};
    for (const double place : row.places)
        row.at_taken += std::any_of(taken.begin(), taken.end(), [&](const Bore& one) { return stands_in(one, place); });
    return row;
}

}  // namespace rakewright
