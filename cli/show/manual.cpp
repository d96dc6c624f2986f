#include "manual.hpp"

#include <algorithm>
#include <set>

#include "../../solver/job_form.hpp"
#include "../../solver/solution_sheet.hpp"
#include "page.hpp"

namespace rakewright {
namespace {

std::string range_words(Range range) {
    switch (range) {
        case Range::any: return "length";
        case Range::not_negative: return "length, not negative";
        case Range::positive: return "length, more than 0";
    }
    return "length";
}

std::string counts_words(Counts range) { return std::to_string(range.least) + " to " + std::to_string(range.most); }

/// Lists the keys of one group, and after it the groups in it.
class ManualForm : public Form {
 public:
    ManualForm(std::string path, std::string& out) : path_(std::move(path)), out_(out) {}

    Unit unit() const override { return Unit::inch; }
    void about(const char* text) override { about_ = text; }
    void id(Id&) override {}
    void place(Place&) override {}

    void text(const char* key, std::string&, Need need, const char* about) override {
        row(key, "text", need, {}, about);
    }
    void length(const char* key, Reading& value, Range range, Need need, const char* about) override {
        row(key, range_words(range), need, exact(value.value), about);
    }
    void length(const char* key, std::optional<Reading>&, Range range, const char* about) override {
        row(key, range_words(range), may_be_left_out, {}, about);
    }
    void angle(const char* key, AngleReading&, Counts range, Need need, const char* about) override {
        row(key, "angle, " + counts_words(range), need, "0", about);
    }
    void angle(const char* key, std::optional<AngleReading>&, Counts range, const char* about) override {
        row(key, "angle, " + counts_words(range), may_be_left_out, {}, about);
    }
    void count(const char* key, Count& value, Counts range, Need need, const char* about) override {
        row(key, "number, " + counts_words(range), need, std::to_string(value.value), about);
    }
    void count(const char* key, std::optional<Count>&, Counts range, const char* about) override {
        row(key, "number, " + counts_words(range), may_be_left_out, {}, about);
    }
    void name_of(Kind kind, const char* key, Ref&, Need need, const char* about) override {
        static constexpr const char* words[] = {"a stair", "a post", "a build", "a floor"};
        row(key, std::string("name of ") + words[static_cast<std::size_t>(kind)], need, {}, about);
    }
    void written(const char* key, Grammar& grammar, Need need, const char* about) override {
        row(key, grammar.expected(), need, grammar.default_text(), about);
    }
    void lengths(const char* key, std::vector<Reading>&, Range range, Counts how_many, Need need,
                 const char* about) override {
        row(key, range_words(range) + ", or a list of up to " + std::to_string(how_many.most), need, {}, about);
    }
    void texts(const char* key, std::vector<Id>&, int most, const char* about) override {
        row(key, "text, or a list of up to " + std::to_string(most), may_be_left_out, {}, about);
    }
    void numbered(const char* key, std::vector<Numbered>&, Range range, int, const char* about) override {
        row(key, "numbers, each with a " + range_words(range), may_be_left_out, {}, about);
    }
    void ways(std::initializer_list<std::initializer_list<const char*>>, const char* expected) override {
        notes_ += std::string("- Expected: ") + expected + ".\n";
    }
    void later(const char* key, const char* about) override {
        notes_ += std::string("- Later: `") + key + "`, " + about + ".\n";
    }
    void later_as(const char* key, const char* written, const char* about) override {
        notes_ += std::string("- Later: `") + key + "` as " + written + ", " + about + ".\n";
    }

    void finish() {
        out_ += "\n## " + (path_.empty() ? std::string("The job") : "`" + path_ + "`") + "\n\n" + about_ + "\n\n" +
                "| key | value | if left out | meaning |\n| --- | --- | --- | --- |\n" + rows_;
        if (!notes_.empty()) out_ += '\n' + notes_;
        out_ += inner_;
    }

 protected:
    void word(const char* key, int& index, std::initializer_list<Word> words, Need need, const char* about) override {
        row(key, values(words), need, index < 0 ? "" : (words.begin() + index)->text, meaning(words, about));
    }
    void word_or_group(const char* key, int& index, std::initializer_list<Word> words, const char* about,
                       const Body& body) override {
        row(key, values(words) + ", or keys, below", may_be_left_out, (words.begin() + index)->text,
            meaning(words, about));
        describe_inner(key, body);
    }
    void group(const char* key, Need need, const char* about, const Body& body) override {
        row(key, "keys, below", need, {}, about);
        describe_inner(key, body);
    }
    void written_or_group(const char* key, Grammar& grammar, const char* about, const Body& body) override {
        row(key, grammar.expected() + std::string(", or keys, below"), may_be_left_out, {}, about);
        describe_inner(key, body);
    }
    void each(const char* key, Counts, Need need, const char* about, const Body& body) override {
        row(key, "list of keys, below", need, {}, about);
        describe_inner(std::string(key) + "[]", body);
    }
    void each_named(const char* key, int, Need need, const char* about, const Body& body) override {
        row(key, "names, with keys, below", need, {}, about);
        describe_inner(std::string(key) + ".NAME", body);
    }

 private:
    static std::string values(std::initializer_list<Word> words) {
        std::string values;
        for (const Word& word : words) values += (values.empty() ? "`" : ", `") + std::string(word.text) + "`";
        return values;
    }

    static std::string meaning(std::initializer_list<Word> words, const char* about) {
        std::string meaning = about;
        for (const Word& word : words) meaning += std::string("; `") + word.text + "`: " + word.about;
        return meaning;
    }

    void row(const char* key, const std::string& value, Need need, const std::string& usual, const std::string& about) {
        const std::string left_out = need == be_given ? "must be given" : usual.empty() ? "-" : "`" + usual + "`";
        rows_ += std::string("| `") + key + "` | " + value + " | " + left_out + " | " + about + " |\n";
    }

    void describe_inner(const std::string& key, const Body& body) {
        ManualForm form(path_.empty() ? key : path_ + "." + key, inner_);
        body(form);
        form.finish();
    }

    std::string path_, about_, rows_, notes_, inner_;
    std::string& out_;
};

/// Lists each key of the results once, under its path.
class ManualSheet : public Sheet {
 public:
    explicit ManualSheet(std::string& out) : out_(out) {}

    void word(const char* key, std::string_view, const char* about) override { row(key, "word", about); }
    void length(const char* key, std::optional<double>, const char* about) override { row(key, "length", about); }
    void number(const char* key, std::optional<double>, const char* about) override { row(key, "number", about); }
    void angle(const char* key, std::optional<double>, const char* about) override { row(key, "degrees", about); }
    void over_square(const char* key, double, const char* about) override { row(key, "degrees", about); }
    void count(const char* key, std::optional<int>, const char* about) override { row(key, "count", about); }
    void lengths(const char* key, const std::vector<double>&, const char* about) override {
        row(key, "lengths", about);
    }
    void counts(const char* key, const std::vector<int>&, const char* about) override { row(key, "counts", about); }
    void named(const char* key, std::size_t count, const std::function<std::string_view(std::size_t)>&,
               const char* about, const std::function<void(Sheet&, std::size_t)>& describe_one) override {
        under(std::string(key) + ".NAME", "by name", about, count, describe_one);
    }

 protected:
    void group(const char* key, const char* about, const std::function<void(Sheet&)>& body) override {
        under(key, "group", about, 1, [&](Sheet& sheet, std::size_t) { body(sheet); });
    }
    void each(const char* key, std::size_t count, const char* about,
              const std::function<void(Sheet&, std::size_t)>& body) override {
        under(std::string(key) + "[]", "list", about, count, body);
    }

 private:
    void row(const std::string& key, const char* kind, const char* about) {
        if (seen_.insert(path_ + key).second) out_ += "| `" + path_ + key + "` | " + kind + " | " + about + " |\n";
    }

    template <class Body>
    void under(const std::string& key, const char* kind, const char* about, std::size_t count, const Body& body) {
        row(key, kind, about);
        const std::string before = path_;
        path_ += key + ".";
        for (std::size_t i = 0; i < count; ++i) body(*this, i);
        path_ = before;
    }

    std::string& out_;
    std::string path_;
    std::set<std::string> seen_;
};

}  // namespace

std::string job_manual() {
    Job scratch;
    std::string out =
        "# The job file\n\n"
        "A job is one YAML document in UTF-8: maps, lists and words, each on one line; no anchors, aliases or tags. "
        "`rakewright example` prints "
        "one that solves, `rakewright schema` a JSON Schema for editors; this page is what `rakewright keys` "
        "prints.\n\n"
        "**Lengths.** A bare number is in the job's `units`. A text may say its own: `7 3/4`, `7-3/4\"`, `5' 2 3/8\"`, "
        "`5ft 2-3/8in`, `184 mm`, "
        "`18.4 cm`, `1.2 m`. No length is larger than 1,000,000 or, but for 0, smaller than a millionth.\n\n"
        "**Angles.** Degrees (`33.4`, `8 1/2`), or a slope, so much in so much: `7 1/4 in 11`, `1/4 in 48`.\n\n"
        "**Names** of stairs, floors, posts, builds and sections are your own, 1 to 64 characters.\n\n"
        "**Where things stand.** Each stair has its own axes: level from the first (lowest) nosing, uphill positive; "
        "plumb from the floor at "
        "the foot; left as seen by a person walking up. A section runs from its `from` end to its `to` end; left and "
        "right are "
        "seen that way.\n\n"
        "**Limits.** 64 MiB of text, lines of 64 KiB, 4,000,000 values, 32 levels; 1000 steps, 20 members a group, "
        "100,000 of each "
        "named thing, 10,000 pickets a section. What is beyond is refused.\n";
    ManualForm form({}, out);
    describe(form, scratch);
    form.finish();
    return out;
}

std::string results_manual(const Job& job, const Solution& solution, const Verdicts& verdicts) {
    std::string out =
        "# The results\n\n"
        "What `rakewright solve JOB --format json` writes; this page is what `rakewright results` prints. Lengths are "
        "in the job's unit, "
        "angles in degrees, both in full precision; a key that does not apply is left out; lists keep the order of the "
        "job. NAME stands for "
        "the job's own names.\n\n"
        "| key | kind | meaning |\n| --- | --- | --- |\n";
    ManualSheet sheet(out);
    describe(sheet, job, solution);
    describe(sheet, verdicts);
    out += "| `notes[]` | list | what somebody should know: `section` where it is about one, and `text` |\n";
    return out;
}

}  // namespace rakewright
