#include "page.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>

namespace rakewright {
namespace {

std::string padded(const std::string& text, std::size_t width, Align align) {
    const std::size_t own = width_of(text);
    const std::string blanks(width > own ? width - own : 0, ' ');
    return align == Align::left ? text + blanks : blanks + text;
}

std::string without_trailing_blanks(std::string line) {
    line.erase(line.find_last_not_of(' ') + 1);
    return line;
}

std::string quoted_for_csv(const std::string& text) {
    if (text.find_first_of(",\"\r\n") == std::string::npos) return text;
    std::string quoted = "\"";
    for (const char c : text) {
        if (c == '"') quoted += '"';
        quoted += c;
    }
    return quoted + '"';
}

/// Adds one in the last place of a decimal text.
void carry_up(std::string& digits) {
    for (std::size_t i = digits.size(); i-- > 0;) {
        if (digits[i] == '.') continue;
        if (digits[i] != '9') {
            ++digits[i];
            return;
        }
        digits[i] = '0';
    }
    digits.insert(digits.begin(), '1');
}

constexpr const char* margin = "  ";

std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines;
    for (std::size_t begin = 0; begin <= text.size();) {
        const std::size_t end = std::min(text.find('\n', begin), text.size());
        lines.push_back(text.substr(begin, end - begin));
        begin = end + 1;
    }
    return lines;
}

struct PrintedColumn {
    std::size_t index;
    std::size_t width;
};

/// The columns that have a heading and something in them.
std::vector<PrintedColumn> printed_columns(const Table& table) {
    std::vector<PrintedColumn> columns;
    for (std::size_t c = 0; c < table.columns.size(); ++c) {
        std::size_t width = width_of(table.columns[c].heading);
        bool empty = true;
        for (const Row& row : table.rows) {
            empty = empty && row.cells[c].raw.empty();
            for (const std::string& line : lines_of(row.cells[c].shown)) width = std::max(width, width_of(line));
        }
        if (!table.columns[c].heading.empty() && !empty) columns.push_back({c, width});
    }
    return columns;
}

}  // namespace

Cell Cells::length(double value) const { return {words_of_length(value, tape_), exact(value)}; }

Cell Cells::size(double value) const { return {words_of_size(value, tape_), exact(value)}; }

Cell Cells::fitting(double value, double room) const {
    const long long mark = fitting_mark(value, room, tape_);
    const Side side = side_of_mark(value, mark, tape_);
    return {words_of_mark(mark, tape_) + (side == Side::over ? "+" : side == Side::under ? "-" : " "), exact(value)};
}

Cell Cells::angle(double slope) const {
    const double value = degrees(angle_of(std::fabs(slope)));
    return {rounded(value, 1), exact(value)};
}

Cell Cells::over_square(double slope) const {
    const double value = 90 + degrees(angle_of(slope));
    return {rounded(value, 1), exact(value)};
}

Cell Cells::number(double value, int decimals) const { return {rounded(value, decimals), exact(value)}; }

std::string exact(double value) {
    char text[32];
    return {text, std::to_chars(text, text + sizeof text, value + 0.0).ptr};
}

std::string rounded(double value, int decimals) {
    char text[512];
    std::string digits(text, std::to_chars(text, text + sizeof text, std::fabs(value), std::chars_format::fixed).ptr);
    std::size_t point = digits.find('.');
    if (point == std::string::npos) {
        point = digits.size();
        digits += '.';
    }
    const std::size_t kept = point + 1 + static_cast<std::size_t>(decimals);
    if (digits.size() <= kept) {
        digits.append(kept - digits.size(), '0');
    } else {
        const bool up = digits[kept] >= '5';
        digits.resize(kept);
        if (up) carry_up(digits);
    }
    if (decimals == 0) digits.pop_back();
    const bool zero = digits.find_first_not_of("0.") == std::string::npos;
    return value < 0 && !zero ? "-" + digits : digits;
}

std::size_t width_of(const std::string& text) {
    return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char c) { return (c & 0xC0) != 0x80; }));
}

std::string wrapped(const std::string& text, std::size_t width, const std::string& indent) {
    std::string out, line = indent;
    for (std::size_t begin = 0; begin < text.size();) {
        const std::size_t end = std::min(text.find(' ', begin), text.size());
        const std::string word = text.substr(begin, end - begin);
        if (width_of(line) > width_of(indent) && width_of(line) + 1 + width_of(word) > width) {
            out += line + '\n';
            line = indent;
        }
        line += (width_of(line) > width_of(indent) ? " " : "") + word;
        begin = end + 1;
    }
    return out + line + '\n';
}

bool is_printed(const Table& table, std::string_view heading) {
    const std::vector<PrintedColumn> printed = printed_columns(table);
    return std::any_of(printed.begin(), printed.end(),
                       [&](const PrintedColumn& column) { return table.columns[column.index].heading == heading; });
}

std::string legend(const Table& table, const std::vector<Explained>& sentences) {
    std::string text;
    for (const Explained& explained : sentences) {
        const auto& headings = explained.headings;
        if (!headings.empty() && std::none_of(headings.begin(), headings.end(),
                                              [&](std::string_view heading) { return is_printed(table, heading); }))
            continue;
        text += (text.empty() ? "" : " ") + explained.sentence;
    }
    return text;
}

std::string as_text(const Table& table, bool bold) {
    std::string out = (bold ? "\033[1m" : "") + table.title + (bold ? "\033[0m" : "") + '\n';
    for (const std::string& line : table.about) out += wrapped(line, 80, margin);
    const std::vector<PrintedColumn> columns = printed_columns(table);
    const auto line_of = [&](const auto& text_of) {
        std::string line;
        for (const PrintedColumn& column : columns)
            line += margin + padded(text_of(column), column.width, table.columns[column.index].align);
        return without_trailing_blanks(line) + '\n';
    };
    if (columns.empty()) return out;
    out += line_of([&](const PrintedColumn& column) { return table.columns[column.index].heading; });
    out += line_of([&](const PrintedColumn& column) { return std::string(column.width, '-'); });
    for (const Row& row : table.rows) {
        std::size_t height = 1;
        for (const PrintedColumn& column : columns)
            height = std::max(height, lines_of(row.cells[column.index].shown).size());
        for (std::size_t i = 0; i < height; ++i)
            out += line_of([&](const PrintedColumn& column) {
                const std::vector<std::string> lines = lines_of(row.cells[column.index].shown);
                return i < lines.size() ? lines[i] : std::string();
            });
        if (!row.under.empty()) out += wrapped(row.under, 80, "        ");
    }
    for (const std::string& line : table.footnotes) out += wrapped(line, 80, margin);
    return out;
}

std::string as_csv(const std::vector<Table>& tables) {
    std::string out;
    const std::string* before = nullptr;
    for (const Table& table : tables) {
        if (!before || *before != table.name) {
            out += out.empty() ? "table" : "\ntable";
            for (const Column& column : table.columns) out += ',' + quoted_for_csv(column.name);
            out += '\n';
        }
        before = &table.name;
        for (const Row& row : table.rows) {
            out += table.name;
            for (const Cell& cell : row.cells) out += ',' + quoted_for_csv(cell.raw);
            out += '\n';
        }
    }
    return out;
}

}  // namespace rakewright
