#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "../../solver/job.hpp"

namespace rakewright {

/// A job's text and what it is called. Without a byte order mark: places count from the first character.
struct Source {
    std::string name;
    std::string text;
};

/// The source without the UTF-8 byte order mark that some editors put in front.
Source source_of(std::string name, std::string text);

/// Another place that a refusal speaks of.
struct AlsoHere {
    Place place;
    std::string label;
};

/// Why a job is refused: where, what is the matter, what was expected and the nearest name that would have been known.
/// Only the sentence is always there.
struct Refusal {
    Place place;
    std::string sentence;
    std::string expected;
    std::string nearest;
    std::vector<AlsoHere> also;
};

/// A refusal at so many bytes of the text.
Refusal refusal_at(std::size_t begin, std::size_t size, std::string sentence, std::string expected = {});

/// Refusals in the order of their places, each with its line and a caret under the exact span; at most `most_shown`,
/// then how many more there are. Lines and columns count from 1, columns in characters.
std::string rendered(const Source& source, std::vector<Refusal> refusals, bool colour);
inline constexpr std::size_t most_shown = 100;

/// The names nearest to a word, by how many letters must be put in, left out, changed or swapped: at most a third of
/// them and one. Those that are equally near, at most three, quoted and joined by "or"; empty if none is near.
std::string nearest(std::string_view word, const std::vector<std::string>& names);

/// All names, the nearest to a word first.
std::vector<std::string> nearest_first(std::string_view word, std::vector<std::string> names);

/// A text made fit to be shown in a sentence: cut to 60 characters, nothing in it that a terminal would obey.
std::string shown(std::string_view text);

}  // namespace rakewright
