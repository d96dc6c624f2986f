#include "section_form.hpp"

#include "build_form.hpp"
#include "job_grammar.hpp"
#include "spacing_form.hpp"

namespace rakewright {

void describe(Form& form, ClearTwice& clear) {
    form.about("The clear distance taken at two heights, where the posts lean or taper.");
    form.place(clear.place);
    form.length("low", clear.low, Range::positive, be_given,
                "half-way up the lower group; without one, on what the pickets stand on");
    form.length("high", clear.high, Range::positive, be_given, "half-way up the upper group");
    form.choice("plumb", clear.plumb,
                {{"neither", "both are out of plumb alike"},
                 {"from", "the post at the from end stands plumb"},
                 {"to", "the post at the to end stands plumb"}},
                may_be_left_out, "which of the two posts stands plumb");
}

void describe(Form& form, Offset& offset) {
    form.about(
        "How far the rail's centre line runs to the left of the posts' centres, seen from the from end, square to the "
        "rail: two sizes of post flush on one side.");
    form.length("from", offset.from, Range::any, may_be_left_out, "at the from post; to the right negative");
    form.length("to", offset.to, Range::any, may_be_left_out, "at the to post; to the right negative");
}

void describe(Form& form, EndWish& end) {
    form.about("What the members are cut to at this end, where that is not the post's face.");
    form.place(end.place);
    form.ways({{"past"}, {"square"}, {"pad"}, {"over"}}, "one of `past`, `square`, `pad` and `over`");
    std::optional<Reading> past, square, pad, over;
    form.length("past", past, Range::positive, "plumb, so far past the post's centre, level: a rail that runs by it");
    form.length("square", square, Range::positive,
                "square to the rail, so far short of the post's centre, level, on each member's centre line: where a "
                "bought fitting begins");
    form.length("pad", pad, Range::positive, "to a block or rosette on the post's face: how thick it is");
    form.length("over", over, Range::not_negative,
                "the upper group runs on over the post, which is cut off under it, to this far past the post's centre, "
                "level; the lower group to the post's face");
    using Meets = EndWish::Meets;
    if (past) end = {Meets::past, *past, end.place};
    if (square) end = {Meets::square, *square, end.place};
    if (pad) end = {Meets::pad, *pad, end.place};
    if (over) end = {Meets::over, *over, end.place};
}

static void end_wish(Form& form, const char* key, EndWish& end, const char* about) {
    form.choice_or_part(key, end.meets,
                        {{"face", "to the post's face"},
                         {"centre", "plumb, through the centre of the post's foot"},
                         {"over", "the upper group over the post, which is cut off under it, to plumb over its centre; "
                                  "the lower group to its face"}},
                        end, about);
}

void describe(Form& form, EndWishes& ends) {
    form.about("What the members are cut to at their ends; there are brackets only at a post's face.");
    end_wish(form, "from", ends.from, "at the from end");
    end_wish(form, "to", ends.to, "at the to end");
}

void describe(Form& form, Section& section) {
    form.about("A rail between two posts, or over a clear distance.");
    form.id(section.id);
    form.ways({{}, {"max_gap"}, {"max_sphere"}}, "at most one of `max_gap` and `max_sphere`");
    form.name_of(Kind::post, "from", section.from, may_be_left_out, "the post at one end");
    form.name_of(Kind::post, "to", section.to, may_be_left_out, "the post at the other end");
    form.name_of(Kind::stair, "stair", section.stair, may_be_left_out,
                 "the stair that a section with a clear distance climbs, from its from end");
    form.name_of(Kind::floor, "floor", section.floor, may_be_left_out,
                 "the floor that falls under a section that is over no stair, or straight across its landing; heights "
                 "then count from that floor");
    form.choice("follow", section.follow,
                {{"level", "the rail is level: heights and `lower_gap` count from the highest floor at its ends"},
                 {"floor", "it runs parallel to the floor: they are plumb above the floor everywhere"}},
                may_be_left_out, "how the rail runs over a floor that falls");
    WrittenSide side(section.side);
    form.written("side", side, may_be_left_out,
                 "which side of its stair it is on, seen walking up, where the two strings differ");
    form.name_of(Kind::build, "build", section.build, be_given, "how it is made up");
    WrittenClear clear(section.clear);
    ClearTwice twice;
    form.written_or_part("clear", clear, twice,
                         "level, between the two post faces; where both posts have a place, it is used in its stead");
    if (twice.low > 0) section.clear_twice = twice;
    form.length("clear_on_slope", section.clear_on_slope, Range::positive,
                "along the rake, between the two post faces");
    form.length("height", section.height, Range::positive, "in place of the build's");
    describe_lower_gap(form, section.lower_gap, "in place of the build's");
    form.length("max_gap", section.max_gap, Range::positive, "in place of the build's, or of its `max_sphere`");
    form.length("max_sphere", section.max_sphere, Range::positive, "in place of the build's, or of its `max_gap`");
    describe_centre(form, section.centre);
    WrittenSide picket_side(section.picket_side);
    form.written("picket_side", picket_side, may_be_left_out,
                 "the `side` of pickets that are fixed to the rails' faces, in place of the build's");
    form.length("play", section.play, Range::not_negative, "in place of the build's");
    form.length("drop", section.drop, Range::not_negative,
                "plumb, the greatest fall beside it, for the rules; else its stair's");
    form.length("side_gap", section.side_gap, Range::not_negative,
                "level, from the walking surface's edge to the guard, for the rules");
    form.count("count", section.count, {1, 10000}, may_be_left_out, "how many alike");
    form.part("ends", section.ends, may_be_left_out, "what the members are cut to, where that is not a post's face");
    form.part("offset", section.offset, may_be_left_out, "where the rail runs beside the posts' centres");
}

}  // namespace rakewright
