#pragma once

#include <array>
#include <string>

#include "../../solver/form.hpp"
#include "scope.hpp"
#include "text.hpp"

namespace rakewright {

/// A text in ticks, fit to be shown.
std::string ticked(std::string_view text);

/// "a map", "a list", "a word" or "nothing".
const char* what_stands(const Node& node);

inline bool is_word(const Node& node) { return node.kind() == Node::Kind::word || node.kind() == Node::Kind::quoted; }

/// The groups of keys of a text as they are gone through: what was asked of the one that is open, and all that is
/// refused.
class Groups {
 public:
    explicit Groups(const Document& document) : document_(document) {}

    const Document& document() const { return document_; }
    std::vector<Refusal> take_refusals() { return std::move(refusals_); }

    /// Opens a group, and closes it: refuses then what it has and should not have, and what it lacks.
    void open(const Node& map, Place place, std::string_view id);
    void close();

    /// The group that is open.
    Scope& scope() { return scopes_[depth_ - 1]; }
    const Scope& scope() const { return scopes_[depth_ - 1]; }
    /// How many pairs stand under one of its keys; 0 if it is not there or no map.
    std::size_t pairs_under(std::string_view key) const;

    /// The value of a key of the group that is open; none, and refused where it must be given, if it is not there or
    /// has no value.
    const Node* find(const char* key, Need need);
    /// Where the key that was found last stands.
    Place key_place() const { return found_key_; }
    const Node* word_of(const char* key, Need need, const char* expected);

    /// Of these sets of keys exactly one is expected.
    void expect_ways(std::initializer_list<std::initializer_list<const char*>> sets, const char* expected);
    void expect_later(const Scope::Later& later) { scope().later.push_back(later); }

    /// The keys of a map with their values; what is no key or is given twice is refused.
    void list_entries(const Node& map, std::vector<Entry>& entries);

    /// Refuses at a place; what is beyond the most that are kept is lost.
    Refusal& refuse(Place place, std::string sentence);
    bool is_full() const;
    void no_value(const Entry& entry);
    void wrong_kind(std::string_view key, const Node& node, const std::string& expected);
    void unreadable(std::string_view key, const Node& node, const std::string& expected);
    void check_how_many(std::string_view key, const Node& node, int number, Counts how_many);
    void check_id(const Entry& entry);

    /// The nearest of the job's own names, as long as that is quick: a job of many names, many of them mistyped, is
    /// refused without.
    std::string nearest_of(std::string_view word, const Names& names);

    /// ": " and the job's own names, the nearest first: six of them and how many more there are. Nothing where that is
    /// not quick.
    std::string nearest_first_of(std::string_view word, const Names& names);

 private:
    void refuse_repeated(std::vector<Entry>& entries);
    void refuse_unknown(const Scope& here, const Entry& entry, std::vector<std::string>& meant);
    template <class IsMeant>
    void check_ways(const Scope& here, const IsMeant& is_meant);

    const Document& document_;
    std::vector<Scope> scopes_;
    std::size_t depth_ = 0;
    Place found_key_;
    std::vector<Refusal> refusals_;
    Refusal not_kept_;
    std::size_t effort_left_ = 200'000'000;  // letters compared with letters, about a third of a second
};

}  // namespace rakewright
