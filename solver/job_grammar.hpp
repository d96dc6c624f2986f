#pragma once

#include "form.hpp"

// The values of a job file that have a grammar of their own.

namespace rakewright {

/// A whole number from 0 to `most`; none if the text is anything else.
std::optional<int> whole_number(std::string_view text, int most);

/// The dressed size of a nominal timber size, in inches; none for a size that is not sold. American Softwood Lumber
/// Standard PS 20: 4 in nominal is 3 1/2 dressed (read in a secondary source); the other sizes as the project's
/// interface lists them.
std::optional<double> dressed(std::string_view nominal);

class WrittenPostSize : public Grammar {
 public:
    explicit WrittenPostSize(PostSize& size) : size_(size) {}
    bool take(std::string_view text, Unit unit, Place place) override {
        if (const std::optional<double> length = read_length(text, unit); length && *length > 0) {
            size_ = {*length, *length, {}, place};
            return true;
        }
        const std::size_t x = text.find('x');
        if (x == std::string_view::npos) return false;
        const std::optional<double> along = dressed(text.substr(0, x)), across = dressed(text.substr(x + 1));
        if (!along || !across) return false;
        const double inch = unit == Unit::inch ? 1 : millimetres_in_an_inch;
        size_ = {*along * inch, *across * inch, std::string(text), place};
        return true;
    }
    const char* expected() const override { return "a length more than 0, or a nominal timber size such as 4x4"; }
    std::string pattern() const override {
        constexpr const char* nominal = "0*([1-6]|8|10|12)";
        return std::string("^") + nominal + "x" + nominal + "$|" + length_pattern(false);
    }
    bool may_be_number() const override { return true; }

 private:
    PostSize& size_;
};

class WrittenSide : public Grammar {
 public:
    explicit WrittenSide(std::optional<NamedSide>& side) : side_(side) {}
    bool take(std::string_view text, Unit, Place place) override {
        if (text != "left" && text != "right") return false;
        side_ = {text == "left", place};
        return true;
    }
    const char* expected() const override { return "`left` or `right`"; }
    std::string pattern() const override { return "^left$|^right$"; }
    bool may_be_number() const override { return false; }

 private:
    std::optional<NamedSide>& side_;
};

class WrittenBase : public Grammar {
 public:
    explicit WrittenBase(Base& base) : base_(base) {}
    bool take(std::string_view text, Unit unit, Place place) override {
        if (text == "floor") {
            base_ = {Base::On::tread, 0, 0, place};
            return true;
        }
        if (constexpr std::string_view tread = "tread "; text.substr(0, tread.size()) == tread) {
            const std::optional<int> number = whole_number(text.substr(tread.size()), 1000);
            if (number) base_ = {Base::On::tread, *number, 0, place};
            return number.has_value();
        }
        const std::optional<double> height = read_length(text, unit);
        if (height) base_ = {Base::On::height, 0, *height, place};
        return height.has_value();
    }
    const char* expected() const override {
        return "`floor`, a tread such as `tread 3`, or a height above the floor at the foot";
    }
    std::string pattern() const override { return std::string("^floor$|^tread [0-9]+$|") + length_pattern(true); }
    bool may_be_number() const override { return true; }

 private:
    Base& base_;
};

/// A whole number from 1, or a word that stands for none.
class CountOrWord : public Grammar {
 public:
    CountOrWord(int most, const char* word, const char* expected) : most_(most), word_(word), expected_(expected) {}
    bool take(std::string_view text, Unit, Place place) override {
        place_ = place;
        if (text == word_) {
            number_.reset();
            return true;
        }
        number_ = whole_number(text, most_);
        return number_.has_value() && *number_ > 0;
    }
    const char* expected() const override { return expected_; }
    std::string pattern() const override { return std::string("^") + word_ + "$|^0*[1-9][0-9]*$"; }
    bool may_be_number() const override { return true; }
    std::string default_text() const override { return number_ ? std::to_string(*number_) : word_; }
    std::optional<int> number() const { return number_; }
    void number(std::optional<int> number) { number_ = number; }
    Place place() const { return place_; }

 private:
    int most_;
    const char* word_;
    const char* expected_;
    std::optional<int> number_;
    Place place_;
};

class WrittenClear : public Grammar {
 public:
    explicit WrittenClear(std::optional<Reading>& clear) : clear_(clear) {}
    bool take(std::string_view text, Unit unit, Place place) override {
        const std::optional<double> length = read_length(text, unit);
        if (!length || *length <= 0) return false;
        clear_ = Reading(*length, place);
        return true;
    }
    const char* expected() const override { return "a length more than 0"; }
    std::string pattern() const override { return length_pattern(false); }
    bool may_be_number() const override { return true; }

 private:
    std::optional<Reading>& clear_;
};

class WrittenLowerGap : public Grammar {
 public:
    explicit WrittenLowerGap(std::optional<LowerGap>& gap) : gap_(gap) {}
    bool take(std::string_view text, Unit unit, Place place) override {
        if (text == "auto") {
            gap_ = LowerGap{{0, place}, false, true};
            return true;
        }
        const std::optional<double> length = read_length(text, unit);
        if (!length || *length < 0) return false;
        gap_ = LowerGap{{*length, place}, false, false};
        return true;
    }
    const char* expected() const override { return "a length that is not negative, or `auto`"; }
    std::string pattern() const override { return std::string("^auto$|") + length_pattern(false); }
    bool may_be_number() const override { return true; }

 private:
    std::optional<LowerGap>& gap_;
};

}  // namespace rakewright
