#include <algorithm>
#include <cmath>
#include <gp.hxx>
#include <gp_Quaternion.hxx>
#include <gp_Trsf.hxx>
#include <gp_Vec.hxx>

#include "../../solver/solve.hpp"
#include "../support/catch.hpp"
#include "../support/face_build.hpp"
#include "../support/near.hpp"
#include "../support/random_job.hpp"
#include "solid.hpp"

// The pieces of solved jobs as solids: boxes that reach beyond the posts, with what lies behind the posts' faces taken
// off. The faces are moved by the play and by what the brackets' legs take.

namespace rakewright::tests {
namespace {

gp_Pnt point(const Vector& v) { return {v.x(), v.y(), v.z()}; }

double radians_of(const DrawnAngle& angle) {
    return angle.in_degrees ? angle.degrees * M_PI / 180 : std::atan2(angle.rise, angle.run);
}

/// A face of a post as it stands, its plane's normal looking out: found on the post at the origin, then turned, tipped
/// and put in its place.
gp_Pln face_of(const Post& post, const DrawnPost& angles, const gp_Pnt& foot, Face face) {
    const double quarter = face == Face::uphill ? 0 : face == Face::left ? 1 : face == Face::downhill ? 2 : 3;
    const double out = (face == Face::uphill || face == Face::downhill ? post.size.along : post.size.across) / 2;
    gp_Pln plane(gp_Pnt(out, 0, 0), gp_Dir(1, 0, 0));
    const gp_Ax1 plumb(gp::Origin(), gp::DZ());
    plane.Rotate(plumb, quarter * M_PI / 2 + radians_of(angles.turn));
    gp_Trsf tip;
    tip.SetRotation(gp_Quaternion(gp_Vec(0, 0, 1),
                                  gp_Vec(std::tan(radians_of(angles.along)), std::tan(radians_of(angles.across)), 1)));
    plane.Transform(tip);
    plane.Translate(gp_Vec(gp::Origin(), foot));
    return plane;
}

/// Where a rail goes: from a point of the nosing line or floor, level direction, slope; and the planes that bound it.
struct Way {
    gp_Pnt origin;
    gp_Vec level;
    double slope = 0;
    gp_Pln faces[2];

    gp_Vec rising() const { return level + gp_Vec(0, 0, slope); }
    gp_Vec left() const { return gp_Vec(0, 0, 1).Crossed(level); }
    gp_Vec top() const { return rising().Crossed(left()).Normalized(); }
};

class Solids {
 public:
    Solids(const DrawnJob& drawn, const Solution& solution, std::size_t number)
        : drawn_(drawn),
          solution_(solution),
          section_(drawn.job.sections[number]),
          build_(drawn.job.builds[0]),
          got_(solution.sections[number]),
          way_(section_.from.named() ? between_posts(solution.choices.sections[number].faces) : over_distance()) {}

    void check_members() const {
        std::size_t index = 0;
        for (const Group group : {Group::upper, Group::lower}) {
            double square = 0;
            for (const MemberSize& size : group == Group::upper ? build_.upper : build_.lower) {
                square += size.depth;
                check_member(got_.members[index++], top_of(group), square - size.depth / 2);
            }
        }
    }

    int check_pickets() const {
        if (!got_.pickets || got_.pickets->pieces.empty()) return 0;
        for (const PicketPiece& piece : got_.pickets->pieces) {
            INFO("picket " << piece.at.front());
            check_picket(piece, got_.pickets->upper.centres[static_cast<std::size_t>(piece.at.front() - 1)]);
        }
        return static_cast<int>(got_.pickets->pieces.size());
    }

 private:
    const NosingLine& nosing_line() const { return *solution_.stairs[0].line; }

    double surface_under(double x) const {
        double surface = 0;
        for (const Nosing& nosing : solution_.stairs[0].nosings)
            if (nosing.x <= x) surface = nosing.z;
        return surface;
    }

    gp_Pnt foot(const Ref& post) const {
        const Post& asked = drawn_.job.posts[static_cast<std::size_t>(post.index)];
        const StairShape& stair = solution_.stairs[0];
        double x = stair.nosing(asked.nosing.value == 0 ? stair.risers() : asked.nosing.value).x + *asked.at;
        if (asked.face == PostFace::downhill) x += asked.size.along / 2;
        if (asked.face == PostFace::uphill) x -= asked.size.along / 2;
        switch (asked.base.on) {
            case Base::On::height: return {x, asked.across, asked.base.height};
            case Base::On::tread: return {x, asked.across, tread_height(stair, asked.base.tread)};
            case Base::On::what_is_under: break;
        }
        return {x, asked.across, surface_under(x)};
    }

    Way between_posts(const FacesMet& met) const {
        const gp_Pnt from = foot(section_.from), to = foot(section_.to);
        Way way;
        way.origin = {from.X(), from.Y(), nosing_line().at(from.X())};
        way.level = gp_Vec(to.X() - from.X(), to.Y() - from.Y(), 0).Normalized();
        way.slope = nosing_line().slope * way.level.X();
        const auto face = [&](const Ref& ref, const gp_Pnt& place, Face side) {
            const std::size_t index = static_cast<std::size_t>(ref.index);
            return face_of(drawn_.job.posts[index], drawn_.posts[index], place, side);
        };
        way.faces[0] = face(section_.from, from, met[0]);
        way.faces[1] = face(section_.to, to, met[1]);
        return way;
    }

    /// Such a section has no place of its own: it lies where the middle of its first member was laid.
    Way over_distance() const {
        Way way;
        way.level = gp_Vec(1, 0, 0);
        way.slope = section_.stair.named() ? nosing_line().slope : 0;
        const double rake = std::atan(way.slope);
        const double clear = section_.clear ? section_.clear->value : *section_.clear_on_slope * std::cos(rake);
        const double middle = build_.height - build_.upper.front().depth / 2 / std::cos(rake);
        way.origin = point(got_.members.front().stick.frame.origin).Translated(gp_Vec(0, 0, -middle));
        way.faces[0] = gp_Pln(way.origin, gp_Dir(1, 0, 0));
        way.faces[1] = gp_Pln(way.origin.Translated(gp_Vec(clear, 0, 0)), gp_Dir(-1, 0, 0));
        return way;
    }

    double plumb_of(double square) const { return square / std::cos(std::atan(way_.slope)); }

    /// The top of a group, plumb over the line.
    double top_of(Group group) const {
        if (group == Group::upper) return build_.height;
        double depth = 0;
        for (const MemberSize& size : build_.lower) depth += size.depth;
        const LowerGap& gap = *build_.lower_gap;
        return (gap.is_block ? plumb_of(gap.size) : gap.size.value) + plumb_of(depth);
    }

    double underside_of_upper() const {
        double depth = 0;
        for (const MemberSize& size : build_.upper) depth += size.depth;
        return build_.height - plumb_of(depth);
    }

    gp_Pnt over_origin(double above) const { return way_.origin.Translated(gp_Vec(0, 0, above)); }

    double far_enough() const {
        return 4 * (got_.clear_on_slope + build_.height) + 8 * way_.origin.Distance(gp::Origin());
    }

    gp_Pln cut_at(std::size_t end, const Member& member) const {
        gp_Pln plane = way_.faces[end];
        const double inward = (section_.play ? *section_.play : build_.play) / (end == 0 ? 2.0 : -2.0);
        plane.Translate(way_.level * inward);
        if (member.shortened[end] > 0)
            plane.Translate(gp_Vec(plane.Axis().Direction()) * build_.bracket->thickness.value);
        return plane;
    }

    /// A member whose middle lies so far under its group's top, square to the rail.
    void check_member(const Member& got, double top, double square) const {
        INFO("member " << got.name << ' ' << square);
        const gp_Dir along(way_.rising());
        const gp_Pnt middle = over_origin(top).Translated(way_.top() * -square);
        const gp_Ax2 axes(middle, along, gp_Dir(way_.left()));
        TopoDS_Shape solid = long_box(axes, far_enough(), got.width, got.depth);
        for (std::size_t end = 0; end < 2; ++end) solid = trimmed(solid, cut_at(end, got));

        const double size = got.overall;
        CHECK_THAT(volume_of(solid), within(got.width * got.depth * got.length, 1e-9 * size * got.width * got.depth));
        CHECK_THAT(extent(solid, along), within(got.overall, 1e-9));
        const std::vector<gp_Pnt> corners = corners_of(solid);
        REQUIRE(corners.size() == 8);
        std::vector<double> arrises;
        for (const int left : {-1, 1})
            for (const int high : {-1, 1}) {
                const Piece& piece = got.stick.piece;
                const Spot spot = spot_of({left, high}, piece.section);
                arrises.push_back(edge_length(piece, {left, high}));
                for (const Slant& slant : {piece.from, piece.to})
                    CHECK(nearest(corners, point(point_on(got.stick.frame, reach(slant, spot), spot))) < 1e-9);
            }
        std::sort(arrises.begin(), arrises.end());
        const std::vector<double> edges = edges_along(solid, along);
        REQUIRE(edges.size() == 4);
        for (std::size_t i = 0; i < 4; ++i) CHECK_THAT(arrises[i], within(edges[i], 1e-9));
    }

    static double nearest(const std::vector<gp_Pnt>& corners, const gp_Pnt& wanted) {
        double least = INFINITY;
        for (const gp_Pnt& corner : corners) least = std::min(least, corner.Distance(wanted));
        return least;
    }

    /// The surface that a picket stands on, looking up, as far down or in as it enters it.
    gp_Pln footing(const gp_Pnt& centre) const {
        const double plough = build_.pickets->plough.lower;
        if (!build_.lower.empty())
            return {over_origin(top_of(Group::lower)).Translated(way_.top() * -plough), gp_Dir(way_.top())};
        const double ground = section_.from.named() ? surface_under(centre.X()) : way_.origin.Z();
        return {gp_Pnt(0, 0, ground - plough), gp::DZ()};
    }

    /// Set where its mark is: so far along the middle of the lowest upper member's underside.
    void check_picket(const PicketPiece& got, double mark) const {
        const Member& above = got_.members[build_.upper.size() - 1];
        const Spot under{0, -above.depth / 2};
        const gp_Pnt start = point(point_on(above.stick.frame, reach(above.stick.piece.from, under), under));
        const gp_Pnt centre = start.Translated(way_.rising().Normalized() * mark);
        const PicketBuild& asked = *build_.pickets;
        const gp_Ax2 axes(centre, gp::DZ(), gp_Dir(way_.level));
        TopoDS_Shape solid = long_box(axes, far_enough(), asked.width, asked.depth);
        const gp_Pnt head = over_origin(underside_of_upper()).Translated(way_.top() * asked.plough.upper.value);
        solid = trimmed(solid, gp_Pln(head, gp_Dir(way_.top().Reversed())));
        solid = trimmed(solid, footing(centre));

        const double section = asked.width * asked.depth, mean = (got.uphill_side + got.downhill_side) / 2;
        CHECK_THAT(volume_of(solid), within(section * mean, 1e-9 * section * got.overall));
        CHECK_THAT(extent(solid, gp::DZ()), within(got.overall, 1e-9));
        const std::vector<double> edges = edges_along(solid, gp::DZ());
        REQUIRE(edges.size() == 4);
        const double shorter = std::min(got.uphill_side, got.downhill_side),
                     longer = std::max(got.uphill_side, got.downhill_side);
        CHECK_THAT(edges[0], within(shorter, 1e-9));
        CHECK_THAT(edges[1], within(shorter, 1e-9));
        CHECK_THAT(edges[2], within(longer, 1e-9));
        CHECK_THAT(edges[3], within(longer, 1e-9));
        const bool grows_uphill = build_.lower.empty() && std::fabs(way_.slope) > 0;
        if (grows_uphill) CHECK(got.uphill_side > got.downhill_side);
    }

    const DrawnJob& drawn_;
    const Solution& solution_;
    const Section& section_;
    const Build& build_;
    const SectionResult& got_;
    Way way_;
};

}  // namespace

TEST_CASE("a picket on the side of a raked rail is the solid between its head and its bevelled foot", "[oracle]") {
    for (const bool left : {true, false})
        for (const double bevel_deg : {10.0, 45.0}) {
            Job job = even_example(face_build());
            job.builds[0].pickets->side = NamedSide{left, {}};
            job.builds[0].pickets->lower_end->bevel = in_degrees(bevel_deg);
            const Solution solution = solve(job);
            REQUIRE_FALSE(solution.refused());
            const PicketPiece& got = solution.sections[0].pickets->pieces.at(0);
            // Along x up the stair, y to the left; the foot's lowest point 3 - 1 over the line, in the middle of its
            // width.
            const double rake = std::atan(even_slope), bevel = bevel_deg * std::acos(-1.0) / 180,
                         outward = left ? 1 : -1, plumb_cap = 1 / std::cos(rake);
            TopoDS_Shape solid = long_box({gp::Origin(), gp::DZ(), gp::DX()}, 200, 1.5, 1.5);
            solid = trimmed(solid, gp_Pln({0, 0, 36 - plumb_cap - 0.125}, {std::sin(rake), 0, -std::cos(rake)}));
            solid = trimmed(solid, gp_Pln({0, 0.75 * outward, 2}, {0, outward * std::sin(bevel), std::cos(bevel)}));
            CHECK_THAT(volume_of(solid), within(2.25 * length(got.piece), 1e-9));
            CHECK_THAT(extent(solid, gp::DZ()), within(got.overall, 1e-9));
            std::vector<double> arrises;
            for (const int side : {-1, 1})
                for (const int top : {-1, 1}) arrises.push_back(edge_length(got.piece, {side, top}));
            std::sort(arrises.begin(), arrises.end());
            const std::vector<double> edges = edges_along(solid, gp::DZ());
            REQUIRE(edges.size() == 4);
            for (std::size_t i = 0; i < 4; ++i) CHECK_THAT(arrises[i], within(edges[i], 1e-9));
            // Which hand: the outer uphill arris is the longest.
            CHECK_THAT(edge_length(got.piece, {got.outer, 1}), within(edges[3], 1e-9));
        }
}

TEST_CASE("pieces are the solids that the posts leave of longer ones", "[oracle]") {
    int members = 0, pickets = 0;
    for (int i = 0; i < 26; ++i) {
        const std::string name = "solids " + std::to_string(i);
        const DrawnJob drawn = random_job(name);
        const Solution solution = solve(drawn.job);
        if (solution.refused()) continue;
        for (std::size_t s = 0; s < drawn.job.sections.size(); ++s) {
            INFO(name << ", section " << drawn.job.sections[s].id.name);
            const Solids solids(drawn, solution, s);
            solids.check_members();
            pickets += solids.check_pickets();
            members += static_cast<int>(solution.sections[s].members.size());
        }
    }
    CHECK(members > 150);
    CHECK(pickets > 60);
}

}  // namespace rakewright::tests
