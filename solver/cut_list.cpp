#include "cut_list.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>

#include "rail/splice.hpp"

namespace rakewright {
namespace {

/// A picket that is turned: what it is bought as, and what is trimmed off it. Nothing of any other piece.
struct Lathe {
    const PicketBuild* bought = nullptr;
    std::optional<Trim> trim;
};

bool same_lathe(const Lathe& a, const Lathe& b) {
    if (!a.trim || !b.trim) return !a.trim && !b.trim;
    return alike(a.trim->lower_block, b.trim->lower_block) && alike(a.trim->upper_block, b.trim->upper_block) &&
           bought_alike(*a.bought, *b.bought);
}

using Copes = std::array<std::optional<Cope>, 2>;

/// A coped piece, or its copes alone, lying another way.
struct Lying {
    Piece piece;
    Copes copes;
};

Slant half_round(const Slant& slant) { return {slant.at, -slant.per_left, -slant.per_top}; }

Slant end_for_end(const Slant& slant) { return {-slant.at, slant.per_left, -slant.per_top}; }

Lying rolled(const Lying& one) {
    const auto roll = [](const std::optional<Cope>& cope) { return cope ? std::optional(rolled(*cope)) : cope; };
    return {{one.piece.section, half_round(one.piece.from), half_round(one.piece.to)},
            {roll(one.copes[0]), roll(one.copes[1])}};
}

Lying end_for_end(const Lying& one) {
    const auto turn = [](const std::optional<Cope>& cope) { return cope ? std::optional(end_for_end(*cope)) : cope; };
    return {{one.piece.section, end_for_end(one.piece.to), end_for_end(one.piece.from)},
            {turn(one.copes[1]), turn(one.copes[0])}};
}

bool lie_alike(const Lying& a, const Lying& b) {
    const auto ends = [&](const std::optional<Cope>& x, const std::optional<Cope>& y, const Slant& s, const Slant& t) {
        if (x || y) return x && y && same_cope(*x, *y);
        return alike(s.per_left, t.per_left) && alike(s.per_top, t.per_top);
    };
    return alike(length(a.piece), length(b.piece)) && ends(a.copes[0], b.copes[0], a.piece.from, b.piece.from) &&
           ends(a.copes[1], b.copes[1], a.piece.to, b.piece.to);
}

/// Whether two pieces, of which at least one is coped, come out alike: lying as they are, or turned over or end for
/// end. Pieces that same_piece takes for alike.
bool coped_alike(const Lying& a, const Lying& b) {
    const Lying turned = end_for_end(b);
    return lie_alike(a, b) || lie_alike(a, rolled(b)) || lie_alike(a, turned) || lie_alike(a, rolled(turned));
}

bool same_copes(const Lying& a, const Lying& b) {
    const bool any = a.copes[0] || a.copes[1] || b.copes[0] || b.copes[1];
    return !any || coped_alike(a, b);
}

/// A picket whose head slants along the rail and whose foot is bevelled across it is set out on the arris that is long
/// at both ends.
SetOut measure_of(const Piece& piece, int outer) {
    const int uphill = long_point(piece, End::to).top;
    if (outer == 0 || uphill == 0) return set_out(piece);
    const Corner arris{outer, uphill};
    return {arris, Reaching::long_there, Reaching::long_there, edge_length(piece, arris)};
}

class Listing {
 public:
    void add(Stuff stuff, const std::string& name, const Piece& piece, double room, int quantity, Use use,
             double tip_to_tip, const Lathe& lathe = {}, const Copes& copes = {}, int outer = 0) {
        CutPiece* mine = equal_to(stuff, {piece, copes}, lathe);
        if (!mine) {
            by_length_.emplace(length(piece), pieces_.size());
            mine = &pieces_.emplace_back(CutPiece{stuff,
                                                  {},
                                                  piece,
                                                  end_cut(piece, End::from),
                                                  end_cut(piece, End::to),
                                                  measure_of(piece, outer),
                                                  tip_to_tip,
                                                  room,
                                                  0,
                                                  {},
                                                  lathe.trim,
                                                  copes,
                                                  outer});
            lathes_.push_back(lathe);
        }
        if (std::find(mine->names.begin(), mine->names.end(), name) == mine->names.end()) mine->names.push_back(name);
        mine->room = std::fmin(mine->room, room);
        mine->quantity += quantity;
        mine->uses.push_back(use);
    }

    std::vector<CutPiece> take() { return std::move(pieces_); }

 private:
    CutPiece* equal_to(Stuff stuff, const Lying& lying, const Lathe& lathe) {
        const Piece& piece = lying.piece;
        const double own = length(piece);
        for (auto at = by_length_.lower_bound(own - alike_within);
             at != by_length_.end() && at->first <= own + alike_within; ++at) {
            CutPiece& candidate = pieces_[at->second];
            if (candidate.stuff == stuff && same_piece(candidate.piece, piece) &&
                same_lathe(lathes_[at->second], lathe) && same_copes({candidate.piece, candidate.copes}, lying))
                return &candidate;
        }
        return nullptr;
    }

    std::vector<CutPiece> pieces_;
    std::vector<Lathe> lathes_;  // of each piece
    std::multimap<double, std::size_t> by_length_;
};

template <class AddOf>
void add_each(const Job& job, const Solution& solution, Listing& listing, const AddOf& add_of) {
    for (std::size_t s = 0; s < solution.sections.size(); ++s)
        add_of(listing, job.sections[s], solution.sections[s], static_cast<int>(s));
}

}  // namespace

bool bought_alike(const PicketBuild& a, const PicketBuild& b) {
    const auto turned_alike = [](const Turning& one, const Turning& other) {
        return one.at == double(other.at) && one.diameter == double(other.diameter);
    };
    return a.length->value == b.length->value && a.blocks->lower == double(b.blocks->lower) &&
           a.blocks->upper == double(b.blocks->upper) &&
           std::equal(a.turning.begin(), a.turning.end(), b.turning.begin(), b.turning.end(), turned_alike);
}

std::string names_of(const CutPiece& piece) {
    std::string names;
    for (const std::string& name : piece.names) names += (names.empty() ? "" : ", ") + name;
    return names;
}

const Profile& profile_of(const Job& job, const CutPiece& piece) {
    return job.handrails[static_cast<std::size_t>(piece.uses.front().of)].profile;
}

std::vector<CutPiece> cut_list(const Job& job, const Solution& solution) {
    Listing listing;
    add_each(job, solution, listing, [&](Listing& list, const Section& section, const SectionResult& result, int s) {
        const Build& build = job.builds[static_cast<std::size_t>(section.build.index)];
        const double play = (section.play ? *section.play : build.play) * std::sqrt(1 + result.slope * result.slope);
        for (std::size_t m = 0; m < result.members.size(); ++m) {
            const std::vector<MemberPiece> pieces = pieces_of(result.members[m]);
            const double room = play / static_cast<double>(pieces.size());
            for (std::size_t p = 0; p < pieces.size(); ++p)
                list.add(Stuff::member, result.members[m].name, pieces[p].piece, room, section.count,
                         {s, static_cast<int>(m), static_cast<int>(p)}, pieces[p].overall, {}, pieces[p].copes);
        }
    });
    add_each(job, solution, listing, [&](Listing& list, const Section& section, const SectionResult& result, int s) {
        if (!result.pickets) return;
        const PicketBuild& bought = *job.builds[static_cast<std::size_t>(section.build.index)].pickets;
        for (std::size_t p = 0; p < result.pickets->pieces.size(); ++p) {
            const PicketPiece& piece = result.pickets->pieces[p];
            const Lathe lathe = piece.trim ? Lathe{&bought, piece.trim} : Lathe();
            const Stuff stuff = bought.shape == PicketShape::round ? Stuff::round_picket : Stuff::picket;
            list.add(stuff, piece.trim ? "turned picket" : "picket", piece.piece,
                     std::numeric_limits<double>::infinity(), section.count * piece.count, {s, static_cast<int>(p)},
                     overall(piece.piece), lathe, {}, piece.outer);
        }
    });
    add_each(job, solution, listing, [](Listing& list, const Section& section, const SectionResult& result, int s) {
        for (std::size_t f = 0; f < result.feet.size(); ++f)
            list.add(Stuff::foot, "foot", result.feet[f].piece, std::numeric_limits<double>::infinity(), section.count,
                     {s, static_cast<int>(f)}, result.feet[f].overall);
    });
    add_each(job, solution, listing, [](Listing& list, const Section& section, const SectionResult& result, int s) {
        if (!result.pickets) return;
        for (std::size_t f = 0; f < result.pickets->fillets.size(); ++f) {
            const Fillet& fillet = result.pickets->fillets[f];
            list.add(Stuff::fillet, "fillet", fillet.piece, 0, section.count * fillet.count, {s, static_cast<int>(f)},
                     overall(fillet.piece));
        }
    });
    for (std::size_t h = 0; h < solution.handrails.size(); ++h)
        for (std::size_t p = 0; p < solution.handrails[h].pieces.size(); ++p) {
            const HandrailPiece& piece = solution.handrails[h].pieces[p];
            const Profile& profile = job.handrails[h].profile;
            listing.add(is_round(profile) ? Stuff::round_handrail : Stuff::handrail, words(piece.part),
                        piece.stick.piece, std::numeric_limits<double>::infinity(), 1,
                        {static_cast<int>(h), static_cast<int>(p)}, overall(piece.stick.piece));
        }
    return listing.take();
}

std::string mark_of(std::size_t index) {
    std::string mark(1, static_cast<char>('A' + index % 26));
    for (index /= 26; index > 0; index = (index - 1) / 26)
        mark.insert(mark.begin(), static_cast<char>('A' + (index - 1) % 26));
    return mark;
}

std::vector<Share> shares_of(const Job& job, const Solution& solution, const CutPiece& piece) {
    std::vector<Share> shares;
    for (const Use& use : piece.uses) {
        const auto of = static_cast<std::size_t>(use.of), index = static_cast<std::size_t>(use.index);
        int count = 1;
        if (!is_handrail(piece.stuff)) {
            const SectionResult& section = solution.sections[of];
            count = job.sections[of].count;
            if (is_picket(piece.stuff)) count *= section.pickets->pieces[index].count;
            if (piece.stuff == Stuff::fillet) count *= section.pickets->fillets[index].count;
        }
        if (shares.empty() || shares.back().of != use.of) shares.push_back({use.of, 0});
        shares.back().count += count;
    }
    return shares;
}

}  // namespace rakewright
