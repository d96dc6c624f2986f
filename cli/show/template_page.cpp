#include "template_page.hpp"

#include <algorithm>
#include <cmath>

#include "../../solver/solution_sheet.hpp"
#include "page.hpp"

namespace rakewright {
namespace {

constexpr double margin = 12, line_of_text = 5, finest_tick = 0.5;  // mm

std::string mm(double value) { return rounded(value, 4); }

std::string escaped(const std::string& text) {
    std::string out;
    for (const char c : text) {
        switch (c) {
            case '&': out += "&amp;"; break;
            case '<': out += "&lt;"; break;
            case '>': out += "&gt;"; break;
            case '"': out += "&quot;"; break;
            default: out += c;
        }
    }
    return out;
}

/// One face of the strip: where it begins across the page, and whether its `across` runs against the page's.
struct Panel {
    StickFace face;
    double begins = 0;
    bool backward = false;
};

/// The faces in the order in which they lie side by side, seen from outside with the end up the page. Seen so, the
/// right face lies to the right of the top at a to end, at a from end the left one.
std::array<Panel, 4> panels_of(const CrossSection& section, End end) {
    const std::array<StickFace, 4> faces = faces_of(section);
    const std::array<std::size_t, 4> order =
        end == End::to ? std::array<std::size_t, 4>{0, 1, 2, 3} : std::array<std::size_t, 4>{0, 3, 2, 1};
    std::array<Panel, 4> panels;
    double begins = 0;
    for (std::size_t i = 0; i < 4; ++i) {
        // The first two run from `across` positive to negative, the last two the other way; a from end is the mirror.
        const bool positive_first = i < 2;
        const bool is_level = faces[order[i]].side.top != 0;
        const bool mirrored = end == End::from && is_level;
        panels[i] = {faces[order[i]], begins, positive_first != mirrored};
        begins += faces[order[i]].width;
    }
    return panels;
}

class Page {
 public:
    Page(const Job& job, const Solution& solution) : job_(job), solution_(solution), tape_(tape_of(job)) {
        scale_ = job.units == Unit::inch ? millimetres_in_an_inch : 1;
    }

    std::string whole() && {
        for (std::size_t s = 0; s < job_.sections.size(); ++s)
            for (const Member& member : solution_.sections[s].members)
                for (const End end : both_ends)
                    if (const std::optional<Cope>& cope = member.copes[index_of(end)]) add(s, member, end, *cope);
        for (std::size_t h = 0; h < job_.handrails.size(); ++h)
            if (is_round(job_.handrails[h].profile))
                for (const HandrailPiece& piece : solution_.handrails[h].pieces)
                    for (const End end : both_ends) add(job_.handrails[h].id.name, piece, end);
        if (body_.empty()) return {};
        const double width = widest_ + 2 * margin;
        return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"" +
               mm(width) + "mm\" height=\"" + mm(down_ + margin) + "mm\" viewBox=\"0 0 " + mm(width) + ' ' +
               mm(down_ + margin) + "\">\n<title>" + escaped(job_.title.empty() ? "Templates" : job_.title) +
               "</title>\n<g fill=\"none\" stroke=\"black\" stroke-width=\"0.2\" font-family=\"sans-serif\" "
               "font-size=\"3\">\n" +
               body_ + "</g>\n</svg>\n";
    }

 private:
    void add(std::size_t s, const Member& member, End end, const Cope& cope) {
        const CrossSection section{member.width, member.depth};
        const Strip strip = begin(job_.sections[s].id.name + ", " + member.name + ", " + words(end) + " end", "member",
                                  member.length, cope.longest, cope.shortest);
        for (const Panel& panel : panels_of(section, end)) add_panel(panel, section, cope, strip);
        finish(strip, 2 * (member.width + member.depth) * scale_);
    }

    /// A round handrail's end, unfolded from the line underneath it; nothing where that is square.
    void add(const std::string& handrail, const HandrailPiece& piece, End end) {
        const std::vector<RimPoint> rim = rim_of(piece.stick.piece, end);
        if (rim.empty()) return;
        const auto [shortest, longest] = std::minmax_element(
            rim.begin(), rim.end(), [](const RimPoint& a, const RimPoint& b) { return a.along < b.along; });
        const Strip strip = begin(handrail + ", " + words(piece.part) + ", " + words(end) + " end", "rail",
                                  length(piece.stick.piece), longest->along, shortest->along);
        const double girth = (rim.back().around - rim.front().around) * scale_, middle = margin + girth / 2;
        // Seen from outside with the end up the page, the right side lies to the right of the top at a to end.
        const double rightward = end == End::to ? -scale_ : scale_;
        std::string drawn;
        for (const RimPoint& point : rim)
            drawn += (drawn.empty() ? "" : " ") + mm(middle + rightward * point.around) + ',' +
                     mm(base_ - point.along * scale_);
        outline("round", drawn);
        stroke(margin, strip.top, margin, strip.bottom);
        stroke(margin + girth, strip.top, margin + girth, strip.bottom);
        stroke(middle, strip.top, middle, strip.bottom, "stroke-dasharray=\"8 1 1 1\"");
        words_at(margin + 1.5, strip.bottom - 3, "seam, underneath");
        words_at(middle + 1.5, strip.bottom - 3, "top line");
        words_at(margin + girth / 4, strip.bottom - 8, end == End::to ? "left" : "right");
        words_at(margin + 3 * girth / 4, strip.bottom - 8, end == End::to ? "right" : "left");
        finish(strip, girth);
    }

    /// A drawing from its upper edge to its lower, and how wide its words are.
    struct Strip {
        double top = 0, bottom = 0, words = 0;
    };

    /// Begins an end's drawing: what it is of, what to do with it, and room for what it reaches past the dashed line.
    Strip begin(const std::string& name, const std::string& stuff, double length, double longest, double shortest) {
        body_ += "<g id=\"end-" + std::to_string(++number_) + "\">\n";
        words_at(margin, down_ + margin, name);
        words_at(margin, down_ + margin + line_of_text,
                 "Print full size, and check both rulers with the tape. Wrap it round the " + stuff +
                     ", printed side out, the dashed line on a line");
        words_at(margin, down_ + margin + 2 * line_of_text,
                 "squared round it " + words_of_length(length, tape_) +
                     " from the other end's cut on the centre line. What is drawn above the outline is "
                     "cut away.");
        const double top = down_ + margin + 3 * line_of_text + 3;
        base_ = top + longest * scale_;
        return {top, base_ + std::max(-shortest * scale_, 0.0) + 25, double(name.size()) * 2};
    }

    void finish(const Strip& strip, double around) {
        stroke(margin, base_, margin + around, base_, "stroke-dasharray=\"3 1\"");
        ruler_across(around, strip.bottom);
        ruler_along(margin + around, strip.top, strip.bottom);
        widest_ = std::max({widest_, around + 12, strip.words, 175.0});
        down_ = strip.bottom + 10;
        body_ += "</g>\n";
    }

    void outline(const char* face, const std::string& points) {
        body_ += std::string("<polyline class=\"outline\" data-face=\"") + face + "\" stroke-width=\"0.35\" points=\"" +
                 points + "\"/>\n";
    }

    void add_panel(const Panel& panel, const CrossSection& section, const Cope& cope, const Strip& strip) {
        const double left = margin + panel.begins * scale_, wide = panel.face.width * scale_;
        std::vector<OutlinePoint> points = outline_on(cope, panel.face, section);
        std::string drawn;
        for (const OutlinePoint& point : points) {
            const double across = panel.backward ? -point.across : point.across;
            drawn += (drawn.empty() ? "" : " ") + mm(left + wide / 2 + across * scale_) + ',' +
                     mm(base_ - point.along * scale_);
        }
        outline(words(panel.face.side), drawn);
        stroke(left, strip.top, left, strip.bottom);
        stroke(left + wide, strip.top, left + wide, strip.bottom);
        words_at(left + 1.5, strip.bottom - 3, words(panel.face.side));
    }

    /// How far apart the ticks stand, in divisions: as many as leave them apart on paper.
    int divisions_a_tick() const {
        int divisions = 1;
        while (tape_.division * divisions * scale_ < finest_tick) divisions *= 2;
        return divisions;
    }

    /// Each tick of a ruler: how far along it, how long, and its number where it has one.
    template <class Draw>
    void ticks(double length, const Draw& draw) const {
        const double great = job_.units == Unit::inch ? 1 : 10;
        const int step = divisions_a_tick();
        for (long long mark = 0; at_mark(mark, tape_) * scale_ <= length + 1e-9; mark += step) {
            const double at = at_mark(mark, tape_);
            const bool numbered = std::fabs(at / great - std::round(at / great)) < 1e-9;
            const bool half = std::fabs(2 * at / great - std::round(2 * at / great)) < 1e-9;
            draw(at * scale_,
                 numbered ? 4.0
                 : half   ? 3.0
                          : 1.5,
                 numbered ? std::to_string(std::llround(at)) : std::string());
        }
    }

    void ruler_across(double length, double y) {
        stroke(margin, y, margin + length, y);
        ticks(length, [&](double at, double tall, const std::string& number) {
            stroke(margin + at, y, margin + at, y + tall);
            if (!number.empty()) words_at(margin + at + 0.5, y + 6.5, number);
        });
    }

    void ruler_along(double x, double top, double bottom) {
        stroke(x + 2, top, x + 2, bottom);
        ticks(bottom - top, [&](double at, double tall, const std::string& number) {
            stroke(x + 2, bottom - at, x + 2 + tall, bottom - at);
            if (!number.empty()) words_at(x + 6.5, bottom - at + 1, number);
        });
    }

    void stroke(double x1, double y1, double x2, double y2, const char* more = "") {
        body_ += "<line x1=\"" + mm(x1) + "\" y1=\"" + mm(y1) + "\" x2=\"" + mm(x2) + "\" y2=\"" + mm(y2) + '"' +
                 (*more ? " " : "") + more + "/>\n";
    }

    void words_at(double x, double y, const std::string& text) {
        body_ += "<text x=\"" + mm(x) + "\" y=\"" + mm(y) + "\" fill=\"black\" stroke=\"none\">" + escaped(text) +
                 "</text>\n";
    }

    const Job& job_;
    const Solution& solution_;
    Tape tape_;
    double scale_ = 1, down_ = 0, widest_ = 0, base_ = 0;
    int number_ = 0;
    std::string body_;
};

}  // namespace

std::string template_page(const Job& job, const Solution& solution) { return Page(job, solution).whole(); }

}  // namespace rakewright
