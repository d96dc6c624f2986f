#include <charconv>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "../../cli/read/reader.hpp"
#include "../support/catch.hpp"

// Every file of fixtures/refused that says in its first line what a person sees wrong with it, as
// "# refused at LINE:COLUMN, CHARACTERS long: words of the sentence", is refused just so, and for nothing else.

namespace rakewright::tests {
namespace {

struct Claim {
    std::size_t line = 0, column = 0, characters = 0;
    std::string words;
};

std::size_t number_at(std::string_view& text, std::string_view behind) {
    std::size_t number = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
    text.remove_prefix(static_cast<std::size_t>(end - text.data()));
    REQUIRE(error == std::errc());
    REQUIRE(text.substr(0, behind.size()) == behind);
    text.remove_prefix(behind.size());
    return number;
}

std::optional<Claim> claim_of(std::string_view text) {
    constexpr std::string_view opening = "# refused at ";
    if (text.substr(0, opening.size()) != opening) return std::nullopt;
    std::string_view line = text.substr(opening.size(), text.find_first_of("\r\n") - opening.size());
    Claim claim;
    claim.line = number_at(line, ":");
    claim.column = number_at(line, ", ");
    claim.characters = number_at(line, " long: ");
    claim.words = line;
    return claim;
}

/// Counted here as the claims are, without the code under test.
std::size_t characters_in(std::string_view text) {
    std::size_t count = 0;
    for (const char c : text) count += (static_cast<unsigned char>(c) & 0xC0) != 0x80 ? 1 : 0;
    return count;
}

std::string whole(const std::filesystem::path& path) {
    std::ifstream file(path, std::ios::binary);
    std::stringstream text;
    text << file.rdbuf();
    return text.str();
}

void check(const Claim& claim, const Source& source) {
    const ReadJob result = read_job(source);
    CHECK_FALSE(result.job);
    REQUIRE(result.refusals.size() == 1);
    const Refusal& refusal = result.refusals.front();
    const std::string_view text = source.text, before = text.substr(0, refusal.place.begin);
    const std::size_t line = before.rfind('\n') + 1;  // npos + 1 is 0
    CHECK(static_cast<std::size_t>(std::count(before.begin(), before.end(), '\n')) + 1 == claim.line);
    CHECK(characters_in(before.substr(line)) + 1 == claim.column);
    CHECK(characters_in(text.substr(refusal.place.begin, refusal.place.size)) == claim.characters);
    CHECK_THAT(refusal.sentence, Catch::Matchers::Contains(claim.words));
    const std::string place =
        source.name + ':' + std::to_string(claim.line) + ':' + std::to_string(claim.column) + ": " + refusal.sentence;
    CHECK(rendered(source, result.refusals, false).substr(0, place.size()) == place);
}

}  // namespace

TEST_CASE("each file with one mistake is refused where a person sees it, and for nothing else", "[read]") {
    int claims = 0;
    for (const auto& entry :
         std::filesystem::directory_iterator(std::filesystem::path(RAKEWRIGHT_FIXTURES) / "refused")) {
        const std::string text = whole(entry.path());
        const std::optional<Claim> claim = claim_of(text);
        if (!claim) continue;
        ++claims;
        INFO(entry.path().filename().string());
        check(*claim, source_of(entry.path().filename().string(), text));
    }
    CHECK(claims >= 60);
}

}  // namespace rakewright::tests
