#include "refusal.hpp"

#include <algorithm>
#include <array>
#include <numeric>

#include "character.hpp"

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

/// A part of a line as it can be shown: tabs as one blank, what no terminal should get as a question mark.
std::string plain(std::string_view text) {
    std::string out;
    for (std::size_t i = 0; i < text.size();) {
        const Character character = character_at(text, i);
        if (text[i] == '\t')
            out += ' ';
        else if (!character.is_text || is_control(character.code))
            out += '?';
        else
            out += text.substr(i, character.size);
        i += character.size;
    }
    return out;
}

/// How many columns of a terminal a plain text takes.
std::size_t columns_in(std::string_view text) {
    std::size_t columns = 0;
    for (std::size_t i = 0; i < text.size();) {
        const Character character = character_at(text, i);
        columns += static_cast<std::size_t>(columns_of(character.code));
        i += character.size;
    }
    return columns;
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
    const std::string carets(std::max<std::size_t>(1, columns_in(marked)), '^');
    return "  | " + before + marked + behind + "\n  | " + std::string(columns_in(before), ' ') +
           (colour ? "\033[31m" : "") + carets + (colour ? "\033[0m" : "") + '\n';
}

std::string where(const Source& source, const Spotted& spotted) {
    return shown(source.name) + ':' + std::to_string(spotted.line) + ':' + std::to_string(spotted.column);
}

constexpr std::size_t longest_compared = 64;

/// Letters put in, left out, changed, or two neighbours swapped (optimal string alignment, each place touched once).
/// Neither word longer than `longest_compared`.
std::size_t distance(std::string_view a, std::string_view b) {
    using Row = std::array<std::size_t, longest_compared + 1>;
    Row before_last{}, last{}, row{};
    std::iota(last.begin(), last.end(), std::size_t{0});
    for (std::size_t i = 1; i <= a.size(); ++i) {
        row[0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            row[j] = std::min({last[j] + 1, row[j - 1] + 1, last[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1)});
            if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                row[j] = std::min(row[j], before_last[j - 2] + 1);
        }
        before_last = last;
        last = row;
    }
    return last[b.size()];
}

/// Words quoted and joined by "or", the first three of them.
std::string either(const std::vector<std::string_view>& words) {
    constexpr std::size_t most = 3;
    std::string text;
    for (std::size_t i = 0; i < std::min(words.size(), most); ++i)
        text += (i == 0 ? "'" : " or '") + shown(words[i]) + "'";
    return text;
}

}  // namespace

Refusal refusal_at(std::size_t begin, std::size_t size, std::string sentence, std::string expected) {
    return {{static_cast<std::uint32_t>(begin), static_cast<std::uint32_t>(size)},
            std::move(sentence),
            std::move(expected),
            {},
            {}};
}

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
        out += where(source, spotted) + ": " + (colour ? "\033[1m" : "") + refusal.sentence +
               (colour ? "\033[0m" : "") +
               (refusal.nearest.empty() ? std::string() : "; did you mean " + refusal.nearest + "?") + '\n' +
               excerpt(spotted, colour);
        if (!refusal.expected.empty()) out += "  expected: " + refusal.expected + '\n';
        for (const AlsoHere& also : refusal.also) {
            const Spotted other = lines.spot(also.place);
            out += "  " + also.label + ": " + where(source, other) + '\n' + excerpt(other, colour);
        }
    }
    return out;
}

std::string nearest(std::string_view word, const std::vector<std::string>& names) {
    if (word.size() > longest_compared) return {};
    std::size_t best = word.size() / 3 + (word.size() < 3 ? 0 : 1);
    std::vector<std::string_view> near;
    for (const std::string& name : names) {
        const std::size_t differ = std::max(word.size(), name.size()) - std::min(word.size(), name.size());
        if (name.size() > longest_compared || differ > best) continue;
        const std::size_t away = distance(word, name);
        if (away > best || away >= name.size()) continue;
        if (away < best) near.clear();
        best = away;
        near.push_back(name);
    }
    std::sort(near.begin(), near.end());
    near.erase(std::unique(near.begin(), near.end()), near.end());
    return either(near);
}

std::vector<std::string> nearest_first(std::string_view word, std::vector<std::string> names) {
    const auto away = [&](const std::string& name) {
        return std::max(word.size(), name.size()) > longest_compared ? 2 * longest_compared : distance(word, name);
    };
    std::vector<std::pair<std::size_t, std::string>> ranked;
    for (std::string& name : names) {
        const std::size_t far = away(name);
        ranked.emplace_back(far, std::move(name));
    }
    std::stable_sort(ranked.begin(), ranked.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
    for (std::size_t i = 0; i < names.size(); ++i) names[i] = std::move(ranked[i].second);
    return names;
}

std::string shown(std::string_view text) {
    constexpr std::size_t most = 60;
    const std::string_view kept = head(text, most);
    return plain(kept) + (kept.size() < text.size() ? "..." : "");
}

}  // namespace rakewright
