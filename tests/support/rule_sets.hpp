#pragma once

#include <fstream>
#include <sstream>
#include <stdexcept>

#include "../../cli/read/reader.hpp"

namespace rakewright::tests {

/// A rule set as its published file says it; throws where there is none or it cannot be read.
inline RuleSet published_rules(const std::string& name) {
    std::ifstream file(std::string(RAKEWRIGHT_FIXTURES) + "/../solver/rule/sets/" + name + ".yaml", std::ios::binary);
    if (!file) throw std::runtime_error("no rule set " + name);
    std::stringstream text;
    text << file.rdbuf();
    ReadRules read = read_rules(source_of(name, text.str()), name);
    if (!read.set) throw std::runtime_error("refused: rule set " + name);
    return *std::move(read.set);
}

}  // namespace rakewright::tests
