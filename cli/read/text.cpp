#include "text.hpp"

#include <yaml-cpp/depthguard.h>
#include <yaml-cpp/eventhandler.h>
#include <yaml-cpp/exceptions.h>
#include <yaml-cpp/mark.h>
#include <yaml-cpp/parser.h>

#include <algorithm>
#include <array>
#include <istream>
#include <streambuf>

#include "character.hpp"

namespace rakewright {
namespace {

/// Thrown by our handler through the parser, which has no other way to be stopped; it never leaves this file.
struct Stop {
    Refusal refusal;
};

/// Where the quote that opens at `begin` closes; none if it does not.
std::optional<std::size_t> closing_quote(std::string_view text, std::size_t begin) {
    const char quote = text[begin];
    for (std::size_t i = begin + 1; i < text.size(); ++i) {
        if (quote == '"' && text[i] == '\\') {
            ++i;
        } else if (text[i] == quote) {
            if (quote == '"' || i + 1 >= text.size() || text[i + 1] != quote) return i;
            ++i;
        }
    }
    return std::nullopt;
}

/// A text as a stream, where it is.
class TextBuffer : public std::streambuf {
 public:
    explicit TextBuffer(std::string_view text) {
        char* const begin = const_cast<char*>(text.data());  // only read from
        setg(begin, begin, begin + text.size());
    }
};

}  // namespace

class DocumentMaker : public YAML::EventHandler {
 public:
    explicit DocumentMaker(std::string_view text) : text_(text), document_(text) {
        document_.nodes_.reserve(std::min(text.size() / 6 + 16, most_nodes));
    }

    std::optional<Document> make(std::vector<Refusal>& refusals) {
        TextBuffer buffer(text_);
        std::istream stream(&buffer);
        try {
            YAML::Parser parser(stream);
            if (!parser.HandleNextDocument(*this) || document_.nodes_.empty())
                throw Stop{refusal_at(0, 0, "the job is empty", "a map with `units`, `builds` and `sections`")};
            second_ = true;
            parser.HandleNextDocument(*this);
            check_nothing_was_passed_over();
            if (document_.nodes_.front().kind() != Node::Kind::map)
                throw Stop{refusal_at(document_.nodes_.front().begin, document_.nodes_.front().size,
                                      "the job is not a map of keys", "`key: value` lines at the top level")};
            return std::move(document_);
        } catch (const Stop& stop) {
            refusals.push_back(inside_text(stop.refusal));
        } catch (const YAML::DeepRecursion& deep) {
            refusals.push_back(inside_text(refusal_at(position(deep.mark), 1, "it is nested too deeply")));
        } catch (const YAML::Exception& error) {
            refusals.push_back(inside_text(explained(error)));
        }
        return std::nullopt;
    }

    void OnDocumentStart(const YAML::Mark& mark) override {
        if (!second_) return;
        const std::size_t begin = position(mark);
        if (text_.compare(begin, 3, "---") == 0)
            throw Stop{refusal_at(begin, 3, "a second document starts here", "one job a file")};
        throw Stop{refusal_at(begin, 1, "this stands behind the end of the job", "one job a file")};
    }
    void OnDocumentEnd() override {}

    void OnNull(const YAML::Mark& mark, YAML::anchor_t anchor) override {
        check_anchor(mark, anchor);
        // Only an empty place in brackets is marked where it is.
        const std::size_t begin = position(mark);
        const char there = first_of(begin);
        const bool is_empty_item = begin > last_end_ && (there == ',' || there == ']' || there == '}');
        add(Node::Kind::null, is_empty_item ? begin : last_end_, 0);
    }

    void OnAlias(const YAML::Mark& mark, YAML::anchor_t) override { throw Stop{alias_at(position(mark))}; }

    void OnScalar(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                  const std::string& value) override {
        check_anchor(mark, anchor);
        const std::size_t begin = position(mark);
        check_tag(begin, tag);
        const char first = first_of(begin);
        if (first == '"' || first == '\'') {
            add_quoted(begin, value);
            return;
        }
        if (first == '|' || first == '>')
            throw Stop{refusal_at(begin, 1, "a block of text stands here",
                                  "a value on one line; quote a text that starts so")};
        if (text_.compare(begin, value.size(), value) != 0) throw several_lines(begin);
        check_size(begin, value);
        add(Node::Kind::word, begin, value.size());
    }

    void OnSequenceStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                         YAML::EmitterStyle::value) override {
        open(mark, tag, anchor, Node::Kind::list);
    }
    void OnSequenceEnd() override { open_.pop_back(); }
    void OnMapStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                    YAML::EmitterStyle::value) override {
        open(mark, tag, anchor, Node::Kind::map);
    }
    void OnMapEnd() override { open_.pop_back(); }

 private:
    struct Open {
        std::uint32_t index;
        std::uint32_t last_child;
    };

    std::size_t position(const YAML::Mark& mark) const {
        return mark.pos < 0 ? 0 : std::min(static_cast<std::size_t>(mark.pos), text_.size());
    }

    void check_anchor(const YAML::Mark& mark, YAML::anchor_t anchor) const {
        if (anchor != 0)
            throw Stop{refusal_at(position(mark), 1, "an anchor stands here",
                                  "no anchors or aliases; quote a text that starts with '&'")};
    }

    static Refusal alias_at(std::size_t begin) {
        return refusal_at(begin, 1, "an alias stands here",
                          "the value itself, written out; quote a text that starts with '*'");
    }

    char first_of(std::size_t begin) const { return begin < text_.size() ? text_[begin] : ' '; }

    static void check_size(std::size_t begin, std::string_view value) {
        if (value.size() > longest_value)
            throw Stop{refusal_at(begin, 1, "the value is longer than " + std::to_string(longest_value) + " bytes")};
    }

    void check_tag(std::size_t begin, const std::string& tag) const {
        // The parser itself gives plain words the tag "?" and quoted ones "!".
        if (tag.size() > 1 || first_of(begin) == '!')
            throw Stop{refusal_at(begin, 1, "a tag stands here", "no tags; quote a text that starts with '!'")};
    }

    /// The same refusal, its place whole characters of the text: the parser also marks what is behind its end.
    Refusal inside_text(Refusal refusal) const {
        const std::size_t begin = refusal.place.begin;
        std::size_t end = std::min(begin + refusal.place.size, text_.size());
        while (end > begin && end < text_.size() && (text_[end] & 0xC0) == 0x80) ++end;
        refusal.place.size = static_cast<std::uint32_t>(end - begin);
        return refusal;
    }

    /// Where the line of a place starts.
    std::size_t line_at(std::size_t place) const {
        return place == 0 ? 0 : text_.rfind('\n', place - 1) + 1;  // none: npos + 1 is 0
    }

    /// How far the line of a place is indented.
    std::size_t indent_at(std::size_t place) const {
        return std::min(text_.find_first_not_of(' ', line_at(place)), text_.size()) - line_at(place);
    }

    bool same_line(std::size_t a, std::size_t b) const {
        return text_.substr(a, b - a).find('\n') == std::string_view::npos;
    }

    /// A bracket that is not closed, told where it opens; none where the text that stands in its way may still be
    /// inside it, because something else is missing there.
    std::optional<Refusal> unclosed_bracket(std::size_t in_its_way) const {
        const std::optional<std::size_t> bracket = open_bracket();
        if (!bracket) return std::nullopt;
        const char closing = text_[*bracket] == '{' ? '}' : ']';
        Refusal refusal = refusal_at(*bracket, 1, "this bracket is not closed", std::string("a `") + closing + "`");
        in_its_way = text_.find_first_not_of(" \t\r\n", in_its_way);
        if (in_its_way == std::string_view::npos) return refusal;
        const char other = closing == '}' ? ']' : '}';
        const bool next_key = !same_line(*bracket, in_its_way) && indent_at(in_its_way) <= indent_at(*bracket);
        if (text_[in_its_way] != other && !next_key) return std::nullopt;
        refusal.also.push_back({{static_cast<std::uint32_t>(in_its_way), 1}, "in front of this"});
        return refusal;
    }

    /// A plain text that goes on in the next line: most often a bracket that is not closed.
    Stop several_lines(std::size_t begin) const {
        if (const std::optional<Refusal> bracket = unclosed_bracket(text_.find('\n', begin))) return Stop{*bracket};
        if (open_bracket())
            return Stop{
                refusal_at(begin, 1, "a comma is missing between this and the next line", "a comma behind each value")};
        return Stop{refusal_at(begin, 1, "a text goes over several lines", "a value on one line")};
    }

    void add_quoted(std::size_t begin, const std::string& value) {
        const std::optional<std::size_t> end = closing_quote(text_, begin);
        if (!end)
            throw Stop{refusal_at(begin, 1, "this quote is not closed", "the same quote again, on the same line")};
        const std::string_view inside = text_.substr(begin + 1, *end - begin - 1);
        if (inside.find('\n') != std::string_view::npos)
            throw Stop{refusal_at(begin, 1,
                                  "a quoted text goes over several lines; is this quote closed where it should be?",
                                  "a value on one line")};
        check_size(begin, value);
        add(Node::Kind::quoted, begin, *end + 1 - begin);
        if (inside == value) return;
        check_shown(begin, value);
        document_.values_.push_back(value);
        document_.nodes_.back().child = static_cast<std::uint32_t>(document_.values_.size());
    }

    /// Refuses what could not be written but by an escape.
    void check_shown(std::size_t begin, std::string_view value) const {
        for (std::size_t i = 0; i < value.size();) {
            const Character character = character_at(value, i);
            if (!character.is_text || is_control(character.code))
                throw Stop{refusal_at(begin, document_.nodes_.back().size, "an escape stands for a control character",
                                      "a text that can be shown")};
            i += character.size;
        }
    }

    void open(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor, Node::Kind kind) {
        check_anchor(mark, anchor);
        check_tag(position(mark), tag);
        if (open_.size() >= static_cast<std::size_t>(deepest))
            throw Stop{
                refusal_at(position(mark), 1, "it is nested deeper than " + std::to_string(deepest) + " levels")};
        add(kind, position(mark), 1);
        open_.push_back({static_cast<std::uint32_t>(document_.nodes_.size() - 1), 0});
    }

    void add(Node::Kind kind, std::size_t begin, std::size_t size) {
        std::vector<Node>& nodes = document_.nodes_;
        if (nodes.size() >= most_nodes)
            throw Stop{refusal_at(begin, 1, "there are more than " + std::to_string(most_nodes) + " values")};
        const auto index = static_cast<std::uint32_t>(nodes.size());
        Node node{};
        node.begin = static_cast<std::uint32_t>(begin);
        node.size = static_cast<std::uint32_t>(std::min(size, text_.size() - begin)) & 0x1FFFFFFFu;
        node.kind_bits = static_cast<std::uint32_t>(kind) & 7u;
        nodes.push_back(node);
        if (!open_.empty()) {
            Open& parent = open_.back();
            (parent.last_child ? nodes[parent.last_child].next : nodes[parent.index].child) = index;
            parent.last_child = index;
        }
        const bool word = kind == Node::Kind::word || kind == Node::Kind::quoted;
        if (word) last_end_ = begin + size;
    }

    /// The innermost bracket that is open in front of a place: brackets that are not closed are told where they open.
    std::optional<std::size_t> open_bracket() const {
        for (auto collection = open_.rbegin(); collection != open_.rend(); ++collection) {
            const std::size_t begin = document_.nodes_[collection->index].begin;
            if (begin < text_.size() && (text_[begin] == '{' || text_[begin] == '[')) return begin;
        }
        return std::nullopt;
    }

    Refusal explained(const YAML::Exception& error) const {
        const std::size_t where = position(error.mark);
        // Most aliases have no anchor, which the parser sees first.
        if (first_of(where) == '*') return alias_at(where);
        if (const std::optional<std::size_t> quote = unclosed_quote(last_end_, where))
            return refusal_at(*quote, 1, "this quote is not closed", "the same quote again, on the same line");
        if (const std::optional<Refusal> bracket = unclosed_bracket(where)) return *bracket;
        return stray(where);
    }

    /// What stands where the parser could not go on.
    Refusal stray(std::size_t where) const {
        const std::size_t blanks = where - std::min(where, line_at(where)),
                          tab = text_.substr(line_at(where), blanks).find_first_not_of(' ');
        if (tab < blanks && text_[line_at(where) + tab] == '\t')
            return refusal_at(line_at(where) + tab, 1, "a tab stands in front of a key", "blanks");
        const std::optional<std::size_t> bracket = open_bracket();
        switch (first_of(where)) {
            case '@':
            case '`': return refusal_at(where, 1, "a text may not start like this", "quotes around it");
            case ']':
            case '}': return refusal_at(where, 1, "this bracket was not opened", "as many that open as that close");
            case '-':
                return refusal_at(where, 1, "a list cannot start here",
                                  "its items on lines of their own, or in brackets");
            case ':':
                return refusal_at(
                    where, 1, "this colon cannot stand here",
                    std::string(bracket ? "commas between values" : "one key a line, a blank behind its colon") +
                        ", and quotes around a text with a colon in it");
            default: break;
        }
        if (!bracket)
            return refusal_at(where, 1, "this does not belong to what stands above it",
                              "`key: value` lines, the keys of a group all in one column");
        Refusal refusal = refusal_at(where, 1, "something is missing in front of this", "a comma between values");
        refusal.also.push_back({{static_cast<std::uint32_t>(*bracket), 1}, "inside the bracket that opens here"});
        return refusal;
    }

    /// A quote that opens between two places, outside a comment, and never closes: what people mistype most.
    std::optional<std::size_t> unclosed_quote(std::size_t from, std::size_t to) const {
        for (std::size_t i = from; i < text_.size() && i <= to; ++i) {
            if (starts_comment(i)) {
                i = std::min(text_.find('\n', i), text_.size());
            } else if (text_[i] == '"' || text_[i] == '\'') {
                const std::optional<std::size_t> end = closing_quote(text_, i);
                if (!end) return i;
                i = *end;
            }
        }
        return std::nullopt;
    }

    bool starts_comment(std::size_t i) const {
        static constexpr Bytes blanks = bytes_of(" \t\r\n");
        return text_[i] == '#' && (i == 0 || has(blanks, text_[i - 1]));
    }

    /// Between two words only blanks, comments and the signs of maps and lists may stand: anything else the parser has
    /// left out.
    void check_nothing_was_passed_over() const {
        std::size_t from = 0;
        for (const Node& node : document_.nodes_) {
            if (node.kind() != Node::Kind::word && node.kind() != Node::Kind::quoted) continue;
            check_gap(from, node.begin);
            from = node.begin + node.size;
        }
        check_gap(from, text_.size());
    }

    void check_gap(std::size_t from, std::size_t to) const {
        static constexpr Bytes signs = bytes_of(" \t\r\n{}[],:-?.");
        for (std::size_t i = from; i < to; ++i) {
            if (has(signs, text_[i])) continue;
            if (starts_comment(i)) {
                i = std::min(text_.find('\n', i), text_.size());
                continue;
            }
            const std::size_t end = std::min(text_.find_first_of(" \t\r\n", i), text_.size());
            throw Stop{refusal_at(i, end - i, "this stands where no value can be",
                                  "`key: value`, one on each line, or in brackets with commas between")};
        }
    }

    std::string_view text_;
    Document document_;
    std::vector<Open> open_;
    std::size_t last_end_ = 0;
    bool second_ = false;
};

std::string_view Document::value(const Node& node) const {
    if (node.kind() == Node::Kind::word) return text_.substr(node.begin, node.size);
    if (node.kind() != Node::Kind::quoted) return {};
    return node.child > 0 ? std::string_view(values_[node.child - 1]) : text_.substr(node.begin + 1, node.size - 2);
}

std::size_t Document::pairs_in(const Node& map) const {
    std::size_t pairs = 0;
    if (map.kind() == Node::Kind::map)
        for (std::uint32_t key = map.child; key; key = node(node(key).next).next) ++pairs;
    return pairs;
}

bool Document::has_colon(std::uint32_t key) const {
    const std::size_t end = std::size_t{node(key).begin} + node(key).size, next = text_.find_first_not_of(" \t", end);
    return next < text_.size() && text_[next] == ':';
}

std::optional<Document> read_document(const Source& source, std::vector<Refusal>& refusals) {
    scan_bytes(source.text, refusals);
    if (!refusals.empty()) return std::nullopt;
    std::optional<Document> document = DocumentMaker(source.text).make(refusals);
    // What is wrong at the very end has no character to point at.
    const auto end = static_cast<std::uint32_t>(source.text.size());
    for (Refusal& refusal : refusals) refusal.place.size = std::min(refusal.place.size, end - refusal.place.begin);
    return document;
}

}  // namespace rakewright
