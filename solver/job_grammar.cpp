#include "job_grammar.hpp"

#include <charconv>

namespace rakewright {

std::optional<int> whole_number(std::string_view text, int most) {
    int value = 0;
    const char* const end = text.data() + text.size();
    const auto [rest, error] = std::from_chars(text.data(), end, value);
    if (error != std::errc() || rest != end || value < 0 || value > most) return std::nullopt;
    return value;
}

std::optional<double> dressed(std::string_view nominal) {
    struct Size {
        int nominal;
        double dressed;
    };
    static constexpr Size sizes[] = {{1, 0.75}, {2, 1.5},  {3, 2.5},   {4, 3.5},   {5, 4.5},
                                     {6, 5.5},  {8, 7.25}, {10, 9.25}, {12, 11.25}};
    const std::optional<int> number = whole_number(nominal, 12);
    for (const Size& size : sizes)
        if (number == size.nominal) return size.dressed;
    return std::nullopt;
}

}  // namespace rakewright
