#include "values.hpp"

#include <charconv>
#include <cstring>

namespace rakewright {
namespace {

/// A usual slip in what should be a length, to stand behind what is expected; empty if it is none of them.
const char* slip_in_length(std::string_view text) {
    const auto digit = [&](std::size_t i) { return i < text.size() && text[i] >= '0' && text[i] <= '9'; };
    if (text.find(" in ") != std::string_view::npos && read_angle(text)) return "; this is a slope";
    if (text.find("deg") != std::string_view::npos || text.find("\u00B0") != std::string_view::npos)
        return "; this is an angle";
    if (text.find(',') != std::string_view::npos)
        return "; decimals stand behind a point, as in 7.25, and thousands without a mark, as in 1250";
    for (std::size_t i = 1; i < text.size(); ++i)
        if ((text[i] == 'e' || text[i] == 'E') && digit(i - 1) && (digit(i + 1) || digit(i + 2)))
            return "; numbers are written without an exponent";
    if (text.front() == '+') return "; without a sign in front";
    if (text.find_first_not_of("0123456789.") == std::string_view::npos) return "; none is larger than 1000000";
    return "";
}

/// Digits with a point at most, more than 0: up to nine before it and four behind.
std::optional<double> plain_number(std::string_view text) {
    const std::size_t point = std::min(text.find('.'), text.size());
    const bool has_point = point < text.size();
    const std::size_t behind = has_point ? text.size() - point - 1 : 0;
    if (point < 1 || point > 9 || behind > 4 || (has_point && behind == 0)) return std::nullopt;
    if (text.find_first_not_of("0123456789.") != std::string_view::npos ||
        (has_point && text.find('.', point + 1) != std::string_view::npos))
        return std::nullopt;
    double value = 0;
    std::from_chars(text.data(), text.data() + text.size(), value);
    return value > 0 ? std::optional(value) : std::nullopt;
}

}  // namespace

void Values::take_written(std::string_view key, const Node& node, Grammar& grammar) {
    if (!is_word(node))
        wrong_kind(key, node, grammar.expected());
    else if (!grammar.take(document().value(node), unit_, node.place()))
        unreadable(key, node, grammar.expected());
}

bool Values::take_number(std::string_view key, const Node& node, Reading& number) {
    static const std::string expected = "a number more than 0 such as 12 or 7.95";
    const std::optional<double> value = is_word(node) ? plain_number(document().value(node)) : std::nullopt;
    return take_plain(key, node, value, expected, number);
}

bool Values::take_part_of_one(std::string_view key, const Node& node, Reading& number) {
    static const std::string expected = "a number more than 0 and less than 1 such as 0.45";
    std::optional<double> value = is_word(node) ? plain_number(document().value(node)) : std::nullopt;
    if (value && *value >= 1) value.reset();
    return take_plain(key, node, value, expected, number);
}

bool Values::take_plain(std::string_view key, const Node& node, const std::optional<double>& value,
                        const std::string& expected, Reading& number) {
    if (value)
        number = {*value, node.place()};
    else if (is_word(node))
        unreadable(key, node, expected);
    else
        wrong_kind(key, node, expected);
    return value.has_value();
}

bool Values::take_length(std::string_view key, const Node& node, Range range, Reading& reading) {
    static const std::string example = "a length such as 36, 7 3/4, 5' 2 3/8\", 184 mm or 1.2 m";
    if (!is_word(node)) {
        if (node.kind() == Node::Kind::null)
            refuse(node.place(), "a value of " + ticked(key) + " is missing").expected = example;
        else
            wrong_kind(key, node, example);
        return false;
    }
    const std::optional<double> value = read_length(document().value(node), unit_);
    if (!value) {
        const std::string_view text = document().value(node);
        unreadable(key, node, example + (text.empty() ? "" : slip_in_length(text)));
        return false;
    }
    const bool within = range == Range::any || *value > 0 || (range == Range::not_negative && *value == 0);
    if (!within) {
        unreadable(key, node, range == Range::positive ? "a length more than 0" : "a length that is not negative");
        return false;
    }
    reading = {*value, node.place()};
    return true;
}

bool Values::take_angle(std::string_view key, const Node& node, Counts range, bool may_be_0, AngleReading& reading) {
    const bool above_0 = range.least == 0 && !may_be_0;
    const auto expected = [&] {
        const std::string most = std::to_string(range.most);
        return (above_0 ? "more than 0 and at most " + most + " degrees"
                        : "degrees from " + std::to_string(range.least) + " to " + most) +
               ", or a slope such as 7 1/4 in 11";
    };
    if (!is_word(node)) {
        wrong_kind(key, node, expected());
        return false;
    }
    const std::optional<Angle> angle = read_angle(document().value(node));
    // Degrees are judged as they are written: 350 is no lean of -10.
    const std::optional<double> written_degrees = read_degrees(document().value(node));
    const double given = written_degrees ? *written_degrees : angle ? degrees(*angle) : 0;
    if (!angle || given < range.least || given > range.most || (above_0 && !(given > 0))) {
        unreadable(key, node, expected());
        return false;
    }
    reading = {*angle, node.place()};
    return true;
}

bool Values::take_count(std::string_view key, const Node& node, Counts range, Count& count) {
    const auto expected = [&] {
        return "a whole number from " + std::to_string(range.least) + " to " + std::to_string(range.most);
    };
    if (!is_word(node)) {
        wrong_kind(key, node, expected());
        return false;
    }
    const std::string_view text = document().value(node);
    int value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error != std::errc() || end != text.data() + text.size() || value < range.least || value > range.most) {
        unreadable(key, node, expected());
        return false;
    }
    count = {value, node.place()};
    return true;
}

std::string quoted_words(std::initializer_list<Word> words) {
    std::string text;
    std::size_t number = 0;
    for (const Word& word : words) {
        text += (number == 0 ? "" : number + 1 == words.size() ? " or " : ", ") + ticked(word.text);
        ++number;
    }
    return text;
}

void Values::take_word(const char* key, const Node& node, int& index, std::initializer_list<Word> words) {
    int number = 0;
    std::vector<std::string> known;
    for (const Word& word : words) {
        if (document().value(node) == word.text) {
            index = number;
            if (std::strcmp(key, "units") == 0) unit_ = static_cast<Unit>(number);
            return;
        }
        known.emplace_back(word.text);
        ++number;
    }
    Refusal& refusal = refuse(node.place(), ticked(key) + " cannot be '" + shown(document().value(node)) + "'");
    refusal.expected = quoted_words(words);
    if (!is_full()) refusal.nearest = nearest(document().value(node), known);
}

}  // namespace rakewright
