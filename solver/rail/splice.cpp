#include "splice.hpp"

#include <algorithm>
#include <cmath>

#include "../measure/compare.hpp"

namespace rakewright {
namespace {

/// More pieces than this are not tried.
constexpr int most_pieces = 200;

/// How far past its cut on the centre line an end reaches with its tip.
double tip_of(const Piece& piece, const Slant& slant, const std::optional<Cope>& cope) {
    if (cope) return cope->longest;
    return (std::fabs(slant.per_left) * piece.section.width + std::fabs(slant.per_top) * piece.section.depth) / 2;
}

MemberPiece piece_between(const Member& member, const Slant& from, const Slant& to,
                          const Copes& copes) {
    MemberPiece mine{{member.stick.piece.section, from, to}, copes, 0};
    mine.overall = length(mine.piece) + tip_of(mine.piece, from, copes[0]) + tip_of(mine.piece, to, copes[1]);
    return mine;
}

std::vector<MemberPiece> pieces_between(const Member& member, const std::vector<Splice>& splices) {
    std::vector<MemberPiece> pieces;
    Slant from = member.stick.piece.from;
    std::optional<Cope> cope = member.copes[0];
    for (const Splice& splice : splices) {
        pieces.push_back(piece_between(member, from, splice.cut, {cope, std::nullopt}));
        from = splice.cut;
        cope.reset();
    }
    pieces.push_back(piece_between(member, from, member.stick.piece.to, {cope, member.copes[1]}));
    return pieces;
}

class Splicing {
 public:
    Splicing(const Member& member, const RailLine& line, const std::vector<SplicePlace>& places)
        : member_(member), line_(line), places_(places) {}

    /// So many pieces, spliced nearest to equal divisions; none where a place would have to serve twice.
    std::optional<std::vector<Splice>> parted(int pieces) const {
        std::vector<Splice> splices;
        double before = -INFINITY;
        for (int number = 1; number < pieces; ++number) {
            const double wished = member_.length * number / pieces;
            std::optional<Splice> next;
            if (places_.empty()) next = splice_at({along_of(wished), 0, 0});
            for (const SplicePlace& place : places_) {
                const std::optional<Splice> here = splice_at(place);
                if (!here || here->at <= before) continue;
                // The first of those that are equally near.
                if (!next || less_than(std::fabs(here->at - wished), std::fabs(next->at - wished), member_.length))
                    next = here;
            }
            if (!next) return std::nullopt;
            before = next->at;
            splices.push_back(*next);
        }
        return splices;
    }

    bool fits(const std::vector<Splice>& splices, double longest) const {
        const std::vector<MemberPiece> pieces = pieces_between(member_, splices);
        return std::all_of(pieces.begin(), pieces.end(), [&](const MemberPiece& piece) {
            return no_more_than(piece.overall, longest) && less_than(0, shortest_arris(piece.piece), member_.length);
        });
    }

 private:
    /// Where along the line a place of the member's centre line is.
    double along_of(double at) const {
        const Vector point = point_on(member_.stick.frame, member_.stick.piece.from.at + at, {}) - line_.origin;
        return point.x() * line_.x + point.y() * line_.y;
    }

    std::optional<Splice> splice_at(const SplicePlace& place) const {
        const std::optional<Slant> plumb =
            cut(member_.stick.frame, {line_.at(place.along), Vector(line_.x, line_.y, 0)});
        if (!plumb) return std::nullopt;
        return Splice{*plumb, plumb->at - member_.stick.piece.from.at, place.picket, place.foot};
    }

    const Member& member_;
    const RailLine& line_;
    const std::vector<SplicePlace>& places_;
};

}  // namespace

std::optional<std::vector<Splice>> splices_in(const Member& member, const RailLine& line,
                                              const std::vector<SplicePlace>& places, double longest) {
    if (no_more_than(member.overall, longest)) return std::vector<Splice>();
    const Splicing splicing(member, line, places);
    const int most = places.empty() ? most_pieces : std::min(most_pieces, static_cast<int>(places.size()) + 1);
    for (int pieces = 2; pieces <= most; ++pieces)
        if (std::optional<std::vector<Splice>> splices = splicing.parted(pieces);
            splices && splicing.fits(*splices, longest))
            return splices;
    return std::nullopt;
}

std::vector<MemberPiece> pieces_of(const Member& member) {
    if (member.splices.empty()) return {{member.stick.piece, member.copes, member.overall}};
    return pieces_between(member, member.splices);
}

}  // namespace rakewright
