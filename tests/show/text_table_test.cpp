#include <sstream>

#include "../../cli/show/page.hpp"
#include "../support/catch.hpp"

// How tables fold and part where they are wider than a page of 80.

namespace rakewright::tests {
namespace {

Table table_of(std::vector<Column> columns, const std::vector<std::vector<std::string>>& rows) {
    Table table{"t", "T", std::move(columns), {}, {}, {}};
    for (const std::vector<std::string>& row : rows) {
        table.rows.emplace_back();
        for (const std::string& entry : row) table.rows.back().cells.push_back({entry, entry});
    }
    return table;
}

std::vector<std::string> lines_of(const Table& table) {
    std::istringstream text(as_text(table, false));
    std::vector<std::string> lines;
    for (std::string line; std::getline(text, line);) lines.push_back(line);
    return lines;
}

std::string digits(std::size_t count) { return std::string(count, '7'); }

std::size_t widest(const std::vector<std::string>& lines) {
    std::size_t width = 0;
    for (const std::string& line : lines) width = std::max(width, width_of(line));
    return width;
}

}  // namespace

TEST_CASE("a table that fits is not folded", "[show]") {
    const Table table = table_of({{"two words", "a", Align::left}, {"n", "n"}}, {{"all of it", digits(67)}});
    CHECK(lines_of(table) == std::vector<std::string>{"T", "  two words  " + std::string(66, ' ') + "n",
                                                      "  ---------  " + std::string(67, '-'),
                                                      "  all of it  " + digits(67)});
    CHECK(widest(lines_of(table)) == 80);
}

TEST_CASE("headings fold before entries do, and stand on the line of dashes", "[show]") {
    const Table table =
        table_of({{"one", "a", Align::left}, {"wide heading", "b"}, {"n", "n"}}, {{"all of it", "7 1/2", digits(58)}});
    CHECK(lines_of(table) == std::vector<std::string>{"T", "                wide",
                                                      "  one        heading  " + std::string(57, ' ') + "n",
                                                      "  ---------  -------  " + std::string(58, '-'),
                                                      "  all of it    7 1/2  " + digits(58)});
}

TEST_CASE("words part at blanks and hyphens, lists after a comma, and no number at all", "[show]") {
    const Table words = table_of({{"one", "a", Align::left}, {"n", "n"}},
                                 {{"a far-flung place", digits(67)}, {"3 1/2 x 1 1/4", digits(67)}});
    CHECK(lines_of(words) == std::vector<std::string>{"T", "  one      " + std::string(66, ' ') + "n",
                                                      "  -------  " + std::string(67, '-'), "  a far-   " + digits(67),
                                                      "  flung", "  place", "  3 1/2    " + digits(67), "  x 1 1/4"});
    const Table in_lines = table_of({{"one", "a", Align::left}, {"n", "n"}},
                                    {{"from long\nto short", digits(67)}, {"long, and long again", digits(67)}});
    CHECK(lines_of(in_lines)[3] == "  from long  " + digits(67));
    CHECK(lines_of(in_lines)[4] == "  to short");
    CHECK(lines_of(in_lines)[5] == "  long, and  " + digits(67));
    const Table lists = table_of({{"one", "a", Align::right}, {"n", "n"}}, {{"36 5/8, 36 1/8", digits(66)}});
    const std::vector<std::string> list = lines_of(lists);
    REQUIRE(list.size() == 5);
    CHECK(list[3] == "  36 5/8,  " + digits(66));
    CHECK(list[4] == "   36 1/8");
}

TEST_CASE("columns that cannot be folded to fit stand under the others, with the names of the rows", "[show]") {
    Table table = table_of({{"name", "name", Align::left}, {"a", "a"}, {"b", "b"}, {"c", "c"}},
                           {{"first", digits(30), digits(30), digits(30)}, {"second", "1", "2", "3"}});
    table.rows[0].under = "under it";
    const std::vector<std::string> lines = lines_of(table);
    const std::vector<std::string> expected{
        "T",
        "  name    " + std::string(29, ' ') + "a  " + std::string(29, ' ') + "b",
        "  ------  " + std::string(30, '-') + "  " + std::string(30, '-'),
        "  first   " + digits(30) + "  " + digits(30),
        "        under it",
        "  second  " + std::string(29, ' ') + "1  " + std::string(29, ' ') + "2",
        "",
        "  name    " + std::string(29, ' ') + "c",
        "  ------  " + std::string(30, '-'),
        "  first   " + digits(30),
        "  second  " + std::string(29, ' ') + "3",
    };
    CHECK(lines == expected);
}

}  // namespace rakewright::tests
