#include "rule_files.hpp"

#include <algorithm>
#include <filesystem>

#include "embedded.hpp"
#include "read/reader.hpp"

namespace rakewright {
namespace {

Status refuse_at(const Source& source, Place place, std::string sentence, std::string expected, std::string near = {}) {
    Refusal refusal;
    refusal.place = place;
    refusal.sentence = std::move(sentence);
    refusal.expected = std::move(expected);
    refusal.nearest = std::move(near);
    return refuse(source, {refusal});
}

std::string listed(const std::vector<std::string>& names) {
    std::string list;
    for (const std::string& name : names) list += (list.empty() ? "" : ", ") + name;
    return list;
}

/// Reads a file of rules and, if it amends a set, applies it.
Status load_file(const std::string& path, const std::string& name, std::optional<RuleSet>& set) {
    const std::optional<Source> source = read_source(path);
    if (!source) return Status::no_file;
    ReadRules read = read_rules(*source, name);
    if (!read.set) return refuse(*source, read.refusals);
    const Place top{0, 0};
    if (!read.set->amends.empty()) {
        const std::optional<RuleSet> base = rule_set_named(read.set->amends);
        if (!base)
            return refuse_at(*source, top, "there are no rules '" + read.set->amends + "' to amend",
                             "one of " + listed(rule_set_names()), nearest(read.set->amends, rule_set_names()));
        if (base->units != read.set->units)
            return refuse_at(*source, top, "this amends figures of another unit",
                             base->units == Unit::inch ? "`units: in`" : "`units: mm`");
        read.set = amended(*base, *read.set);
    }
    if (const Rule* rule = incomplete_rule(*read.set))
        return refuse_at(*source, rule->id.place, "the rule '" + rule->id.name + "' is not whole",
                         read.set->amends.empty() ? "its `clause`, what it `judges`, and a limit"
                                                  : "the name of a rule that is amended, or the `clause`, what it "
                                                    "`judges` and a limit of a new one");
    if (const Rule* rule = crossed_rule(*read.set))
        return refuse_at(
            *source, rule->id.place, "the rule '" + rule->id.name + "' allows nothing: its least is more than its most",
            read.set->amends.empty()
                ? "a least below the most"
                : "both limits, if the one that is kept of `" + read.set->amends + "` does not go with the new one");
    set = std::move(read.set);
    return Status::done;
}

/// The named sets, each once; `refuse_name` says of a name what is wrong with it.
template <class RefuseName>
LoadedRules loaded(const std::vector<Id>& names, const std::string& folder, const RefuseName& refuse_name) {
    LoadedRules rules;
    for (const Id& id : names) {
        std::optional<RuleSet> set = rule_set_named(id.name);
        const std::string path = (std::filesystem::path(folder) / id.name).string();
        if (std::error_code error; !set && !std::filesystem::exists(path, error)) {
            rules.status = refuse_name(id, "there are no rules '" + id.name + "', nor a file of that name",
                                       "one of " + listed(rule_set_names()) + ", or the path of a local amendment",
                                       nearest(id.name, rule_set_names()));
            return rules;
        }
        if (!set) rules.status = load_file(path, std::filesystem::path(id.name).stem().string(), set);
        if (!set) return rules;
        const auto is_there = [&](const RuleSet& other) { return other.name == set->name; };
        if (std::any_of(rules.sets.begin(), rules.sets.end(), is_there)) {
            rules.status = refuse_name(id, "the rules '" + set->name + "' are named twice", "each once", {});
            return rules;
        }
        rules.sets.push_back(std::move(*set));
    }
    for (std::size_t i = 0; i < rules.sets.size(); ++i) {
        const auto amends = std::find_if(rules.sets.begin(), rules.sets.end(),
                                         [&](const RuleSet& other) { return other.amends == rules.sets[i].name; });
        if (amends == rules.sets.end()) continue;
        rules.status = refuse_name(names[i],
                                   "'" + amends->name + "' amends '" + rules.sets[i].name +
                                       "': named beside it, what it changes would be judged by both",
                                   "the amendment alone: it keeps all that it does not change", {});
        return rules;
    }
    return rules;
}

/// What stands behind a key at the top of a rule set.
std::string heading_of(const std::string& set, const std::string& key) {
    const std::size_t begin = set.find(key + ": ");
    return begin == std::string::npos
               ? ""
               : set.substr(begin + key.size() + 2, set.find('\n', begin) - begin - key.size() - 2);
}

}  // namespace

std::vector<std::string> rule_set_names() {
    std::vector<std::string> names;
    for (const auto& [name, text] : rule_sets) names.push_back(name);
    return names;
}

const std::string* text_of_rule_set(const std::string& name) {
    for (const auto& [set_name, text] : rule_sets)
        if (set_name == name) return &text;
    return nullptr;
}

std::optional<RuleSet> rule_set_named(const std::string& name) {
    const std::string* const text = text_of_rule_set(name);
    return text ? read_rules(source_of(name, *text), name).set : std::nullopt;
}

LoadedRules load_rules(const std::vector<Id>& names, const Source& job, const std::string& folder) {
    const auto refuse_name = [&](const Id& id, std::string sentence, std::string expected, std::string near) {
        return refuse_at(job, id.place, std::move(sentence), std::move(expected), std::move(near));
    };
    return loaded(names, folder, refuse_name);
}

LoadedRules load_rules(const std::vector<std::string>& names) {
    std::vector<Id> ids;
    for (const std::string& name : names) ids.push_back({name, {}});
    const auto refuse_name = [](const Id&, const std::string& sentence, const std::string& expected,
                                const std::string& near) {
        complain("rakewright: " + sentence + (near.empty() ? "" : "; did you mean " + near + "?") +
                 "\nExpected: " + expected + '\n');
        return Status::refused;
    };
    return loaded(ids, {}, refuse_name);
}

std::string words_of_unjudged(const std::vector<RuleSet>& sets) {
    std::string words;
    for (const RuleSet& set : sets) {
        const std::string& published = set.amends.empty() ? set.name : set.amends;
        if (text_of_rule_set(published))
            words += "What " + published +
                     " asks for that is not judged here is listed at the end of\n  rakewright rules " + published +
                     '\n';
    }
    return words;
}

std::vector<ListedRules> list_of_rule_sets() {
    std::vector<ListedRules> list;
    for (const auto& [name, text] : rule_sets)
        list.push_back({name, heading_of(text, "document") + ", " + heading_of(text, "edition")});
    return list;
}

}  // namespace rakewright
