#include "handrail_form.hpp"

#include "job_grammar.hpp"

namespace rakewright {

static constexpr int most_steps = 1000;

void describe(Form& form, Recess& recess) {
    form.about("Recesses for the fingers in both sides of a handrail, measured on its profile.");
    form.length("start", recess.start, Range::positive, be_given,
                "plumb, from the top of the rail to where they start");
    form.length("depth", recess.depth, Range::positive, be_given, "level, how deep they are");
    form.length("reach", recess.reach, Range::positive, be_given,
                "plumb, from the widest part of the rail to where they have their depth");
    form.length("held", recess.held, Range::positive, be_given, "plumb, over which they keep it");
    form.length("end", recess.end, Range::positive, be_given, "plumb, from the top of the rail to where they lose it");
    form.length("width_above", recess.width_above, Range::positive, be_given, "level, of the rail over them");
}

void describe(Form& form, Profile& profile) {
    form.about("What a hand grips: round, a rectangle, or any other section.");
    form.place(profile.place);
    form.ways({{"diameter"}, {"around"}, {"width", "depth"}, {"perimeter", "width"}},
              "`diameter` or `around` of a round one, `width` and `depth` of a rectangle, or `perimeter` and `width`");
    form.length("diameter", profile.diameter, Range::positive, "of a round one, outside");
    form.length("around", profile.around, Range::positive, "the girth taped round a round one");
    form.length("width", profile.width, Range::positive, "across; of any other section its largest dimension");
    form.length("depth", profile.depth, Range::positive, "of a rectangle, square to the width");
    form.length("perimeter", profile.perimeter, Range::positive, "taped round any other section");
    form.part("recess", profile.recess, "recesses for the fingers in both its sides");
}

void describe(Form& form, Extension& extension) {
    form.about("How far a handrail runs on past its flight.");
    form.length("top", extension.top, Range::not_negative,
                "level, beyond the last nosing; left out it is none, and not judged");
    form.length("bottom", extension.bottom, Range::not_negative,
                "level, before the first nosing, still on the rake; left out it is none, and not judged");
}

void describe(Form& form, Returns& returns) {
    form.about("What the ends of a handrail turn to.");
    const std::initializer_list<Word> words{{"none", "it ends square"},
                                            {"wall", "it is mitered and turned to the wall"}};
    form.choice("top", returns.top, words, may_be_left_out, "at the top end");
    form.choice("bottom", returns.bottom, words, may_be_left_out, "at the bottom end");
}

void describe(Form& form, Handrail& handrail) {
    form.about("A rail for the hand over a stair, parallel to its nosing line.");
    form.id(handrail.id);
    form.name_of(Kind::stair, "stair", handrail.stair, be_given, "the stair that it follows");
    WrittenSide side(handrail.side);
    form.written("side", side, may_be_left_out, "of the stair, seen walking up");
    form.length("height", handrail.height, Range::positive, be_given, "plumb, from the nosing line to its top");
    form.part("profile", handrail.profile, be_given, "its section");
    form.length("clearance", handrail.clearance, Range::positive, "level, from the rail to the wall behind it");
    form.part("extend", handrail.extend, may_be_left_out, "how far it runs on past the flight");
    form.part("return", handrail.returned, may_be_left_out, "what its ends turn to");
}

void describe(Form& form, Ball& ball) {
    form.about("A ball that was tried.");
    form.place(ball.place);
    form.length("size", ball.size, Range::positive, be_given, "its diameter");
    bool fails = !ball.passes;
    form.choice("passes", fails, {{"yes", "it passed through"}, {"no", "it did not"}}, be_given, "what was seen");
    ball.passes = !fails;
    form.choice("at", ball.said_at,
                {{"pickets", "between pickets or at a post"},
                 {"under_rail", "under the lower rail"},
                 {"riser", "through an open riser"}},
                "at which opening; if left out, with a `tread` `under_rail`, without one `pickets`");
    form.count("tread", ball.tread, {0, most_steps},
               "over which tread, 0 the floor at the foot; at the pickets it may be left out: anywhere");
}

void describe(Form& form, FoundRail& found) {
    form.about("A rail as it stands, judged by the rules and not cut: over a stair, or level if it names none.");
    form.id(found.id);
    form.name_of(Kind::stair, "stair", found.stair, may_be_left_out, "the stair that it stands at");
    form.choice("serves", found.serves,
                {{"both", "a guard whose top is the handrail"}, {"guard", "a guard"}, {"handrail", "a handrail"}},
                may_be_left_out, "what it is");
    WrittenSide side(found.side);
    form.written("side", side, may_be_left_out, "of the stair, seen walking up");
    form.numbered("heights", found.heights, Range::positive, most_steps,
                  "over a stair: by nosing number, plumb from the nosing to the top of the rail");
    form.length("height", found.height, Range::positive, "over a floor: plumb, to the top of the rail");
    form.length("widest_gap", found.widest_gap, Range::positive,
                "the widest clear opening found between pickets or at a post");
    form.list("balls", found.balls, {1, most_steps}, may_be_left_out, "balls that were tried");
    form.part("profile", found.profile, "its section, if hands grip it");
    form.length("clearance", found.clearance, Range::positive, "level, from the rail to the wall behind it");
    form.part("extend", found.extend, "how far it runs on past the flight");
    form.length("drop", found.drop, Range::not_negative, "plumb, the greatest fall beside it; else its stair's");
    form.length("side_gap", found.side_gap, Range::not_negative, "level, from the walking surface's edge to the guard");
}

}  // namespace rakewright
