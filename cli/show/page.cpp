#include "page.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>

namespace rakewright {
namespace {

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

namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// Whether a fraction stands there, as in `3/16`.
bool is_fraction(const std::string& text, std::size_t at) {
    const std::size_t begin = at;
    while (at < text.size() && is_digit(text[at])) ++at;
    return at > begin && at + 1 < text.size() && text[at] == '/' && is_digit(text[at + 1]);
}

/// Where a line may be broken next: at a blank, but not within `54 5/16`.
std::size_t end_of_word(const std::string& text, std::size_t begin) {
    std::size_t end = text.find(' ', begin);
    while (end != std::string::npos && end > begin && is_digit(text[end - 1]) && is_fraction(text, end + 1))
        end = text.find(' ', end + 1);
    return std::min(end, text.size());
}

}  // namespace

std::string wrapped(const std::string& text, std::size_t width, const std::string& indent) {
    std::string out, line = indent;
    for (std::size_t begin = 0; begin < text.size();) {
        const std::size_t end = end_of_word(text, begin);
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

bool is_printed(const Table& table, std::size_t column) {
    return !table.columns[column].heading.empty() &&
           std::any_of(table.rows.begin(), table.rows.end(),
                       [&](const Row& row) { return !row.cells[column].raw.empty(); });
}

bool is_printed(const Table& table, std::string_view heading) {
    for (std::size_t c = 0; c < table.columns.size(); ++c)
        if (table.columns[c].heading == heading && is_printed(table, c)) return true;
    return false;
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
