#pragma once

#include <functional>
#include <optional>
#include <string_view>
#include <vector>

namespace rakewright {

/// Whoever goes through the results: a writer of JSON, a glossary that explains them. Each struct of a solution is
/// described by one function, `describe(Sheet&, ...)`, that calls these verbs in the order in which the results are
/// shown. A value that does not apply is none. Keys and meanings are string literals.
class Sheet {
 public:
    virtual ~Sheet() = default;

    virtual void word(const char* key, std::string_view value, const char* about) = 0;
    virtual void length(const char* key, std::optional<double> value, const char* about) = 0;
    /// A plain number: a ratio.
    virtual void number(const char* key, std::optional<double> value, const char* about) = 0;
    /// An angle by its slope; shown in degrees, its magnitude.
    virtual void angle(const char* key, std::optional<double> slope, const char* about) = 0;
    /// An angle by the slope of what it is over a right angle; shown in degrees.
    virtual void over_square(const char* key, double slope, const char* about) = 0;
    virtual void count(const char* key, std::optional<int> value, const char* about) = 0;
    virtual void truth(const char* key, bool value, const char* about) = 0;
    /// Lists; an empty one is left out.
    virtual void lengths(const char* key, const std::vector<double>& values, const char* about) = 0;
    virtual void counts(const char* key, const std::vector<int>& values, const char* about) = 0;

    /// A group of results under one key.
    template <class Describe>
    void part(const char* key, const char* about, Describe describe_it) {
        group(key, about, [&](Sheet& sheet) { describe_it(sheet); });
    }

    /// A list of groups; an empty one is left out. `describe_one` is called for each of `values`.
    template <class Values, class Describe>
    void list(const char* key, const Values& values, const char* about, Describe describe_one) {
        each(key, values.size(), about, [&](Sheet& sheet, std::size_t i) { describe_one(sheet, values[i]); });
    }

    /// Groups under the names that the job gives them; `describe_one` is called with the index.
    virtual void named(const char* key, std::size_t count, const std::function<std::string_view(std::size_t)>& name,
                       const char* about, const std::function<void(Sheet&, std::size_t)>& describe_one) = 0;

 protected:
    virtual void group(const char* key, const char* about, const std::function<void(Sheet&)>& body) = 0;
    virtual void each(const char* key, std::size_t count, const char* about,
                      const std::function<void(Sheet&, std::size_t)>& body) = 0;
};

}  // namespace rakewright
