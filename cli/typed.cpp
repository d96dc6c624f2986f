#include "typed.hpp"

#include <string_view>

namespace rakewright {
namespace {

std::string trimmed(const std::string& word) {
    const std::size_t begin = word.find_first_not_of(' ');
    return begin == std::string::npos ? std::string() : word.substr(begin, word.find_last_not_of(' ') + 1 - begin);
}

void line(std::string& out, int indent, const char* key, const std::string& value) {
    if (!value.empty()) out += std::string(static_cast<std::size_t>(indent), ' ') + key + ": " + value + '\n';
}

std::string joined(const std::vector<std::string>& words) {
    std::string list;
    for (const std::string& word : words) list += (list.empty() ? "" : ", ") + trimmed(word);
    return list;
}

/// One figure for all steps, or one for each.
void add_steps(std::string& out, const TypedStair& typed) {
    if (typed.rises.size() <= 1 && typed.runs.size() <= 1) {
        line(out, 4, "risers", typed.risers);
        line(out, 4, "rise", joined(typed.rises));
        line(out, 4, "run", joined(typed.runs));
        return;
    }
    const auto of_step = [](const std::vector<std::string>& readings, std::size_t step) {
        return readings.size() == 1     ? trimmed(readings.front())
               : step < readings.size() ? trimmed(readings[step])
                                        : std::string();
    };
    std::size_t steps = std::max(typed.rises.size(), typed.runs.size() + 1);
    if (typed.runs.size() == 1) steps = typed.rises.size();
    out += "    steps:\n";
    for (std::size_t step = 0; step < steps; ++step) {
        out += "      - rise: " + of_step(typed.rises, step) + '\n';
        if (step + 1 < steps || typed.runs.size() == steps) line(out, 8, "run", of_step(typed.runs, step));
    }
}

void add_balls(std::string& out, const TypedStair& typed) {
    if (typed.passed.empty() && typed.stopped.empty()) return;
    out += "    balls:\n";
    const auto add = [&](const std::string& ball, const char* passes) {
        const std::size_t at = ball.find('@');
        out += "      - size: " + trimmed(ball.substr(0, at)) + "\n        passes: " + passes + '\n';
        if (at != std::string::npos) line(out, 8, "tread", trimmed(ball.substr(at + 1)));
    };
    for (const std::string& ball : typed.passed) add(ball, "yes");
    for (const std::string& ball : typed.stopped) add(ball, "no");
}

void add_heights(std::string& out, const std::vector<std::string>& heights) {
    std::string readings;
    for (std::size_t i = 0; i < heights.size(); ++i) {
        const std::string height = trimmed(heights[i]);
        if (!height.empty() && height != "-") readings += "      " + std::to_string(i + 1) + ": " + height + '\n';
    }
    if (!readings.empty()) out += "    heights:\n" + readings;
}

}  // namespace

std::string job_text(const TypedStair& typed) {
    std::string out = "job: One stair as it stands\nunits: " + typed.units + "\n";
    if (!typed.rules.empty()) out += "rules: [" + joined(typed.rules) + "]\n";
    out += "stairs:\n  flight:\n";
    add_steps(out, typed);
    line(out, 4, "nosing", typed.nosing);
    line(out, 4, "wash", typed.wash);
    line(out, 4, "clear_width", typed.clear_width);
    line(out, 4, "headroom", typed.headroom);
    line(out, 4, "drop", typed.drop);
    std::string rail;
    add_heights(rail, typed.heights);
    line(rail, 4, "widest_gap", typed.widest_gap);
    add_balls(rail, typed);
    if (!typed.grip.empty()) rail += "    profile:\n";
    line(rail, 6, "diameter", typed.grip);
    line(rail, 4, "clearance", typed.clearance);
    if (!rail.empty()) out += "as_found:\n  rail:\n    stair: flight\n" + rail;
    return out;
}

std::string typed_remedy(std::string remedy) {
    struct Said {
        const char *key, *option;
    };
    static constexpr Said all[] = {{"`clear_width` of the stair", "--clear-width"},
                                   {"`headroom` of the stair", "--headroom"},
                                   {"`nosing` of the stair, or of each of its `steps`", "--nosing"},
                                   {"`wash` of the stair", "--wash"},
                                   {"`drop` of the stair, section or rail `as_found`", "--drop"},
                                   {"`heights` (over a floor `height`)", "--heights"},
                                   {"`heights`", "--heights"},
                                   {"`widest_gap`", "--widest-gap"},
                                   {"`balls`, each with its `tread`", "--passed or --stopped SIZE@TREAD"},
                                   {"`balls` tried anywhere (no `tread`)", "--passed or --stopped SIZE"},
                                   {"`balls`", "--passed or --stopped"},
                                   {"`profile` of a handrail", "--grip"},
                                   {"`clearance` of a handrail", "--clearance"},
                                   {"`clearance`", "--clearance"}};
    for (const Said& said : all)
        if (const std::size_t at = remedy.find(said.key); at != std::string::npos)
            remedy.replace(at, std::string_view(said.key).size(), said.option);
    const std::size_t first = remedy.find("--");
    if (first == std::string::npos) return remedy + ", in a job file: --print-job prints one to start from";
    // What stands before is another way, for a job file.
    remedy.erase(0, first);
    constexpr std::string_view found = " of a rail `as_found`";
    if (const std::size_t at = remedy.find(found); at != std::string::npos) remedy.erase(at, found.size());
    if (remedy.back() == ',') remedy.pop_back();
    return remedy;
}

std::optional<std::string> TypedStair::miscount() const {
    const std::size_t steps = rises.size() > 1 ? rises.size() : runs.size() > 1 ? runs.size() + 1 : 0;
    if (steps == 0 || risers.empty() || trimmed(risers) == std::to_string(steps)) return std::nullopt;
    return "--risers says " + trimmed(risers) + ", and " +
           (rises.size() > 1
                ? "--rises gives " + std::to_string(steps)
                : "--runs gives " + std::to_string(runs.size()) + ", which are " + std::to_string(steps) + " risers");
}

}  // namespace rakewright
