#include "post_form.hpp"

#include "job_grammar.hpp"

namespace rakewright {
namespace {

constexpr Counts leaning{-44, 44}, turning{-360, 360};
constexpr int most_nosings = 1000;

}  // namespace

void describe(Form& form, Lean& lean) {
    form.about("Which way a post leans, as a level held on it reads: degrees, or so much in so much.");
    form.angle("along", lean.along, leaning, may_be_left_out, "along the stair, uphill positive");
    form.angle("across", lean.across, leaning, may_be_left_out, "across the stair, left positive, seen walking up");
}

void describe(Form& form, BaseTrim& trim) {
    form.about("Boards round the foot of the post: a member that reaches down to them is cut to them.");
    form.lengths("size", trim.size, Range::positive, {2, 2}, be_given,
                 "over all, along and across the post's first axis; one length: both alike, or the diameter");
    form.length("height", trim.height, Range::positive, be_given, "plumb, above what the post stands on");
}

void describe(Form& form, Taper& taper) {
    form.about("A post that grows thinner or thicker evenly up its length: each member is cut where it meets it.");
    form.place(taper.place);
    form.ways({{"size"}, {"around"}}, "`size`, or `around` of a round post");
    form.lengths("size", taper.size, Range::positive, {2, 2}, may_be_left_out,
                 "at `height`: along and across; one length: both alike, or the diameter");
    form.length("around", taper.around, Range::positive, "the girth of a round post at `height`");
    form.length("height", taper.height, Range::positive, be_given,
                "along the post, above what it stands on: where that was taken");
    form.length("size_at", taper.size_at, Range::not_negative, may_be_left_out, "where the post's own size was taken");
}

void describe(Form& form, Post& post) {
    form.about(
        "A post that rails run between. Without a place it only names the marks, and sections at it say their clear "
        "distance.");
    form.id(post.id);
    WrittenPostSize size(post.size);
    std::vector<Reading> sides;
    form.ways({{"size"},
               {"around"},
               {"size", "stair", "at"},
               {"around", "stair", "at"},
               {"size", "floor", "at"},
               {"around", "floor", "at"},
               {"stair", "at"},
               {"floor", "at"}},
              "`size`, or `around` of a round one, but not of a joint; and `at` with `stair` or `floor`, or none of "
              "them");
    form.written_or_lengths(
        "size", size, sides, Range::positive, {2, 2}, may_be_left_out,
        "of its section: a square post's side, or its nominal timber size, read as dressed; two lengths: along and "
        "across; a round post's diameter");
    if (sides.size() == 2) post.size = {sides[0], sides[1], {}, sides[0].place};
    form.choice("shape", post.shape,
                {{"square", "its section has four faces"},
                 {"round", "a cylinder"},
                 {"joint", "no post: the place in plan where two sections' rails meet and are mitered to each other"}},
                may_be_left_out, "what its section is");
    form.length("around", post.around, Range::positive, "the girth taped round a round post, in place of its `size`");
    form.name_of(Kind::stair, "stair", post.stair, may_be_left_out, "the stair that it stands at");
    form.name_of(Kind::floor, "floor", post.floor, may_be_left_out, "or the floor that it stands on");
    form.length("at", post.at, Range::any,
                "level from its nosing to its face or centre, uphill positive; on a floor from its origin, along its "
                "first axis");
    CountOrWord nosing(most_nosings, "last", "a nosing's number, from 1, or `last`");
    nosing.number(post.nosing.value);
    form.written("nosing", nosing, may_be_left_out, "which nosing `at` is measured from");
    post.nosing = {nosing.number().value_or(0), nosing.place()};
    form.choice("face", post.face,
                {{"centre", "to the post's centre"},
                 {"downhill", "to its face that looks down the stair; of a round post its farthest line down it"},
                 {"uphill", "to its face that looks up the stair; of a round post its farthest line up it"}},
                may_be_left_out, "what `at` is measured to, before the post is turned or tipped");
    form.length("across", post.across, Range::any, may_be_left_out,
                "level from the stair's or floor's axis to the post's centre, left positive, seen walking up");
    form.angle("turn", post.turn, turning, may_be_left_out,
               "about plumb, counter-clockwise from above, its size with it; not of a round post");
    form.part("lean", post.lean, may_be_left_out, "how far it is out of plumb");
    WrittenBase base(post.base);
    form.written("base", base, may_be_left_out,
                 "the surface that it stands on, where that is not the tread under its centre");
    form.part("base_trim", post.base_trim, "where it is thicker below");
    form.part("taper", post.taper, "where it grows thinner or thicker");
    form.length("reveal", post.reveal, Range::any,
                "plumb, from the highest top of the rails that meet it up to the post's own top, under its cap; "
                "negative where the post stops below that");
    form.name_of(Kind::post_fixing, "fixing", post.fixing, may_be_left_out, "how it is fixed to what it stands on");
}

}  // namespace rakewright
