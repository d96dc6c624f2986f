#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "bytes.hpp"

namespace rakewright {

/// More limits of a job's text.
inline constexpr std::size_t longest_value = 4096;
inline constexpr std::size_t most_nodes = 4'000'000;
inline constexpr int deepest = 32;

/// One value of the text: a map of keys and values in turn, a list, or a word.
struct Node {
    enum class Kind : std::uint8_t { map, list, word, quoted, null };
    std::uint32_t begin = 0;
    std::uint32_t size : 29;
    std::uint32_t kind_bits : 3;
    std::uint32_t next = 0;  // the sibling behind it; 0 for none
    std::uint32_t child =
        0;  // of a map or list: the first one; of a quoted word with escapes: its number among the values, from 1

    Kind kind() const { return static_cast<Kind>(kind_bits); }
    Place place() const { return {begin, size}; }
};

/// The nodes of a text in the order in which they stand there; the first is the root, a map. Holds on to the text.
class Document {
 public:
    explicit Document(std::string_view text) : text_(text) {}

    const Node& node(std::uint32_t index) const { return nodes_[index]; }
    /// A word's value, without its quotes.
    std::string_view value(const Node& node) const;
    /// What stands at a place.
    std::string_view text_at(Place place) const { return text_.substr(place.begin, place.size); }
    /// How many keys a map has; 0 of anything else.
    std::size_t pairs_in(const Node& node) const;
    /// Whether a colon stands behind a key, on its line.
    bool has_colon(std::uint32_t key) const;

 private:
    friend class DocumentMaker;
    std::string_view text_;
    std::vector<Node> nodes_;
    std::vector<std::string> values_;
};

/// Reads one YAML document of plain maps, lists and words. Refuses what would be read otherwise than it looks: bytes
/// that are no UTF-8, control characters, more than one document, quotes and brackets that are not closed, anchors,
/// aliases and tags, words over several lines, and any text that the parser would pass over.
std::optional<Document> read_document(const Source& source, std::vector<Refusal>& refusals);

}  // namespace rakewright
