#include "../../solver/opening/notched.hpp"

#include <cmath>

#include "../support/catch.hpp"
#include "../support/near.hpp"

// What stands in a corner of an opening, taken out of its outline: areas by hand.

namespace rakewright::tests {
namespace {

double area(const Outline& outline) {
    double twice = 0;
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const Seen &a = outline[i], &b = outline[(i + 1) % outline.size()];
        twice += a.along * b.up - b.along * a.up;
    }
    return twice / 2;
}

const Outline room{{0, 0}, {10, 0}, {10, 8}, {0, 8}};

}  // namespace

TEST_CASE("a block in a lower corner leaves the rest of the opening, whichever corner it starts from", "[opening][notched]") {
    for (std::size_t turn = 0; turn < room.size(); ++turn) {
        Outline turned = room;
        std::rotate(turned.begin(), turned.begin() + static_cast<std::ptrdiff_t>(turn), turned.end());
        CHECK_THAT(area(notched(turned, {{1, 0, 2}, 3})), within(80 - 6, 1e-13));      // at the left, 2 by 3
        CHECK_THAT(area(notched(turned, {{-1, 0, -7.5}, 3})), within(80 - 7.5, 1e-13));  // at the right, 2 1/2 by 3
    }
}

TEST_CASE("a block outside the opening leaves it, one over all of it leaves nothing", "[opening][notched]") {
    CHECK_THAT(area(notched(room, {{1, 0, -1}, 3})), within(80, 1e-13));
    CHECK_THAT(area(notched(room, {{1, 0, 2}, -1})), within(80, 1e-13));
    CHECK(notched(room, {{1, 0, 12}, 9}).empty());
    CHECK_THAT(area(notched(room, {{1, 0, 2}, 9})), within(64, 1e-13));   // as high as the opening: a strip is gone
    CHECK_THAT(area(notched(room, {{1, 0, 12}, 3})), within(50, 1e-13));  // as wide as it: a layer is gone
}

TEST_CASE("a block with a leaning face", "[opening][notched]") {
    // Its face leans so that it stands 2 off the wall at the floor and 1 at its top, 4 up.
    const double size = std::sqrt(17.0);
    CHECK_THAT(area(notched(room, {{4 / size, 1 / size, 8 / size}, 4})), within(80 - 6, 1e-13));
}

}  // namespace rakewright::tests
