#include "reader.hpp"

#include <algorithm>

#include "../../solver/job_form.hpp"
#include "../../solver/rule/rule_form.hpp"
#include "values.hpp"

namespace rakewright {
namespace {

class Reader : public Form, private Values {
 public:
    explicit Reader(const Document& document) : Values(document) {}

    /// All that is refused; the file was read whole if that is nothing.
    template <class File>
    std::vector<Refusal> read(File& file) && {
        open(document().node(0), {0, 0}, {});
        describe(*this, file);
        close();
        return take_refusals();
    }

    Unit unit() const override { return job_unit(); }
    std::size_t how_many(const char* key) const override { return pairs_under(key); }
    void about(const char*) override {}
    void id(Id& id) override { id = {std::string(scope().id), scope().place}; }
    void place(Place& place) override { place = scope().place; }

    void text(const char* key, std::string& value, Need need, const char*) override {
        if (const Node* node = word_of(key, need, "a text")) value = document().value(*node);
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
        if (const std::optional<int> index = names.find(document().value(*node))) {
            value = {*index, node->place()};
            return;
        }
        static constexpr const char* words[] = {"stair", "post", "build", "floor", "post fixing"};
        const std::string word = words[static_cast<std::size_t>(kind)];
        Refusal& refusal = refuse(node->place(), "there is no " + word + " " + ticked(document().value(*node)));
        refusal.nearest = nearest_of(document().value(*node), names);
        if (names.all().empty())
            refusal.expected = "the job describes no " + word + "s";
        else if (refusal.nearest.empty())
            refusal.expected = "one of the job's " + word + "s" + nearest_first_of(document().value(*node), names);
    }

    void written(const char* key, Grammar& grammar, Need need, const char*) override {
        if (const Node* node = find(key, need)) take_written(key, *node, grammar);
    }

    void lengths(const char* key, std::vector<Reading>& values, Range range, Counts how_many, Need need,
                 const char*) override {
        one_or_list(key, need, how_many, [&](const Node& item) {
            Reading reading;
            if (take_length(key, item, range, reading)) values.push_back(reading);
        });
    }

    void written_or_lengths(const char* key, Grammar& grammar, std::vector<Reading>& values, Range range,
                            Counts how_many, Need need, const char*) override {
        const Node* const node = find(key, need);
        if (!node) return;
        if (node->kind() != Node::Kind::list) {
            take_written(key, *node, grammar);
            return;
        }
        each_of(key, *node, how_many, [&](const Node& item) {
            Reading reading;
            if (take_length(key, item, range, reading)) values.push_back(reading);
        });
    }

    void numbers(const char* key, std::vector<Reading>& values, Counts how_many, const char*) override {
        one_or_list(key, may_be_left_out, how_many, [&](const Node& item) {
            Reading number;
            if (take_number(key, item, number)) values.push_back(number);
        });
    }

    void number(const char* key, Reading& value, Need need, const char*) override {
        if (const Node* node = find(key, need)) take_number(key, *node, value);
    }

    void part_of_one(const char* key, Reading& value, Need need, const char*) override {
        if (const Node* node = find(key, need)) take_part_of_one(key, *node, value);
    }

    void texts(const char* key, std::vector<Id>& values, int most, const char*) override {
        one_or_list(key, may_be_left_out, {1, most}, [&](const Node& item) {
            if (is_word(item))
                values.push_back({std::string(document().value(item)), item.place()});
            else
                wrong_kind(key, item, "a text, or a list of texts");
        });
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
            const bool is_number = take_count(key, document().node(entry.key_node), {1, most}, number);
            if (take_length(key, document().node(entry.value_node), range, reading) && is_number)
                values.push_back({number, reading});
        }
    }

    void ways(std::initializer_list<std::initializer_list<const char*>> sets, const char* expected) override {
        expect_ways(sets, expected);
    }
    void later(const char* key, const char* about) override { expect_later({key, about}); }

 protected:
    void word(const char* key, int& index, std::initializer_list<Word> words, Need need, const char*) override {
        if (const Node* const node = word_of(key, need, "a word"))
            take_word(key, *node, index, words);
        else if (need == be_given)
            scope().words_for_missing.emplace_back(key, quoted_words(words));
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
        for (std::uint32_t i = node->child; i; i = document().node(i).next, ++number) {
            const Node& item = document().node(i);
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
        entries.reserve(document().pairs_in(*node));
        list_entries(*node, entries);
        check_how_many(key, *node, static_cast<int>(entries.size()), {need == be_given ? 1 : 0, most});
        const std::optional<Kind> kind = kind_of(key);
        if (kind) names_[static_cast<std::size_t>(*kind)] = Names(entries.size());
        for (std::size_t i = 0; i < std::min(entries.size(), static_cast<std::size_t>(most)); ++i) {
            const Entry& entry = entries[i];
            check_id(entry);
            const Node& value = document().node(entry.value_node);
            if (value.kind() == Node::Kind::map)
                describe_map(value, document().node(entry.key_node).place(), entry.key, body);
            else if (value.kind() == Node::Kind::null)
                no_value(entry);
            else
                wrong_kind(entry.key, value, "a map of keys");
            // Named even where it is refused, so that who names it is not refused too.
            if (kind) names_[static_cast<std::size_t>(*kind)].add(entry.key, static_cast<int>(i));
        }
    }

 private:
    static std::optional<Kind> kind_of(std::string_view key) {
        if (key == "stairs") return Kind::stair;
        if (key == "posts") return Kind::post;
        if (key == "builds") return Kind::build;
        if (key == "floors") return Kind::floor;
        if (key == "post_fixings") return Kind::post_fixing;
        return std::nullopt;
    }

    void describe_map(const Node& map, Place place, std::string_view id, const Body& body) {
        open(map, place, id);
        body(*this);
        close();
    }

    /// A list item has no key of its own: its place is where its first key stands.
    Place whole_of(const Node& map) const { return map.child ? document().node(map.child).place() : map.place(); }

    /// Takes one value, or each of a list.
    template <class Take>
    void one_or_list(const char* key, Need need, Counts how_many, const Take& take) {
        const Node* const node = find(key, need);
        if (!node) return;
        if (node->kind() == Node::Kind::list)
            each_of(key, *node, how_many, take);
        else
            take(*node);
    }

    template <class Take>
    void each_of(const char* key, const Node& list, Counts how_many, const Take& take) {
        int number = 0;
        for (std::uint32_t i = list.child; i; i = document().node(i).next, ++number) take(document().node(i));
        check_how_many(key, list, number, how_many);
    }

    std::array<Names, 5> names_;  // by kind
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
        for (Rule& rule : set.rules) {
            rule.set = name;
            rule.units = set.units;
        }
        if (!result.refusals.empty()) result.set.reset();
    }
    return result;
}

}  // namespace rakewright
