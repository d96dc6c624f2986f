#include <algorithm>

#include "telling.hpp"

namespace rakewright {
namespace {

using Q = Quantity;

/// A rail as it stands, over a stair or a floor.
class Found {
 public:
    Found(Subject& subject, const FoundRail& found, const StairShape* stair, Unit unit)
        : subject_(subject), found_(found), stair_(stair), unit_(unit) {}

    void tell_all() {
        subject_.is_guard = found_.serves != FoundRail::Serves::handrail;
        subject_.is_handrail = found_.serves != FoundRail::Serves::guard && stair_;
        tell_heights();
        if (subject_.is_guard) {
            tell(subject_, Q::side_gap, found_.side_gap);
            tell_gaps();
        }
        for (const Ball& ball : found_.balls) tell_ball(ball);
        if (subject_.is_handrail) tell_grip();
    }

 private:
    int risers() const { return stair_ ? stair_->risers() : 0; }

    void tell_height(const std::string& where, double height) {
        if (subject_.is_guard) tell(subject_, Q::guard_height, where, height);
        if (subject_.is_handrail) tell(subject_, Q::handrail_height, where, height);
        if (subject_.is_guard && subject_.is_handrail) tell(subject_, Q::guard_top_height, where, height);
    }

    /// Heights where they were read, and at the nosings between two readings by the straight rail between them.
    void tell_heights() {
        std::vector<Quantity>& tells = subject_.tells;
        if (subject_.is_guard) tells.push_back(Q::guard_height);
        if (subject_.is_handrail) tells.push_back(Q::handrail_height);
        if (subject_.is_guard && subject_.is_handrail) tells.push_back(Q::guard_top_height);
        if (found_.height) tell_height("", *found_.height);
        if (!stair_ || found_.heights.empty()) return;
        std::vector<Numbered> read = found_.heights;
        std::sort(read.begin(), read.end(), [](const Numbered& a, const Numbered& b) { return a.number < b.number; });
        for (std::size_t i = 0; i < read.size(); ++i) {
            tell_height(numbered("nosing", read[i].number), read[i].reading);
            if (i + 1 < read.size()) tell_between(read[i], read[i + 1]);
        }
        leave_beyond(read.front().number, read.back().number);
    }

    void tell_between(const Numbered& lower, const Numbered& upper) {
        const Nosing &low = stair_->nosing(lower.number), &high = stair_->nosing(upper.number);
        const double low_top = low.z + lower.reading, high_top = high.z + upper.reading;
        for (int number = lower.number + 1; number < upper.number; ++number) {
            const Nosing& nosing = stair_->nosing(number);
            const double part = (nosing.x - low.x) / (high.x - low.x);
            tell_height(numbered("nosing", number) + ", between readings",
                        low_top + part * (high_top - low_top) - nosing.z);
        }
    }

    /// Nosings below the first reading and above the last: no straight rail between two readings tells of them.
    void leave_beyond(int first, int last) {
        std::vector<int> missing, read;
        for (int number = 1; number <= risers(); ++number)
            if (number < first || number > last) missing.push_back(number);
        if (missing.empty()) return;
        if (first > 1) read.push_back(1);
        if (last < risers()) read.push_back(risers());
        const std::string where = numbered("nosing", missing), needs = "`heights` at " + numbered("nosing", read);
        if (subject_.is_guard) leave_untold(subject_, Q::guard_height, where, needs);
        if (subject_.is_handrail) leave_untold(subject_, Q::handrail_height, where, needs);
        if (subject_.is_guard && subject_.is_handrail) leave_untold(subject_, Q::guard_top_height, where, needs);
    }

    /// The widest gap and a ball tried anywhere speak of all pickets, a ball tried over one tread of that one.
    void tell_gaps() {
        subject_.tells.insert(subject_.tells.end(), {Q::picket_opening, Q::guard_opening_above});
        const auto tried = [&](Ball::At at, std::optional<int> tread) {
            return std::any_of(found_.balls.begin(), found_.balls.end(), [&](const Ball& ball) {
                return ball.at() == at && ball.tread.has_value() == tread.has_value() &&
                       (!tread || *ball.tread == *tread);
            });
        };
        if (found_.widest_gap)
            for (const Q quantity : {Q::picket_opening, Q::guard_opening_above})
                subject_.facts.push_back({quantity,
                                          subject_.place,
                                          "the widest gap found",
                                          *found_.widest_gap,
                                          Known::exactly,
                                          pickets_anywhere,
                                          {}});
        else if (!tried(Ball::At::pickets, {}))
            for (const Q quantity : {Q::picket_opening, Q::guard_opening_above})
                leave_untold(subject_, quantity, "between pickets",
                             "`widest_gap`, or `balls` tried anywhere (no `tread`)");
        if (!stair_) return;
        std::vector<int> untried;
        for (int tread = 1; tread < risers(); ++tread)
            if (!tried(Ball::At::under_rail, tread)) untried.push_back(tread);
        if (!untried.empty())
            leave_untold(subject_, Q::under_rail_opening, "under the rail, " + numbered("tread", untried),
                         "`balls`, each with its `tread`");
    }

    void tell_ball(const Ball& ball) {
        const Known known = ball.passes ? Known::at_least : Known::under;
        const std::string words = "a ball of " + reading_words(ball.size, unit_) +
                                  (ball.passes ? " passed" : " did not pass"),
                          at = ball.tread ? ", " + numbered("tread", *ball.tread) : std::string();
        switch (ball.at()) {
            case Ball::At::riser:
                tell(subject_, Q::open_riser, words + at, ball.size, known);
                subject_.facts.back().opening = "riser" + at;
                if (ball.tread && *ball.tread < risers())
                    subject_.facts.back().over_ground = riser_over_ground(*stair_, *ball.tread + 1, subject_.drop);
                break;
            case Ball::At::pickets:
                for (const Q quantity : {Q::picket_opening, Q::guard_opening_above}) {
                    tell(subject_, quantity, words + (ball.tread ? " between pickets" + at : ""), ball.size, known);
                    subject_.facts.back().opening = pickets_anywhere + at;
                }
                break;
            case Ball::At::under_rail:
                tell_under_rail(
                    subject_,
                    under_rail_at(ball.tread ? std::optional<int>(*ball.tread) : std::nullopt, risers(), false),
                    words + " under the rail" + at, ball.size, known, "under the rail" + at);
                break;
        }
    }

    void tell_grip() {
        std::optional<double> across;
        if (found_.profile)
            across = tell_profile(subject_, *found_.profile);
        else
            subject_.tells.push_back(Q::grip_diameter);
        tell_wall(subject_, found_.clearance, across);
        tell_extension(subject_, found_.extend.value_or(Extension{}), *stair_);
    }

    inline static const std::string pickets_anywhere = "pickets";
    Subject& subject_;
    const FoundRail& found_;
    const StairShape* stair_;
    Unit unit_;
};

}  // namespace

void tell_found(Subject& subject, const FoundRail& found, const StairShape* stair, Unit unit) {
    Found(subject, found, stair, unit).tell_all();
}

}  // namespace rakewright
