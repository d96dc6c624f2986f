#pragma once

#include "solution.hpp"

namespace rakewright {

/// What a piece is.
enum class Stuff { member, picket, round_picket, foot, fillet, handrail, round_handrail };

inline bool is_picket(Stuff stuff) { return stuff == Stuff::picket || stuff == Stuff::round_picket; }
inline bool is_handrail(Stuff stuff) { return stuff == Stuff::handrail || stuff == Stuff::round_handrail; }
/// Whether it is round: its section is then as wide as deep, its diameter.
inline bool is_round(Stuff stuff) { return stuff == Stuff::round_picket || stuff == Stuff::round_handrail; }

/// Where equal pieces go: a section or handrail, and the index of the piece among its members, its pickets' pieces, its
/// feet, its fillets or its own pieces; of a member that is spliced, which of its pieces.
struct Use {
    int of = 0;
    int index = 0;
    int part = 0;
};

/// Pieces of the whole job that come off the saw alike. `room` is how much longer than computed one may be and still go
/// in: the play along it, for a member between posts, shared by the pieces of one that is spliced; infinite for a
/// picket, which has no fixed faces at its ends.
struct CutPiece {
    Stuff stuff = Stuff::member;
    std::vector<std::string> names;  // what the job calls it, each name once
    Piece piece;
    EndCut from_end, to_end;
    SetOut measure;
    double overall = 0;
    double room = 0;
    int quantity = 0;
    std::vector<Use> uses;
    std::optional<Trim> trim;  // of a turned picket
    Copes copes{};
    int outer = 0;  // of a picket with a bevelled foot: whether its left, +1, or its right, -1, lies away from the rail
};

/// What the job calls equal pieces, in one line.
std::string names_of(const CutPiece& piece);

/// Whether turned pickets are bought alike, but for their width and depth.
bool bought_alike(const PicketBuild& a, const PicketBuild& b);

/// The stick's profile, of a piece of a handrail.
const Profile& profile_of(const Job& job, const CutPiece& piece);

/// The mark of a row of the cut list, and behind them of `also_cut`: A, B, ... Z, AA, AB ...
std::string mark_of(std::size_t index);

/// How many of equal pieces go to a section, those that are alike counted, or to a handrail.
struct Share {
    int of = 0;
    int count = 0;
};

/// Where equal pieces go, in the order of the job.
std::vector<Share> shares_of(const Job& job, const Solution& solution, const CutPiece& piece);

/// Every stick of a solved job, equal ones together (turned over or end for end, never mirrored; turned pickets, if
/// they are bought and trimmed alike; coped ones, if their copes lie alike): members first, then pickets, feet, fillets
/// and handrails, each in the order of the job.
std::vector<CutPiece> cut_list(const Job& job, const Solution& solution);

}  // namespace rakewright
