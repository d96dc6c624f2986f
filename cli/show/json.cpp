#include "json.hpp"

#include <algorithm>
#include <array>
#include <bit>
#include <charconv>
#include <cmath>
#include <cstdint>

#include "../told.hpp"

namespace rakewright {
namespace {

/// Down to which depth each item has a line of its own: the top, the ids, their results, and rows of these.
constexpr int lines_to_depth = 4;

class JsonSheet : public Sheet {
 public:
    explicit JsonSheet(std::string& out) : out_(out) {}

    void open() {
        out_ += '{';
        ++depth_;
        first_ = true;
    }

    void close() {
        const bool own_line = on_own_line();
        --depth_;
        if (!first_ && own_line) new_line();
        out_ += '}';
        first_ = false;
    }

    void word(const char* name, std::string_view value, const char*) override {
        key(name);
        quoted(value);
    }

    void length(const char* name, std::optional<double> value, const char* about) override {
        number(name, value, about);
    }

    void number(const char* name, std::optional<double> value, const char*) override {
        if (!value) return;
        key(name);
        digits(*value);
    }

    void angle(const char* name, std::optional<double> slope, const char* about) override {
        if (slope) number(name, degrees(angle_of(std::fabs(*slope))), about);
    }

    void over_square(const char* name, double slope, const char* about) override {
        number(name, 90 + degrees(angle_of(slope)), about);
    }

    void count(const char* name, std::optional<int> value, const char*) override {
        if (!value) return;
        key(name);
        whole(*value);
    }

    void truth(const char* name, bool value, const char*) override {
        key(name);
        out_ += value ? "true" : "false";
    }

    void lengths(const char* name, const std::vector<double>& values, const char*) override {
        listed(name, values, [&](double value) { digits(value); });
    }

    void counts(const char* name, const std::vector<int>& values, const char*) override {
        listed(name, values, [&](int value) { whole(value); });
    }

    void named(const char* name, std::size_t count, const std::function<std::string_view(std::size_t)>& name_of,
               const char*, const std::function<void(Sheet&, std::size_t)>& describe_one) override {
        key(name);
        open();
        for (std::size_t i = 0; i < count; ++i) {
            item();
            quoted(name_of(i));
            out_ += ": ";
            open();
            describe_one(*this, i);
            close();
        }
        close();
    }

 protected:
    void group(const char* name, const char*, const std::function<void(Sheet&)>& body) override {
        key(name);
        open();
        body(*this);
        close();
    }

    void each(const char* name, std::size_t count, const char*,
              const std::function<void(Sheet&, std::size_t)>& body) override {
        if (count == 0) return;
        key(name);
        out_ += '[';
        ++depth_;
        first_ = true;
        for (std::size_t i = 0; i < count; ++i) {
            item();
            open();
            body(*this, i);
            close();
        }
        const bool own_line = on_own_line();
        --depth_;
        if (!first_ && own_line) new_line();
        out_ += ']';
        first_ = false;
    }

 private:
    template <class Values, class Write>
    void listed(const char* name, const Values& values, const Write& write) {
        if (values.empty()) return;
        key(name);
        out_ += '[';
        bool comma = false;
        for (const auto value : values) {
            if (comma) out_ += ", ";
            comma = true;
            write(value);
        }
        out_ += ']';
    }

    /// A line for each thing of the job and each of its results, and for each row of these; what is deeper stays on its
    /// line.
    bool on_own_line() const { return depth_ <= lines_to_depth; }

    void new_line() {
        out_ += '\n';
        out_.append(static_cast<std::size_t>(depth_), ' ');
    }

    void item() {
        if (!first_) out_ += ',';
        if (on_own_line())
            new_line();
        else if (!first_)
            out_ += ' ';
        first_ = false;
    }

    void key(const char* name) {
        item();
        out_ += '"';
        out_ += name;
        out_ += "\": ";
    }

    void quoted(std::string_view text) {
        static constexpr char hex[] = "0123456789abcdef";
        out_ += '"';
        if (std::none_of(text.begin(), text.end(), must_be_escaped)) {
            out_ += text;
            out_ += '"';
            return;
        }
        for (const char c : text) {
            if (c == '"' || c == '\\') out_ += '\\';
            if (static_cast<unsigned char>(c) < 0x20) {
                out_ += "\\u00";
                out_ += hex[c >> 4];
                out_ += hex[c & 15];
            } else {
                out_ += c;
            }
        }
        out_ += '"';
    }

    static bool must_be_escaped(char c) { return c == '"' || c == '\\' || static_cast<unsigned char>(c) < 0x20; }

    /// The shortest digits that read back as the number. Most numbers of a job stand in it many times, so those written
    /// lately are kept.
    void digits(double value) {
        if (value == 0) {
            out_ += '0';
            return;
        }
        const auto bits = std::bit_cast<std::uint64_t>(value);
        Digits& kept = lately_[(bits ^ (bits >> 32)) * 0x9E3779B97F4A7C15u >> 56];
        if (kept.value != value) {
            kept.value = value;
            kept.size =
                static_cast<std::size_t>(std::to_chars(kept.text, kept.text + sizeof kept.text, value).ptr - kept.text);
        }
        out_.append(kept.text, kept.size);
    }

    void whole(int value) {
        char text[16];
        out_.append(text, std::to_chars(text, text + sizeof text, value).ptr);
    }

    struct Digits {
        double value = 0;
        std::size_t size = 0;
        char text[32];
    };

    std::string& out_;
    std::array<Digits, 256> lately_{};
    int depth_ = 0;
    bool first_ = true;
};

}  // namespace

template <class Results>
static std::string json_of(const Results& results) {
    std::string out;
    JsonSheet sheet(out);
    sheet.open();
    describe(sheet, results);
    sheet.close();
    out += '\n';
    return out;
}

std::string json(const Verdicts& verdicts) { return json_of(verdicts); }

std::string json(const std::vector<PassingRange>& ranges) { return json_of(ranges); }

std::string json(const Job& job, const Solution& solution, const Verdicts& verdicts) {
    std::string out;
    out.reserve(4096 * (1 + job.sections.size()));
    JsonSheet sheet(out);
    sheet.open();
    describe(sheet, job, solution);
    describe(sheet, verdicts);
    const std::vector<Note> notes = notes_of(job, solution);
    sheet.list("notes", notes, "", [](Sheet& row, const Note& note) {
        if (!note.section.empty()) row.word("section", note.section, "");
        row.word("text", note.text, "");
    });
    sheet.close();
    out += '\n';
    return out;
}

}  // namespace rakewright
