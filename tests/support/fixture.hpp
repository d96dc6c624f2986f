#pragma once

#include <algorithm>
#include <charconv>
#include <fstream>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace rakewright::tests {

/// A number as printed, read without the code under test and in no country's manner.
inline double printed_number(std::string_view text) {
    double number = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
    if (error != std::errc() || end != text.data() + text.size())
        throw std::runtime_error("no number: " + std::string(text));
    return number;
}

/// The whole numbers of a reading such as "30-35".
inline std::vector<int> printed_parts(std::string_view text) {
    std::vector<int> parts;
    for (std::size_t from = 0; from <= text.size();) {
        const std::size_t to = std::min(text.find('-', from), text.size());
        parts.push_back(static_cast<int>(printed_number(text.substr(from, to - from))));
        from = to + 1;
    }
    return parts;
}

/// A line of a published table: who printed it, what went in, what came out, how near we must come and why.
struct PublishedRow {
    std::string source, inputs, printed, unit;
    double tolerance = 0;
    std::string why;
    bool misprint = false;
};

/// The fields of one line of comma-separated values (RFC 4180, no line breaks inside quotes).
inline std::vector<std::string> fields_of(std::string_view line) {
    std::vector<std::string> fields(1);
    bool quoted = false;
    for (std::size_t i = 0; i < line.size(); ++i) {
        if (line[i] == '"' && quoted && i + 1 < line.size() && line[i + 1] == '"') {
            fields.back() += line[i++];
        } else if (line[i] == '"') {
            quoted = !quoted;
        } else if (line[i] == ',' && !quoted) {
            fields.emplace_back();
        } else {
            fields.back() += line[i];
        }
    }
    return fields;
}

/// The lines of a table in fixtures/published; throws where the table is not there or a line is not whole.
inline std::vector<PublishedRow> published_table(const std::string& name) {
    std::ifstream file(std::string(RAKEWRIGHT_FIXTURES) + "/published/" + name);
    std::string line;
    if (!std::getline(file, line) || line != "source,inputs,printed,unit,tolerance,why,misprint")
        throw std::runtime_error("no such table: " + name);
    std::vector<PublishedRow> rows;
    while (std::getline(file, line)) {
        const std::vector<std::string> f = fields_of(line);
        if (f.size() != 7 || (f[6] != "yes" && f[6] != "no")) throw std::runtime_error("not whole: " + line);
        rows.push_back({f[0], f[1], f[2], f[3], printed_number(f[4]), f[5], f[6] == "yes"});
    }
    return rows;
}

}  // namespace rakewright::tests
