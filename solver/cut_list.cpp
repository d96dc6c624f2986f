#include "cut_list.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>

namespace rakewright {
namespace {

constexpr double alike = 1e-9;

/// A picket that is turned: what it is bought as, and what is trimmed off it. Nothing of any other piece.
struct Lathe {
    const PicketBuild* bought = nullptr;
    std::optional<Trim> trim;
};

bool bought_alike(const PicketBuild& a, const PicketBuild& b) {
    const auto turned_alike = [](const Turning& one, const Turning& other) {
        return one.at == double(other.at) && one.diameter == double(other.diameter);
    };
    return a.length->value == b.length->value && a.blocks->lower == double(b.blocks->lower) &&
           a.blocks->upper == double(b.blocks->upper) &&
           std::equal(a.turning.begin(), a.turning.end(), b.turning.begin(), b.turning.end(), turned_alike);
}

bool same_lathe(const Lathe& a, const Lathe& b) {
    if (!a.trim || !b.trim) return !a.trim && !b.trim;
    return std::fabs(a.trim->lower_block - b.trim->lower_block) <= alike &&
           std::fabs(a.trim->upper_block - b.trim->upper_block) <= alike && bought_alike(*a.bought, *b.bought);
}

class Listing {
 public:
    void add(Stuff stuff, const std::string& name, const Piece& piece, double room, int quantity, Use use,
             const Lathe& lathe = {}) {
        CutPiece* mine = equal_to(stuff, piece, lathe);
        if (!mine) {
            by_length_.emplace(length(piece), pieces_.size());
            mine = &pieces_.emplace_back(CutPiece{stuff,
                                                  {},
                                                  piece,
                                                  end_cut(piece, End::from),
                                                  end_cut(piece, End::to),
                                                  set_out(piece),
                                                  overall(piece),
                                                  room,
                                                  0,
                                                  {},
                                                  lathe.trim});
            lathes_.push_back(lathe);
        }
        if (std::find(mine->names.begin(), mine->names.end(), name) == mine->names.end()) mine->names.push_back(name);
        mine->room = std::fmin(mine->room, room);
        mine->quantity += quantity;
        mine->uses.push_back(use);
    }

    std::vector<CutPiece> take() { return std::move(pieces_); }

 private:
    CutPiece* equal_to(Stuff stuff, const Piece& piece, const Lathe& lathe) {
        const double own = length(piece);
        for (auto at = by_length_.lower_bound(own - alike); at != by_length_.end() && at->first <= own + alike; ++at) {
            CutPiece& candidate = pieces_[at->second];
            if (candidate.stuff == stuff && same_piece(candidate.piece, piece) &&
                same_lathe(lathes_[at->second], lathe))
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

std::vector<CutPiece> cut_list(const Job& job, const Solution& solution) {
    Listing listing;
    add_each(job, solution, listing, [&](Listing& list, const Section& section, const SectionResult& result, int s) {
        const Build& build = job.builds[static_cast<std::size_t>(section.build.index)];
        const double play = (section.play ? *section.play : build.play) * std::sqrt(1 + result.slope * result.slope);
        for (std::size_t m = 0; m < result.members.size(); ++m)
            list.add(Stuff::member, result.members[m].name, result.members[m].stick.piece, play, section.count,
                     {s, static_cast<int>(m)});
    });
    add_each(job, solution, listing, [&](Listing& list, const Section& section, const SectionResult& result, int s) {
        if (!result.pickets) return;
        const PicketBuild& bought = *job.builds[static_cast<std::size_t>(section.build.index)].pickets;
        for (std::size_t p = 0; p < result.pickets->pieces.size(); ++p) {
            const PicketPiece& piece = result.pickets->pieces[p];
            const Lathe lathe = piece.trim ? Lathe{&bought, piece.trim} : Lathe();
            list.add(Stuff::picket, piece.trim ? "turned picket" : "picket", piece.piece,
                     std::numeric_limits<double>::infinity(), section.count * piece.count, {s, static_cast<int>(p)},
                     lathe);
        }
    });
    add_each(job, solution, listing, [](Listing& list, const Section& section, const SectionResult& result, int s) {
        if (!result.pickets) return;
        for (std::size_t f = 0; f < result.pickets->fillets.size(); ++f) {
            const Fillet& fillet = result.pickets->fillets[f];
            list.add(Stuff::fillet, "fillet", fillet.piece, 0, section.count * fillet.count, {s, static_cast<int>(f)});
        }
    });
    for (std::size_t h = 0; h < solution.handrails.size(); ++h)
        for (std::size_t p = 0; p < solution.handrails[h].pieces.size(); ++p) {
            const HandrailPiece& piece = solution.handrails[h].pieces[p];
            const Profile& profile = job.handrails[h].profile;
            const bool is_round = profile.diameter || profile.around;
            listing.add(is_round ? Stuff::round_handrail : Stuff::handrail, words(piece.part), piece.stick.piece,
                        std::numeric_limits<double>::infinity(), 1, {static_cast<int>(h), static_cast<int>(p)});
        }
    return listing.take();
}

}  // namespace rakewright
