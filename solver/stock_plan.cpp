#include "stock_plan.hpp"

#include <algorithm>
#include <cmath>

#include "cut_list.hpp"
#include "stock/plan.hpp"

namespace rakewright {
namespace {

/// Parts of the unit that lengths are counted in: binary fractions to 1/2048 and five decimals are whole.
constexpr double parts = 6400000;
/// What doubles may be off a whole part by their own rounding alone.
constexpr double off = 1e-3;
constexpr double price_parts = 10000;
constexpr int most_pieces = 20000;

Whole up(double length) { return static_cast<Whole>(std::ceil(length * parts - off)); }
Whole down(double length) { return static_cast<Whole>(std::floor(length * parts + off)); }

/// A stick to be cut, whatever it comes from.
struct StickToCut {
    std::string name;
    int cut = -1, also_cut = -1;
    CrossSection section;
    Piece piece;
    int count = 0;
    Place place;  // none of a piece of the cut list
    double overall = 0;
    bool coped = false, recessed = false;
};

/// `left_out` counts what is not cut from sticks of a rectangle: turned pickets, and pickets and handrails that are
/// round or known by their perimeter.
std::vector<StickToCut> sticks_of(const Job& job, const Solution& solution, int& left_out) {
    std::vector<StickToCut> sticks;
    const std::vector<CutPiece> pieces = cut_list(job, solution);
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        const CutPiece& piece = pieces[i];
        const bool of_known_section = piece.stuff != Stuff::handrail || !profile_of(job, piece).perimeter;
        if (is_round(piece.stuff) || piece.trim || !of_known_section) {
            left_out += piece.quantity;
            continue;
        }
        sticks.push_back({names_of(piece),
                          static_cast<int>(i),
                          -1,
                          piece.piece.section,
                          piece.piece,
                          piece.quantity,
                          {},
                          piece.overall,
                          piece.copes[0] || piece.copes[1],
                          piece.stuff == Stuff::handrail && profile_of(job, piece).recess});
    }
    for (std::size_t i = 0; i < job.also_cut.size(); ++i) {
        const AlsoCut& stick = job.also_cut[i];
        const CrossSection section{stick.section.front(), stick.section.back()};
        sticks.push_back({stick.name,
                          -1,
                          static_cast<int>(i),
                          section,
                          {section, {0, 0, 0}, {stick.length, 0, 0}},
                          stick.count,
                          stick.length.place,
                          stick.length});
    }
    return sticks;
}

/// How a stick lies in its stock: its family's slant, the steeper of a square section's two last; `tip` is how far a
/// slanted end reaches past the centre line. `lone`: it nests with nothing, and `along` is tip to tip.
struct Lying {
    double left = 0, top = 0, along = 0, tip = 0, steepness = 1;
    bool half = false, lone = false;

    bool square() const { return !lone && left == 0 && top == 0; }
};

bool is_square(const Slant& slant) { return alike(slant.per_left, 0) && alike(slant.per_top, 0); }

double steepness_of(const Slant& slant) {
    return std::sqrt(1 + slant.per_left * slant.per_left + slant.per_top * slant.per_top);
}

/// Whether pieces like this one, and cut alike, can share a cut. What takes turning: parallel ends lie one behind the
/// other as they are. Mirrored ends need every second piece turned over, or end for end about what stands square to the
/// slant; so do halves that lie head to head. A piece turned end for end with its top up shows its slant across the top
/// as it was, and its slant down the sides the other way. Equal pieces of the cut list may be each other turned over,
/// so with the tops up only those nest of which that does not matter. A coped end is no plane to share.
bool nests(const StickToCut& stick, Nest nest) {
    const Slant &from = stick.piece.from, &to = stick.piece.to;
    const auto matches = [&](double sign) {
        return alike(to.per_left, sign * from.per_left) && alike(to.per_top, sign * from.per_top);
    };
    const bool across_alone = alike(from.per_top, 0) && alike(to.per_top, 0);
    const bool down_alone = alike(from.per_left, 0) && alike(to.per_left, 0);
    if (nest == Nest::no || stick.coped) return false;
    if (nest == Nest::face_up || stick.recessed) return (matches(1) && down_alone) || (matches(-1) && across_alone);
    // Two compound halves alike do not meet head to head: they would have to be mirrored.
    return is_square(from) != is_square(to) ? across_alone || down_alone : matches(1) || matches(-1);
}

Lying lying_of(const StickToCut& stick, const CrossSection& stock, Nest nest) {
    const Slant &from = stick.piece.from, &to = stick.piece.to;
    Lying lying;
    lying.along = length(stick.piece);
    const bool from_square = is_square(from), to_square = is_square(to);
    if (from_square && to_square && !stick.coped) return lying;
    lying.steepness = std::fmax(steepness_of(from), steepness_of(to));
    if (!nests(stick, nest)) {
        lying.lone = true;
        lying.along = stick.overall;
        return lying;
    }
    const Slant& slant = from_square ? to : from;
    lying.half = from_square != to_square;
    lying.left = std::fabs(slant.per_left);
    lying.top = std::fabs(slant.per_top);
    lying.tip = (lying.left * stick.section.width + lying.top * stick.section.depth) / 2;
    const bool turned_over = !alike(stick.section.width, stock.width);
    const bool any_side_up = nest == Nest::turned && !stick.recessed && alike(stock.width, stock.depth);
    if (turned_over || (any_side_up && lying.left > lying.top)) std::swap(lying.left, lying.top);
    return lying;
}

class StockPlanning {
 public:
    StockPlanning(const Stock& stock, const std::vector<StickToCut>& sticks) : stock_(stock) {
        section_ = {stock.width(), stock.depth()};
        cutting_.families.push_back({0, 0, down(stock.kerf)});
        families_.push_back({});
        for (const StickToCut& stick : sticks)
            if (same_section(stick.section, section_)) add(stick);
        for (std::size_t i = 0; i < stock.lengths.size(); ++i)
            cutting_.bars.push_back(
                {std::max(Whole(0), down(stock.lengths[i] - 2 * stock.trim)),
                 static_cast<Whole>(
                     std::llround(stock.prices.empty() ? stock.lengths[i] * parts : stock.prices[i] * price_parts))});
    }

    /// Whether every bar gives something, and every piece goes into one.
    bool can_be_cut(std::vector<Finding>& findings) const {
        const std::size_t before = findings.size();
        int pieces = 0;
        Whole most = 0;
        std::size_t longest = 0;
        for (std::size_t i = 0; i < cutting_.bars.size(); ++i) {
            if (cutting_.bars[i].room == 0)
                findings.push_back(
                    {Trouble::bar_trimmed_away, stock_.trim.place, {stock_.trim, stock_.lengths[i]}, {}});
            if (cutting_.bars[i].room > most) longest = i;
            most = std::max(most, cutting_.bars[i].room);
        }
        if (findings.size() > before) return false;
        const double gives = stock_.lengths[longest] - 2 * stock_.trim;
        for (std::size_t i = 0; i < sticks_.size(); ++i) {
            pieces += std::min(cutting_.pieces[i].demand, most_pieces + 1);
            Load alone(cutting_);
            alone.add(static_cast<int>(i), 1);
            if (alone.needed() <= most) continue;
            const bool own_place = sticks_[i]->also_cut >= 0;
            findings.push_back({Trouble::longer_than_stock,
                                own_place ? sticks_[i]->place : stock_.lengths[longest].place,
                                {sticks_[i]->overall, gives, stock_.trim},
                                own_place ? stock_.lengths[longest].place : Place{}});
        }
        if (pieces > most_pieces)
            findings.push_back({Trouble::too_many_to_cut,
                                stock_.place,
                                {static_cast<double>(pieces), static_cast<double>(most_pieces)},
                                {}});
        return findings.size() == before;
    }

    StockResult result() const {
        CuttingPlan plan = plan_of(cutting_);
        std::stable_sort(plan.bars.begin(), plan.bars.end(), [&](const CutBars& a, const CutBars& b) {
            const double long_a = length_of(a), long_b = length_of(b);
            return long_a != long_b ? long_a > long_b : a.pattern.counts > b.pattern.counts;
        });
        StockResult result;
        double price = 0;
        for (const CutBars& bars : plan.bars) {
            result.bars.push_back(laid_out(bars));
            result.total_length += length_of(bars) * bars.times;
            result.bar_count += bars.times;
            if (!stock_.prices.empty()) price += stock_.prices[static_cast<std::size_t>(bars.pattern.bar)] * bars.times;
        }
        result.bought = stock_.prices.empty() ? result.total_length : price;
        result.proven = plan.proven();
        result.bound = result.proven ? result.bought
                                     : static_cast<double>(plan.bound) / (stock_.prices.empty() ? parts : price_parts);
        return result;
    }

 private:
    double length_of(const CutBars& bars) const { return stock_.lengths[static_cast<std::size_t>(bars.pattern.bar)]; }

    void add(const StickToCut& stick) {
        const Lying lying = lying_of(stick, section_, stock_.nest);
        const double cut = stock_.kerf * lying.steepness;
        int family = 0;
        if (!lying.square()) family = family_of(lying);
        PieceKind kind{up(lying.along + cut), stick.count, family, lying.half};
        if (lying.half) kind.size = up(lying.along + (cut + stock_.kerf) / 2);
        cutting_.pieces.push_back(kind);
        sticks_.push_back(&stick);
        lying_.push_back(lying);
    }

    int family_of(const Lying& lying) {
        for (std::size_t f = 1; f < families_.size(); ++f)
            if (!lying.lone && !families_[f].lone && alike(families_[f].left, lying.left) &&
                alike(families_[f].top, lying.top))
                return static_cast<int>(f);
        const double cut = stock_.kerf * lying.steepness;
        families_.push_back(lying);
        cutting_.families.push_back(
            {up(2 * lying.tip), std::max(Whole(0), up(lying.tip - (cut - stock_.kerf) / 2)), down(cut)});
        return static_cast<int>(families_.size()) - 1;
    }

    /// Which pieces lie on a bar, and how: whether the from and to end show the slant, and whether the piece before
    /// shares the cut.
    struct Laid {
        std::size_t piece = 0;
        bool from = false, to = false, nested = false;
    };

    /// A family's row, or rows: whole pieces nested, closed by halves where there are any, then halves in pairs.
    void lay_family(std::size_t family, const std::vector<int>& counts, std::vector<Laid>& row) const {
        std::vector<std::size_t> whole, halves;
        for (std::size_t i = 0; i < counts.size(); ++i)
            if (cutting_.pieces[i].family == static_cast<int>(family))
                (cutting_.pieces[i].half ? halves : whole)
                    .insert((cutting_.pieces[i].half ? halves : whole).end(), static_cast<std::size_t>(counts[i]), i);
        const bool slanted = family > 0, nests = slanted && !families_[family].lone;
        std::size_t next = 0;
        bool open = false;  // the piece before shows a slant that the next may share
        if (halves.size() >= 2 && halves.size() % 2 == 0) {
            row.push_back({halves[next++], false, true, false});
            open = true;
        }
        for (const std::size_t piece : whole) {
            row.push_back({piece, slanted, slanted, open && nests});
            open = slanted;
        }
        for (; next < halves.size(); ++next) {
            const bool closes = open || (halves.size() % 2 != 0 && next == 0);
            row.push_back({halves[next], closes, !closes, open});
            open = !closes;
        }
    }

    std::vector<Laid> row_of(const std::vector<int>& counts) const {
        std::vector<Laid> row;
        std::vector<std::size_t> slanted_to_the_end;
        lay_family(0, counts, row);
        for (std::size_t f = 1; f < families_.size(); ++f) {
            bool any_half = false;
            for (std::size_t i = 0; i < counts.size(); ++i)
                any_half = any_half || (cutting_.pieces[i].family == static_cast<int>(f) && cutting_.pieces[i].half &&
                                        counts[i] > 0);
            if (any_half)
                lay_family(f, counts, row);
            else
                slanted_to_the_end.push_back(f);
        }
        std::stable_sort(slanted_to_the_end.begin(), slanted_to_the_end.end(),
                         [&](std::size_t a, std::size_t b) { return families_[a].steepness < families_[b].steepness; });
        for (const std::size_t f : slanted_to_the_end) lay_family(f, counts, row);
        return row;
    }

    BarResult laid_out(const CutBars& bars) const {
        BarResult bar;
        bar.length = length_of(bars);
        bar.times = bars.times;
        double middle = stock_.trim, cut = 0, tip_behind = 0;  // middle: of the cut that the last piece ends at
        for (const Laid& laid : row_of(bars.pattern.counts)) {
            const Lying& lying = lying_[laid.piece];
            const double tip_before = laid.from ? lying.tip : 0;
            middle += cut + (laid.nested ? 0 : tip_behind + tip_before);
            tip_behind = laid.to ? lying.tip : 0;
            const StickToCut& stick = *sticks_[laid.piece];
            const bool to_first = lying.half && laid.from == is_square(stick.piece.from);
            bar.pieces.push_back({stick.name, stick.cut, stick.also_cut, to_first, middle - tip_before,
                                  lying.along + tip_before + tip_behind, laid.nested});
            middle += lying.along;
            cut = stock_.kerf * (laid.to ? lying.steepness : 1);
        }
        const double left = bar.length - stock_.trim - middle - tip_behind;
        bar.offcut = left > cut + alike_within ? left - cut : 0;
        return bar;
    }

    const Stock& stock_;
    CrossSection section_;
    Cutting cutting_;
    std::vector<Lying> families_;  // of each family one that lies so
    std::vector<const StickToCut*> sticks_;
    std::vector<Lying> lying_;
};

void check(const Job& job, std::vector<Finding>& findings) {
    for (std::size_t s = 0; s < job.stock.size(); ++s) {
        const Stock& stock = job.stock[s];
        if (!stock.prices.empty() && stock.prices.size() != stock.lengths.size())
            findings.push_back({Trouble::prices_do_not_match,
                                stock.prices.front().place,
                                {static_cast<double>(stock.prices.size()), static_cast<double>(stock.lengths.size())},
                                {}});
        for (std::size_t before = 0; before < s; ++before)
            if (same_section({job.stock[before].width(), job.stock[before].depth()}, {stock.width(), stock.depth()})) {
                findings.push_back({Trouble::stock_twice, stock.place, {}, job.stock[before].place});
                break;
            }
    }
}

/// A note for each section of which there is no stock.
void note_without_stock(const Job& job, const std::vector<StickToCut>& sticks, std::vector<Finding>& findings) {
    const std::size_t before = findings.size();
    for (const StickToCut& stick : sticks) {
        const auto of_it = [&](const Stock& stock) {
            return same_section(stick.section, {stock.width(), stock.depth()});
        };
        if (std::any_of(job.stock.begin(), job.stock.end(), of_it)) continue;
        const auto noted =
            std::find_if(findings.begin() + static_cast<std::ptrdiff_t>(before), findings.end(), [&](const Finding& f) {
                return same_section({f.numbers[0], f.numbers[1]}, stick.section);
            });
        if (noted != findings.end())
            noted->numbers[2] += stick.count;
        else
            findings.push_back({Trouble::no_stock_of_section,
                                stick.place,
                                {stick.section.width, stick.section.depth, static_cast<double>(stick.count)},
                                {}});
    }
}

}  // namespace

void plan_stock(const Job& job, Solution& solution) {
    if (job.stock.empty() && job.also_cut.empty()) return;
    check(job, solution.findings);
    if (solution.refused()) return;
    int left_out = 0;
    const std::vector<StickToCut> sticks = sticks_of(job, solution, left_out);
    std::vector<StockPlanning> plannings;
    for (const Stock& stock : job.stock) plannings.emplace_back(stock, sticks);
    bool sound = true;
    for (const StockPlanning& planning : plannings) sound = planning.can_be_cut(solution.findings) && sound;
    if (!sound) return;
    for (const StockPlanning& planning : plannings) solution.stock.push_back(planning.result());
    for (std::size_t s = 0; s < job.stock.size(); ++s)
        if (solution.stock[s].bars.empty())
            solution.findings.push_back(
                {Trouble::nothing_from_stock, job.stock[s].place, {job.stock[s].width(), job.stock[s].depth()}, {}});
    note_without_stock(job, sticks, solution.findings);
    if (left_out > 0) solution.findings.push_back({Trouble::left_out_of_stock, {}, {double(left_out)}, {}});
}

}  // namespace rakewright
