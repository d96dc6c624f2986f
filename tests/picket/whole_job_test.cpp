#include "../../solver/picket/whole_job.hpp"

#include <algorithm>
#include <cmath>

#include "../support/near.hpp"
#include "../support/random.hpp"

// The spacing of a whole job: against every way that there is, tried one by one.

namespace rakewright::tests {
namespace {

SpacedSection section(double clear, double width, double limit, int alike = 1,
                      std::optional<Centre> centre = std::nullopt) {
    // The first count that will do, tried one by one.
    int fewest = 0;
    while ((clear - fewest * width) / (fewest + 1) > limit + 1e-9) ++fewest;
    return {{clear, width}, limit, fewest, alike, centre, {}};
}

bool parity_fits(const SpacedSection& section, int count) {
    return !section.centre || count % 2 == (*section.centre == Centre::picket ? 1 : 0);
}

double gap_of(const SpacedSection& section, int count) { return (section.span.clear - count * section.span.width) / (count + 1); }

/// The counts that may be tried, as the definition has them.
std::vector<int> counts_of(const SpacedSection& section, double least_gap) {
    std::vector<int> counts;
    for (int count = section.fewest; gap_of(section, count) >= 0; ++count) {
        if (!parity_fits(section, count)) continue;
        if (!counts.empty() && gap_of(section, count) < least_gap - 1e-9) break;
        counts.push_back(count);
    }
    return counts;
}

struct Found {
    double spread = INFINITY;
    double pickets = INFINITY;
};

/// Tries every combination of counts.
Found by_force(const std::vector<SpacedSection>& sections, double least_gap) {
    std::vector<std::vector<int>> counts;
    for (const SpacedSection& section : sections) counts.push_back(counts_of(section, least_gap));
    std::vector<std::size_t> at(sections.size());
    Found best;
    while (true) {
        double low = INFINITY, high = 0, pickets = 0;
        for (std::size_t i = 0; i < sections.size(); ++i) {
            const double gap = gap_of(sections[i], counts[i][at[i]]);
            low = std::min(low, gap);
            high = std::max(high, gap);
            pickets += double(counts[i][at[i]]) * sections[i].alike;
        }
        const double spread = high - low;
        if (spread < best.spread - 1e-10)
            best = {spread, pickets};
        else if (spread < best.spread + 1e-10)
            best.pickets = std::min(best.pickets, pickets);
        std::size_t i = 0;
        while (i < at.size() && ++at[i] == counts[i].size()) at[i++] = 0;
        if (i == at.size()) return best;
    }
}

Found found(const std::vector<SpacedSection>& sections, const SpacedJob& job) {
    double low = INFINITY, high = 0, pickets = 0;
    for (std::size_t i = 0; i < sections.size(); ++i) {
        const double gap = gap_of(sections[i], job.sections[i].count);
        low = std::min(low, gap);
        high = std::max(high, gap);
        pickets += double(job.sections[i].count) * sections[i].alike;
    }
    return {high - low, pickets};
}

}  // namespace

TEST_CASE("alike: no way of counting leaves gaps less different, and none of those takes fewer", "[picket][job]") {
    Random random("alike in all");
    for (int round = 0; round < 400; ++round) {
        INFO("round " << round);
        const int count = random.whole(1, 4);
        const double width = random.whole(8, 28) / 16.0, limit = random.whole(48, 64) / 16.0;
        std::vector<SpacedSection> sections;
        for (int i = 0; i < count; ++i) {
            const double clear = random.whole(5 * 16, 100 * 16) / 16.0;
            const int alike = random.whole(1, 3), wish = random.whole(0, 5);
            std::optional<Centre> centre;
            if (wish == 0) centre = Centre::picket;
            if (wish == 1) centre = Centre::gap;
            sections.push_back(section(clear, width, limit, alike, centre));
        }
        if (std::any_of(sections.begin(), sections.end(),
                        [](const SpacedSection& one) { return one.fewest == 0 || counts_of(one, 0).empty(); }))
            continue;
        const double least = random.whole(16, 48) / 16.0;
        const SpacedJob job = alike_in_all(sections, least);
        REQUIRE_FALSE(job.without);
        const Found best = by_force(sections, least), mine = found(sections, job);
        CHECK_THAT(mine.spread, within(best.spread, 1e-9));
        CHECK(mine.pickets == best.pickets);
        for (std::size_t i = 0; i < sections.size(); ++i) {
            CHECK(parity_fits(sections[i], job.sections[i].count));
            CHECK(gap_of(sections[i], job.sections[i].count) <= limit + 1e-9);
            CHECK_FALSE(job.sections[i].between);
        }
    }
}

TEST_CASE("alike: gaps that can be equal are, with the fewest pickets", "[picket][job]") {
    // 3 1/2 + n (1 1/2 + 3 1/2): every section takes gaps of 3 1/2 exactly.
    const std::vector<SpacedSection> sections = {section(3.5 + 5 * 5, 1.5, 3.875), section(3.5 + 9 * 5, 1.5, 3.875),
                                                 section(3.5 + 16 * 5, 1.5, 3.875)};
    const SpacedJob job = alike_in_all(sections, {});
    CHECK(job.sections[0].count == 5);
    CHECK(job.sections[1].count == 9);
    CHECK(job.sections[2].count == 16);
    // The fewest are fewer in the longest: 83 1/2 clear, (83.5 - 15 x 1.5) / 16 = 3.8125.
    CHECK(fewest_each(sections).sections[2].count == 15);
}

TEST_CASE("alike: a section alone keeps its fewest, and one that needs none has no part", "[picket][job]") {
    const std::vector<SpacedSection> sections = {section(3, 1.5, 3.875), section(60, 1.5, 3.875)};
    const SpacedJob job = alike_in_all(sections, {});
    CHECK(job.sections[0].count == 0);
    CHECK(job.sections[1].count == 11);  // (60 - 10 x 1.5) / 11 = 4.09, (60 - 11 x 1.5) / 12 = 3.625
}

TEST_CASE("on a picket, on a gap: the count is odd or even, and the fewest such", "[picket][job]") {
    for (double clear = 6; clear < 90; clear += 1.0 / 3) {
        const SpacedSection one = section(clear, 1.5, 3.875, 1, Centre::picket),
                            other = section(clear, 1.5, 3.875, 1, Centre::gap);
        INFO(clear);
        const std::optional<int> odd = fewest_centred(one), even = fewest_centred(other);
        if (odd) CHECK(*odd == one.fewest + (one.fewest + 1) % 2);
        if (even) CHECK(*even == other.fewest + other.fewest % 2);
        CHECK(odd.has_value() == (gap_of(one, one.fewest + (one.fewest + 1) % 2) >= 0));
    }
}

TEST_CASE("a block: equal ends, neither under the least nor over the limit, as near the block as can be",
          "[picket][job]") {
    Random random("with a block");
    int none = 0;
    for (int round = 0; round < 2000; ++round) {
        const double clear = random.whole(6 * 16, 120 * 16) / 16.0, width = random.whole(8, 56) / 16.0;
        const double limit = random.whole(48, 64) / 16.0, block = random.whole(32, 64) / 16.0;
        const double least = random.whole(0, 32) / 16.0;
        INFO(clear << " clear, " << width << " wide, limit " << limit << ", block " << block << ", least " << least);
        const SpacedSection one = section(clear, width, limit);
        if (one.fewest == 0) continue;
        std::optional<int> best;
        double off = INFINITY;
        for (int count = 1; count < 200 && block <= limit; ++count) {
            const double end = (clear - count * width - (count - 1) * block) / 2;
            if (end < least || end > limit) continue;
            if (std::fabs(end - block) < off) best = count;
            off = std::min(off, std::fabs(end - block));
        }
        const SpacedJob job = with_block({one}, block, least);
        REQUIRE(job.without.has_value() == !best.has_value());
        none += !best;
        if (!best) continue;
        CHECK(job.sections[0].count == *best);
        CHECK(job.sections[0].between == block);
    }
    CHECK(none > 50);
}

TEST_CASE("the longest block: no longer mark of the tape serves every section", "[picket][job]") {
    Random random("longest block");
    const Tape tape{Unit::inch, 1.0 / 16};
    for (int round = 0; round < 200; ++round) {
        std::vector<SpacedSection> sections;
        const double width = random.whole(8, 28) / 16.0;
        const int count = random.whole(1, 5);
        for (int i = 0; i < count; ++i) {
            const double clear = random.whole(12 * 16, 110 * 16) / 16.0, limit = random.whole(56, 64) / 16.0;
            sections.push_back(section(clear, width, limit));
        }
        const SpacedJob job = with_longest_block(sections, tape, 1.0, {});
        INFO("round " << round);
        for (int sixteenths = 64; sixteenths >= 16; --sixteenths) {
            const double block = sixteenths / 16.0;
            const bool serves = !with_block(sections, block, {}).without;
            if (serves) {
                REQUIRE(job.block == block);
                REQUIRE_FALSE(job.without);
                break;
            }
            if (sixteenths == 16) CHECK(job.without);
        }
    }
}

TEST_CASE("a block where none can serve: the section is named", "[picket][job]") {
    // Thirteen of 1 1/2 with a block of 3 leave 3 of 61 1/2. One 3 wide leaves 2 of 7, two with the block need 9.
    const std::vector<SpacedSection> sections = {section(61.5, 1.5, 3.875), section(7, 3, 3.875)};
    const SpacedJob job = with_block(sections, 3, 2.5);
    CHECK(job.without == 1);
    CHECK(with_longest_block(sections, {}, 3.0, 2.5).without == 1);
    CHECK_FALSE(with_block(sections, 3, 2).without);
}

TEST_CASE("the same in millimetres, each number converted by itself", "[picket][job]") {
    const auto sections_in = [](double unit) {
        std::vector<SpacedSection> sections;
        for (const double clear : {49.5, 94.375, 31.25, 52.0}) {
            SpacedSection one = section(clear, 1.5, 3.875);
            one.span.clear *= unit;
            one.span.width *= unit;
            one.limit *= unit;
            sections.push_back(one);
        }
        return sections;
    };
    const SpacedJob inches = alike_in_all(sections_in(1), {}), metric = alike_in_all(sections_in(25.4), {});
    for (std::size_t i = 0; i < 4; ++i) CHECK(inches.sections[i].count == metric.sections[i].count);
}

}  // namespace rakewright::tests
