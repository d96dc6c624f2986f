#pragma once

#include <algorithm>
#include <functional>
#include <initializer_list>
#include <string>
#include <string_view>
#include <type_traits>
#include <vector>

#include "job.hpp"

namespace rakewright {

/// Whether a key has to stand in its group.
enum class Need { be_given, may_be_left_out };
inline constexpr Need be_given = Need::be_given;
inline constexpr Need may_be_left_out = Need::may_be_left_out;

/// Which numbers a reading may be.
enum class Range { any, not_negative, positive };

/// Which whole numbers a count may be, both included.
struct Counts {
    int least = 1;
    int most = 1000;
};

/// One word of a choice.
struct Word {
    const char* text;
    const char* about;
};

/// What a Ref names.
enum class Kind { stair, post, build, floor, post_fixing };  // a reader knows the key that each is listed under

/// A value with a grammar of its own: one text of the job file that is neither a plain length, angle, count nor word.
class Grammar {
 public:
    virtual ~Grammar() = default;
    /// Takes the text and keeps its value with its place; false if it is not of this grammar.
    virtual bool take(std::string_view text, Unit unit, Place place) = 0;
    /// What is expected, to stand after "expected ": "a length or a nominal timber size such as 4x4".
    virtual const char* expected() const = 0;
    /// An anchored regular expression (ECMA 262) that matches every text it takes.
    virtual std::string pattern() const = 0;
    /// Whether a bare number may be written.
    virtual bool may_be_number() const = 0;
    /// How the default is written, or empty.
    virtual std::string default_text() const { return {}; }
};

/// Whoever goes through the keys of a file: a reader that fills it, a schema or a manual that documents it. Each struct
/// of a job or of a rule set is described by one function, `describe(Form&, T&)`, that calls these verbs for its keys
/// in the order in which they are documented. The default of a key is the value that the member has before the verb is
/// called. Keys are string literals.
class Form {
 public:
    virtual ~Form() = default;

    /// The job's unit, once it was read; an inch before.
    virtual Unit unit() const = 0;

    /// How many values stand under a key of the group that is being described, so that room is made for them at once;
    /// 0 where that is not known.
    virtual std::size_t how_many(const char* /*key*/) const { return 0; }

    /// What the group that is being described is.
    virtual void about(const char* text) = 0;

    virtual void id(Id& id) = 0;
    virtual void place(Place& place) = 0;

    virtual void text(const char* key, std::string& value, Need need, const char* about) = 0;
    virtual void length(const char* key, Reading& value, Range range, Need need, const char* about) = 0;
    virtual void length(const char* key, std::optional<Reading>& value, Range range, const char* about) = 0;
    /// An angle in a range of whole degrees, the ends included; but one that may be left out and has no default is
    /// more than 0 where the range begins with 0. A default is a whole number of degrees.
    virtual void angle(const char* key, AngleReading& value, Counts degrees, Need need, const char* about) = 0;
    virtual void angle(const char* key, std::optional<AngleReading>& value, Counts degrees, const char* about) = 0;
    virtual void count(const char* key, Count& value, Counts range, Need need, const char* about) = 0;
    virtual void count(const char* key, std::optional<Count>& value, Counts range, const char* about) = 0;
    virtual void name_of(Kind kind, const char* key, Ref& value, Need need, const char* about) = 0;
    virtual void written(const char* key, Grammar& grammar, Need need, const char* about) = 0;

    /// One length, or a list of them.
    virtual void lengths(const char* key, std::vector<Reading>& values, Range range, Counts how_many, Need need,
                         const char* about) = 0;

    /// A text with a grammar of its own, or in its place a list of lengths.
    virtual void written_or_lengths(const char* key, Grammar& grammar, std::vector<Reading>& values, Range range,
                                    Counts how_many, Need need, const char* about) = 0;

    /// Plain numbers more than 0, of no unit, as digits with a point at most; one, or a list of them. May be left out.
    virtual void numbers(const char* key, std::vector<Reading>& values, Counts how_many, const char* about) = 0;

    /// A plain number more than 0, as one of `numbers`.
    virtual void number(const char* key, Reading& value, Need need, const char* about) = 0;

    /// A plain number of no unit between 0 and 1, more than 0 and less than 1, as digits with a point.
    virtual void part_of_one(const char* key, Reading& value, Need need, const char* about) = 0;

    /// A text, or a list of them.
    virtual void texts(const char* key, std::vector<Id>& values, int most, const char* about) = 0;

    /// Lengths under numbers of things, 1 and up, in the order of the file.
    virtual void numbered(const char* key, std::vector<Numbered>& values, Range range, int most, const char* about) = 0;

    /// Sets of keys of which exactly one must be given whole, and no key of the others. `expected` says it in words, to
    /// stand after "expected ".
    virtual void ways(std::initializer_list<std::initializer_list<const char*>> sets, const char* expected) = 0;

    /// A key that comes with later work: refused, and named as such.
    virtual void later(const char* key, const char* about) = 0;

    /// A choice of words.
    template <class Enum>
    void choice(const char* key, Enum& value, std::initializer_list<Word> words, Need need, const char* about) {
        int index = static_cast<int>(value);
        word(key, index, words, need, about);
        value = static_cast<Enum>(index);
    }

    /// A choice of words that may be left out and has no default.
    template <class Enum>
    void choice(const char* key, std::optional<Enum>& value, std::initializer_list<Word> words, const char* about) {
        int index = -1;
        word(key, index, words, may_be_left_out, about);
        if (index >= 0) value = static_cast<Enum>(index);
    }

    /// A group of keys under one key.
    template <class T>
    void part(const char* key, T& value, Need need, const char* about) {
        group(key, need, about, [&](Form& form) { describe(form, value); });
    }
    template <class T>
    void part(const char* key, std::optional<T>& value, const char* about) {
        group(key, may_be_left_out, about, [&](Form& form) { describe(form, value.emplace()); });
    }

    /// A text with a grammar of its own, or in its place a group of keys.
    template <class T>
    void written_or_part(const char* key, Grammar& grammar, T& part, const char* about) {
        written_or_group(key, grammar, about, [&](Form& form) { describe(form, part); });
    }

    /// A choice of words, or in its place a group of keys, which may set the value too.
    template <class Enum, class T>
    void choice_or_part(const char* key, Enum& value, std::initializer_list<Word> words, T& part, const char* about) {
        const int before = static_cast<int>(value);
        int index = before;
        word_or_group(key, index, words, about, [&](Form& form) { describe(form, part); });
        if (index != before) value = static_cast<Enum>(index);
    }

    /// A list of groups.
    template <class T>
    void list(const char* key, std::vector<T>& values, Counts how_many, Need need, const char* about) {
        each(key, how_many, need, about, [&](Form& form) { describe(form, values.emplace_back()); });
    }

    /// Groups under names of the user's own, in the order of the file. Each describes its `id`.
    template <class T>
    void named(const char* key, std::vector<T>& values, int most, Need need, const char* about) {
        values.reserve(std::min(how_many(key), static_cast<std::size_t>(most)));
        each_named(key, most, need, about, [&](Form& form) { describe(form, values.emplace_back()); });
    }

 protected:
    using Body = std::function<void(Form&)>;
    /// `index` is of the default, or -1 where there is none.
    virtual void word(const char* key, int& index, std::initializer_list<Word> words, Need need, const char* about) = 0;
    virtual void word_or_group(const char* key, int& index, std::initializer_list<Word> words, const char* about,
                               const Body& body) = 0;
    virtual void group(const char* key, Need need, const char* about, const Body& body) = 0;
    virtual void written_or_group(const char* key, Grammar& grammar, const char* about, const Body& body) = 0;
    virtual void each(const char* key, Counts how_many, Need need, const char* about, const Body& body) = 0;
    virtual void each_named(const char* key, int most, Need need, const char* about, const Body& body) = 0;
};

}  // namespace rakewright
