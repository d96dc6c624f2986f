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

/// What a screw joins, as the tables call it.
const char* joint_on_paper(Joint joint);

/// Names in one line: all of up to three, else the first three and how many more there are.
std::string some_of(const std::vector<std::string>& names);

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
