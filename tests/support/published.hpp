#pragma once

#include "catch.hpp"
#include "fixture.hpp"
#include "near.hpp"

namespace rakewright::tests {

inline double printed_as_number(const PublishedRow& row) { return printed_number(row.printed); }

/// Holds each row of a published table to what is computed from it, as near as the row says; what was misprinted must
/// differ.
template <typename Ours, typename Printed>
void hold_published(const std::vector<PublishedRow>& rows, int misprints, const Ours& ours_of,
                    const Printed& printed_of) {
    for (const PublishedRow& row : rows) {
        INFO(row.source << ": " << row.inputs << ", " << row.unit << ", printed " << row.printed << ", " << row.why);
        if (row.misprint) {
            CHECK_THAT(ours_of(row), !within(printed_of(row), row.tolerance));
            --misprints;
        } else {
            CHECK_THAT(ours_of(row), within(printed_of(row), row.tolerance));
        }
    }
    CHECK(misprints == 0);
}

}  // namespace rakewright::tests
