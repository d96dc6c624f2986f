#include "cut_sheet.hpp"

#include <map>

#include "../told.hpp"

namespace rakewright {
namespace {

constexpr const char* caution =
    "CAUTION: these figures are only as good as the readings in the job file. Try each one on the work before you cut. "
    "A rail that gives way or an opening "
    "too wide can kill: what a guard must be and how it is fixed is for the code in force where you build and for "
    "licensed practice to say.";

constexpr const char* check_caution =
    "CAUTION: figures as they were read are held against limits as this program carries them, no more. What is in "
    "force, what it asks for beyond these figures, and whether the work may be used is for the authority on the spot "
    "and for licensed practice to say.";

std::string heading(const Job& job) {
    const std::string tape = std::string(job.units == Unit::inch ? "inches" : "millimetres") + ", to the nearest " +
                             words_of_length(tape_of(job).division, tape_of(job));
    const std::string title = job.title.empty() ? "Cut sheet" : job.title;
    const std::size_t used = width_of(title) + width_of(tape);
    return title + (used + 2 <= 80 ? std::string(80 - used, ' ') : "\n  ") + tape + '\n';
}

/// What is said alike of some sections.
struct JoinedNote {
    std::string text;
    std::vector<std::string> sections;
};

Table notes_table(const Job& job, const Solution& solution) {
    Table table{"notes", "NOTES", {{"", "section", Align::left}, {"", "note", Align::left}}, {}, {}, {}};
    std::vector<JoinedNote> joined;
    std::map<std::string_view, std::size_t> of_text;
    const std::vector<Note> notes = notes_of(job, solution);
    for (const Note& note : notes) {
        table.rows.push_back({{{"", note.section}, {"", note.text}}, {}});
        const auto [at, is_new] = of_text.try_emplace(note.text, joined.size());
        if (is_new) joined.push_back({note.text, {}});
        if (!note.section.empty()) joined[at->second].sections.push_back(note.section);
    }
    for (const JoinedNote& note : joined)
        table.about.push_back(note.sections.empty() ? note.text : some_of(note.sections) + ": " + note.text);
    return table;
}

/// All tables by where a crew stands, with these for the checks; those without rows are left out, but of the checks.
std::vector<Table> tables_of(const Job& job, const Solution& solution, const std::vector<Table>& checks) {
    std::vector<Table> tables;
    for (auto* const pages :
         {work_tables, stair_tables, post_tables, post_fixing_tables, bracket_tables, fixing_tables, stock_tables,
          saw_and_bench_tables, paint_tables, shop_tables, gap_tables, spacing_tables})
        for (Table& table : pages(job, solution)) tables.push_back(std::move(table));
    std::erase_if(tables, [](const Table& table) { return table.rows.empty(); });
    tables.insert(tables.end(), checks.begin(), checks.end());
    if (Table notes = notes_table(job, solution); !notes.rows.empty()) tables.push_back(std::move(notes));
    return tables;
}

}  // namespace

std::string cut_sheet(const Job& job, const Solution& solution, const Verdicts& verdicts, bool bold) {
    std::string out = heading(job) + '\n' + wrapped(caution, 80, "");
    for (const Table& table : tables_of(job, solution, checks_for_a_crew(job, verdicts)))
        out += '\n' + as_text(table, bold);
    return out;
}

std::string cut_sheet_csv(const Job& job, const Solution& solution, const Verdicts& verdicts) {
    std::vector<Table> checks = check_tables(job, verdicts);
    std::erase_if(checks, [](const Table& table) { return table.rows.empty(); });
    return as_csv(tables_of(job, solution, std::move(checks)));
}

std::string check_sheet(const Job& job, const Verdicts& verdicts, std::span<const RuleSet> sets, bool bold) {
    std::string out = (job.title.empty() ? "Checks" : job.title) + "\n\n";
    for (const RuleSet& set : sets)
        out += wrapped(set.name + ": " + set.document + ", " + set.edition + "; " + set.place, 80, "");
    out += '\n' + wrapped(check_caution, 80, "");
    for (const Table& table : check_pages(job, verdicts))
        if (!table.rows.empty()) out += '\n' + as_text(table, bold);
    return out;
}

std::string check_sheet_csv(const Job& job, const Verdicts& verdicts) {
    std::vector<Table> tables = check_tables(job, verdicts);
    std::erase_if(tables, [](const Table& table) { return table.name == "unguarded" && table.rows.empty(); });
    return as_csv(tables);
}

}  // namespace rakewright
