#pragma once

#include <string>
#include <vector>

#include "../solver/solution.hpp"

namespace rakewright {

/// A finding in words: what is the matter, and what to do about it.
struct Told {
    std::string sentence;
    std::string remedy;
};

/// Any finding of this job in words. Lengths are shown as its tape shows them.
Told tell(const Job& job, const Finding& finding);

/// What somebody should know about a job that was solved, in the order of its sections: `section` is empty where it is
/// about none.
struct Note {
    std::string section;
    std::string text;
};
std::vector<Note> notes_of(const Job& job, const Solution& solution);

}  // namespace rakewright
