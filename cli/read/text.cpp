#include "text.hpp"

#include <yaml-cpp/depthguard.h>
#include <yaml-cpp/eventhandler.h>
#include <yaml-cpp/exceptions.h>
#include <yaml-cpp/mark.h>
#include <yaml-cpp/parser.h>

#include <algorithm>
#include <istream>
#include <streambuf>

namespace rakewright {
namespace {

/// Thrown by our handler through the parser, which has no other way to be stopped; it never leaves this file.
struct Stop {
    Refusal refusal;
};

Refusal at(std::size_t begin, std::size_t size, std::string sentence, std::string expected = {}) {
    return {{static_cast<std::uint32_t>(begin), static_cast<std::uint32_t>(size)},
            std::move(sentence),
            std::move(expected),
            {},
            {}};
}

/// How many bytes the UTF-8 character that starts here takes; 0 if it is none (RFC 3629: no overlong forms, no
/// surrogates).
std::size_t character_at(std::string_view text, std::size_t i) {
    const auto byte = [&](std::size_t k) { return i + k < text.size() ? static_cast<unsigned char>(text[i + k]) : 0u; };
    const auto follows = [&](std::size_t k, unsigned low = 0x80, unsigned high = 0xBF) {
        return byte(k) >= low && byte(k) <= high;
    };
    const unsigned lead = byte(0);
    if (lead < 0x80) return 1;
    if (lead >= 0xC2 && lead <= 0xDF) return follows(1) ? 2 : 0;
    if (lead >= 0xE0 && lead <= 0xEF)
        return follows(1, lead == 0xE0 ? 0xA0 : 0x80, lead == 0xED ? 0x9F : 0xBF) && follows(2) ? 3 : 0;
    if (lead >= 0xF0 && lead <= 0xF4)
        return follows(1, lead == 0xF0 ? 0x90 : 0x80, lead == 0xF4 ? 0x8F : 0xBF) && follows(2) && follows(3) ? 4 : 0;
    return 0;
}

/// What is wrong with the bytes, the first of each line at most.
void scan_bytes(std::string_view text, std::vector<Refusal>& refusals) {
    if (text.size() > largest_job) {
        refusals.push_back(at(0, 0, "the job is larger than " + std::to_string(largest_job >> 20) + " MiB"));
        return;
    }
    std::size_t line = 0;
    const auto skip_line = [&](std::size_t from) { return std::min(text.find('\n', from), text.size()); };
    for (std::size_t i = 0; i < text.size();) {
        const char c = text[i];
        if (c == '\n') {
            line = ++i;
            continue;
        }
        if (i - line > longest_line) {
            refusals.push_back(at(i, 1, "the line is longer than " + std::to_string(longest_line) + " bytes",
                                  "one key or list item a line"));
            i = skip_line(i);
            continue;
        }
        const std::size_t size = character_at(text, i);
        const bool control = (static_cast<unsigned char>(c) < 0x20 && c != '\t' &&
                              !(c == '\r' && i + 1 < text.size() && text[i + 1] == '\n')) ||
                             c == 0x7f;
        if (size == 0) {
            refusals.push_back(at(i, 1, "these bytes are not UTF-8 text", "a text file saved as UTF-8"));
        } else if (control) {
            refusals.push_back(at(i, 1, "a control character stands here", "a plain text file"));
        } else if (c == '%' && i == line) {
            refusals.push_back(
                at(i, 1, "a line may not start with '%'", "no YAML directives; quote a text that starts so"));
        } else {
            i += size;
            continue;
        }
        i = skip_line(i);
    }
}

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
        document_.nodes_.reserve(text.size() / 6 + 16);
    }

    std::optional<Document> make(std::vector<Refusal>& refusals) {
        TextBuffer buffer(text_);
        std::istream stream(&buffer);
        try {
            YAML::Parser parser(stream);
            if (!parser.HandleNextDocument(*this) || document_.nodes_.empty())
                throw Stop{at(0, 0, "the job is empty", "a map with `units`, `builds` and `sections`")};
            second_ = true;
            parser.HandleNextDocument(*this);
            check_nothing_was_passed_over();
            if (document_.nodes_.front().kind() != Node::Kind::map)
                throw Stop{at(document_.nodes_.front().begin, document_.nodes_.front().size,
                              "the job is not a map of keys", "`key: value` lines at the top level")};
            return std::move(document_);
        } catch (const Stop& stop) {
            refusals.push_back(stop.refusal);
        } catch (const YAML::DeepRecursion& deep) {
            refusals.push_back(at(position(deep.mark), 1, "it is nested too deeply"));
        } catch (const YAML::Exception& error) {
            refusals.push_back(explained(error));
        }
        return std::nullopt;
    }

    void OnDocumentStart(const YAML::Mark& mark) override {
        if (second_) throw Stop{at(position(mark), 3, "a second document starts here", "one job a file")};
    }
    void OnDocumentEnd() override {}

    void OnNull(const YAML::Mark& mark, YAML::anchor_t anchor) override {
        check_anchor(mark, anchor);
        add(Node::Kind::null, last_end_, 0);
    }

    void OnAlias(const YAML::Mark& mark, YAML::anchor_t) override {
        throw Stop{at(position(mark), 1, "an alias stands here",
                      "the value itself, written out; quote a text that starts with '*'")};
    }

    void OnScalar(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                  const std::string& value) override {
        check_anchor(mark, anchor);
        check_tag(mark, tag);
        const std::size_t begin = position(mark);
        const char first = begin < text_.size() ? text_[begin] : ' ';
        if (value.size() > longest_value)
            throw Stop{at(begin, 1, "the value is longer than " + std::to_string(longest_value) + " bytes")};
        if (first == '"' || first == '\'') {
            add_quoted(begin, value);
            return;
        }
        if (text_.compare(begin, value.size(), value) != 0) throw several_lines(begin);
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
            throw Stop{at(position(mark), 1, "an anchor stands here",
                          "no anchors or aliases; quote a text that starts with '&'")};
    }

    void check_tag(const YAML::Mark& mark, const std::string& tag) const {
        if (!tag.empty() && tag != "?" && tag != "!")
            throw Stop{at(position(mark), 1, "a tag stands here", "no tags; quote a text that starts with '!'")};
    }

    /// A plain text that goes on in the next line: most often a bracket that is not closed.
    Stop several_lines(std::size_t begin) const {
        Stop stop{at(begin, 1, "a text goes over several lines", "a value on one line")};
        if (const std::optional<std::size_t> bracket = open_bracket())
            stop.refusal.also.push_back({{static_cast<std::uint32_t>(*bracket), 1}, "is the bracket closed that opens here"});
        return stop;
    }

    void add_quoted(std::size_t begin, const std::string& value) {
        const std::optional<std::size_t> end = closing_quote(text_, begin);
        if (!end) throw Stop{at(begin, 1, "this quote is not closed", "the same quote again, on the same line")};
        const std::string_view inside = text_.substr(begin + 1, *end - begin - 1);
        if (inside.find('\n') != std::string_view::npos)
            throw Stop{at(begin, 1, "a quoted text goes over several lines; is this quote closed where it should be?",
                          "a value on one line")};
        add(Node::Kind::quoted, begin, *end + 1 - begin);
        if (inside == value) return;
        document_.values_.push_back(value);
        document_.nodes_.back().child = static_cast<std::uint32_t>(document_.values_.size());
    }

    void open(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor, Node::Kind kind) {
        check_anchor(mark, anchor);
        check_tag(mark, tag);
        if (open_.size() >= static_cast<std::size_t>(deepest))
            throw Stop{at(position(mark), 1, "it is nested deeper than " + std::to_string(deepest) + " levels")};
        add(kind, position(mark), 1);
        open_.push_back({static_cast<std::uint32_t>(document_.nodes_.size() - 1), 0});
    }

    void add(Node::Kind kind, std::size_t begin, std::size_t size) {
        std::vector<Node>& nodes = document_.nodes_;
        if (nodes.size() >= most_nodes)
            throw Stop{at(begin, 1, "there are more than " + std::to_string(most_nodes) + " values")};
        const auto index = static_cast<std::uint32_t>(nodes.size());
        Node node{};
        node.begin = static_cast<std::uint32_t>(begin);
        node.size = static_cast<std::uint32_t>(size) & 0x1FFFFFFFu;
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
        // A quote that opens near by and never closes is what people mistype most.
        for (std::size_t i = last_end_; i < std::min(where + 1, text_.size()); ++i)
            if ((text_[i] == '"' || text_[i] == '\'') && !closing_quote(text_, i))
                return at(i, 1, "this quote is not closed", "the same quote again, on the same line");
        if (const std::optional<std::size_t> bracket = open_bracket()) {
            const bool rest_is_blank = text_.find_first_not_of(" \t\r\n", where) == std::string_view::npos;
            if (rest_is_blank)
                return at(*bracket, 1, "this bracket is not closed", text_[*bracket] == '{' ? "a `}`" : "a `]`");
            Refusal refusal = at(where, 1, "this is not YAML: " + error.msg);
            refusal.also.push_back({{static_cast<std::uint32_t>(*bracket), 1}, "inside the bracket that opens here"});
            return refusal;
        }
        return at(where, 1, "this is not YAML: " + error.msg);
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
        for (std::size_t i = from; i < to; ++i) {
            if (text_[i] == '#' && (i == 0 || text_[i - 1] == ' ' || text_[i - 1] == '\t' || text_[i - 1] == '\n')) {
                i = std::min(text_.find('\n', i), text_.size());
            } else if (std::string_view(" \t\r\n{}[],:-?.").find(text_[i]) == std::string_view::npos) {
                const std::size_t end = std::min(text_.find_first_of(" \t\r\n", i), text_.size());
                throw Stop{at(i, end - i, "this stands where no value can be",
                              "`key: value`, one on each line, or in brackets with commas between")};
            }
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

std::optional<Document> read_document(const Source& source, std::vector<Refusal>& refusals) {
    scan_bytes(source.text, refusals);
    if (!refusals.empty()) return std::nullopt;
    return DocumentMaker(source.text).make(refusals);
}

}  // namespace rakewright
