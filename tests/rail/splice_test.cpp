#include <cmath>
#include <numeric>

#include "../../solver/cut_list.hpp"
#include "../../solver/rail/splice.hpp"
#include "../support/even_example.hpp"
#include "../support/near.hpp"

// Members of more than one stick: against the marks of the pickets, which are found another way, and by adding up.

namespace rakewright::tests {
namespace {

Job spliced(Job job, double longest) {
    job.builds[0].longest_stick = Reading(longest);
    return job;
}

const SectionResult& only_section(const Solution& solution) {
    REQUIRE_FALSE(solution.refused());
    return solution.sections.at(0);
}

/// What holds of every spliced member; how many pieces it has.
std::size_t check(const Member& member, const Pickets& pickets, double longest) {
    const std::vector<MemberPiece> pieces = pieces_of(member);
    REQUIRE(pieces.size() == member.splices.size() + 1);
    double sum = 0;
    for (const MemberPiece& piece : pieces) {
        CHECK(piece.overall <= longest);
        CHECK_THAT(piece.overall, within(overall(piece.piece), 1e-12));
        sum += length(piece.piece);
    }
    CHECK_THAT(sum, within(member.length, 1e-12));
    CHECK(static_cast<double>(pieces.size()) >= member.overall / longest);
    for (std::size_t p = 0; p < member.splices.size(); ++p) {
        const Splice& splice = member.splices[p];
        REQUIRE(splice.picket > 0);
        // Between plumb ends, as far along every edge.
        const Marks& marks = member.group == Group::upper ? pickets.upper : pickets.lower;
        CHECK_THAT(splice.at, within(marks.centres[static_cast<std::size_t>(splice.picket - 1)], 1e-11));
        CHECK_THAT(splice.cut.per_top, within(member.stick.piece.from.per_top, 1e-14));
        CHECK(splice.cut.per_left == 0);
        // No picket is nearer to the division, but one that the member above is spliced at.
        const double wished = member.length * static_cast<double>(p + 1) / static_cast<double>(pieces.size());
        CHECK(std::fabs(splice.at - wished) <= 1.5 * pickets.pitch_on_slope.value() + 1e-9);
    }
    return pieces.size();
}

}  // namespace

TEST_CASE("members are spliced at pickets, on a rake and on a level", "[rail][splice]") {
    for (const double longest : {40.0, 33.0, 22.0, 12.0}) {
        INFO("longest " << longest);
        const Solution raked = solve(spliced(even_example(), longest)),
                       level = solve(spliced(floor_example(84.5), longest));
        for (const Solution* solution : {&raked, &level}) {
            const SectionResult& section = only_section(*solution);
            for (const Member& member : section.members) CHECK(check(member, *section.pickets, longest) >= 2);
            // The sub rail is spliced where the cap is not.
            for (const Splice& cap : section.members[0].splices)
                for (const Splice& sub : section.members[1].splices)
                    if (longest > 20) CHECK(cap.picket != sub.picket);
        }
    }
}

TEST_CASE("two pieces of a level rail, by hand", "[rail][splice]") {
    // 84 1/2 clear, no play: (84.5 - 3.875) / (1.5 + 3.875) = 15 pickets, gaps of (84.5 - 15 * 1.5) / 16 = 3.875. The
    // eighth stands in the middle of the rail.
    Build build = square_build();
    build.play = 0;
    build.bracket.reset();
    const Solution solution = solve(spliced(floor_example(84.5, build), 60));
    const SectionResult& section = only_section(solution);
    REQUIRE(section.pickets->count == 15);
    REQUIRE(section.members[0].splices.size() == 1);
    CHECK(section.members[0].splices[0].picket == 8);
    CHECK_THAT(section.members[0].splices[0].at, within(42.25, 1e-12));
    // Under the cap the sub rail goes to a neighbour, 5.375 off; the bottom rail is free.
    CHECK(section.members[1].splices[0].picket == 7);
    CHECK_THAT(section.members[1].splices[0].at, within(42.25 - 5.375, 1e-12));
    CHECK(section.members[2].splices[0].picket == 8);
    // In the cut list: two of the cap, one of each of the others' halves.
    int sticks = 0;
    double together = 0;
    const Job job = spliced(floor_example(84.5, build), 60);
    for (const CutPiece& piece : cut_list(job, solution)) {
        if (piece.stuff != Stuff::member) continue;
        sticks += piece.quantity;
        together += piece.quantity * length(piece.piece);
    }
    CHECK(sticks == 6);
    CHECK_THAT(together, within(3 * 84.5, 1e-12));
}

TEST_CASE("a lower rail is spliced over its feet, a rail without pickets at the divisions", "[rail][splice]") {
    Build build = square_build();
    build.feet = FeetBuild{30, {}, {}, {}};
    const Solution footed = solve(spliced(floor_example(84.5, build), 60));
    const SectionResult& section = only_section(footed);
    REQUIRE(section.feet.size() == 2);
    REQUIRE(section.members[2].splices.size() == 1);
    CHECK(section.members[2].splices[0].foot > 0);
    CHECK(section.members[2].splices[0].picket == 0);

    Build bare = square_build();
    bare.pickets.reset();
    const Solution halved = solve(spliced(floor_example(84.5, bare), 30));
    const Member& cap = only_section(halved).members[0];
    REQUIRE(cap.splices.size() == 2);
    CHECK_THAT(cap.splices[0].at, within(cap.length / 3, 1e-12));
    CHECK_THAT(cap.splices[1].at, within(cap.length * 2 / 3, 1e-12));
}

TEST_CASE("what is no longer than the stick is left whole", "[rail][splice]") {
    const Solution whole = solve(even_example());
    for (const Member& member : only_section(whole).members) {
        CHECK(member.splices.empty());
        CHECK(pieces_of(member).size() == 1);
        CHECK(pieces_of(member)[0].overall == member.overall);
    }
    const double longest = only_section(whole).members[0].overall;
    const Solution just = solve(spliced(even_example(), longest)),
                   under = solve(spliced(even_example(), longest - 1e-6));
    CHECK(only_section(just).members[0].splices.empty());
    CHECK(only_section(under).members[0].splices.size() == 1);
}

}  // namespace rakewright::tests
