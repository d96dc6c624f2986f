#pragma once

#include <cstring>
#include <string>
#include <vector>

#include "../../solver/solution_sheet.hpp"

namespace rakewright::tests {

/// One result of a solution: where it stands, what kind it is, and its value.
struct Result {
    enum class Kind { word, length, number, slope, count };
    std::string where;
    Kind kind = Kind::number;
    double value = 0;
    std::string word;
};

/// Writes down every result that a solution shows.
class EveryResult : public Sheet {
 public:
    std::vector<Result> results;

    void word(const char* key, std::string_view value, const char*) override {
        results.push_back({at(key), Result::Kind::word, 0, std::string(value)});
    }
    void length(const char* key, std::optional<double> value, const char*) override {
        put(key, Result::Kind::length, value);
    }
    void number(const char* key, std::optional<double> value, const char*) override {
        put(key, Result::Kind::number, value);
    }
    void angle(const char* key, std::optional<double> slope, const char*) override {
        put(key, Result::Kind::slope, slope);
    }
    void over_square(const char* key, double slope, const char*) override { put(key, Result::Kind::slope, slope); }
    void count(const char* key, std::optional<int> value, const char*) override {
        put(key, Result::Kind::count, value ? std::optional<double>(*value) : std::nullopt);
    }
    void truth(const char* key, bool value, const char*) override {
        results.push_back({at(key), Result::Kind::word, 0, value ? "true" : "false"});
    }
    void lengths(const char* key, const std::vector<double>& values, const char*) override {
        for (std::size_t i = 0; i < values.size(); ++i) put(key + numbered(i), Result::Kind::length, values[i]);
    }
    void counts(const char* key, const std::vector<int>& values, const char*) override {
        for (std::size_t i = 0; i < values.size(); ++i) put(key + numbered(i), Result::Kind::count, values[i]);
    }
    void named(const char* key, std::size_t count, const std::function<std::string_view(std::size_t)>&, const char*,
               const std::function<void(Sheet&, std::size_t)>& describe_one) override {
        each(key, count, "", describe_one);
    }

 protected:
    void group(const char* key, const char*, const std::function<void(Sheet&)>& body) override {
        within_part(key, [&] { body(*this); });
    }
    void each(const char* key, std::size_t count, const char*,
              const std::function<void(Sheet&, std::size_t)>& body) override {
        for (std::size_t i = 0; i < count; ++i) within_part(key + numbered(i), [&] { body(*this, i); });
    }

 private:
    static std::string numbered(std::size_t i) { return "[" + std::to_string(i) + "]"; }
    std::string at(const std::string& key) const { return path_ + key; }
    void put(const std::string& key, Result::Kind kind, std::optional<double> value) {
        if (value) results.push_back({at(key), kind, *value, {}});
    }
    template <class Body>
    void within_part(const std::string& key, const Body& body) {
        const std::string before = path_;
        path_ += key + ".";
        body();
        path_ = before;
    }

    std::string path_;
};

inline std::vector<Result> every_result(const Job& job, const Solution& solution) {
    EveryResult sheet;
    describe(sheet, job, solution);
    return sheet.results;
}

inline bool same_bits(double a, double b) { return std::memcmp(&a, &b, sizeof a) == 0; }

}  // namespace rakewright::tests
