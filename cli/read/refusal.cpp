#include "refusal.hpp"

#include <algorithm>

namespace rakewright {
namespace {

bool starts_character(char c) { return (c & 0xC0) != 0x80; }

std::size_t characters_in(std::string_view text) {
    return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), starts_character));
}

/// Where a place lies: its line, and what of the place is on it.
struct Spotted {
    std::size_t line = 1, column = 1;
    std::string_view before, marked, behind;
};

class Lines {
 public:
    explicit Lines(std::string_view text) : text_(text) {
        starts_.push_back(0);
        for (std::size_t i = 0; i < text.size(); ++i)
            if (text[i] == '\n') starts_.push_back(i + 1);
    }

    Spotted spot(Place place) const {
        const std::size_t begin = std::min<std::size_t>(place.begin, text_.size());
        const auto after = std::upper_bound(starts_.begin(), starts_.end(), begin);
        const std::size_t start = *(after - 1);
        std::size_t end = std::min(text_.find('\n', begin), text_.size());
        if (end > begin && text_[end - 1] == '\r') --end;
        const std::size_t marked_end = std::min(begin + place.size, end);
        Spotted spotted;
        spotted.line = static_cast<std::size_t>(after - starts_.begin());
        spotted.before = text_.substr(start, begin - start);
        spotted.marked = text_.substr(begin, std::max(marked_end, begin) - begin);
        spotted.behind = text_.substr(begin + spotted.marked.size(), end - begin - spotted.marked.size());
        spotted.column = characters_in(spotted.before) + 1;
        return spotted;
    }

 private:
    std::string_view text_;
    std::vector<std::size_t> starts_;
};

/// A part of a line as it can be shown: tabs as one blank, control characters as a question mark.
std::string plain(std::string_view text) {
    std::string out;
    for (const char c : text) out += c == '\t' ? ' ' : (static_cast<unsigned char>(c) < 0x20 || c == 0x7f) ? '?' : c;
    return out;
}

/// The last, or first, so many characters of a text.
std::string_view tail(std::string_view text, std::size_t most) {
    std::size_t left = characters_in(text);
    while (left > most) {
        do text.remove_prefix(1);
        while (!text.empty() && !starts_character(text.front()));
        --left;
    }
    return text;
}

std::string_view head(std::string_view text, std::size_t most) {
    std::size_t end = 0, count = 0;
    while (end < text.size() && (count < most || !starts_character(text[end])))
        count += starts_character(text[end++]) ? 1 : 0;
    return text.substr(0, end);
}

/// The line and a caret under the span; of a long line, what stands around it.
std::string excerpt(const Spotted& spotted, bool colour) {
    constexpr std::size_t before_most = 100, marked_most = 100, behind_most = 60;
    const std::string before = plain(tail(spotted.before, before_most)),
                      marked = plain(head(spotted.marked, marked_most)),
                      behind = plain(head(spotted.behind, behind_most));
    const std::string carets(std::max<std::size_t>(1, characters_in(marked)), '^');
    return "  | " + before + marked + behind + "\n  | " + std::string(characters_in(before), ' ') +
           (colour ? "\033[31m" : "") + carets + (colour ? "\033[0m" : "") + '\n';
}

std::string heading(const Source& source, const Spotted& spotted) {
    return shown(source.name) + ':' + std::to_string(spotted.line) + ':' + std::to_string(spotted.column) + ": ";
}

/// Letters put in, left out, changed, or two neighbours swapped (optimal string alignment, each place touched once).
std::size_t distance(std::string_view a, std::string_view b) {
    std::vector<std::vector<std::size_t>> d(a.size() + 1, std::vector<std::size_t>(b.size() + 1));
    for (std::size_t i = 0; i <= a.size(); ++i)
        for (std::size_t j = 0; j <= b.size(); ++j) {
            if (i == 0 || j == 0) {
                d[i][j] = i + j;
                continue;
            }
            d[i][j] = std::min({d[i - 1][j] + 1, d[i][j - 1] + 1, d[i - 1][j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1)});
            if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                d[i][j] = std::min(d[i][j], d[i - 2][j - 2] + 1);
        }
    return d[a.size()][b.size()];
}

}  // namespace

Source source_of(std::string name, std::string text) {
    if (text.compare(0, 3, "\xEF\xBB\xBF") == 0) text.erase(0, 3);
    return {std::move(name), std::move(text)};
}

std::string rendered(const Source& source, std::vector<Refusal> refusals, bool colour) {
    std::stable_sort(refusals.begin(), refusals.end(),
                     [](const Refusal& a, const Refusal& b) { return a.place.begin < b.place.begin; });
    const Lines lines(source.text);
    std::string out;
    for (std::size_t i = 0; i < refusals.size(); ++i) {
        if (i == most_shown) {
            out += "... and " + std::to_string(refusals.size() - i) + " more\n";
            break;
        }
        const Refusal& refusal = refusals[i];
        const Spotted spotted = lines.spot(refusal.place);
        out += heading(source, spotted) + (colour ? "\033[1m" : "") + refusal.sentence + (colour ? "\033[0m" : "") +
               (refusal.nearest.empty() ? std::string() : "; did you mean " + refusal.nearest + "?") + '\n' +
               excerpt(spotted, colour);
        if (!refusal.expected.empty()) out += "  expected: " + refusal.expected + '\n';
        for (const AlsoHere& also : refusal.also) {
            const Spotted other = lines.spot(also.place);
            out += "  " + also.label + ": " + heading(source, other) + '\n' + excerpt(other, colour);
        }
    }
    return out;
}

std::string nearest(std::string_view word, const std::vector<std::string>& names) {
    constexpr std::size_t longest = 64;
    std::size_t best = word.size() / 3 + (word.size() < 3 ? 0 : 1);
    std::string text;
    if (word.size() > longest) return text;
    std::vector<std::string> sorted = names;
    std::sort(sorted.begin(), sorted.end());
    sorted.erase(std::unique(sorted.begin(), sorted.end()), sorted.end());
    for (const std::string& name : sorted) {
        if (name.size() > longest) continue;
        const std::size_t away = distance(word, name);
        if (away > best || away >= name.size()) continue;
        text = away < best || text.empty() ? "'" + shown(name) + "'" : text + " or '" + shown(name) + "'";
        best = away;
    }
    return text;
}

std::string shown(std::string_view text) {
    constexpr std::size_t most = 60;
    const std::string_view kept = head(text, most);
    return plain(kept) + (kept.size() < text.size() ? "..." : "");
}

}  // namespace rakewright
