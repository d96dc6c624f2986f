#include "reader.hpp"

#include <algorithm>
#include <charconv>
#include <cstring>
#include <unordered_map>

#include "../../solver/job_form.hpp"

namespace rakewright {
namespace {

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

/// One key of the text with its value.
struct Entry {
    std::string_view key;
    std::uint32_t key_node = 0;
    std::uint32_t value_node = 0;
    bool asked_for = false;
};

/// A group of keys that is being described, and what was asked of it.
struct Scope {
    std::vector<Entry> entries;
    std::vector<const char*> known;
    std::vector<const char*> missing;
    struct Later {
        const char* key;
        const char* written;  // none: the key itself
        const char* about;
    };
    std::vector<Later> later;
    std::vector<std::vector<const char*>> ways;
    const char* ways_expected = nullptr;
    Place place;  // of the group's own key, or of the list item
    std::string_view id;

    void clear() {
        entries.clear();
        known.clear();
        missing.clear();
        later.clear();
        ways.clear();
        ways_expected = nullptr;
    }
};

class Reader : public Form {
 public:
    explicit Reader(const Document& document) : document_(document) {}

    ReadResult read() && {
        Job job;
        open(document_.node(0), {0, 0}, {});
        describe(*this, job);
        close();
        if (refusals_.empty()) return {std::move(job), {}};
        return {std::nullopt, std::move(refusals_)};
    }

    Unit unit() const override { return unit_; }
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
        if (const Node* node = find(key, need)) take_angle(key, *node, range, value);
    }
    void angle(const char* key, std::optional<AngleReading>& value, Counts range, const char*) override {
        AngleReading reading;
        if (const Node* node = find(key, may_be_left_out); node && take_angle(key, *node, range, reading))
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
        const auto found = names.find(document_.value(*node));
        if (found != names.end()) {
            value = {found->second, node->place()};
            return;
        }
        static constexpr const char* words[] = {"stair", "post", "build"};
        std::vector<std::string> known;
        for (const auto& [name, index] : names) known.emplace_back(name);
        Refusal& refusal = refuse(node->place(), "there is no " + std::string(words[static_cast<std::size_t>(kind)]) +
                                                     " " + ticked(document_.value(*node)));
        refusal.nearest = nearest(document_.value(*node), known);
        if (known.empty())
            refusal.expected = std::string("the job describes no ") + words[static_cast<std::size_t>(kind)] + "s";
    }

    void written(const char* key, Grammar& grammar, Need need, const char*) override {
        const Node* const node = find(key, need);
        if (!node) return;
        if (!is_word(*node)) {
            wrong_kind(key, *node, grammar.expected());
        } else if (!grammar.take(document_.value(*node), unit_, node->place())) {
            unreadable(key, *node, grammar.expected());
        }
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

    void ways(std::initializer_list<std::initializer_list<const char*>> sets, const char* expected) override {
        for (const auto& set : sets) scope().ways.emplace_back(set);
        scope().ways_expected = expected;
    }

    void later(const char* key, const char* about) override { scope().later.push_back({key, nullptr, about}); }
    void later_as(const char* key, const char* written, const char* about) override {
        scope().later.push_back({key, written, about});
    }

 protected:
    void word(const char* key, int& index, std::initializer_list<Word> words, Need need, const char*) override {
        const Node* const node = word_of(key, need, "a word");
        if (!node) return;
        int number = 0;
        std::string expected;
        std::vector<std::string> known;
        for (const Word& word : words) {
            if (document_.value(*node) == word.text) {
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
        Refusal& refusal = refuse(node->place(), ticked(key) + " cannot be '" + shown(document_.value(*node)) + "'");
        refusal.expected = expected;
        refusal.nearest = nearest(document_.value(*node), known);
    }

    void group(const char* key, Need need, const char*, const Body& body) override {
        const Node* const node = find(key, need);
        if (!node) return;
        if (node->kind() == Node::Kind::map)
            describe_map(*node, key_place(), {}, body);
        else
            wrong_kind(key, *node, "a map of keys");
    }

    void length_or_group(const char* key, Reading& length, Range range, const char*, const Body& body) override {
        const Node* const node = find(key, may_be_left_out);
        if (!node) return;
        if (node->kind() == Node::Kind::map)
            describe_map(*node, key_place(), {}, body);
        else
            take_length(key, *node, range, length);
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
        list_entries(*node, entries);
        check_how_many(key, *node, static_cast<int>(entries.size()), {need == be_given ? 1 : 0, most});
        const std::optional<Kind> kind = kind_of(key);
        for (std::size_t i = 0; i < entries.size(); ++i) {
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
            if (kind) names_[static_cast<std::size_t>(*kind)].emplace(entry.key, static_cast<int>(i));
        }
    }

 private:
    Scope& scope() { return scopes_[depth_ - 1]; }

    Refusal& refuse(Place place, std::string sentence) {
        refusals_.push_back({place, std::move(sentence), {}, {}, {}});
        return refusals_.back();
    }

    static bool is_word(const Node& node) {
        return node.kind() == Node::Kind::word || node.kind() == Node::Kind::quoted;
    }

    static std::optional<Kind> kind_of(std::string_view key) {
        if (key == "stairs") return Kind::stair;
        if (key == "posts") return Kind::post;
        if (key == "builds") return Kind::build;
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
                entries.push_back({document_.value(node), key, value, false});
            else
                refuse(node.place(), std::string("a key is ") + what_stands(node)).expected =
                    "a word in front of the colon";
            key = document_.node(value).next;
        }
        refuse_repeated(entries);
    }

    void refuse_repeated(std::vector<Entry>& entries) {
        constexpr std::size_t few = 16;
        const auto repeated = [&](const Entry& first, const Entry& again) {
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
        std::unordered_map<std::string_view, const Entry*> seen;
        for (const Entry& entry : entries)
            if (const auto [first, fresh] = seen.emplace(entry.key, &entry); !fresh) repeated(*first->second, entry);
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
        for (Entry& entry : here.entries) {
            if (entry.key != key) continue;
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
            refuse(node.place(), ticked(key) + " as " + later.written + " comes with later work: " + later.about).expected =
                "another way of giving it for now";
            return true;
        }
        return false;
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
            unreadable(key, node, example);
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

    bool take_angle(std::string_view key, const Node& node, Counts range, AngleReading& reading) {
        const std::string expected = "degrees from " + std::to_string(range.least) + " to " +
                                     std::to_string(range.most) + ", or a slope such as 7 1/4 in 11";
        if (!is_word(node)) {
            wrong_kind(key, node, expected);
            return false;
        }
        const std::optional<Angle> angle = read_angle(document_.value(node));
        // Degrees are judged as they are written: 350 is no lean of -10.
        const std::optional<double> written_degrees = read_degrees(document_.value(node));
        const double given = written_degrees ? *written_degrees : angle ? degrees(*angle) : 0;
        if (!angle || given < range.least || given > range.most || (range.least == 0 && !(given > 0))) {
            unreadable(key, node,
                       range.least == 0 ? "more than 0 and at most " + std::to_string(range.most) +
                                              " degrees, or a slope such as 7 1/4 in 11"
                                        : expected);
            return false;
        }
        reading = {*angle, node.place()};
        return true;
    }

    bool take_count(std::string_view key, const Node& node, Counts range, Count& count) {
        const std::string expected =
            "a whole number from " + std::to_string(range.least) + " to " + std::to_string(range.most);
        if (!is_word(node)) {
            wrong_kind(key, node, expected);
            return false;
        }
        const std::string_view text = document_.value(node);
        int value = 0;
        const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
        if (error != std::errc() || end != text.data() + text.size() || value < range.least || value > range.most) {
            unreadable(key, node, expected);
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
        if (!entry.key.empty() && entry.key.size() <= longest_id) return;
        refuse(document_.node(entry.key_node).place(), entry.key.empty() ? "a name is empty" : "a name is too long")
            .expected = "a name of 1 to " + std::to_string(longest_id) + " bytes";
    }

    /// Refuses what the group has and should not have, then what it lacks.
    void close() {
        Scope& here = scope();
        std::vector<std::string> meant;
        for (const Entry& entry : here.entries)
            if (!entry.asked_for) refuse_unknown(here, entry, meant);
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
        const std::vector<std::string> known(here.known.begin(), here.known.end());
        Refusal& refusal = refuse(place, "unknown key " + ticked(entry.key));
        refusal.nearest = nearest(entry.key, known);
        if (refusal.nearest.empty()) {
            for (const std::string& key : known)
                refusal.expected += (refusal.expected.empty() ? "one of " : ", ") + key;
        } else {
            meant.push_back(refusal.nearest);
        }
    }

    template <class IsMeant>
    void check_ways(const Scope& here, const IsMeant& is_meant) {
        if (here.ways.empty()) return;
        const auto given = [&](const char* key) {
            return std::any_of(here.entries.begin(), here.entries.end(),
                               [&](const Entry& entry) { return entry.key == key; });
        };
        std::vector<const char*> keys;
        for (const auto& way : here.ways)
            for (const char* key : way)
                if (std::none_of(keys.begin(), keys.end(),
                                 [&](const char* other) { return std::strcmp(key, other) == 0; }))
                    keys.push_back(key);
        const auto count_given = [&](const auto& list) { return std::count_if(list.begin(), list.end(), given); };
        for (const auto& way : here.ways)
            if (count_given(way) == static_cast<std::ptrdiff_t>(way.size()) &&
                count_given(keys) == static_cast<std::ptrdiff_t>(way.size()))
                return;
        if (std::any_of(keys.begin(), keys.end(), is_meant)) return;
        std::string present;
        for (const char* key : keys)
            if (given(key)) present += (present.empty() ? "" : ", ") + ticked(key);
        refuse(here.place, (here.id.empty() ? std::string() : ticked(here.id) + " ") +
                               (present.empty() ? "is not described" : "is not described by " + present))
            .expected = here.ways_expected;
    }

    const Document& document_;
    Unit unit_ = Unit::inch;
    std::vector<Scope> scopes_;
    std::size_t depth_ = 0;
    Place found_key_;
    std::array<std::unordered_map<std::string_view, int>, 3> names_;
    std::vector<Refusal> refusals_;
};

}  // namespace

ReadResult read_job(const Source& source) {
    ReadResult result;
    const std::optional<Document> document = read_document(source, result.refusals);
    if (!document) return result;
    return Reader(*document).read();
}

}  // namespace rakewright
