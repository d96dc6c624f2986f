#include "pilot_list.hpp"

#include <algorithm>
#include <cmath>

#include "measure/compare.hpp"
#include "section_screws.hpp"

namespace rakewright {
namespace {

PilotHoles& holes_like(std::vector<PilotHoles>& list, const PilotHoles& like) {
    const auto mine = std::find_if(list.begin(), list.end(), [&](const PilotHoles& holes) {
        return holes.build == like.build && holes.joint == like.joint && holes.piece == like.piece &&
               holes.fastened == like.fastened;
    });
    return mine == list.end() ? list.emplace_back(like) : *mine;
}

bool nearer(const std::optional<double>& a, const std::optional<double>& b) { return a && b && *a < *b; }

/// A share of its limit that is less the nearer a screw comes; infinite where the distance is not known.
double share_of(const std::optional<double>& distance, double diameters, double diameter) {
    return distance ? *distance / (diameters * diameter) : INFINITY;
}

/// The least shares of an end and of an edge. Where a screw comes out of a side that is told already.
struct Shares {
    double end = INFINITY, edge = INFINITY;
    double least() const { return std::fmin(end, edge); }
};

Shares shares_of(const Job& job, const PilotHoles& holes) {
    const PilotRule& rule = job.builds[static_cast<std::size_t>(holes.build)].screws->pilot;
    const bool comes_out = holes.room.edge && no_more_than(*holes.room.edge, 0, holes.diameter);
    return {share_of(holes.room.end, rule.drilled_end, holes.diameter),
            comes_out ? INFINITY : share_of(holes.room.edge, rule.drilled_edge, holes.diameter)};
}

/// The number of a piece in its section: a member; -1 a picket, -2 the post.
double number_of(const SectionResult& section, const PilotHoles& holes) {
    if (holes.joint == Joint::post_leg) return -2;
    for (std::size_t i = 0; i < section.members.size(); ++i)
        if (section.members[i].name == holes.piece) return static_cast<double>(i);
    return -1;
}

Finding finding_of(const Job& job, const Solution& solution, const PilotHoles& holes) {
    const ScrewBuild& screws = *job.builds[static_cast<std::size_t>(holes.build)].screws;
    const PilotRule& rule = screws.pilot;
    const Shares shares = shares_of(job, holes);
    const bool at_end = shares.end <= shares.edge;
    const double least = (at_end ? rule.drilled_end : rule.drilled_edge) * holes.diameter,
                 number = number_of(solution.sections[static_cast<std::size_t>(holes.section)], holes);
    return {at_end ? Trouble::screw_near_end : Trouble::screw_near_edge,
            place_of(screws, holes.joint),
            {double(holes.joint), at_end ? *holes.room.end : *holes.room.edge, least, number},
            {},
            holes.section};
}

void add_screw(std::vector<PilotHoles>& list, const Job& job, std::size_t section, const JointScrew& screw) {
    const int build = job.sections[section].build.index;
    for (const Passed& passed : screw.hold.passed) {
        if (!passed.room) continue;
        PilotHoles like;
        like.build = build;
        like.joint = screw.joint;
        like.piece = passed.name;
        like.fastened = passed.fastened;
        like.diameter = screw.diameter;
        like.room = *passed.room;
        like.section = static_cast<int>(section);
        PilotHoles& mine = holes_like(list, like);
        if (nearer(like.room.end, mine.room.end) || nearer(like.room.edge, mine.room.edge)) mine.section = like.section;
        mine.room.narrow(like.room);
        mine.room.end_grain = mine.room.end_grain || like.room.end_grain;
        mine.deep = std::max(mine.deep, passed.length);
    }
}

}  // namespace

std::vector<PilotHoles> pilot_list(const Job& job, const Solution& solution) {
    std::vector<PilotHoles> list;
    for (std::size_t s = 0; s < solution.sections.size(); ++s)
        for (const JointScrew& screw : solution.sections[s].screws) add_screw(list, job, s, screw);
    std::stable_sort(list.begin(), list.end(), [](const PilotHoles& a, const PilotHoles& b) {
        return a.build != b.build ? a.build < b.build : a.joint < b.joint;
    });
    for (PilotHoles& holes : list)
        holes.pilot = pilot_for(*job.builds[static_cast<std::size_t>(holes.build)].screws, job.units, holes.room,
                                holes.diameter, holes.fastened);
    return list;
}

void note_splitting(const Job& job, Solution& solution) {
    const std::vector<PilotHoles> list = pilot_list(job, solution);
    for (std::size_t i = 0; i < list.size();) {
        const PilotHoles* worst = &list[i];
        std::size_t next = i;
        for (; next < list.size() && list[next].build == list[i].build && list[next].joint == list[i].joint; ++next)
            if (shares_of(job, list[next]).least() < shares_of(job, *worst).least()) worst = &list[next];
        if (less_than(shares_of(job, *worst).least(), 1))
            solution.findings.push_back(finding_of(job, solution, *worst));
        i = next;
    }
}

}  // namespace rakewright
