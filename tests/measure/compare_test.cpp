#include "../../solver/measure/compare.hpp"

#include "../support/catch.hpp"
#include "../support/random.hpp"

namespace rakewright::tests {

TEST_CASE("sums that decimals make equal are the same", "[measure][compare]") {
    CHECK(0.1 + 0.2 != 0.3);
    CHECK(same(0.1 + 0.2, 0.3));
    CHECK(same(7.75 * 25.4, 196.85));  // NIST SP 811: 1 in is 25.4 mm
    CHECK(same(3 * (1.0 / 3), 1));
    CHECK(same(0, 0));
    CHECK(same(0.0, -0.0));
}

TEST_CASE("what a caliper could tell apart is not the same", "[measure][compare]") {
    CHECK_FALSE(same(36, 36 + 1e-9));
    CHECK_FALSE(same(1e6, 1e6 + 1e-5));
    CHECK_FALSE(same(1, -1));
    CHECK_FALSE(same(NAN, NAN));
}

TEST_CASE("near zero, the size of what was subtracted counts", "[measure][compare]") {
    const double difference = (1000.1 - 1000) - 0.1;
    REQUIRE(difference != 0);
    CHECK_FALSE(same(difference, 0));
    CHECK(same(difference, 0, 1000));
    CHECK_FALSE(same(2e-9, 0, 1000));
}

TEST_CASE("a limit that is met but for rounding is met", "[measure][compare]") {
    CHECK(no_more_than(3.75, 3.75));
    CHECK(no_more_than(3.75 * (1 + 1e-15), 3.75));
    CHECK(no_more_than(196.85, 7.75 * 25.4));
    CHECK(no_more_than(7.75 * 25.4, 196.85));
    CHECK_FALSE(no_more_than(3.75 + 1e-9, 3.75));
    CHECK(no_more_than(-5, -4));
    CHECK_FALSE(no_more_than(-4, -5));
}

TEST_CASE("of less, more and the same, one holds", "[measure][compare]") {
    Random random("of less, more and the same");
    for (int i = 0; i < 100000; ++i) {
        const double a = random.uniform(-100, 100);
        // Neighbours, things near the tolerance, and things far off, in turn.
        const double by = random.uniform(-1, 1);
        const double b = i % 3 == 0 ? a * (1 + by * 4e-16) : i % 3 == 1 ? a * (1 + by * 4e-12) : by * 100;
        const int holding = (less_than(a, b) ? 1 : 0) + (less_than(b, a) ? 1 : 0) + (same(a, b) ? 1 : 0);
        if (holding != 1 || same(a, b) != same(b, a) || no_more_than(a, b) == less_than(b, a)) {
            CAPTURE(a, b);
            CHECK(holding == 1);
            CHECK(same(a, b) == same(b, a));
            CHECK(no_more_than(a, b) != less_than(b, a));
        }
        if (i % 3 == 0 && !same(a, b)) FAIL_CHECK("neighbours differ: " << a << ' ' << b);
    }
}

}  // namespace rakewright::tests
