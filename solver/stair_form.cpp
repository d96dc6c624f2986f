#include "stair_form.hpp"

namespace rakewright {
namespace {

constexpr Counts turning{-360, 360}, draining{0, 10};
constexpr int most_steps = 1000;

}  // namespace

void describe(Form& form, Step& step) {
    form.about("One step, as measured: a riser and, but for the last, what is level from its nosing to the next.");
    form.place(step.place);
    form.length("rise", step.rise, Range::positive, "plumb, from tread to tread at the nosing");
    form.length("run", step.run, Range::positive, "level, nosing to nosing");
    form.length("tread", step.tread, Range::positive,
                "level, from the nosing back to the next riser face, as a butted tape reads");
    form.length("nosing", step.nosing, Range::not_negative,
                "projection of this step's nosing past its riser face, where it differs");
}

static constexpr std::initializer_list<Word> string_words = {
    {"open", "cut to the steps: what is between the lower group and the steps is open"},
    {"closed", "it stands up past the nosings: a lower group stands over it, and not over the steps"}};

void describe(Form& form, Strings& strings) {
    form.about("The two strings, where they differ.");
    form.choice("left", strings.left, string_words, may_be_left_out, "the one on the left, seen walking up");
    form.choice("right", strings.right, string_words, may_be_left_out, "the one on the right");
}

/// Describes the strings, by one word for both or each by itself.
static void strings(Form& form, Strings& strings) {
    StringKind both = StringKind::open;
    form.choice_or_part("string", both, string_words, strings,
                        "what the steps end in at the sides, at both or at each");
    if (both == StringKind::closed) strings = {both, both};
}

void describe(Form& form, Plan& plan) {
    form.about(
        "Where it stands in the plan of the job: needed where a rail runs between posts of two stairs or floors. A "
        "stair's own origin is plumb under the edge of its first nosing, on the floor at its foot; its first axis runs "
        "up it.");
    form.length("x", plan.x, Range::any, may_be_left_out, "of its origin, level");
    form.length("y", plan.y, Range::any, may_be_left_out, "of its origin, level, to the left of x");
    form.angle("heading", plan.heading, turning, may_be_left_out,
               "the way its first axis looks, counter-clockwise from x, seen from above");
    form.length("level", plan.level, Range::any, may_be_left_out, "height of its floor at its origin");
}

void describe(Form& form, Stair& stair) {
    form.about("A straight flight: even steps from two of its figures, or every step as measured.");
    form.id(stair.id);
    form.ways({{"steps"},
               {"risers", "rise", "run"},
               {"risers", "rise", "tread"},
               {"risers", "rise", "rake"},
               {"risers", "rise", "nosing_to_nosing"},
               {"risers", "total_rise", "run"},
               {"risers", "total_rise", "tread"},
               {"risers", "total_rise", "rake"},
               {"risers", "total_rise", "nosing_to_nosing"},
               {"risers", "run", "rake"},
               {"risers", "run", "nosing_to_nosing"},
               {"risers", "tread", "rake"},
               {"risers", "tread", "nosing_to_nosing"},
               {"risers", "rake", "nosing_to_nosing"}},
              "`steps`, or `risers` with exactly two of `rise` (or `total_rise`), `run` (or `tread`), `rake` and "
              "`nosing_to_nosing`");
    form.count("risers", stair.risers, {1, most_steps}, "how many risers, the one up to the landing included");
    form.length("rise", stair.rise, Range::positive, "plumb, from tread to tread");
    form.length("total_rise", stair.total_rise, Range::positive, "plumb, from the floor at the foot to the landing");
    form.length("run", stair.run, Range::positive, "level, nosing to nosing");
    form.length("tread", stair.tread, Range::positive,
                "level, from a nosing back to the next riser face, as a butted tape reads");
    form.angle("rake", stair.rake, {0, 89}, "of the nosing line over level");
    form.length("nosing_to_nosing", stair.nosing_to_nosing, Range::positive, "along the nosing line");
    form.list("steps", stair.steps, {1, most_steps}, may_be_left_out,
              "the steps as measured, lowest first; the last has no run");
    form.length("nosing", stair.nosing, Range::not_negative, may_be_left_out,
                "projection of the nosings past their riser faces");
    form.choice("line", stair.line,
                {{"minimax", "the largest plumb distance of any nosing from it is as small as possible"},
                 {"fit", "least squares, plumb"},
                 {"ends", "through the first and the last nosing"},
                 {"straightedge", "where a straightedge laid on the nosings rests, over the middle of the flight"}},
                may_be_left_out, "the nosing line that is drawn through steps that differ");
    form.length("clear_width", stair.clear_width, Range::positive, "level, between what bounds the way, for the rules");
    form.length("headroom", stair.headroom, Range::positive,
                "plumb, the least from the nosing line to what stands over it, for the rules");
    form.length("drop", stair.drop, Range::not_negative,
                "plumb, the greatest fall beside the open side, for the rules that ask for a guard");
    form.angle(
        "wash", stair.wash, draining, may_be_left_out,
        "how much the treads rise from their nosings toward the next riser; the floor and the landing are level");
    form.choice(
        "riser", stair.riser,
        {{"closed", "a board from each tread to the next"}, {"open", "nothing: treads alone, `tread_thickness`"}},
        may_be_left_out, "what is between the treads");
    form.length("tread_thickness", stair.tread_thickness, Range::positive,
                "plumb, of the treads and of the landing's edge; needed where the risers are open");
    strings(form, stair.strings);
    form.length(
        "string_above", stair.string_above, Range::not_negative,
        "the top of a closed string, plumb above the nosing line; pickets without a lower group stand on it, and "
        "what is open under a lower group is measured from it");
    form.part("plan", stair.plan, "where it stands in plan");
}

void describe(Form& form, Floor& floor) {
    form.about("A floor that posts stand on, or that drains: it falls along the sections over it.");
    form.id(floor.id);
    form.ways({{"falls", "toward"}, {"plan"}, {"falls", "toward", "plan"}},
              "`falls` and `toward` of a floor that drains, `plan` of one that has a place, or all three");
    form.angle("falls", floor.falls, draining, may_be_left_out, "how much it falls");
    std::optional<Toward> toward;
    form.choice("toward", toward,
                {{"to", "it is lowest at the section's to end"},
                 {"from", "it is lowest at the section's from end"},
                 {"heading", "it falls the way its first axis looks, `at` of the posts on it"}},
                "where it falls to; must be given with `falls`");
    floor.toward = toward.value_or(floor.toward);
    form.part("plan", floor.plan, "where it stands in plan");
}

}  // namespace rakewright
