#include "sawing.hpp"

#include "rail/splice.hpp"

namespace rakewright {
namespace {

class Counting {
 public:
    explicit Counting(const SawLimits& saw) : saw_(saw) {}

    int in_section(const SectionResult& section) const {
        int out = 0;
        for (const Member& member : section.members)
            for (const MemberPiece& piece : pieces_of(member)) out += of_piece(piece.piece, piece.copes);
        if (!section.pickets) return out;
        for (const PicketPiece& picket : section.pickets->pieces) out += picket.count * of_piece(picket.piece, {});
        for (const Fillet& fillet : section.pickets->fillets) out += fillet.count * of_piece(fillet.piece, {});
        return out;
    }

    int in_handrail(const HandrailResult& handrail) const {
        int out = 0;
        for (const HandrailPiece& piece : handrail.pieces) out += of_piece(piece.stick.piece, {});
        return out;
    }

 private:
    int of_piece(const Piece& piece, const std::array<std::optional<Cope>, 2>& copes) const {
        int out = 0;
        for (const End end : both_ends) {
            const std::optional<SawReach> reach =
                reach_of_end(saw_, end_cut(piece, end), piece.section, copes[index_of(end)].has_value());
            out += reach && reach->laid == LaidOn::none ? 1 : 0;
        }
        return out;
    }

    SawLimits saw_;
};

}  // namespace

std::optional<SawLimits> saw_limits(const Job& job) {
    if (!job.saw) return std::nullopt;
    SawLimits limits{slope(job.saw->largest_miter.angle), slope(job.saw->largest_bevel.angle), std::nullopt};
    if (job.saw->depth_of_cut) limits.depth_of_cut = job.saw->depth_of_cut->value;
    return limits;
}

std::optional<SawReach> reach_of_end(const std::optional<SawLimits>& saw, const EndCut& cut,
                                     const CrossSection& section, bool coped) {
    if (!saw || coped) return std::nullopt;
    return saw_reach(cut, section, *saw);
}

void note_ends_out_of_reach(const Job& job, Solution& solution) {
    const std::optional<SawLimits> saw = saw_limits(job);
    if (!saw) return;
    const Counting counting(*saw);
    const auto note = [&](int ends, Place place, int section) {
        if (ends > 0) solution.findings.push_back({Trouble::out_of_saws_reach, place, {double(ends)}, {}, section});
    };
    for (std::size_t s = 0; s < solution.sections.size(); ++s)
        note(counting.in_section(solution.sections[s]), job.sections[s].id.place, static_cast<int>(s));
    for (std::size_t h = 0; h < solution.handrails.size(); ++h)
        note(counting.in_handrail(solution.handrails[h]), job.handrails[h].id.place, -1);
}

}  // namespace rakewright
