#include <cmath>

#include "../../solver/story_stick.hpp"
#include "../support/even_example.hpp"
#include "../support/near.hpp"

// Fixed pitch, slots, welds and the story stick.

namespace rakewright::tests {
namespace {

const double lengthened = std::sqrt(7.25 * 7.25 + 11 * 11) / 11;

Solution solved(const Job& job) {
    Solution solution = solve(job);
    REQUIRE_FALSE(solution.refused());
    return solution;
}

template <class Change>
Build built(const Change& change) {
    Build build = square_build();
    change(*build.pickets);
    return build;
}

Build drilled(double pitch, bool on_slope = false) {
    return built([&](PicketBuild& pickets) { (on_slope ? pickets.pitch_on_slope : pickets.pitch) = Reading(pitch); });
}

const Pickets& pickets_of(const Solution& solution) { return *solution.sections.front().pickets; }

}  // namespace

TEST_CASE("a fixed pitch: n = floor((L - w - 2 e) / p) + 1, equal ends", "[picket][pitch]") {
    for (int sixteenths = 20 * 16; sixteenths < 90 * 16; sixteenths += 7) {
        const double clear = sixteenths / 16.0;
        INFO(clear);
        const Solution solution = solved(floor_example(clear, drilled(4.5)));
        const Pickets& pickets = pickets_of(solution);
        // In 32nds: w = 48, p = 144, least end half of 96.
        const int count = (2 * sixteenths - 48 - 2 * 48) / 144 + 1;
        CHECK(pickets.count == count);
        CHECK_THAT(pickets.from_gap, within((clear - 1.5 - (count - 1) * 4.5) / 2, 1e-12));
        CHECK_THAT(pickets.to_gap, within(pickets.from_gap, 1e-12));
        CHECK_THAT(pickets.gap.value(), within(3, 1e-12));
        CHECK(pickets.from_gap >= 1.5 - 1e-12);
        CHECK(pickets.from_gap < 1.5 + 2.25 + 1e-12);
    }
}

TEST_CASE("a pitch on the slope is its cosine of it, level", "[picket][pitch]") {
    const Solution solution = solved(even_example(drilled(5.25, true)));
    const Pickets& pickets = pickets_of(solution);
    CHECK_THAT(pickets.pitch_on_slope.value(), within(5.25, 1e-12));
    CHECK_THAT(pickets.pitch.value(), within(5.25 / lengthened, 1e-12));
    for (std::size_t i = 1; i < pickets.upper.centres.size(); ++i)
        CHECK_THAT(pickets.upper.centres[i] - pickets.upper.centres[i - 1], within(5.25, 1e-12));
}

TEST_CASE("a rail that comes drilled is cut so that its holes fall so", "[picket][pitch]") {
    const Solution solution = solved(even_example(drilled(5.25, true)));
    const Pickets& pickets = pickets_of(solution);
    const int n = pickets.count;
    for (const Marks* marks : {&pickets.upper, &pickets.lower}) {
        // Both cuts and all pitches make up the face: the play off it, half at each end.
        CHECK_THAT(marks->first_centre(End::from) + (n - 1) * 5.25 + marks->first_centre(End::to),
                   within((49.5 - 0.0625) * lengthened, 1e-11));
        CHECK_THAT(marks->first_centre(End::from), within((pickets.from_gap + 0.75 - 0.03125) * lengthened, 1e-12));
        CHECK_THAT(marks->first_centre(End::to), within((pickets.to_gap + 0.75 - 0.03125) * lengthened, 1e-12));
    }
}

TEST_CASE("a pitch that leaves more than the limit is told, and by how much", "[picket][pitch]") {
    Build build = drilled(6);
    build.bracket.reset();
    build.pickets->least_end_gap = Reading(3);
    // 60 clear: floor((60 - 1 1/2 - 6) / 6) + 1 = 9, ends of (60 - 1 1/2 - 48) / 2 = 5 1/4.
    const Solution solution = solved(floor_example(60, build));
    CHECK(pickets_of(solution).count == 9);
    CHECK_THAT(pickets_of(solution).from_gap, within(5.25, 1e-12));
    int ends = 0, between = 0;
    for (const Finding& finding : solution.findings) {
        if (finding.trouble == Trouble::pitch_end_too_wide) {
            ++ends;
            CHECK_THAT(finding.numbers[2], within(5.25 - 3.875, 1e-12));
        }
        between += finding.trouble == Trouble::pitch_gap_too_wide;
    }
    CHECK(ends == 2);
    CHECK(between == 1);  // 6 - 1 1/2 = 4 1/2
    build.pickets->max_gap.reset();
    CHECK(solved(floor_example(60, build)).findings.empty());
    build.pickets->max_sphere = Reading(4);
    const Solution by_ball = solved(floor_example(60, build));
    CHECK(has(by_ball, Trouble::pitch_ball_between));
    CHECK(has(by_ball, Trouble::ball_at_post));
}

TEST_CASE("a pitch on a picket or on a gap takes one hole less where it must", "[picket][pitch]") {
    Job job = floor_example(60, drilled(4.5));
    // floor((60 - 1 1/2 - 3) / 4 1/2) + 1 = 13.
    CHECK(pickets_of(solved(job)).count == 13);
    job.sections[0].centre = CentreWish{Centre::gap, {}};
    CHECK(pickets_of(solved(job)).count == 12);
    job.sections[0].centre = CentreWish{Centre::picket, {}};
    CHECK(pickets_of(solved(job)).count == 13);
}

TEST_CASE("a slot is lengthened by the rake: w / cos r + t tan r and the clearance", "[picket][pitch]") {
    const Build build = built([](PicketBuild& pickets) {
        pickets.width = 0.5;
        pickets.depth = 0.75;
        pickets.slot = Punched{0.125, 0};
    });
    const Solution solution = solved(even_example(build));
    const Slot slot = pickets_of(solution).slot.value();
    // A web is a strip between two lines 1/8 apart at 7 1/4 in 11; a plumb bar's two sides cross both. The longer of
    // its two mouths, shifted by what the sides move across the web: 0.5988 + 0.0824.
    CHECK_THAT(slot.length, within(0.6812, 5e-5));
    CHECK_THAT(slot.width, within(0.75, 1e-15));
    Build with_room = build;
    with_room.pickets->slot->clearance = 1.0 / 32;
    const Solution roomy = solved(even_example(with_room));
    CHECK_THAT(pickets_of(roomy).slot->length, within(slot.length + 1.0 / 32, 1e-14));
    CHECK_THAT(pickets_of(roomy).slot->width, within(0.75 + 1.0 / 32, 1e-15));
    const Solution level = solved(floor_example(60, build));
    CHECK_THAT(pickets_of(level).slot->length, within(0.5, 1e-15));
}

TEST_CASE("a weld comes off both ends of a picket between two groups, and off the head of one that stands",
          "[picket][pitch]") {
    const auto weld = [](double gap) { return built([&](PicketBuild& pickets) { pickets.weld_gap = gap; }); };
    for (const bool raked : {true, false}) {
        const auto piece = [&](double gap) {
            const Build build = weld(gap);
            return pickets_of(solved(raked ? even_example(build) : floor_example(60, build))).pieces.at(0);
        };
        const PicketPiece tight = piece(0), welded = piece(0.0625);
        CHECK_THAT(welded.uphill_side, within(tight.uphill_side - 0.125, 1e-12));
        CHECK_THAT(welded.downhill_side, within(tight.downhill_side - 0.125, 1e-12));
        CHECK_THAT(welded.overall, within(tight.overall - 0.125, 1e-12));
    }
    Build open = open_build();
    const std::vector<PicketPiece> tight = pickets_of(solved(even_example(open))).pieces;
    open.pickets->weld_gap = 0.0625;
    const std::vector<PicketPiece> welded = pickets_of(solved(even_example(open))).pieces;
    REQUIRE(tight.size() == welded.size());
    for (std::size_t i = 0; i < tight.size(); ++i) {
        CHECK_THAT(welded[i].uphill_side, within(tight[i].uphill_side - 0.0625, 1e-12));
        CHECK_THAT(welded[i].downhill_side, within(tight[i].downhill_side - 0.0625, 1e-12));
    }
}

TEST_CASE("one story stick for both rails: the marks are theirs, less where each begins", "[picket][stick]") {
    Job leaning = even_example();
    leaning.posts[0].lean.along = {Angle{0.25, 48}, {}};
    leaning.posts[1].lean.along = {Angle{-0.5, 48}, {}};
    for (const Job& job : {even_example(), leaning, floor_example(71.625)}) {
        const SectionResult section = solved(job).sections.front();
        const StoryStick stick = story_stick_of(section).value();
        const Pickets& pickets = *section.pickets;
        const double cosine = 1 / std::sqrt(1 + section.slope * section.slope);
        REQUIRE(stick.rails.size() == 2);
        for (const RailOnStick& rail : stick.rails) {
            const Marks& marks = rail.group == Group::upper ? pickets.upper : pickets.lower;
            CHECK_THAT(rail.to_end - rail.from_end, within(marks.face_length, 1e-11));
            for (std::size_t i = 0; i < marks.centres.size(); ++i)
                CHECK_THAT(rail.from_end + marks.centres[i], within(stick.centres[i], 1e-11));
        }
        for (std::size_t i = 0; i < stick.centres.size(); ++i) {
            CHECK_THAT(stick.centres[i] * cosine, within(pickets.centres[i], 1e-11));
            CHECK_THAT(stick.edges[i] * cosine, within(pickets.centres[i] - 0.75, 1e-11));
        }
        CHECK_THAT(stick.to_face * cosine, within(section.clear, 1e-11));
    }
}

TEST_CASE("between plumb posts both rails begin and end at one mark of the stick, between leaning ones not",
          "[picket][stick]") {
    const auto begins = [](const Job& job) {
        const StoryStick stick = story_stick_of(solved(job).sections.front()).value();
        return stick.rails[0].from_end - stick.rails[1].from_end;
    };
    Job leaning = even_example();
    leaning.posts[0].lean.along = {Angle{0.25, 48}, {}};
    CHECK_THAT(begins(even_example()), within(0, 1e-12));
    // Leaning toward the rail: its upper rail begins farther on.
    CHECK(begins(leaning) > 0.1);
}

TEST_CASE("no pickets, no story stick", "[picket][stick]") {
    Build build = square_build();
    build.pickets.reset();
    CHECK_FALSE(story_stick_of(solved(even_example(build)).sections.front()));
}

}  // namespace rakewright::tests
