#pragma once

#include "groups.hpp"

namespace rakewright {

/// Words in ticks: "`in` or `mm`".
std::string quoted_words(std::initializer_list<Word> words);

/// Takes single values of a text: false, and refused with what was expected, where one is not of its kind or range.
/// Lengths are in the unit of the file, once it was read.
class Values : protected Groups {
 public:
    using Groups::Groups;

 protected:
    Unit job_unit() const { return unit_; }

    bool take_length(std::string_view key, const Node& node, Range range, Reading& reading);
    /// Digits with a point at most, more than 0.
    bool take_number(std::string_view key, const Node& node, Reading& number);
    /// The same, and less than 1.
    bool take_part_of_one(std::string_view key, const Node& node, Reading& number);
    bool take_angle(std::string_view key, const Node& node, Counts range, bool may_be_0, AngleReading& reading);
    bool take_count(std::string_view key, const Node& node, Counts range, Count& count);
    void take_written(std::string_view key, const Node& node, Grammar& grammar);
    /// The index of a word; that of `units` is the unit from then on.
    void take_word(const char* key, const Node& node, int& index, std::initializer_list<Word> words);

 private:
    bool take_plain(std::string_view key, const Node& node, const std::optional<double>& value,
                    const std::string& expected, Reading& number);

    Unit unit_ = Unit::inch;
};

}  // namespace rakewright
