#pragma once

#include <string>

#include "../../solver/solution.hpp"
#include "page.hpp"

namespace rakewright {

/// The tables of a solved job, in the order in which a crew walks: the stairs, the posts, the saw, the bench, the gaps.
std::vector<Table> tables_of(const Job& job, const Solution& solution);

std::vector<Table> stair_tables(const Job& job, const Solution& solution);
std::vector<Table> post_tables(const Job& job, const Solution& solution);
std::vector<Table> saw_and_bench_tables(const Job& job, const Solution& solution);
std::vector<Table> gap_tables(const Job& job, const Solution& solution);

/// The whole cut sheet: title, caution, tables, notes. Titles in bold if wanted.
std::string cut_sheet(const Job& job, const Solution& solution, bool bold);

/// The tables and notes as CSV, one after the other, a blank line between; the first column names the table.
std::string cut_sheet_csv(const Job& job, const Solution& solution);

}  // namespace rakewright
