#include "reader.hpp"

#include <algorithm>
#include <bit>
#include <charconv>
#include <cstring>

#include "../../solver/job_form.hpp"
#include "../../solver/rule/rule_form.hpp"
#include "character.hpp"
#include "scope.hpp"

namespace rakewright {
namespace {

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

constexpr std::size_t longest_id = 64;

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

std::string ticked(std::string_view key) { return "`" + shown(key) + "`"; }

template <class Keys>
bool contains(const Keys& keys, std::string_view key) {
    return std::any_of(keys.begin(), keys.end(), [&](const char* other) { return key == other; });
}

/// A usual slip in what should be a length, to stand behind what is expected; empty if it is none of them.
const char* slip_in_length(std::string_view text) {
    const auto digit = [&](std::size_t i) { return i < text.size() && text[i] >= '0' && text[i] <= '9'; };
    if (text.find(" in ") != std::string_view::npos && read_angle(text)) return "; this is a slope";
    if (text.find("deg") != std::string_view::npos || text.find("\u00B0") != std::string_view::npos)
        return "; this is an angle";
    if (text.find(',') != std::string_view::npos) return "; decimals stand behind a point, thousands in one";
    for (std::size_t i = 1; i < text.size(); ++i)
        if ((text[i] == 'e' || text[i] == 'E') && digit(i - 1) && (digit(i + 1) || digit(i + 2)))
            return "; numbers are written without an exponent";
    if (text.front() == '+') return "; without a sign in front";
    if (text.find_first_not_of("0123456789.") == std::string_view::npos) return "; none is larger than 1000000";
    return "";
}

class Reader : public Form {
 public:
    explicit Reader(const Document& document) : document_(document) {}

    /// All that is refused; the file was read whole if that is nothing.
    template <class File>
    std::vector<Refusal> read(File& file) && {
        open(document_.node(0), {0, 0}, {});
        describe(*this, file);
        close();
        return std::move(refusals_);
    }

    Unit unit() const override { return unit_; }
    std::size_t how_many(const char* key) const override {
        for (const Entry& entry : scopes_[depth_ - 1].entries)
            if (entry.key == key) return document_.pairs_in(document_.node(entry.value_node));
        return 0;
    }
    void about(const char*) override {}
    void id(Id& id) override { id = {std::string(scope().id), scope().place}; }
    void place(Place& place) override { place = scope().place; }

    void text(const char* key, std::string& value, Need need, const char*) override {
        if (const Node* node = word_of(key, need, "a text")) value = document_.value(*node);
    }

    void length(const char* key, Reading& value, Range range, Need need, const char*) override {
        if (const Node* node = find(key, need)) take_length(key, *node, range, value);
    }
    void length(const char* key, std::optional<Reading>& value, Range range, const char*) override {
        Reading reading;
        if (const Node* node = find(key, may_be_left_out); node && take_length(key, *node, range, reading))
            value = reading;
    }

    void angle(const char* key, AngleReading& value, Counts range, Need need, const char*) override {
        if (const Node* node = find(key, need)) take_angle(key, *node, range, true, value);
    }
    void angle(const char* key, std::optional<AngleReading>& value, Counts range, const char*) override {
        AngleReading reading;
        if (const Node* node = find(key, may_be_left_out); node && take_angle(key, *node, range, false, reading))
            value = reading;
    }

    void count(const char* key, Count& value, Counts range, Need need, const char*) override {
        if (const Node* node = find(key, need)) take_count(key, *node, range, value);
    }
    void count(const char* key, std::optional<Count>& value, Counts range, const char*) override {
        Count count;
        if (const Node* node = find(key, may_be_left_out); node && take_count(key, *node, range, count)) value = count;
    }

    void name_of(Kind kind, const char* key, Ref& value, Need need, const char*) override {
        const Node* const node = word_of(key, need, "the name of one of the job's own");
        if (!node) return;
        const auto& names = names_[static_cast<std::size_t>(kind)];
        if (const std::optional<int> index = names.find(document_.value(*node))) {
            value = {*index, node->place()};
            return;
        }
        static constexpr const char* words[] = {"stair", "post", "build", "floor"};
        const std::string word = words[static_cast<std::size_t>(kind)];
        Refusal& refusal = refuse(node->place(), "there is no " + word + " " + ticked(document_.value(*node)));
        refusal.nearest = nearest_of(document_.value(*node), names);
        if (names.all().empty()) refusal.expected = "the job describes no " + word + "s";
    }

    void written(const char* key, Grammar& grammar, Need need, const char*) override {
        if (const Node* node = find(key, need)) take_written(key, *node, grammar);
    }

    void lengths(const char* key, std::vector<Reading>& values, Range range, Counts how_many, Need need,
                 const char*) override {
        const Node* const node = find(key, need);
        if (!node) return;
        const auto take = [&](const Node& item) {
            Reading reading;
            if (take_length(key, item, range, reading)) values.push_back(reading);
        };
        if (node->kind() != Node::Kind::list) {
            take(*node);
            return;
        }
        int number = 0;
        for (std::uint32_t i = node->child; i; i = document_.node(i).next, ++number) take(document_.node(i));
        check_how_many(key, *node, number, how_many);
    }

    void numbers(const char* key, std::vector<Reading>& values, Counts how_many, const char*) override {
        const Node* const node = find(key, may_be_left_out);
        if (!node) return;
        static const std::string expected = "a number more than 0 such as 12 or 7.95";
        const auto take = [&](const Node& item) {
            if (!is_word(item)) {
                wrong_kind(key, item, expected);
                return;
            }
            const std::optional<double> value = plain_number(document_.value(item));
            if (value)
                values.emplace_back(*value, item.place());
            else
                unreadable(key, item, expected);
        };
        if (node->kind() != Node::Kind::list) {
            take(*node);
            return;
        }
        int number = 0;
        for (std::uint32_t i = node->child; i; i = document_.node(i).next, ++number) take(document_.node(i));
        check_how_many(key, *node, number, how_many);
    }

    void texts(const char* key, std::vector<Id>& values, int most, const char*) override {
        const Node* const node = find(key, may_be_left_out);
        if (!node) return;
        const auto take = [&](const Node& item) {
            if (is_word(item))
                values.push_back({std::string(document_.value(item)), item.place()});
            else
                wrong_kind(key, item, "a text, or a list of texts");
        };
        if (node->kind() != Node::Kind::list) {
            take(*node);
            return;
        }
        int number = 0;
        for (std::uint32_t i = node->child; i; i = document_.node(i).next, ++number) take(document_.node(i));
        check_how_many(key, *node, number, {1, most});
    }

    void numbered(const char* key, std::vector<Numbered>& values, Range range, int most, const char*) override {
        const Node* const node = find(key, may_be_left_out);
        if (!node) return;
        if (node->kind() != Node::Kind::map) {
            wrong_kind(key, *node, "a map: a number, and its length behind it");
            return;
        }
        std::vector<Entry> entries;
        list_entries(*node, entries);
        check_how_many(key, *node, static_cast<int>(entries.size()), {1, most});
        for (const Entry& entry : entries) {
            Count number;
            Reading reading;
            const bool is_number = take_count(key, document_.node(entry.key_node), {1, most}, number);
            if (take_length(key, document_.node(entry.value_node), range, reading) && is_number)
                values.push_back({number, reading});
        }
    }

    void ways(std::initializer_list<std::initializer_list<const char*>> sets, const char* expected) override {
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
            for (const char* key : set)
                if (!contains(here.way_keys, key)) here.way_keys.push_back(key);
    }

    void later(const char* key, const char* about) override { scope().later.push_back({key, nullptr, about}); }
    void later_as(const char* key, const char* written, const char* about) override {
        scope().later.push_back({key, written, about});
    }

 protected:
    void word(const char* key, int& index, std::initializer_list<Word> words, Need need, const char*) override {
        if (const Node* const node = word_of(key, need, "a word")) take_word(key, *node, index, words);
    }

    void word_or_group(const char* key, int& index, std::initializer_list<Word> words, const char*,
                       const Body& body) override {
        const Node* const node = find(key, may_be_left_out);
        if (!node) return;
        if (node->kind() == Node::Kind::map)
            describe_map(*node, key_place(), {}, body);
        else if (is_word(*node))
            take_word(key, *node, index, words);
        else
            wrong_kind(key, *node, "a word, or a map of keys");
    }

    void take_word(const char* key, const Node& node, int& index, std::initializer_list<Word> words) {
        int number = 0;
        std::string expected;
        std::vector<std::string> known;
        for (const Word& word : words) {
            if (document_.value(node) == word.text) {
                index = number;
                if (std::strcmp(key, "units") == 0) unit_ = static_cast<Unit>(number);
                return;
            }
            expected += (number == 0                                    ? ""
                         : number + 1 == static_cast<int>(words.size()) ? " or "
                                                                        : ", ") +
                        ticked(word.text);
            known.emplace_back(word.text);
            ++number;
        }
        Refusal& refusal = refuse(node.place(), ticked(key) + " cannot be '" + shown(document_.value(node)) + "'");
        refusal.expected = expected;
        if (!is_full()) refusal.nearest = nearest(document_.value(node), known);
    }

    void group(const char* key, Need need, const char*, const Body& body) override {
        const Node* const node = find(key, need);
        if (!node) return;
        if (node->kind() == Node::Kind::map)
            describe_map(*node, key_place(), {}, body);
        else
            wrong_kind(key, *node, "a map of keys");
    }

    void written_or_group(const char* key, Grammar& grammar, const char*, const Body& body) override {
        const Node* const node = find(key, may_be_left_out);
        if (!node) return;
        if (node->kind() == Node::Kind::map)
            describe_map(*node, key_place(), {}, body);
        else
            take_written(key, *node, grammar);
    }

    void each(const char* key, Counts how_many, Need need, const char*, const Body& body) override {
        const Node* const node = find(key, need);
        if (!node) return;
        if (node->kind() != Node::Kind::list) {
            wrong_kind(key, *node, "a list");
            return;
        }
        int number = 0;
        for (std::uint32_t i = node->child; i; i = document_.node(i).next, ++number) {
            const Node& item = document_.node(i);
            if (item.kind() == Node::Kind::map)
                describe_map(item, whole_of(item), {}, body);
            else
                wrong_kind(key, item, "a map of keys in the list");
        }
        check_how_many(key, *node, number, how_many);
    }

    void each_named(const char* key, int most, Need need, const char*, const Body& body) override {
        const Node* const node = find(key, need);
        if (!node) return;
        if (node->kind() != Node::Kind::map) {
            wrong_kind(key, *node, "a map: a name of your own, and its keys under it");
            return;
        }
        std::vector<Entry> entries;
        entries.reserve(document_.pairs_in(*node));
        list_entries(*node, entries);
        check_how_many(key, *node, static_cast<int>(entries.size()), {need == be_given ? 1 : 0, most});
        const std::optional<Kind> kind = kind_of(key);
        if (kind) names_[static_cast<std::size_t>(*kind)] = Names(entries.size());
        for (std::size_t i = 0; i < std::min(entries.size(), static_cast<std::size_t>(most)); ++i) {
            const Entry& entry = entries[i];
            check_id(entry);
            const Node& value = document_.node(entry.value_node);
            if (value.kind() == Node::Kind::map)
                describe_map(value, document_.node(entry.key_node).place(), entry.key, body);
            else if (value.kind() == Node::Kind::null)
                no_value(entry);
            else
                wrong_kind(entry.key, value, "a map of keys");
            // Named even where it is refused, so that who names it is not refused too.
            if (kind) names_[static_cast<std::size_t>(*kind)].add(entry.key, static_cast<int>(i));
        }
    }

 private:
    Scope& scope() { return scopes_[depth_ - 1]; }

    bool is_full() const { return refusals_.size() >= most_kept; }

    Refusal& refuse(Place place, std::string sentence) {
        if (is_full()) return not_kept_ = {};
        refusals_.push_back({place, std::move(sentence), {}, {}, {}});
        return refusals_.back();
    }

    /// The nearest of the job's own names, as long as that is quick: a job of many names, many of them mistyped, is
    /// refused without.
    std::string nearest_of(std::string_view word, const Names& names) {
        const std::size_t effort = names.letters() * (word.size() + 1);
        if (is_full() || effort > effort_left_) return {};
        effort_left_ -= effort;
        return nearest(word, {names.all().begin(), names.all().end()});
    }

    static bool is_word(const Node& node) {
        return node.kind() == Node::Kind::word || node.kind() == Node::Kind::quoted;
    }

    static std::optional<Kind> kind_of(std::string_view key) {
        if (key == "stairs") return Kind::stair;
        if (key == "posts") return Kind::post;
        if (key == "builds") return Kind::build;
        if (key == "floors") return Kind::floor;
        return std::nullopt;
    }

    /// A list item has no key of its own: its place is where its first key stands.
    Place whole_of(const Node& map) const { return map.child ? document_.node(map.child).place() : map.place(); }

    Place key_place() const { return found_key_; }

    void describe_map(const Node& map, Place place, std::string_view id, const Body& body) {
        open(map, place, id);
        body(*this);
        close();
    }

    void list_entries(const Node& map, std::vector<Entry>& entries) {
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

    void refuse_repeated(std::vector<Entry>& entries) {
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

    void open(const Node& map, Place place, std::string_view id) {
        if (depth_ == scopes_.size()) scopes_.emplace_back();
        ++depth_;
        scope().clear();
        scope().place = place;
        scope().id = id;
        list_entries(map, scope().entries);
    }

    /// The value of a key of the group that is open; none, and refused where it must be given, if it is not there or
    /// has no value.
    const Node* find(const char* key, Need need) {
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

    const Node* word_of(const char* key, Need need, const char* expected) {
        const Node* const node = find(key, need);
        if (!node || is_word(*node)) return node;
        wrong_kind(key, *node, expected);
        return nullptr;
    }

    void no_value(const Entry& entry) {
        refuse(document_.node(entry.key_node).place(), ticked(entry.key) + " has no value").expected =
            "a value behind the colon and a blank, or leave the key out";
    }

    void wrong_kind(std::string_view key, const Node& node, const std::string& expected) {
        if (!refuse_later(key, node, what_stands(node)))
            refuse(node.place(), ticked(key) + " cannot be " + what_stands(node)).expected = expected;
    }

    void unreadable(std::string_view key, const Node& node, const std::string& expected) {
        if (!refuse_later(key, node, document_.value(node)))
            refuse(node.place(), ticked(key) + " cannot be '" + shown(document_.value(node)) + "'").expected = expected;
    }

    /// Refuses a way of writing that comes with later work, named as such; false if it is none.
    bool refuse_later(std::string_view key, const Node& node, std::string_view written) {
        for (const Scope::Later& later : scope().later) {
            if (!later.written || key != later.key || written != later.written) continue;
            refuse(node.place(), ticked(key) + " as " + later.written + " comes with later work: " + later.about)
                .expected = "another way of giving it for now";
            return true;
        }
        return false;
    }

    void take_written(std::string_view key, const Node& node, Grammar& grammar) {
        if (!is_word(node))
            wrong_kind(key, node, grammar.expected());
        else if (!grammar.take(document_.value(node), unit_, node.place()))
            unreadable(key, node, grammar.expected());
    }

    bool take_length(std::string_view key, const Node& node, Range range, Reading& reading) {
        static const std::string example = "a length such as 36, 7 3/4, 5' 2 3/8\", 184 mm or 1.2 m";
        if (!is_word(node)) {
            if (node.kind() == Node::Kind::null)
                refuse(node.place(), "a value of " + ticked(key) + " is missing").expected = example;
            else
                wrong_kind(key, node, example);
            return false;
        }
        const std::optional<double> value = read_length(document_.value(node), unit_);
        if (!value) {
            const std::string_view text = document_.value(node);
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

    bool take_angle(std::string_view key, const Node& node, Counts range, bool may_be_0, AngleReading& reading) {
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
        const std::optional<Angle> angle = read_angle(document_.value(node));
        // Degrees are judged as they are written: 350 is no lean of -10.
        const std::optional<double> written_degrees = read_degrees(document_.value(node));
        const double given = written_degrees ? *written_degrees : angle ? degrees(*angle) : 0;
        if (!angle || given < range.least || given > range.most || (above_0 && !(given > 0))) {
            unreadable(key, node, expected());
            return false;
        }
        reading = {*angle, node.place()};
        return true;
    }

    bool take_count(std::string_view key, const Node& node, Counts range, Count& count) {
        const auto expected = [&] {
            return "a whole number from " + std::to_string(range.least) + " to " + std::to_string(range.most);
        };
        if (!is_word(node)) {
            wrong_kind(key, node, expected());
            return false;
        }
        const std::string_view text = document_.value(node);
        int value = 0;
        const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
        if (error != std::errc() || end != text.data() + text.size() || value < range.least || value > range.most) {
            unreadable(key, node, expected());
            return false;
        }
        count = {value, node.place()};
        return true;
    }

    void check_how_many(std::string_view key, const Node& node, int number, Counts how_many) {
        if (number >= how_many.least && number <= how_many.most) return;
        const std::string most = std::to_string(how_many.most);
        refuse(node.place(), ticked(key) + " has " +
                                 (number == 0 ? std::string("nothing in it") : std::to_string(number) + " entries"))
            .expected = number < how_many.least ? "at least " + std::to_string(how_many.least) : "at most " + most;
    }

    void check_id(const Entry& entry) {
        std::size_t characters = 0;
        for (std::size_t i = 0; i < entry.key.size(); i += character_at(entry.key, i).size) ++characters;
        if (characters > 0 && characters <= longest_id) return;
        refuse(document_.node(entry.key_node).place(), characters == 0 ? "a name is empty" : "a name is too long")
            .expected = "a name of 1 to " + std::to_string(longest_id) + " characters";
    }

    /// Refuses what the group has and should not have, then what it lacks.
    void close() {
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
            if (!is_meant(key)) refuse(here.place, missing_in(here, key));
        check_ways(here, is_meant);
        --depth_;
    }

    static std::string missing_in(const Scope& here, const char* key) {
        return (here.id.empty() ? std::string() : ticked(here.id) + ": ") + "the key " + ticked(key) + " is missing";
    }

    void refuse_unknown(const Scope& here, const Entry& entry, std::vector<std::string>& meant) {
        const Place place = document_.node(entry.key_node).place();
        for (const Scope::Later& later : here.later)
            if (!later.written && entry.key == later.key) {
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
    void check_ways(const Scope& here, const IsMeant& is_meant) {
        const std::vector<const char*>& keys = here.way_keys;
        if (!here.ways_expected || std::any_of(keys.begin(), keys.end(), is_meant)) return;
        std::string present;
        for (const char* key : keys)
            if (here.has(key)) present += (present.empty() ? "" : ", ") + ticked(key);
        refuse(here.place, (here.id.empty() ? std::string() : ticked(here.id) + " ") +
                               (present.empty() ? "is not described" : "is not described by " + present))
            .expected = here.ways_expected;
    }

    const Document& document_;
    Unit unit_ = Unit::inch;
    std::vector<Scope> scopes_;
    std::size_t depth_ = 0;
    Place found_key_;
    std::array<Names, 4> names_;
    std::vector<Refusal> refusals_;
    Refusal not_kept_;
    std::size_t effort_left_ = 200'000'000;  // letters compared with letters, about a third of a second
};

}  // namespace

ReadJob read_job(const Source& source) {
    ReadJob result;
    if (const std::optional<Document> document = read_document(source, result.refusals)) {
        result.refusals = Reader(*document).read(result.job.emplace());
        if (!result.refusals.empty()) result.job.reset();
    }
    return result;
}

ReadRules read_rules(const Source& source, const std::string& name) {
    ReadRules result;
    if (const std::optional<Document> document = read_document(source, result.refusals)) {
        RuleSet& set = result.set.emplace();
        result.refusals = Reader(*document).read(set);
        set.name = name;
        for (Rule& rule : set.rules) rule.set = name;
        if (!result.refusals.empty()) result.set.reset();
    }
    return result;
}

}  // namespace rakewright
