#include "spacing_form.hpp"

#include "job_grammar.hpp"

namespace rakewright {
namespace {

class WrittenCentre : public Grammar {
 public:
    explicit WrittenCentre(std::optional<CentreWish>& wish) : wish_(wish) {}
    bool take(std::string_view text, Unit, Place place) override {
        if (text != "picket" && text != "gap") return false;
        wish_ = {text == "picket" ? Centre::picket : Centre::gap, place};
        return true;
    }
    const char* expected() const override { return "`picket` or `gap`"; }
    std::string pattern() const override { return "^picket$|^gap$"; }
    bool may_be_number() const override { return false; }

 private:
    std::optional<CentreWish>& wish_;
};

class WrittenSpacing : public Grammar {
 public:
    explicit WrittenSpacing(std::optional<Spacing>& spacing) : spacing_(spacing) {}
    bool take(std::string_view text, Unit, Place place) override {
        Spacing spacing;
        spacing.place = place;
        if (text == "alike")
            spacing.by = Spacing::By::alike;
        else if (text == "block")
            spacing.by = Spacing::By::block;
        else if (text != "fewest")
            return false;
        spacing_ = spacing;
        return true;
    }
    const char* expected() const override { return "`fewest`, `alike` or `block`"; }
    std::string pattern() const override { return "^fewest$|^alike$|^block$"; }
    bool may_be_number() const override { return false; }

 private:
    std::optional<Spacing>& spacing_;
};

}  // namespace

static void describe(Form& form, Punched& slot) {
    form.about("A channel that is punched for the pickets: how long and wide its holes have to be on the rake.");
    form.length("web", slot.web, Range::positive, be_given, "thickness of the web that is punched");
    form.length("clearance", slot.clearance, Range::not_negative, may_be_left_out,
                "added to the hole's length and width, in all");
}

static void describe(Form& form, Spacing& spacing) {
    form.about(
        "How the pickets of all sections are spaced together; those that follow treads or a fixed `pitch` are left as "
        "they are, and a section that needs no picket gets none, unless its own `centre` asks for one.");
    form.place(spacing.place);
    form.ways({{}, {"by"}, {"block"}}, "at most one of `by` and `block`");
    form.choice("by", spacing.by,
                {{"fewest", "the fewest pickets in each section"},
                 {"alike",
                  "the widest and the narrowest gap of the job differ as little as can be; of all that do, the fewest "
                  "pickets. Exact over all counts whose gap is no less than `least_gap`"},
                 {"block",
                  "one gap between pickets for the whole job: the longest on the tape that serves every section; what "
                  "is left is equal at both posts, no wider than the limit, no less than `least_end_gap`, and as near "
                  "to the block as can be"}},
                may_be_left_out, "what is sought");
    form.length("block", spacing.block, Range::positive, "the same with a block of this length, level");
    form.length("least_gap", spacing.least_gap, Range::not_negative,
                "of `alike`: no narrower gap is sought, but where the fewest pickets leave one; of `by: block`: no "
                "shorter one is taken. Three quarters of a section's limit if left out, our choice");
    form.length("least_end_gap", spacing.least_end_gap, Range::not_negative,
                "of a block: the least that may be left at a post; half the block if left out (common practice)");
    describe_centre(form, spacing.centre);
}

void describe_metal(Form& form, PicketBuild& pickets) {
    form.length("pitch", pickets.pitch, Range::positive,
                "level, from centre to centre, of rails that come drilled or punched: as many pickets as leave "
                "`least_end_gap` at both posts, as much at one as at the other; `max_gap` or `max_sphere` is then no "
                "more than a limit");
    form.length("pitch_on_slope", pickets.pitch_on_slope, Range::positive, "the same along the rail");
    form.length("least_end_gap", pickets.least_end_gap, Range::not_negative,
                "with a pitch: the least that may be left at a post, level; half the gap between two pickets if left "
                "out (common practice)");
    form.part("slot", pickets.slot, "the holes of a punched channel");
    form.length("weld_gap", pickets.weld_gap, Range::not_negative, may_be_left_out,
                "left for the weld, along the picket: taken off its head, and off its foot where it stands on a lower "
                "group; what stands on a tread, floor or string stands");
}

void describe(Form& form, FeetBuild& feet) {
    form.about(
        "Feet under the lowest member: equally spaced, each moved to the nearest picket that it can stand under, off "
        "the nosings (common practice). They part the openings under the lower group; a gap that is `auto` does not "
        "reckon with them.");
    form.place(feet.place);
    form.length("every", feet.every, Range::positive, be_given,
                "level, the most from foot to foot or post before they are moved");
    form.length("width", feet.width, Range::positive, "level, along the rail; the pickets' if left out");
    form.length("depth", feet.depth, Range::positive, "across the rail; the pickets' if left out");
}

void describe_centre(Form& form, std::optional<CentreWish>& centre) {
    WrittenCentre written(centre);
    form.written("centre", written, may_be_left_out,
                 "what stands in the middle: a picket, so that their count is odd, or a gap, so that it is even");
}

void describe_spacing(Form& form, std::optional<Spacing>& spacing) {
    WrittenSpacing written(spacing);
    Spacing keys;
    form.written_or_part("spacing", written, keys,
                         "how the pickets of all sections are spaced together, with a table that compares the ways to "
                         "do it; if left out, the fewest in each section");
    if (keys.place.size == 0) return;
    if (keys.block) keys.by = Spacing::By::block;
    spacing = keys;
}

}  // namespace rakewright
