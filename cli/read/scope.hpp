#pragma once

#include <algorithm>
#include <bit>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "../../solver/job.hpp"

namespace rakewright {

/// Names and the index of each, found by hash. For so many names as it was made for.
class Names {
 public:
    explicit Names(std::size_t most = 0) : slots_(most == 0 ? 0 : std::bit_ceil(2 * most)) { names_.reserve(most); }

    /// The index that the name already has, or else the given one, which it has from now on.
    int add(std::string_view name, int index) {
        Slot& slot = slots_[where(name)];
        if (slot.number > 0) return slot.index;
        names_.push_back(name);
        slot = {static_cast<std::uint32_t>(names_.size()), index};
        return index;
    }

    std::optional<int> find(std::string_view name) const {
        if (slots_.empty()) return std::nullopt;
        const Slot& slot = slots_[where(name)];
        return slot.number > 0 ? std::optional(slot.index) : std::nullopt;
    }

    const std::vector<std::string_view>& all() const { return names_; }

    std::size_t letters() const {
        std::size_t count = 0;
        for (const std::string_view name : names_) count += name.size() + 1;
        return count;
    }

 private:
    struct Slot {
        std::uint32_t number = 0;  // among the names, from 1; 0 where none is
        int index = 0;
    };

    std::size_t where(std::string_view name) const {
        std::size_t i = std::hash<std::string_view>()(name) & (slots_.size() - 1);
        while (slots_[i].number > 0 && names_[slots_[i].number - 1] != name) i = (i + 1) & (slots_.size() - 1);
        return i;
    }

    std::vector<Slot> slots_;
    std::vector<std::string_view> names_;
};

/// One key of the text with its value.
struct Entry {
    std::string_view key;
    std::uint32_t key_node = 0;
    std::uint32_t value_node = 0;
    bool asked_for = false;
    bool is_repeated = false;
};

/// A group of keys that is being described, and what was asked of it.
struct Scope {
    std::vector<Entry> entries;
    std::vector<const char*> known;
    std::vector<const char*> missing;
    std::vector<std::pair<std::string_view, std::string>> words_for_missing;  // what such a key may be
    struct Later {
        const char* key;
        const char* about;
    };
    std::vector<Later> later;
    std::vector<const char*> way_keys;  // of ways that were not met, all their keys
    const char* ways_expected = nullptr;
    std::size_t too_many = 0;  // keys more than the fullest of the ways takes
    Place place;               // of the group's own key, or of the list item
    std::string_view id;

    bool has(std::string_view key) const {
        return std::any_of(entries.begin(), entries.end(), [&](const Entry& entry) { return entry.key == key; });
    }

    void clear() {
        entries.clear();
        known.clear();
        missing.clear();
        words_for_missing.clear();
        later.clear();
        way_keys.clear();
        ways_expected = nullptr;
        too_many = 0;
    }
};

}  // namespace rakewright
