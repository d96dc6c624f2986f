#include "../../cli/read/text.hpp"

#include "../support/catch.hpp"

namespace rakewright::tests {
namespace {

struct Parsed {
    Source source;
    std::vector<Refusal> refusals;
    std::optional<Document> document;

    explicit Parsed(std::string text) : source(source_of("job", std::move(text))) {
        document = read_document(source, refusals);
    }

    /// The value of the first key's value.
    const Node& first_value() const { return document->node(document->node(document->node(0).child).next); }
    std::string_view first_text() const { return document->value(first_value()); }
    std::string_view under(Place place) const { return std::string_view(source.text).substr(place.begin, place.size); }
};

std::string sentence_for(std::string text) {
    const Parsed parsed(std::move(text));
    REQUIRE_FALSE(parsed.document);
    REQUIRE_FALSE(parsed.refusals.empty());
    return parsed.refusals.front().sentence;
}

}  // namespace

TEST_CASE("a node is no larger than sixteen bytes", "[read][text]") { CHECK(sizeof(Node) == 16); }

TEST_CASE("a word is what stands in the text, a quoted one without its quotes", "[read][text]") {
    CHECK(Parsed("a: 7 1/4  # plain\n").first_text() == "7 1/4");
    CHECK(Parsed("a: 5' 2 3/8\"\n").first_text() == "5' 2 3/8\"");
    CHECK(Parsed("a: \"7 1/4\"\n").first_text() == "7 1/4");
    CHECK(Parsed("a: 'rail''s end'\n").first_text() == "rail's end");
    CHECK(Parsed("a: \"the \\\"north\\\" rail\"\n").first_text() == "the \"north\" rail");
    CHECK(Parsed("a: \"caf\\u00e9\"\n").first_text() == "caf\xc3\xa9");
    CHECK(Parsed("a: \"\"\n").first_text().empty());
}

TEST_CASE("places point at the value, quotes included, whatever ends the lines", "[read][text]") {
    for (const std::string end : {"\n", "\r\n"}) {
        const Parsed parsed("# x" + end + "a: 7 1/4" + end + "b: \"\\x41\"" + end);
        REQUIRE(parsed.document);
        const Node& key = parsed.document->node(parsed.document->node(0).child);
        CHECK(parsed.under(key.place()) == "a");
        CHECK(parsed.under(parsed.first_value().place()) == "7 1/4");
        const Node& last = parsed.document->node(parsed.document->node(parsed.first_value().next).next);
        CHECK(parsed.under(last.place()) == "\"\\x41\"");
        CHECK(parsed.document->value(last) == "A");
    }
}

TEST_CASE("a byte order mark in front is left out, and so are places before it", "[read][text]") {
    const Parsed parsed(
        "\xEF\xBB\xBF"
        "a: 7\n");
    REQUIRE(parsed.document);
    CHECK(parsed.under(parsed.first_value().place()) == "7");
    CHECK(parsed.first_value().begin == 3);
}

TEST_CASE("text that is no UTF-8 is named for what it is", "[read][text]") {
    CHECK(sentence_for(std::string("\xFF\xFE"
                                   "a\0:\0",
                                   6)) == "the job is UTF-16 text");
    CHECK(sentence_for(std::string("\0a\0:", 4)) == "the job is UTF-16 text");
    CHECK(sentence_for("a: \xC0\xAF\n") == "these bytes are not UTF-8 text");                  // overlong, RFC 3629 10
    CHECK(sentence_for("a: \xED\xA1\x8C\xED\xBE\xB4\n") == "these bytes are not UTF-8 text");  // surrogates, RFC 3629 3
    CHECK(sentence_for("a: \xF4\x90\x80\x80\n") == "these bytes are not UTF-8 text");          // beyond U+10FFFF
    CHECK(sentence_for("a: \xF0\x9F\n") == "these bytes are not UTF-8 text");                  // cut short
    CHECK(Parsed("a: \xF4\x8F\xBF\xBF\n").document);  // the last character there is
}

TEST_CASE("each line's first bad byte is told", "[read][text]") {
    const Parsed parsed("a: \x01\x02\nb: 1\nc: \xff\n%d: 1\n");
    CHECK(parsed.refusals.size() == 3);
}

TEST_CASE("an unclosed quote is told before its length is", "[read][text]") {
    CHECK(sentence_for("a: \"b\n" + std::string(5000, '\n') + std::string(5000, 'x') + "\n") ==
          "this quote is not closed");
}

TEST_CASE("apostrophes in comments and in words are no quotes", "[read][text]") {
    CHECK(Parsed("# don't\na: rail's end # it's\n").document);
    CHECK(sentence_for("a: 1\n# don't\nb: @\n") == "a text may not start like this");
}

TEST_CASE("an escape may not stand for what may not be written", "[read][text]") {
    for (const std::string escape : {"\\e", "\\0", "\\x07", "\\n", "\\N", "\\u202e", "\\uFEFF"})
        CHECK(sentence_for("a: \"x" + escape + "\"\n") == "an escape stands for a control character");
}

TEST_CASE("the limits of a text hold to the byte and to the level", "[read][text]") {
    CHECK(Parsed("a: " + std::string(longest_value, 'x') + "\n").document);
    CHECK(sentence_for("a: " + std::string(longest_value + 1, 'x') + "\n") == "the value is longer than 4096 bytes");
    CHECK(sentence_for("a: \"" + std::string(longest_value + 1, 'x') + "\"\n") ==
          "the value is longer than 4096 bytes");
    CHECK(Parsed("a: 1 #" + std::string(longest_line - 6, 'x') + "\nb: 2\n").document);
    CHECK(sentence_for("a: 1 #" + std::string(longest_line - 5, 'x') + "\nb: 2\n") ==
          "the line is longer than 65536 bytes");
    const auto nested = [](std::size_t levels) {
        return "a: " + std::string(levels, '[') + std::string(levels, ']') + "\n";
    };
    CHECK(Parsed(nested(deepest - 1)).document);
    CHECK(sentence_for(nested(deepest)) == "it is nested deeper than 32 levels");
    CHECK(sentence_for(nested(30000)) == "it is nested deeper than 32 levels");
    CHECK(sentence_for(std::string(largest_job + 1, '\n')) == "the job is larger than 64 MiB");
}

TEST_CASE("a bracket that stays open is told where it opens", "[read][text]") {
    const auto opening = [](std::string text) {
        const Parsed parsed(std::move(text));
        REQUIRE(parsed.refusals.size() == 1);
        CHECK(parsed.refusals[0].sentence == "this bracket is not closed");
        return parsed.refusals[0].place.begin;
    };
    CHECK(opening("a: [1, 2\n") == 3);
    CHECK(opening("a: {b: [1, 2}\n") == 7);
    CHECK(opening("a: [1, 2\nb: 3\n") == 3);
    CHECK(opening("a:\n  b: {c: 1, d: 2\n  e: {f: 3}\n") == 8);
    CHECK(opening("a: {b: 1,\n") == 3);
    CHECK(Parsed("a: {b: 1,\n    c: 2}\n").document);  // goes on, and is closed
    CHECK(Parsed("a: [\n  1,\n  2,\n]\n").document);
}

}  // namespace rakewright::tests
