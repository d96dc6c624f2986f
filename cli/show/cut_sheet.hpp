#pragma once

#include <string>

#include "../../solver/check/range.hpp"
#include "page.hpp"

namespace rakewright {

/// The tables of a solved job by where a crew stands, in the order in which it walks.
std::vector<Table> stair_tables(const Job& job, const Solution& solution);
std::vector<Table> post_tables(const Job& job, const Solution& solution);
/// How long posts and their rods are, where their plates' holes come, and what a push does to their fixings.
std::vector<Table> post_fixing_tables(const Job& job, const Solution& solution);
/// Brackets that are set askew or on a round post, and how plates are bent, equal bends of the whole job together.
std::vector<Table> bracket_tables(const Job& job, const Solution& solution);

/// The seats of the brackets, and how their screws are driven.
std::vector<Table> fixing_tables(const Job& job, const Solution& solution);

/// What each screw holds in, and where its point comes out.
Table screw_table(const Job& job, const Solution& solution);
/// Where screws between members stand along them.
Table row_table(const Job& job, const Solution& solution);
/// Where screws want pilot holes, sections of a build together: a table for each.
std::vector<Table> pilot_tables(const Job& job, const Solution& solution);
std::vector<Table> saw_and_bench_tables(const Job& job, const Solution& solution);
/// How rails meet where there is no post.
Table joint_table(const Job& job, const Solution& solution);

/// The ends coped to round posts.
Table cope_table(const Job& job, const Solution& solution);
std::vector<Table> stock_tables(const Job& job, const Solution& solution);
std::vector<Table> gap_tables(const Job& job, const Solution& solution);
/// How the pickets of the whole job are spaced, and could be.
std::vector<Table> spacing_tables(const Job& job, const Solution& solution);
/// Splices, holes in rails that come drilled or punched, feet, story sticks.
std::vector<Table> shop_tables(const Job& job, const Solution& solution);
/// In what order to work, and what to order, where the job asks for it.
std::vector<Table> work_tables(const Job& job, const Solution& solution);
/// The surface of the pieces, where the job asks for it.
std::vector<Table> paint_tables(const Job& job, const Solution& solution);
/// All that was judged, for CSV; and for paper, where one thing that fails at many places is one row, with the worst.
std::vector<Table> check_tables(const Job& job, const Verdicts& verdicts);
std::vector<Table> check_pages(const Job& job, const Verdicts& verdicts);
/// What a crew has to know of the checks: what does not pass, and how many do.
std::vector<Table> checks_for_a_crew(const Job& job, const Verdicts& verdicts);

/// The whole cut sheet: title, caution, tables, notes; of the checks, those that do not pass. Titles in bold if wanted.
std::string cut_sheet(const Job& job, const Solution& solution, const Verdicts& verdicts, bool bold);

/// The tables and notes as CSV, one after the other, a blank line between; the first column names the table.
std::string cut_sheet_csv(const Job& job, const Solution& solution, const Verdicts& verdicts);

/// The checks alone: what the job was judged by, a caution, the tables. Titles and verdicts in bold if wanted.
std::string check_sheet(const Job& job, const Verdicts& verdicts, std::span<const RuleSet> sets, bool bold);
std::string check_sheet_csv(const Job& job, const Verdicts& verdicts);

/// What each quantity may be for the job's rules to pass, as a table.
Table range_table(const Job& job, const std::vector<PassingRange>& ranges);

}  // namespace rakewright
