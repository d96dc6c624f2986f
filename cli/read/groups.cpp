#include "groups.hpp"

#include "character.hpp"

namespace rakewright {
namespace {

constexpr std::size_t longest_id = 64;

template <class Keys>
bool contains(const Keys& keys, std::string_view key) {
    return std::any_of(keys.begin(), keys.end(), [&](const char* other) { return key == other; });
}

std::string missing_in(const Scope& here, const char* key) {
    return (here.id.empty() ? std::string() : ticked(here.id) + ": ") + "the key " + ticked(key) + " is missing";
}

/// What a key that must be given may be, where that is one of some words.
std::string words_for(const Scope& here, std::string_view key) {
    for (const auto& [of, words] : here.words_for_missing)
        if (of == key) return words;
    return {};
}

}  // namespace

std::string ticked(std::string_view key) { return "`" + shown(key) + "`"; }

const char* what_stands(const Node& node) {
    switch (node.kind()) {
        case Node::Kind::map: return "a map";
        case Node::Kind::list: return "a list";
        case Node::Kind::word:
        case Node::Kind::quoted: return "a word";
        case Node::Kind::null: return "nothing";
    }
    return "nothing";
}

bool Groups::is_full() const { return refusals_.size() >= most_kept; }

Refusal& Groups::refuse(Place place, std::string sentence) {
    if (is_full()) return not_kept_ = {};
    refusals_.push_back({place, std::move(sentence), {}, {}, {}});
    return refusals_.back();
}

std::string Groups::nearest_of(std::string_view word, const Names& names) {
    const std::size_t effort = names.letters() * (word.size() + 1);
    if (is_full() || effort > effort_left_) return {};
    effort_left_ -= effort;
    return nearest(word, {names.all().begin(), names.all().end()});
}

std::string Groups::nearest_first_of(std::string_view word, const Names& names) {
    const std::size_t effort = names.letters() * (word.size() + 1);
    if (is_full() || effort > effort_left_) return {};
    effort_left_ -= effort;
    const std::vector<std::string> near = nearest_first(word, {names.all().begin(), names.all().end()});
    constexpr std::size_t most = 6;
    std::string text = ": ";
    for (std::size_t i = 0; i < std::min(most, near.size()); ++i) text += (i == 0 ? "" : ", ") + shown(near[i]);
    return near.size() > most ? text + " and " + std::to_string(near.size() - most) + " more" : text;
}

std::size_t Groups::pairs_under(std::string_view key) const {
    for (const Entry& entry : scope().entries)
        if (entry.key == key) return document_.pairs_in(document_.node(entry.value_node));
    return 0;
}

void Groups::list_entries(const Node& map, std::vector<Entry>& entries) {
    for (std::uint32_t key = map.child; key;) {
        const std::uint32_t value = document_.node(key).next;
        const Node& node = document_.node(key);
        if (is_word(node))
            entries.push_back({document_.value(node), key, value});
        else
            refuse(node.place(), std::string("a key is ") + what_stands(node)).expected =
                "a word in front of the colon";
        key = document_.node(value).next;
    }
    refuse_repeated(entries);
}

void Groups::refuse_repeated(std::vector<Entry>& entries) {
    constexpr std::size_t few = 16;
    const auto repeated = [&](const Entry& first, Entry& again) {
        again.is_repeated = true;
        Refusal& refusal = refuse(document_.node(again.key_node).place(), ticked(again.key) + " is given twice");
        refusal.also.push_back({document_.node(first.key_node).place(), "first given here"});
    };
    if (entries.size() <= few) {
        for (std::size_t i = 1; i < entries.size(); ++i)
            for (std::size_t j = 0; j < i; ++j)
                if (entries[i].key == entries[j].key) {
                    repeated(entries[j], entries[i]);
                    break;
                }
        return;
    }
    Names seen(entries.size());
    for (std::size_t i = 0; i < entries.size(); ++i) {
        const int first = seen.add(entries[i].key, static_cast<int>(i));
        if (first != static_cast<int>(i)) repeated(entries[static_cast<std::size_t>(first)], entries[i]);
    }
}

void Groups::open(const Node& map, Place place, std::string_view id) {
    if (depth_ == scopes_.size()) scopes_.emplace_back();
    ++depth_;
    scope().clear();
    scope().place = place;
    scope().id = id;
    list_entries(map, scope().entries);
}

const Node* Groups::find(const char* key, Need need) {
    Scope& here = scope();
    here.known.push_back(key);
    const std::string_view wanted = key;
    for (Entry& entry : here.entries) {
        if (entry.key != wanted) continue;
        entry.asked_for = true;
        found_key_ = document_.node(entry.key_node).place();
        const Node& value = document_.node(entry.value_node);
        if (value.kind() != Node::Kind::null) return &value;
        no_value(entry);
        return nullptr;
    }
    if (need == be_given) here.missing.push_back(key);
    return nullptr;
}

const Node* Groups::word_of(const char* key, Need need, const char* expected) {
    const Node* const node = find(key, need);
    if (!node || is_word(*node)) return node;
    wrong_kind(key, *node, expected);
    return nullptr;
}

void Groups::no_value(const Entry& entry) {
    refuse(document_.node(entry.key_node).place(), ticked(entry.key) + " has no value").expected =
        "a value behind the colon and a blank, or leave the key out";
}

void Groups::wrong_kind(std::string_view key, const Node& node, const std::string& expected) {
    refuse(node.place(), ticked(key) + " cannot be " + what_stands(node)).expected = expected;
}

void Groups::unreadable(std::string_view key, const Node& node, const std::string& expected) {
    refuse(node.place(), ticked(key) + " cannot be '" + shown(document_.value(node)) + "'").expected = expected;
}

void Groups::check_how_many(std::string_view key, const Node& node, int number, Counts how_many) {
    if (number >= how_many.least && number <= how_many.most) return;
    const std::string most = std::to_string(how_many.most);
    refuse(node.place(),
           ticked(key) + " has " + (number == 0 ? std::string("nothing in it") : std::to_string(number) + " entries"))
        .expected = number < how_many.least ? "at least " + std::to_string(how_many.least) : "at most " + most;
}

void Groups::check_id(const Entry& entry) {
    std::size_t characters = 0;
    for (std::size_t i = 0; i < entry.key.size(); i += character_at(entry.key, i).size) ++characters;
    if (characters > 0 && characters <= longest_id) return;
    refuse(document_.node(entry.key_node).place(), characters == 0 ? "a name is empty" : "a name is too long")
        .expected = "a name of 1 to " + std::to_string(longest_id) + " characters";
}

void Groups::close() {
    Scope& here = scope();
    std::vector<std::string> meant;
    for (const Entry& entry : here.entries)
        if (!entry.asked_for && !entry.is_repeated) refuse_unknown(here, entry, meant);
    const auto is_meant = [&](const char* key) {
        return std::any_of(meant.begin(), meant.end(), [&](const std::string& near) {
            return near.find(std::string("'") + key + "'") != std::string::npos;
        });
    };
    for (const char* key : here.missing)
        if (!is_meant(key)) refuse(here.place, missing_in(here, key)).expected = words_for(here, key);
    check_ways(here, is_meant);
    --depth_;
}

void Groups::refuse_unknown(const Scope& here, const Entry& entry, std::vector<std::string>& meant) {
    const Place place = document_.node(entry.key_node).place();
    for (const Scope::Later& later : here.later)
        if (entry.key == later.key) {
            refuse(place, ticked(entry.key) + " comes with later work: " + later.about).expected =
                "leave it out for now";
            return;
        }
    if (is_full()) return;
    const bool no_colon =
        document_.node(entry.value_node).kind() == Node::Kind::null && !document_.has_colon(entry.key_node);
    const std::string_view word = no_colon ? entry.key.substr(0, entry.key.find(' ')) : entry.key;
    const std::vector<std::string> known(here.known.begin(), here.known.end());
    const std::string near = nearest(word, known);
    if (!near.empty()) meant.push_back(near);
    if (no_colon) {
        refuse(place, "there is no colon behind " + ticked(entry.key)).expected =
            "a key, a colon, a blank and its value";
        return;
    }
    Refusal& refusal = refuse(place, "unknown key " + ticked(entry.key));
    refusal.nearest = near;
    if (!near.empty()) return;
    for (const std::string& key : known) refusal.expected += (refusal.expected.empty() ? "one of " : ", ") + key;
}

template <class IsMeant>
void Groups::check_ways(const Scope& here, const IsMeant& is_meant) {
    const std::vector<const char*>& keys = here.way_keys;
    if (!here.ways_expected || std::any_of(keys.begin(), keys.end(), is_meant)) return;
    std::string present;
    for (const char* key : keys)
        if (here.has(key)) present += (present.empty() ? "" : ", ") + ticked(key);
    const std::string_view text = document_.text_at(here.place),
                           name = here.id.empty() && text.find_first_of("{[:\n") == text.npos ? text : here.id;
    std::string sentence = (name.empty() ? std::string("this") : ticked(name)) + " is not described";
    if (here.too_many > 0)
        sentence += " by " + present + " together: " + std::to_string(here.too_many) + " too many";
    else if (!present.empty())
        sentence += " by " + present;
    refuse(here.place, std::move(sentence)).expected = here.ways_expected;
}

void Groups::expect_ways(std::initializer_list<std::initializer_list<const char*>> sets, const char* expected) {
    Scope& here = scope();
    const auto in_a_set = [&](std::string_view key) {
        return std::any_of(sets.begin(), sets.end(), [&](const auto& set) { return contains(set, key); });
    };
    const auto given = std::count_if(here.entries.begin(), here.entries.end(),
                                     [&](const Entry& entry) { return !entry.is_repeated && in_a_set(entry.key); });
    for (const auto& set : sets)
        if (static_cast<std::size_t>(given) == set.size() &&
            std::all_of(set.begin(), set.end(), [&](const char* key) { return here.has(key); }))
            return;
    here.ways_expected = expected;
    for (const auto& set : sets)
        if (static_cast<std::size_t>(given) > set.size() &&
            std::all_of(set.begin(), set.end(), [&](const char* key) { return here.has(key); })) {
            const std::size_t more = static_cast<std::size_t>(given) - set.size();
            here.too_many = here.too_many == 0 ? more : std::min(here.too_many, more);
        }
    for (const auto& set : sets)
        for (const char* key : set)
            if (!contains(here.way_keys, key)) here.way_keys.push_back(key);
}

}  // namespace rakewright
