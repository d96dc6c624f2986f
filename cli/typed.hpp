#pragma once

#include <optional>
#include <string>
#include <vector>

namespace rakewright {

/// One stair and the rail on it, as numbers typed on a command line: each as it was typed, empty where it was not.
struct TypedStair {
    std::string units = "in";
    std::vector<std::string> rules;
    std::string risers, nosing, wash, clear_width, headroom, drop;
    std::vector<std::string> rises, runs;
    std::vector<std::string> heights;  // at nosings 1 and up; empty or `-` where none was read
    std::string widest_gap, grip, clearance;
    std::vector<std::string> passed, stopped;  // balls: a size, or a size and a tread such as 6@3

    bool has_stair() const { return !rises.empty() || !runs.empty() || !risers.empty(); }
    /// Whether one figure stands for all steps, and nothing says how many those are.
    bool lacks_risers() const { return risers.empty() && rises.size() <= 1 && runs.size() <= 1; }
    /// Of a number of risers that is not that of the figures for each step: what is wrong, in words.
    std::optional<std::string> miscount() const;
};

/// The job file that it stands for.
std::string job_text(const TypedStair& typed);

/// What would tell something, said with the options of the command line where it names keys of a job file.
std::string typed_remedy(std::string remedy);

}  // namespace rakewright
