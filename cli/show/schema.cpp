#include "schema.hpp"

#include <algorithm>

#include "../../solver/job_form.hpp"
#include "page.hpp"

namespace rakewright {
namespace {

std::string quoted(std::string_view text) {
    std::string out = "\"";
    for (const char c : text) {
        if (c == '"' || c == '\\') out += '\\';
        out += c;
    }
    return out + '"';
}

const char* kind_of_length(Range range) {
    switch (range) {
        case Range::any: return "length";
        case Range::not_negative: return "length_not_negative";
        case Range::positive: return "length_positive";
    }
    return "length";
}

/// What a quoted whole number looks like, or a plain one.
std::string whole_number(Counts range) {
    return "\"anyOf\": [{\"type\": \"integer\", \"minimum\": " + std::to_string(range.least) +
           ", \"maximum\": " + std::to_string(range.most) + "}, {\"type\": \"string\", \"pattern\": \"^[0-9]+$\"}]";
}

/// Writes the keys of one group after the other as the properties of a schema.
class SchemaForm : public Form {
 public:
    Unit unit() const override { return Unit::inch; }
    void about(const char* text) override { about_ = text; }
    void id(Id&) override {}
    void place(Place&) override {}

    void text(const char* key, std::string&, Need need, const char* about) override {
        property(key, need, about, "\"type\": [\"string\", \"number\", \"boolean\"]");
    }

    void length(const char* key, Reading& value, Range range, Need need, const char* about) override {
        property(key, need, about, one_of_defined(kind_of_length(range)) + default_number(need, value));
    }
    void length(const char* key, std::optional<Reading>&, Range range, const char* about) override {
        property(key, may_be_left_out, about, one_of_defined(kind_of_length(range)));
    }

    void angle(const char* key, AngleReading& value, Counts range, Need need, const char* about) override {
        property(key, need, about, angle_within(range) + default_number(need, degrees(value.angle)));
    }
    void angle(const char* key, std::optional<AngleReading>&, Counts range, const char* about) override {
        property(key, may_be_left_out, about, angle_within(range));
    }

    void count(const char* key, Count& value, Counts range, Need need, const char* about) override {
        property(key, need, about,
                 whole_number(range) +
                     (need == may_be_left_out ? ", \"default\": " + std::to_string(value.value) : std::string()));
    }
    void count(const char* key, std::optional<Count>&, Counts range, const char* about) override {
        property(key, may_be_left_out, about, whole_number(range));
    }

    void name_of(Kind, const char* key, Ref&, Need need, const char* about) override {
        property(key, need, about, "\"type\": [\"string\", \"number\", \"boolean\"]");
    }

    void written(const char* key, Grammar& grammar, Need need, const char* about) override {
        std::string body = "\"anyOf\": [" + alternatives(grammar) + ']';
        if (const std::string usual = grammar.default_text(); need == may_be_left_out && !usual.empty())
            body += ", \"default\": " + quoted(usual);
        property(key, need, std::string(about) + "; " + grammar.expected(), body);
    }

    void lengths(const char* key, std::vector<Reading>&, Range range, Counts how_many, Need need,
                 const char* about) override {
        const std::string one = std::string("{\"$ref\": \"#/definitions/") + kind_of_length(range) + "\"}";
        property(key, need, about, "\"anyOf\": [" + one + ", " + list_of(one, how_many) + ']');
    }

    void written_or_lengths(const char* key, Grammar& grammar, std::vector<Reading>&, Range range, Counts how_many,
                            Need need, const char* about) override {
        const std::string one = std::string("{\"$ref\": \"#/definitions/") + kind_of_length(range) + "\"}";
        property(key, need, std::string(about) + "; " + grammar.expected(),
                 "\"anyOf\": [" + alternatives(grammar) + ", " + list_of(one, how_many) + ']');
    }

    void numbers(const char* key, std::vector<Reading>&, Counts how_many, const char* about) override {
        const std::string one = '{' + plain_number() + '}';
        property(key, may_be_left_out, about, "\"anyOf\": [" + one + ", " + list_of(one, how_many) + ']');
    }

    void number(const char* key, Reading& value, Need need, const char* about) override {
        property(key, need, about, plain_number() + default_number(need, value));
    }

    void part_of_one(const char* key, Reading& value, Need need, const char* about) override {
        property(key, need, about,
                 "\"anyOf\": [{\"type\": \"number\", \"exclusiveMinimum\": 0, \"exclusiveMaximum\": 1}, {\"type\": "
                 "\"string\", \"pattern\": \"^0+[.][0-9]{1,4}$\"}]" +
                     default_number(need, value));
    }

    void texts(const char* key, std::vector<Id>&, int most, const char* about) override {
        const std::string one = "{\"type\": [\"string\", \"number\", \"boolean\"]}";
        property(key, may_be_left_out, about, "\"anyOf\": [" + one + ", " + list_of(one, {1, most}) + ']');
    }

    void numbered(const char* key, std::vector<Numbered>&, Range range, int most, const char* about) override {
        property(key, may_be_left_out, about,
                 "\"type\": \"object\", \"minProperties\": 1, \"maxProperties\": " + std::to_string(most) +
                     ", \"additionalProperties\": false, \"patternProperties\": {\"^0*[1-9][0-9]*$\": {\"$ref\": "
                     "\"#/definitions/" +
                     kind_of_length(range) + "\"}}");
    }

    void ways(std::initializer_list<std::initializer_list<const char*>> sets, const char* expected) override {
        std::vector<std::string> keys;
        for (const auto& set : sets)
            for (const std::string key : set)
                if (std::find(keys.begin(), keys.end(), key) == keys.end()) keys.push_back(key);
        std::string ways;
        for (const auto& set : sets) {
            std::string required, others;
            for (const std::string key : set) required += (required.empty() ? "" : ", ") + quoted(key);
            for (const std::string& key : keys)
                if (std::find(set.begin(), set.end(), key) == set.end())
                    others += (others.empty() ? "" : ", ") + ("{\"required\": [" + quoted(key) + "]}");
            ways += (ways.empty() ? "" : ", ") + ("{\"required\": [" + required + "]");
            if (!others.empty()) ways += ", \"not\": {\"anyOf\": [" + others + "]}";
            ways += '}';
        }
        extra_ += ", \"anyOf\": [" + ways + "], \"$comment\": " + quoted(std::string("expected ") + expected);
    }

    void later(const char*, const char*) override {}

    /// The schema of the group that was described.
    std::string object() const {
        return "\"type\": \"object\", \"description\": " + quoted(about_) +
               ", \"additionalProperties\": false, \"properties\": {" + properties_ + "}" +
               (required_.empty() ? "" : ", \"required\": [" + required_ + "]") + extra_;
    }

 protected:
    void word(const char* key, int& index, std::initializer_list<Word> words, Need need, const char* about) override {
        std::string body = enumerated(words);
        if (need == may_be_left_out && index >= 0) body += ", \"default\": " + quoted((words.begin() + index)->text);
        property(key, need, meanings(words, about), body);
    }

    void word_or_group(const char* key, int& index, std::initializer_list<Word> words, const char* about,
                       const Body& body) override {
        property(key, may_be_left_out, meanings(words, about),
                 "\"anyOf\": [{" + enumerated(words) + "}, {" + described(body) +
                     "}], \"default\": " + quoted((words.begin() + index)->text));
    }

    void group(const char* key, Need need, const char* about, const Body& body) override {
        property(key, need, about, described(body));
    }

    void written_or_group(const char* key, Grammar& grammar, const char* about, const Body& body) override {
        property(key, may_be_left_out, std::string(about) + "; " + grammar.expected(),
                 "\"anyOf\": [" + alternatives(grammar) + ", {" + described(body) + "}]");
    }

    void each(const char* key, Counts how_many, Need need, const char* about, const Body& body) override {
        const std::string list = list_of("{" + described(body) + "}", how_many);
        property(key, need, about, list.substr(1, list.size() - 2));
    }

    void each_named(const char* key, int most, Need need, const char* about, const Body& body) override {
        property(key, need, about,
                 "\"type\": \"object\", \"minProperties\": " + std::to_string(need == be_given ? 1 : 0) +
                     ", \"maxProperties\": " + std::to_string(most) + ", \"additionalProperties\": {" +
                     described(body) + '}');
    }

 private:
    /// The texts of a grammar, and numbers where it takes them.
    static std::string alternatives(const Grammar& grammar) {
        return "{\"type\": \"string\", \"pattern\": " + quoted(grammar.pattern()) + '}' +
               (grammar.may_be_number() ? ", {\"type\": \"number\"}" : "");
    }

    static std::string plain_number() {
        return "\"anyOf\": [{\"type\": \"number\", \"exclusiveMinimum\": 0}, {\"type\": \"string\", \"pattern\": "
               "\"^[0-9]{1,9}([.][0-9]{1,4})?$\"}]";
    }

    static std::string enumerated(std::initializer_list<Word> words) {
        std::string allowed;
        for (const Word& word : words) allowed += (allowed.empty() ? "" : ", ") + quoted(word.text);
        return "\"enum\": [" + allowed + ']';
    }

    static std::string meanings(std::initializer_list<Word> words, const char* about) {
        std::string meanings = about;
        const char* separator = ": ";
        for (const Word& word : words) {
            meanings += separator + (std::string("`") + word.text + "` ") + word.about;
            separator = "; ";
        }
        return meanings;
    }

    static std::string one_of_defined(const std::string& name) {
        return "\"allOf\": [{\"$ref\": \"#/definitions/" + name + "\"}]";
    }

    static std::string default_number(Need need, const Reading& value) {
        return need == may_be_left_out ? ", \"default\": " + exact(value.value) : std::string();
    }

    static std::string angle_within(Counts range) {
        return "\"anyOf\": [{\"type\": \"number\", \"minimum\": " + std::to_string(range.least) +
               ", \"maximum\": " + std::to_string(range.most) +
               "}, {\"type\": \"string\", \"pattern\": " + quoted(angle_pattern()) + "}]";
    }

    static std::string list_of(const std::string& one, Counts how_many) {
        return "{\"type\": \"array\", \"minItems\": " + std::to_string(how_many.least) +
               ", \"maxItems\": " + std::to_string(how_many.most) + ", \"items\": " + one + '}';
    }

    static std::string described(const Body& body) {
        SchemaForm form;
        body(form);
        return form.object();
    }

    void property(const char* key, Need need, const std::string& about, const std::string& body) {
        properties_ += (properties_.empty() ? "\n" : ",\n") + quoted(key) + ": {\"description\": " + quoted(about) +
                       ", " + body + '}';
        if (need == be_given) required_ += (required_.empty() ? "" : ", ") + quoted(key);
    }

    std::string about_, properties_, required_, extra_;
};

std::string length_definition(const char* name, const char* bounds, bool may_be_negative) {
    return quoted(name) + ": {\"anyOf\": [{\"type\": \"number\"" + bounds +
           ", \"maximum\": 1000000}, {\"type\": \"string\", \"pattern\": " + quoted(length_pattern(may_be_negative)) +
           "}]}";
}

}  // namespace

std::string job_schema() {
    Job scratch;
    SchemaForm form;
    describe(form, scratch);
    return "{\"$schema\": \"http://json-schema.org/draft-07/schema#\", \"title\": \"rakewright "
           "job\",\n\"definitions\": {\n" +
           length_definition("length", ", \"minimum\": -1000000", true) + ",\n" +
           length_definition("length_not_negative", ", \"minimum\": 0", false) + ",\n" +
           length_definition("length_positive", ", \"exclusiveMinimum\": 0", false) + "\n},\n" + form.object() + "}\n";
}

}  // namespace rakewright
