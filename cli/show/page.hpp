#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "../../solver/job.hpp"

namespace rakewright {

/// One entry of a table, as a person reads it (in more than one line if need be) and as a program does.
struct Cell {
    std::string shown;
    std::string raw;
};

enum class Align { left, right };

/// A column: its heading in the printed table (none: it is not printed, only written as CSV), and its name in CSV with
/// the unit at the end. A column with nothing in it is not printed either.
struct Column {
    std::string heading;
    std::string name;
    Align align = Align::right;
};

/// A row, and what is printed under it, indented.
struct Row {
    std::vector<Cell> cells;
    std::string under;
};

/// A table laid out for where a person stands. `name` is the one word by which a program finds it; `about` is printed
/// under the title, `footnotes` under the rows.
struct Table {
    std::string name;
    std::string title;
    std::vector<Column> columns;
    std::vector<Row> rows;
    std::vector<std::string> about;
    std::vector<std::string> footnotes;
};

/// Makes cells of numbers for a job's tape: lengths as it shows them, angles to a tenth of a degree.
class Cells {
 public:
    explicit Cells(const Job& job) : tape_(tape_of(job)) {}

    const Tape& tape() const { return tape_; }
    /// `in` or `mm`.
    const char* unit() const { return tape_.unit == Unit::inch ? "in" : "mm"; }
    /// A column's name with the job's unit behind it.
    std::string in_unit(const char* name) const { return std::string(name) + "_" + unit(); }

    Cell word(std::string text) const { return {text, text}; }
    Cell count(int number) const { return word(std::to_string(number)); }
    Cell length(double value) const;
    Cell length(const std::optional<double>& value) const { return value ? length(*value) : Cell{"-", ""}; }
    /// A size that the job states, as it was given.
    Cell size(double value) const;
    /// A length that must not be rounded up past the room that is left; `+` or `-` behind it where the exact one is
    /// more than a quarter of a division over or under.
    Cell fitting(double value, double room) const;
    /// An angle by its slope: the magnitude, in degrees.
    Cell angle(double slope) const;
    /// An angle by the slope of what it is over a right angle.
    Cell over_square(double slope) const;
    /// A plain number, `decimals` of it shown.
    Cell number(double value, int decimals) const;

 private:
    Tape tape_;
};

/// A number rounded half away from zero to so many decimals, at most 6, never "-0". From the shortest decimal that
/// reads back as the same double, so that 0.15 is 0.2 to one decimal.
std::string rounded(double value, int decimals);

/// The shortest decimal that reads back as the same double.
std::string exact(double value);

/// Whether a column is printed: it has a heading, and something in it.
bool is_printed(const Table& table, std::size_t column);

/// Whether a column with this heading is printed.
bool is_printed(const Table& table, std::string_view heading);

/// What explains a table's columns, sentence by sentence: each is said where one of its headings is printed, or always
/// where it has none.
struct Explained {
    std::vector<std::string_view> headings;
    std::string sentence;
};
std::string legend(const Table& table, const std::vector<Explained>& sentences);

/// A table as lines of text, titles in bold if wanted. At most 80 characters wide: headings and words are folded, numbers
/// are not, and columns that do not fit then stand in a block of their own under the others, with the names of its rows.
std::string as_text(const Table& table, bool bold);

/// Tables as CSV (RFC 4180, with line feeds): for each a heading line, then the rows, each led by the table's name; a
/// blank line between two tables. Tables of one name that follow each other are one.
std::string as_csv(const std::vector<Table>& tables);

/// Text broken into lines of at most `width` characters, each led by `indent`.
std::string wrapped(const std::string& text, std::size_t width, const std::string& indent);

/// How many columns of a terminal a UTF-8 text takes, counting each code point as one.
std::size_t width_of(const std::string& text);

}  // namespace rakewright
