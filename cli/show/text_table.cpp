#include <algorithm>

#include "page.hpp"

namespace rakewright {
namespace {

constexpr std::size_t page_width = 80;
constexpr const char* margin = "  ";

using Lines = std::vector<std::string>;

/// Where a line may be broken: at any blank of a heading; in an entry where no number falls apart.
enum class Breaks { heading, words, numbers };

std::string padded(const std::string& text, std::size_t width, Align align) {
    const std::size_t own = width_of(text);
    const std::string blanks(width > own ? width - own : 0, ' ');
    return align == Align::left ? text + blanks : blanks + text;
}

std::string without_trailing_blanks(std::string line) {
    line.erase(line.find_last_not_of(' ') + 1);
    return line;
}

bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }

/// Whether a line may end before the character at `i`, which is neither its first nor its last: numbers in a list part
/// after a comma, words before a word and after a hyphen.
bool breaks_at(const std::string& line, std::size_t i, Breaks breaks) {
    if (line[i] == ' ') {
        if (breaks == Breaks::heading || line[i - 1] == ',') return true;
        return breaks == Breaks::words && (line[i + 1] < '0' || line[i + 1] > '9');
    }
    return breaks == Breaks::words && line[i - 1] == '-' && i > 1 && is_letter(line[i - 2]) && is_letter(line[i]);
}

/// The text in lines no wider than `width`, but for what cannot be broken.
Lines folded(const std::string& text, std::size_t width, Breaks breaks) {
    Lines lines(1);
    std::string piece;
    bool blank = false;  // between the line and the piece
    const auto take = [&](bool ends) {
        std::string& line = lines.back();
        if (!line.empty() && width_of(line) + (blank ? 1 : 0) + width_of(piece) > width) {
            lines.push_back(piece);
        } else {
            line += (blank && !line.empty() ? " " : "") + piece;
        }
        piece.clear();
        if (ends) lines.emplace_back();
    };
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (text[i] == '\n') {
            take(true);
            blank = false;
        } else if (i > 0 && i + 1 < text.size() && breaks_at(text, i, breaks)) {
            take(false);
            blank = text[i] == ' ';
            if (!blank) piece += text[i];
        } else {
            piece += text[i];
        }
    }
    take(false);
    return lines;
}

std::size_t widest(const Lines& lines) {
    std::size_t width = 0;
    for (const std::string& line : lines) width = std::max(width, width_of(line));
    return width;
}

/// How narrow a heading is in two lines.
std::size_t in_two_lines(const std::string& heading) {
    std::size_t least = width_of(heading);
    for (std::size_t i = heading.find(' '); i != std::string::npos; i = heading.find(' ', i + 1))
        least = std::min(least, std::max(width_of(heading.substr(0, i)), width_of(heading.substr(i + 1))));
    return least;
}

/// A table in columns that fit a page side by side: headings, then words, are folded where that is needed, as few
/// lines as can be; what is still too wide is printed in blocks under each other.
class TextTable {
 public:
    explicit TextTable(const Table& table) : table_(table) {
        for (std::size_t c = 0; c < table.columns.size(); ++c)
            if (is_printed(table, c)) columns_.push_back({c, natural_width(c)});
        if (excess() > 0)
            for (Printed& column : columns_)
                column.width = std::max(entries_width(column.index, page_width),
                                        in_two_lines(table.columns[column.index].heading));
        while (excess() > 0 && fold_one()) {
        }
    }

    bool is_empty() const { return columns_.empty(); }

    std::string text() const {
        std::string out;
        const std::vector<std::vector<Printed>> blocks = blocks_of_columns();
        for (std::size_t b = 0; b < blocks.size(); ++b) out += (b == 0 ? "" : "\n") + block(blocks[b], b == 0);
        return out;
    }

 private:
    struct Printed {
        std::size_t index;
        std::size_t width;
    };

    const Column& column(std::size_t c) const { return table_.columns[c]; }

    /// What is already in lines stays so: each belongs beside its neighbours.
    Lines entry(const Row& row, std::size_t c, std::size_t width) const {
        const std::string& shown = row.cells[c].shown;
        if (shown.find('\n') != std::string::npos) width = std::string::npos;
        return folded(shown, width, column(c).align == Align::left ? Breaks::words : Breaks::numbers);
    }

    std::size_t entries_width(std::size_t c, std::size_t width) const {
        std::size_t most = 0;
        for (const Row& row : table_.rows) most = std::max(most, widest(entry(row, c, width)));
        return most;
    }

    std::size_t natural_width(std::size_t c) const {
        return std::max(width_of(column(c).heading), entries_width(c, std::string::npos));
    }

    static std::size_t width_of_columns(const std::vector<Printed>& columns) {
        std::size_t width = 0;
        for (const Printed& column : columns) width += width_of(margin) + column.width;
        return width;
    }

    std::size_t excess() const {
        const std::size_t width = width_of_columns(columns_);
        return width > page_width ? width - page_width : 0;
    }

    std::size_t height(const Row& row, const std::vector<Printed>& columns) const {
        std::size_t most = 1;
        for (const Printed& column : columns) most = std::max(most, entry(row, column.index, column.width).size());
        return most;
    }

    std::size_t height_of_rows() const {
        std::size_t sum = 0;
        for (const Row& row : table_.rows) sum += height(row, columns_);
        return sum;
    }

    /// Makes one column narrower by folding what stands in it: the one that is then narrow enough with the fewest
    /// lines, or the one that gains most. False if none gains.
    bool fold_one() {
        const std::size_t needed = excess();
        std::size_t best = columns_.size(), best_width = 0, best_gain = 0, best_height = 0;
        for (std::size_t i = 0; i < columns_.size(); ++i) {
            const std::size_t before = columns_[i].width, c = columns_[i].index;
            const std::size_t wanted = before > needed ? before - needed : 1;
            columns_[i].width = std::max(entries_width(c, wanted), in_two_lines(column(c).heading));
            const std::size_t width = columns_[i].width, gain = std::min(before - std::min(before, width), needed);
            const std::size_t lines = height_of_rows();
            columns_[i].width = before;
            if (gain > best_gain || (gain == best_gain && gain > 0 && lines <= best_height)) {
                best = i;
                best_width = width;
                best_gain = gain;
                best_height = lines;
            }
        }
        if (best == columns_.size()) return false;
        columns_[best].width = best_width;
        return true;
    }

    /// The columns in blocks that fit; each begins with the words by which a row is known.
    std::vector<std::vector<Printed>> blocks_of_columns() const {
        const auto first = std::find_if(columns_.begin(), columns_.end(), [&](const Printed& printed) {
            return column(printed.index).align == Align::right;
        });
        const std::vector<Printed> keys(columns_.begin(), first == columns_.begin() ? first + 1 : first);
        std::vector<std::vector<Printed>> blocks{keys};
        for (auto at = columns_.begin() + static_cast<std::ptrdiff_t>(keys.size()); at != columns_.end(); ++at) {
            const std::size_t width = width_of_columns(blocks.back()) + width_of(margin) + at->width;
            if (width > page_width && blocks.back().size() > keys.size()) blocks.push_back(keys);
            blocks.back().push_back(*at);
        }
        return blocks;
    }

    std::string block(const std::vector<Printed>& columns, bool is_first) const {
        std::string out;
        const auto add_lines = [&](std::size_t count, const auto& line_of) {
            for (std::size_t i = 0; i < count; ++i) {
                std::string line;
                for (const Printed& printed : columns)
                    line += margin + padded(line_of(printed, i), printed.width, column(printed.index).align);
                out += without_trailing_blanks(line) + '\n';
            }
        };
        const auto heading = [&](const Printed& printed) {
            return folded(column(printed.index).heading, printed.width, Breaks::heading);
        };
        std::size_t high = 1;
        for (const Printed& printed : columns) high = std::max(high, heading(printed).size());
        add_lines(high, [&](const Printed& printed, std::size_t i) {
            const Lines lines = heading(printed);
            return i + lines.size() < high ? std::string() : lines[i + lines.size() - high];
        });
        add_lines(1, [](const Printed& printed, std::size_t) { return std::string(printed.width, '-'); });
        for (const Row& row : table_.rows) {
            add_lines(height(row, columns), [&](const Printed& printed, std::size_t i) {
                const Lines lines = entry(row, printed.index, printed.width);
                return i < lines.size() ? lines[i] : std::string();
            });
            if (is_first && !row.under.empty()) out += wrapped(row.under, page_width, "        ");
        }
        return out;
    }

    const Table& table_;
    std::vector<Printed> columns_;
};

}  // namespace

std::string as_text(const Table& table, bool bold) {
    std::string out = (bold ? "\033[1m" : "") + table.title + (bold ? "\033[0m" : "") + '\n';
    for (const std::string& line : table.about) out += wrapped(line, page_width, margin);
    const TextTable printed(table);
    if (printed.is_empty()) return out;
    out += printed.text();
    for (const std::string& line : table.footnotes) out += wrapped(line, page_width, margin);
    return out;
}

}  // namespace rakewright
