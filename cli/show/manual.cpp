#include "manual.hpp"

#include <algorithm>
#include <set>

#include "../../solver/check/verdict_sheet.hpp"
#include "../../solver/job_form.hpp"
#include "../../solver/rule/rule_form.hpp"
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
    ManualForm(std::string path, std::string& out, std::string top = "The job")
        : path_(std::move(path)), top_(std::move(top)), out_(out) {}

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
    void angle(const char* key, AngleReading& value, Counts range, Need need, const char* about) override {
        row(key, "angle, " + counts_words(range), need, exact(degrees(value.angle)), about);
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
        static constexpr const char* words[] = {"a stair", "a post", "a build", "a floor", "a post fixing"};
        row(key, std::string("name of ") + words[static_cast<std::size_t>(kind)], need, {}, about);
    }
    void written(const char* key, Grammar& grammar, Need need, const char* about) override {
        row(key, grammar.expected(), need, grammar.default_text(), about);
    }
    void lengths(const char* key, std::vector<Reading>&, Range range, Counts how_many, Need need,
                 const char* about) override {
        row(key, range_words(range) + ", or a list of up to " + std::to_string(how_many.most), need, {}, about);
    }
    void written_or_lengths(const char* key, Grammar& grammar, std::vector<Reading>&, Range, Counts how_many, Need need,
                            const char* about) override {
        row(key, grammar.expected() + std::string(", or a list of ") + std::to_string(how_many.most), need, {}, about);
    }
    void numbers(const char* key, std::vector<Reading>&, Counts how_many, const char* about) override {
        row(key, "number more than 0, or a list of up to " + std::to_string(how_many.most), may_be_left_out, {}, about);
    }
    void number(const char* key, Reading& value, Need need, const char* about) override {
        row(key, "number more than 0", need, value.value > 0 ? exact(value.value) : std::string(), about);
    }
    void part_of_one(const char* key, Reading& value, Need need, const char* about) override {
        row(key, "number more than 0 and less than 1", need, exact(value.value), about);
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

    void finish() {
        out_ += "\n## " + (path_.empty() ? top_ : "`" + path_ + "`") + "\n\n" + about_ + "\n\n" +
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

    /// Groups that follow each other and have the same keys are one: two by both names, more as `only_if.*`.
    void describe_inner(const std::string& key, const Body& body) {
        const std::string parent = path_.empty() ? "" : path_ + ".";
        std::string text;
        ManualForm form(parent + key, text);
        body(form);
        form.finish();
        const std::size_t heading = text.find("\n\n", 1);
        if (last_inner_ != std::string::npos && inner_.compare(last_keys_, std::string::npos, text, heading) == 0) {
            const std::string first = inner_.substr(last_inner_, last_keys_ - last_inner_);
            const bool second = first.find('*') == std::string::npos && first.find(',') == std::string::npos;
            const std::string all = second ? first + ", `" + parent + key + "`" : "\n## `" + parent + "*`";
            inner_.replace(last_inner_, last_keys_ - last_inner_, all);
            last_keys_ = last_inner_ + all.size();
            return;
        }
        last_inner_ = inner_.size();
        last_keys_ = last_inner_ + heading;
        inner_ += text;
    }

    std::string path_, top_, about_, rows_, notes_, inner_;
    std::size_t last_inner_ = std::string::npos, last_keys_ = 0;  // of the group added last: where it begins, its keys
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
    void truth(const char* key, bool, const char* about) override { row(key, "true or false", about); }
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
        "**Names** of stairs, floors, post fixings, posts, builds and sections are your own, 1 to 64 characters.\n\n"
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

std::string rule_manual() {
    RuleSet scratch;
    std::string out =
        "# Rules\n\n"
        "A job names what it is judged by: `rules: [irc-2021]`, or `rakewright check JOB --rules irc-2021`. The sets "
        "that "
        "the program carries are listed by `rakewright rules`; `rakewright rules irc-2021` prints one, each limit with "
        "its clause and where its figure was read. A name that is none of theirs is the path of a file of rules, "
        "relative to the job file: most often a local amendment. This page is what `rakewright rules --keys` "
        "prints.\n\n"
        "**How a job is judged.** Each rule is held against every stair, section, handrail and rail as found that has "
        "what it judges, in the unit of its document. A figure equal to `min` or `max` is allowed, one equal to "
        "`above` "
        "or `below` is not; figures that differ by rounding are equal. Where a rule passes, the place with the least "
        "margin is reported, where it fails, every place. Gaps are those that marks leave when they are put where the "
        "tape reads them. Openings under a lower rail over treads 1 to N-1 are triangles; before the first nosing they "
        "are openings of the stair, beyond the last openings of the landing; a document without a rule for triangles "
        "has them judged by its rule for openings. A ball that passed shows that an opening is at least as large, one "
        "that did not, that it is smaller: where that does not settle a limit, the verdict is `unsure`.\n\n"
        "**What is not known** is never passed. A rule that the job tells too little for is listed with what would "
        "tell "
        "it. Where no `drop` is given, a guard is taken to be asked for, and that is said beside the verdict; rules "
        "for "
        "greater falls are then not judged. Where no handrail is named at a stair, the top rail of its sections is "
        "judged as one, and that is said too.\n\n"
        "**An amendment** gives the keys that it changes in rules of the same name, and whole rules that it adds; "
        "what it changes carries its own name in the results.\n";
    ManualForm form({}, out, "The file of rules");
    describe(form, scratch);
    form.finish();
    out += "\n## What a rule can judge\n\n| word | figure | meaning | told by |\n| --- | --- | --- | --- |\n";
    for (const QuantityMeaning& quantity : quantities()) {
        static constexpr const char* kinds[] = {"length", "degrees", "number"};
        out += std::string("| `") + quantity.word + "` | " + kinds[static_cast<std::size_t>(quantity.dimension)] +
               " | " + quantity.about + " | " + quantity.told_by + " |\n";
    }
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
    out +=
        "| `notes[]` | list | what somebody should know |\n"
        "| `notes[].section` | word | the section that it is about, where it is about one |\n"
        "| `notes[].text` | word | what is the matter |\n";
    return out;
}

}  // namespace rakewright
