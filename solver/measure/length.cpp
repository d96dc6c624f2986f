#include "length.hpp"

#include <charconv>
#include <cmath>
#include <numeric>

#include "compare.hpp"

namespace rakewright {
namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// Reads a text from left to right, part by part.
class Scanner {
 public:
    explicit Scanner(std::string_view text) : rest_(text) {}

    void blanks() {
        while (!rest_.empty() && rest_.front() == ' ') rest_.remove_prefix(1);
    }

    bool done() const { return rest_.empty(); }

    bool word(std::string_view wanted) {
        if (rest_.substr(0, wanted.size()) != wanted) return false;
        rest_.remove_prefix(wanted.size());
        return true;
    }

    /// "7", "7.25", ".5", "3/4", "7 3/4", "7-3/4". `whole` tells whether it was one whole number.
    std::optional<double> number(bool& whole) {
        const std::string_view digits = run_of_digits();
        whole = false;
        if (!rest_.empty() && rest_.front() == '.') return decimal(digits);
        if (digits.empty()) return std::nullopt;
        const std::optional<double> first = value(digits);
        if (!rest_.empty() && rest_.front() == '/') return first ? fraction(*first) : std::nullopt;
        const Scanner before = *this;
        if (const std::optional<double> part = behind_whole(); part && first)
            return *part < 1 ? std::optional(*first + *part) : std::nullopt;
        *this = before;
        whole = true;
        return first;
    }

 private:
    std::string_view run_of_digits() {
        std::size_t count = 0;
        while (count < rest_.size() && is_digit(rest_[count])) ++count;
        const std::string_view digits = rest_.substr(0, count);
        rest_.remove_prefix(count);
        return digits;
    }

    static std::optional<double> value(std::string_view digits) {
        double number = 0;
        const auto [end, error] =
            std::from_chars(digits.data(), digits.data() + digits.size(), number, std::chars_format::fixed);
        if (error != std::errc() || end != digits.data() + digits.size()) return std::nullopt;
        return number;
    }

    std::optional<double> decimal(std::string_view whole) {
        rest_.remove_prefix(1);
        const std::string_view decimals = run_of_digits();
        if (decimals.empty()) return std::nullopt;
        return value({decimals.data() - 1 - whole.size(), whole.size() + 1 + decimals.size()});
    }

    std::optional<double> fraction(double over) {
        rest_.remove_prefix(1);
        const std::optional<double> under = value(run_of_digits());
        if (!under || *under == 0) return std::nullopt;
        return over / *under;
    }

    /// The fraction that stands behind a whole number, after blanks or a hyphen; none if there is none.
    std::optional<double> behind_whole() {
        const std::size_t before = rest_.size();
        blanks();
        if (word("-")) blanks();
        if (rest_.size() == before) return std::nullopt;
        const std::optional<double> over = value(run_of_digits());
        if (!over || rest_.empty() || rest_.front() != '/') return std::nullopt;
        return fraction(*over);
    }

    std::string_view rest_;
};

constexpr double inches_in_a_foot = 12;

bool inch_mark(Scanner& scanner) { return scanner.word("\"") || scanner.word("in") || scanner.word("\u2033"); }
bool foot_mark(Scanner& scanner) { return scanner.word("'") || scanner.word("ft") || scanner.word("\u2032"); }

/// The inches of a length in feet, after the foot mark; none if what stands there is no number of inches under 12.
std::optional<double> inches_behind_feet(Scanner& scanner, bool feet_are_whole) {
    scanner.blanks();
    if (scanner.done()) return 0;
    if (!feet_are_whole) return std::nullopt;
    if (scanner.word("-")) scanner.blanks();
    bool whole = false;
    const std::optional<double> inches = scanner.number(whole);
    if (!inches || *inches >= inches_in_a_foot) return std::nullopt;
    scanner.blanks();
    inch_mark(scanner);
    return inches;
}

/// Length in the job's unit, without its sign.
std::optional<double> magnitude(Scanner& scanner, Unit unit) {
    const double inch = unit == Unit::inch ? 1 : millimetres_in_an_inch;
    const auto metric = [&](double millimetres) {
        return unit == Unit::inch ? millimetres / millimetres_in_an_inch : millimetres;
    };
    bool whole = false;
    const std::optional<double> number = scanner.number(whole);
    if (!number) return std::nullopt;
    scanner.blanks();
    if (scanner.done()) return number;
    if (scanner.word("mm")) return metric(*number);
    if (scanner.word("cm")) return metric(*number * 10);
    if (scanner.word("m")) return metric(*number * 1000);
    if (inch_mark(scanner)) return *number * inch;
    if (!foot_mark(scanner)) return std::nullopt;
    const std::optional<double> inches = inches_behind_feet(scanner, whole);
    if (!inches) return std::nullopt;
    return (*number * inches_in_a_foot + *inches) * inch;
}

/// The whole number of divisions in one unit of the tape; 0 where it is not whole.
long long divisions_in_one(const Tape& tape) {
    const double count = std::round(1 / tape.division);
    return count >= 1 && count <= 1e6 && same(count * tape.division, 1) ? static_cast<long long>(count) : 0;
}

/// How many decimals show a division exactly; none where six do not.
std::optional<int> decimals_of(double division) {
    double scaled = division;
    for (int decimals = 0; decimals <= 6; ++decimals, scaled *= 10)
        if (scaled >= 0.5 && same(scaled, std::round(scaled))) return decimals;
    return std::nullopt;
}

std::string fraction_words(long long mark, long long in_one) {
    const long long whole = mark / in_one, over = mark % in_one, common = std::gcd(over, in_one);
    if (over == 0) return std::to_string(whole);
    std::string text;
    if (whole > 0) text = std::to_string(whole) + ' ';
    text += std::to_string(over / common) + '/';
    return text += std::to_string(in_one / common);
}

/// A number without its sign, as a regular expression.
std::string number_written() { return R"(([0-9]+(( +| *- *)[0-9]+/[0-9]+|/[0-9]+|\.[0-9]+)?|\.[0-9]+))"; }

bool is_power_of_two(long long number) { return number > 0 && (number & (number - 1)) == 0; }

/// Whether a tape's marks are shown as fractions.
bool shows_fractions(const Tape& tape) {
    const long long in_one = divisions_in_one(tape);
    if (in_one == 0) return false;
    return !decimals_of(tape.division) || (tape.unit == Unit::inch && is_power_of_two(in_one) && in_one <= 128);
}

/// Decimals as many as a number has, and four where it has more than six.
std::string decimal_words(double number) {
    char text[400];
    std::string words(text, std::to_chars(text, text + sizeof text, std::fabs(number), std::chars_format::fixed).ptr);
    const std::size_t point = words.find('.');
    if (point != std::string::npos && words.size() - point - 1 > 6) {
        words.assign(text, std::to_chars(text, text + sizeof text, std::fabs(number), std::chars_format::fixed, 4).ptr);
        words.erase(words.find_last_not_of('0') + 1);
        if (words.back() == '.') words.pop_back();
    }
    return (number < 0 && words != "0" ? "-" : "") + words;
}

}  // namespace

std::optional<double> read_length(std::string_view text, Unit unit) {
    Scanner scanner(text);
    scanner.blanks();
    const bool negative = scanner.word("-");
    scanner.blanks();
    const std::optional<double> size = magnitude(scanner, unit);
    scanner.blanks();
    if (!size || !scanner.done() || !(*size <= largest_length)) return std::nullopt;
    if (*size > 0 && *size < smallest_length) return std::nullopt;
    return negative ? 0 - *size : *size;
}

const char* number_pattern() {
    static const std::string pattern = "^ *-? *" + number_written() + " *$";
    return pattern.c_str();
}

const char* length_pattern(bool may_be_negative) {
    static const std::string length = number_written() + " *(mm|cm|m|in|\"|\u2033|(ft|'|\u2032) *(-? *" +
                                      number_written() + " *(in|\"|\u2033)?)?)? *$";
    static const std::string any = "^ *-? *" + length, not_negative = "^ *" + length;
    return (may_be_negative ? any : not_negative).c_str();
}

long long nearest_mark(double length, const Tape& tape) {
    const double divisions = std::fabs(length) / tape.division, whole = std::floor(divisions);
    const long long mark = static_cast<long long>(whole) + (no_more_than(0.5, divisions - whole, divisions) ? 1 : 0);
    return length < 0 ? -mark : mark;
}

long long fitting_mark(double length, double room, const Tape& tape) {
    const long long mark = nearest_mark(length, tape);
    return no_more_than(at_mark(mark, tape), length + room) ? mark : mark - 1;
}

double at_mark(long long mark, const Tape& tape) {
    const long long in_one = divisions_in_one(tape);
    const double number = static_cast<double>(mark);
    return in_one > 0 ? number / static_cast<double>(in_one) : number * tape.division;
}

std::string words_of_mark(long long mark, const Tape& tape) {
    if (shows_fractions(tape)) return (mark < 0 ? "-" : "") + fraction_words(std::llabs(mark), divisions_in_one(tape));
    char text[64];
    const auto end = std::to_chars(text, text + sizeof text, at_mark(std::llabs(mark), tape), std::chars_format::fixed,
                                   decimals_of(tape.division).value_or(6))
                         .ptr;
    return (mark < 0 ? "-" : "") + std::string(text, end);
}

std::string words_of_length(double length, const Tape& tape) { return words_of_mark(nearest_mark(length, tape), tape); }

std::string words_of_size(double size, const Tape& tape) {
    if (shows_fractions(tape))
        for (const Tape& marked : {tape, Tape{tape.unit, 1.0 / 64}})
            if (const long long mark = nearest_mark(size, marked); same(at_mark(mark, marked), size))
                return words_of_mark(mark, marked);
    return decimal_words(size);
}

std::string words_against(double length, double other, const Tape& tape) {
    const std::string on_tape = words_of_length(length, tape);
    if (same(length, other) || on_tape != words_of_length(other, tape)) return on_tape;
    for (const double division : {1e-3, 1e-4, 1e-5, 1e-6}) {
        const Tape decimals{tape.unit, division};
        if (std::string words = words_of_length(length, decimals); words != words_of_length(other, decimals))
            return words;
    }
    return on_tape;
}

Side side_of_mark(double length, long long mark, const Tape& tape) {
    const double over = length - at_mark(mark, tape);
    if (no_more_than(std::fabs(over), tape.division / 4, std::fabs(length))) return Side::on;
    return over > 0 ? Side::over : Side::under;
}

}  // namespace rakewright
