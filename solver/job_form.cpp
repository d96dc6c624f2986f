#include "job_form.hpp"

#include "build_form.hpp"
#include "crew_form.hpp"
#include "handrail_form.hpp"
#include "post_fixing_form.hpp"
#include "post_form.hpp"
#include "section_form.hpp"
#include "spacing_form.hpp"
#include "stair_form.hpp"

namespace rakewright {
namespace {

constexpr int most_named = 100000;

}  // namespace

void describe(Form& form, Stock& stock) {
    form.about("Bars of one section, to be cut into the job's sticks: which to buy, and what to cut from each.");
    form.place(stock.place);
    form.lengths("section", stock.section, Range::positive, {2, 2}, be_given,
                 "width and depth; one length: both alike");
    form.lengths("lengths", stock.lengths, Range::positive, {1, 20}, be_given, "that can be bought");
    form.length("kerf", stock.kerf, Range::not_negative, may_be_left_out,
                "what the saw takes square across; a raked cut takes more along the bar");
    form.length("trim", stock.trim, Range::not_negative, may_be_left_out,
                "what comes off each end of a bar before use");
    form.choice("nest", stock.nest,
                {{"turned", "yes, turned over or end for end where that takes it: all sides are alike"},
                 {"face_up", "where all their tops stay up: one face is the good one, or is moulded"},
                 {"no", "not: the grain runs one way, or the section comes ploughed or drilled"}},
                may_be_left_out, "whether raked pieces lie nested and share a cut");
    form.numbers("prices", stock.prices, {1, 20},
                 "of each length, in their order: then the least price is sought, and not the least length");
}

void describe(Form& form, AlsoCut& stick) {
    form.about("A square-ended stick that is none of the job's rails.");
    form.place(stick.place);
    form.text("name", stick.name, be_given, "what the plan calls it");
    form.lengths("section", stick.section, Range::positive, {2, 2}, be_given,
                 "width and depth; one length: both alike");
    form.length("length", stick.length, Range::positive, be_given, "from end to end");
    form.count("count", stick.count, {1, 10000}, may_be_left_out, "how many");
}

void describe(Form& form, Saw& saw) {
    form.about("How far the saw goes, to say of each end how it is cut on it.");
    form.angle("largest_miter", saw.largest_miter, {0, 90}, may_be_left_out,
               "how far the blade swings from a square cut, to either side");
    form.angle("largest_bevel", saw.largest_bevel, {0, 90}, may_be_left_out, "how far it tilts from plumb");
    form.length("depth_of_cut", saw.depth_of_cut, Range::positive,
                "plumb over the table, how thick a piece it cuts through with the blade plumb; tilted, that times the "
                "cosine of the bevel; no limit if left out");
}

void describe(Form& form, Job& job) {
    form.about("A job: the stairs and posts as measured, how the rails are made up, and the sections to be cut.");
    form.text("job", job.title, may_be_left_out, "the title that heads the tables");
    form.choice("units", job.units, {{"in", "inches"}, {"mm", "millimetres"}}, be_given,
                "the unit of bare numbers and of the results");
    form.length("round", job.round, Range::positive,
                "the tape division that printed readings are rounded to; 1/16 in, or 1 mm, if left out");
    form.part("saw", job.saw, "the saw that the pieces are cut on; absent, nothing is said of its reach");
    form.named("stairs", job.stairs, most_named, may_be_left_out, "the stairs, each under a name of its own");
    form.named("floors", job.floors, most_named, may_be_left_out,
               "the floors that are not level, each under a name of its own");
    form.named("post_fixings", job.post_fixings, most_named, may_be_left_out,
               "how posts are fixed to what they stand on, each under a name of its own");
    form.named("posts", job.posts, most_named, may_be_left_out, "the posts, each under a name of its own");
    form.named("builds", job.builds, most_named, may_be_left_out, "the builds, each under a name of its own");
    form.named("sections", job.sections, most_named, may_be_left_out, "the sections, each under a name of its own");
    form.named("handrails", job.handrails, most_named, may_be_left_out, "the handrails, each under a name of its own");
    form.named("as_found", job.as_found, most_named, may_be_left_out,
               "rails as they stand, for the rules, each under a name of its own");
    form.texts("rules", job.rules, 20,
               "what to judge by: rule sets by name, or the path of a local amendment, relative to the job file");
    form.later("accuracy", "doubt of the results from the accuracy of the tape");
    form.list("stock", job.stock, {1, 50}, may_be_left_out, "what can be bought for cutting, a section each");
    form.list("also_cut", job.also_cut, {1, 1000}, may_be_left_out,
              "other square-ended sticks to come out of the same stock");
    describe_spacing(form, job.spacing);
    form.choice("story_stick", job.story_stick,
                {{"no", "not"}, {"yes", "one strip of marks for all rails of each section that has pickets"}},
                may_be_left_out, "whether a story stick is set out for each section");
    form.choice("piece_list", job.piece_list,
                {{"no", "not; the tables have them at the saw"},
                 {"yes", "every piece of the job, equal ones together, as `pieces`"}},
                may_be_left_out, "whether JSON lists the pieces over all sections");
    describe_crew(form, job);
}

}  // namespace rakewright
