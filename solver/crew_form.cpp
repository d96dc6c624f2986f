#include "crew_form.hpp"

namespace rakewright {

static void describe(Form& form, OrderWish& order) {
    form.about(
        "What is bought for the job. Bars are as the stock is planned; a section that has no `stock` is told by its "
        "length in all. Posts without a name in the job are not known.");
    form.place(order.place);
    form.count("spare", order.spare, {0, 100}, may_be_left_out,
               "percent more, rounded up, of what is bought by the piece: turned pickets, brackets, screws and caps");
    form.choice("posts", order.posts, {{"no", "they stand already"}, {"yes", "they are bought"}}, may_be_left_out,
                "the posts that the job names");
    form.choice("caps", order.caps, {{"no", "none"}, {"yes", "one for each post that the job names"}}, may_be_left_out,
                "the caps of posts");
}

static void describe(Form& form, PaintWish& paint) {
    form.about(
        "How far a paint goes, for the volume of it. Its maker says; 400 square feet a gallon and 10 square "
        "metres a litre are common practice on smooth wood.");
    form.place(paint.place);
    Reading coverage;
    form.number("coverage", coverage, be_given,
                "what one coat of it covers: square feet a gallon in inch jobs, square metres a litre in mm jobs");
    if (coverage > 0) paint.coverage = coverage;
    form.count("coats", paint.coats, {1, 10}, may_be_left_out, "how many coats of it");
}

/// Describes what is asked for by a word or by keys.
template <class Wish>
static void describe_wish(Form& form, const char* key, std::optional<Wish>& wish, std::initializer_list<Word> words,
                          const char* about) {
    bool wanted = false;
    Wish keys;
    form.choice_or_part(key, wanted, words, keys, about);
    if (wanted || keys.place.size > 0) wish = keys;
}

void describe_crew(Form& form, Job& job) {
    describe_wish(
        form, "order_list", job.order_list,
        {{"no", "not"}, {"yes", "bars, lengths, turned pickets, brackets, screws, posts, base plates, threaded rods"}},
        "whether what has to be bought is listed");
    describe_wish(form, "paint", job.paint,
                  {{"no", "not"}, {"yes", "their surface, ends included; with keys, also how much paint"}},
                  "whether the surface of the pieces is told, to prime and paint");
    form.choice("order_of_work", job.order_of_work,
                {{"no", "not"}, {"yes", "a numbered list of the steps that this job has"}}, may_be_left_out,
                "whether the order in which a crew works is told (common practice)");
}

}  // namespace rakewright
