#include "../../cli/read/reader.hpp"
#include "../../cli/show/cut_sheet.hpp"
#include "../../solver/crew/crew_sheet.hpp"
#include "../../solver/solve.hpp"
#include "../../solver/stock_plan.hpp"
#include "../support/near.hpp"

// What is ordered, painted and done, of jobs that can be counted by hand.

namespace rakewright::tests {
namespace {

struct Planned {
    Job job;
    Solution solution;

    std::vector<OrderLine> order() const { return order_list(job, solution); }
    std::vector<OrderLine> order(Ordered what) const {
        std::vector<OrderLine> lines;
        for (const OrderLine& line : order())
            if (line.what == what) lines.push_back(line);
        return lines;
    }
    std::vector<std::string> work() const {
        std::vector<std::string> steps;
        for (const WorkStep& step : steps_of_work(job, solution)) steps.emplace_back(words(step.work));
        return steps;
    }
};

Planned planned(const std::string& text) {
    const Source source = source_of("job", text);
    ReadJob read = read_job(source);
    INFO(rendered(source, read.refusals, false));
    REQUIRE(read.job);
    Planned whole{std::move(*read.job), {}};
    whole.solution = solve(whole.job);
    REQUIRE_FALSE(whole.solution.refused());
    plan_stock(whole.job, whole.solution);
    REQUIRE_FALSE(whole.solution.refused());
    return whole;
}

/// On a rake of 3 in 4, leg up: two brackets of 90 - r and two of 90 + r a section; on a floor four of 90.
const std::string bracketed =
    "units: in\n"
    "stairs: {s: {risers: 5, rise: 6, run: 8}}\n"
    "posts: {a: {size: 4x4}, b: {size: 4x4}, c: {size: 3 1/2}, d: {shape: round, size: 5}, e: {size: [3, 5]}, f: "
    "{size: [5, 3]}}\n"
    "builds:\n"
    "  b:\n"
    "    height: 36\n"
    "    upper: [{name: rail, width: 2, depth: 4}]\n"
    "    lower: [{name: bottom, width: 2, depth: 4}]\n"
    "    lower_gap: 2\n"
    "    pickets: {width: 1, depth: 1, max_gap: 4}\n"
    "    bracket: {post_leg: 1 1/4, rail_leg: 2 1/2, width: 1 1/2, thickness: 1/8, post_hole: 3/4, rail_hole: 1, leg: "
    "up, post_seat: mortise}\n"
    "sections:\n"
    "  raked: {stair: s, clear_on_slope: 50, build: b, count: 3}\n"
    "  level: {from: a, to: b, clear: 49, build: b, count: 4}\n";

}  // namespace

TEST_CASE("brackets are ordered by their bend, with spares rounded up", "[crew][order]") {
    const std::vector<OrderLine> lines = planned(bracketed + "order_list: {spare: 10}\n").order(Ordered::bracket);
    REQUIRE(lines.size() == 3);
    // 2 groups x 2 ends x 3 sections, half of each bend; 2 x 2 x 4 on the level. A tenth of 6 is 1, of 16 is 2.
    CHECK((lines[0].needed == 6 && lines[1].needed == 6 && lines[2].needed == 16));
    CHECK((lines[0].spare == 1 && lines[1].spare == 1 && lines[2].spare == 2));
    CHECK(lines[2].quantity() == 18);
    for (const OrderLine& line : lines) CHECK((line.section.width == 1.5 && line.section.depth == 0.125));
    CHECK(planned(bracketed + "order_list: yes\n").order(Ordered::bracket)[2].quantity() == 16);
    // As many again.
    CHECK(planned(bracketed + "order_list: {spare: 100}\n").order(Ordered::bracket)[0].spare == 6);
}

TEST_CASE("brackets of one bend and another plate are another line", "[crew][order]") {
    std::string text = bracketed + "  other: {clear: 49, build: c}\norder_list: yes\n";
    const std::size_t b = text.find("  b:\n"), end = text.find("sections:");
    std::string other = text.substr(b, end - b);
    other.replace(0, 4, "  c:");
    other.replace(other.find("rail_hole: 1"), 12, "rail_hole: 2");
    text.insert(end, other);
    const std::vector<OrderLine> lines = planned(text).order(Ordered::bracket);
    REQUIRE(lines.size() == 4);
    CHECK((lines[2].needed == 16 && lines[3].needed == 4));
}

TEST_CASE("posts are ordered by size and shape, and a cap for each on request", "[crew][order]") {
    const Planned whole = planned(bracketed + "order_list: {caps: yes, spare: 5}\n");
    const std::vector<OrderLine> posts = whole.order(Ordered::post), caps = whole.order(Ordered::cap);
    // a, b and c are 3 1/2 square, a and b called 4x4; d is round; e and f are one size, turned.
    REQUIRE(posts.size() == 3);
    CHECK((posts[0].needed == 3 && posts[0].nominal == "4x4" && posts[0].spare == 0));
    CHECK((posts[1].needed == 1 && posts[1].shape == SectionShape::circle && posts[1].section.width == 5));
    CHECK(posts[2].needed == 2);
    // The level rail is 36 high; no rail is known to meet the others.
    CHECK_THAT(posts[0].reaches.value(), within(36, 1e-12));
    CHECK_FALSE(posts[1].reaches);
    REQUIRE(caps.size() == 3);
    CHECK((caps[0].needed == 3 && caps[0].spare == 1));
    CHECK(planned(bracketed + "order_list: yes\n").order(Ordered::cap).empty());
    CHECK(planned(bracketed + "order_list: {posts: no}\n").order(Ordered::post).empty());
    CHECK(planned(bracketed).order().empty());
}

TEST_CASE("screws go by pickets and brackets, plates and rods by posts", "[crew][order]") {
    // 80 between centres, 3 1/2 posts: 76 1/2 clear takes 14 pickets of 1 1/2 with gaps of 3.7. Two sections alike.
    const Planned whole = planned(R"(units: in
order_list: {spare: 10}
floors: {porch: {plan: {x: 0}}}
post_fixings:
  steel:
    anchored_in: wood
    base_plate: {size: 6, thickness: 3/8, holes: 4 1/2, hole: 7/16}
    rod: {below: 3, floor: 2, washer: 1/8, nut: 1/2, spare: 1/2}
posts:
  a: {floor: porch, at: 0, size: 4x4, reveal: 2, fixing: steel}
  b: {floor: porch, at: 80, size: 4x4, reveal: 2, fixing: steel}
builds:
  rail:
    height: 36
    upper: [{name: cap rail, width: 3 1/2, depth: 1 1/4}]
    lower: [{name: bottom rail, width: 2 1/2, depth: 1 1/2}]
    lower_gap: 2
    pickets: {width: 1 1/2, depth: 1 1/2, max_gap: 3 7/8}
    bracket: {post_leg: 1 1/4, rail_leg: 2 1/2, width: 1 1/2, thickness: 1/8, post_hole: 3/4, rail_hole: [1, 2]}
    screws: {picket_to_upper: {length: 2 1/2, diameter: 0.17}, post_leg: {length: 1, diameter: 0.19},
             rail_leg: {length: 1, diameter: 0.19}}
sections:
  side: {from: a, to: b, build: rail, count: 2}
)");
    const std::vector<OrderLine> screws = whole.order(Ordered::screw);
    REQUIRE(screws.size() == 2);
    CHECK((screws[0].needed == 28 && screws[0].spare == 3 && screws[0].length == 2.5));
    CHECK(screws[1].needed == 2 * (4 + 8));  // four brackets with one hole in the post and two in the rail
    const std::vector<OrderLine> plates = whole.order(Ordered::base_plate), rods = whole.order(Ordered::rod);
    REQUIRE(plates.size() == 1);
    CHECK((plates[0].needed == 2 && plates[0].length == 0.375 && plates[0].hole == 0.4375));
    REQUIRE(rods.size() == 1);
    // Floor to post's top 38, of that the plate 3/8; 3 below, 2 of floor, washer, nut and spare.
    CHECK_THAT(rods[0].length.value(), within(3 + 2 + 38 + 0.125 + 0.5 + 0.5, 1e-12));
    const std::vector<OrderLine> posts = whole.order(Ordered::post);
    REQUIRE(posts.size() == 1);
    CHECK_THAT(posts[0].length.value(), within(38 - 0.375, 1e-12));
}

TEST_CASE("screws between members are counted in their rows", "[crew][order]") {
    // 59 15/16 long, 3 from the ends: six no more than 12 apart, in two sections alike. The apron's, 2 from the ends:
    // eight no more than 9 apart.
    const Planned whole = planned(R"(units: in
order_list: {spare: 10}
builds:
  rail:
    height: 36
    upper: [{name: cap rail, width: 3 1/2, depth: 1 1/4}, {name: sub rail, width: 2 1/2, depth: 1 1/2}]
    lower: [{name: bottom rail, width: 2 1/2, depth: 1 1/2}, {name: apron, width: 1, depth: 2 1/2}]
    lower_gap: 2
    play: 1/16
    screws: {between_members: {length: 2 1/2, diameter: 0.17},
             apron_to_lower: {length: 2 3/4, diameter: 0.17, every: 9, from_end: 2, driven: down}}
sections:
  side: {clear: 60, build: rail, count: 2}
)");
    const std::vector<OrderLine> screws = whole.order(Ordered::screw);
    REQUIRE(screws.size() == 2);
    CHECK((screws[0].needed == 12 && screws[0].spare == 2 && screws[0].length == 2.5));
    CHECK((screws[1].needed == 16 && screws[1].spare == 2 && screws[1].length == 2.75));
}

TEST_CASE("bars are ordered as the stock is planned, the rest by its length", "[crew][order]") {
    // By hand, 2 x 47 3/8 and a cut of 1/4 between them fill 96 less 1/2 at each end: three bars for six. Of the others
    // 4 x 30 and 2 x 12, one turned over.
    const Planned whole = planned(
        "units: in\norder_list: yes\n"
        "stock: [{section: [2, 4], lengths: [96], kerf: 1/4, trim: 1/2}]\n"
        "also_cut: [{name: a, section: [4, 2], length: 47 3/8, count: 6}, {name: b, section: [1, 3], length: 30, "
        "count: 4},\n"
        "           {name: c, section: [3, 1], length: 12, count: 2}]\n");
    const std::vector<OrderLine> lines = whole.order();
    REQUIRE(lines.size() == 2);
    CHECK((lines[0].what == Ordered::bar && lines[0].needed == 3 && lines[0].length == 96.0));
    CHECK((lines[1].what == Ordered::stick && lines[1].needed == 6 && lines[1].in_all == 144.0));
}

TEST_CASE("turned pickets are ordered as they are bought", "[crew][order]") {
    // By hand: on 49 clear, pickets of 1 no more than 4 apart are 9: 10 gaps of 4 take 40. Two builds of one picket.
    const std::string turned =
        "pickets: {width: 1, depth: 1, max_gap: 4, shape: turned, length: LENGTH, blocks: {lower: 9, upper: 9}, "
        "turning: [{at: 4, diameter: 3/4}]}}\n";
    const std::string rails =
        ": {height: 36, upper: [{name: rail, width: 2, depth: 2}], lower: [{name: bottom, width: 2, depth: 2}], "
        "lower_gap: 2, ";
    const auto of_length = [&](const std::string& length) {
        return std::string(turned).replace(turned.find("LENGTH"), 6, length);
    };
    const Planned whole =
        planned("units: in\nbuilds:\n  a" + rails + of_length("36") + "  b" + rails + of_length("36") + "  c" + rails +
                of_length("40") +
                "sections: {x: {clear: 49, build: a, count: 2}, y: {clear: 49, build: b}, z: {clear: 49, build: c}}\n"
                "order_list: {spare: 10}\n");
    const std::vector<OrderLine> lines = whole.order(Ordered::turned_picket);
    REQUIRE(lines.size() == 2);
    CHECK((lines[0].needed == 27 && lines[0].spare == 3 && lines[0].length == 36.0));
    CHECK((lines[1].needed == 9 && lines[1].spare == 1 && lines[1].length == 40.0));
    // They are no sticks to be cut from stock: four rails a section are.
    const std::vector<OrderLine> sticks = whole.order(Ordered::stick);
    REQUIRE(sticks.size() == 1);
    CHECK((sticks[0].needed == 8 && sticks[0].in_all == 8 * 49.0));
}

TEST_CASE("paint goes by the surface of all pieces and its coats", "[crew][paint]") {
    // By hand: 10 sticks of 2 x 4 by 142 have 12 x 142 + 16 = 1720 square inches each, 119 4/9 square feet in all.
    const std::string sticks = "also_cut: [{name: a, section: [2, 4], length: 142, count: 10}]\n";
    const PaintList none = paint_list(planned("units: in\npaint: yes\n" + sticks).job, {});
    REQUIRE(none.pieces.size() == 1);
    CHECK_THAT(none.pieces[0].in_all(), within(17200.0 / 144, 1e-12));
    CHECK_THAT(none.all.ends, within(160.0 / 144, 1e-12));
    CHECK_FALSE(none.volume);
    const PaintList gallons = paint_list(planned("units: in\npaint: {coverage: 400, coats: 3}\n" + sticks).job, {});
    CHECK_THAT(gallons.volume.value(), within(17200.0 / 144 * 3 / 400, 1e-12));
    // 1 m of 100 x 50 mm has 0.3 square metres of sides and 0.01 of ends; two coats of it, 10 a litre.
    const PaintList litres = paint_list(
        planned("units: mm\npaint: {coverage: 10}\nalso_cut: [{name: a, section: [50, 100], length: 1000}]\n").job, {});
    CHECK_THAT(litres.all.sides, within(0.3, 1e-15));
    CHECK_THAT(litres.all.all(), within(0.31, 1e-15));
    CHECK_THAT(litres.volume.value(), within(0.062, 1e-15));
}

TEST_CASE("a crew's steps are those that the job has", "[crew][work]") {
    using Steps = std::vector<std::string>;
    CHECK(
        planned(bracketed + "order_of_work: yes\norder_list: {caps: yes}\npaint: yes\n").work() ==
        Steps{"cut", "prime", "set posts", "seat posts", "set brackets", "lay out", "assemble", "fit", "paint", "cap"});
    CHECK(planned("units: in\nalso_cut: [{name: a, section: [2, 4], length: 40}]\n").work() == Steps{"cut", "prime"});
    const std::string rail = "height: 36, upper: [{name: rail, width: 2, depth: 2}]";
    // On a floor the pickets stand under the rail; posts that stand are not set.
    CHECK(planned("units: in\nposts: {a: {shape: round, size: 6}}\norder_list: {posts: no}\n"
                  "builds: {b: {" +
                  rail +
                  ", pickets: {width: 1, depth: 1, max_gap: 4}}}\n"
                  "sections: {s: {from: a, clear: 50, build: b}}\n")
              .work() == Steps{"cut", "cope", "prime", "lay out", "fit", "stand pickets"});
    CHECK(planned("units: in\nbuilds: {b: {" + rail + ", longest_stick: 30}}\nsections: {s: {clear: 50, build: b}}\n")
              .work() == Steps{"cut", "prime", "splice", "fit"});
    // Welded and dipped, or welded and primed after; feet hang from the lower rail.
    const std::string panel = rail +
                              ", lower: [{name: bottom, width: 2, depth: 2}], lower_gap: 2, "
                              "pickets: {width: 1, depth: 1, max_gap: 4, weld_gap: 1/16}";
    const std::string section = "sections: {s: {clear: 50, build: b}}\n";
    CHECK(planned("units: in\nbuilds: {b: {" + panel + ", galvanised: yes}}\n" + section).work() ==
          Steps{"cut", "lay out", "assemble", "weld", "galvanise", "fit"});
    CHECK(planned("units: in\nbuilds: {b: {" + panel + ", feet: {every: 20}}}\n" + section).work() ==
          Steps{"cut", "lay out", "assemble", "weld", "prime panels", "fit", "set feet"});
}

TEST_CASE("a bracket goes first where a straight driver can reach both its screws from there", "[crew][work]") {
    // By hand: a driver takes 3 + 8 and the screw of 1 1/4, 12 1/4 in all. Under the lower rail 4 are free less the
    // plate; under the upper one 34 1/2 - 5 1/2 = 29. So the lower brackets go on their rail before it is lifted in.
    Planned whole = planned(
        "units: in\nposts: {a: {size: 4x4}, b: {size: 4x4}}\n"
        "builds: {q: {height: 36, upper: [{name: cap, width: 2 1/2, depth: 1 1/2}], lower: [{name: bottom, width: 2 "
        "1/2, "
        "depth: 1 1/2}], lower_gap: 4, pickets: {width: 1 1/2, depth: 1 1/2, max_gap: 3 7/8},\n"
        "  bracket: {post_leg: 2 1/2, rail_leg: 1 1/4, width: 1 1/2, thickness: 1/8, post_hole: 2, rail_hole: 1, leg: "
        "down},"
        "\n  screws: {rail_leg: {length: 1 1/4, diameter: 0.138}, post_leg: {length: 2, diameter: 0.19}},\n"
        "  driver: {bit: {diameter: 1/4, reach: 3}, body: {diameter: 1 3/4, length: 8}}}}\n"
        "sections: {s: {from: a, to: b, clear: 40, build: q}}\n");
    using Steps = std::vector<std::string>;
    CHECK(whole.work() ==
          Steps{"cut", "prime", "set posts", "set brackets", "set brackets on rails", "lay out", "assemble", "fit"});
    const auto groups_in = [&](Work work) {
        std::vector<Group> groups;
        for (const WorkStep& step : steps_of_work(whole.job, whole.solution))
            if (step.work == work)
                for (const BracketOfSection& of : step.brackets)
                    groups.push_back(whole.solution.sections[of.section].brackets[of.bracket].group);
        return groups;
    };
    CHECK(groups_in(Work::set_brackets) == std::vector(2, Group::upper));
    CHECK(groups_in(Work::set_brackets_on_rails) == std::vector(2, Group::lower));
    // Where a picket has to go in after, it is no part of what is put together on the bench.
    whole.solution.sections[0].fixings[0].driving->picket_after = true;
    CHECK(groups_in(Work::put_in_pickets) == std::vector(1, Group::upper));
    CHECK(whole.work().back() == "put in pickets");
}

TEST_CASE("seats, ploughs and fillets are steps where the job has them", "[crew][work]") {
    using Steps = std::vector<std::string>;
    CHECK(
        planned(
            "units: in\nbuilds: {b: {height: 36, upper: [{name: rail, width: 2 1/2, depth: 2}], lower: [{name: bottom, "
            "width: 2 1/2, depth: 2}], lower_gap: 14, pickets: {width: 1, depth: 1, max_gap: 4, plough: {lower: "
            "1/4}},\n"
            "  bracket: {post_leg: 1 1/4, rail_leg: 2 1/2, width: 1 1/2, thickness: 1/8, post_hole: 3/4, leg: down, "
            "post_seat: mortise, rail_seat: rabbet}}}\nsections: {s: {clear: 50, build: b}}\n")
            .work() == Steps{"cut", "seat rails", "plough", "prime", "seat posts", "set brackets", "lay out",
                             "assemble", "fit", "fit fillets"});
}

TEST_CASE("of welded work the loose sticks alone are primed before", "[crew][work]") {
    const Planned whole = planned(
        "units: in\nbuilds: {b: {height: 36, upper: [{name: rail, width: 2, depth: 2}], lower: [{name: bottom, width: "
        "2, "
        "depth: 2}], lower_gap: 2, pickets: {width: 1, depth: 1, max_gap: 4, weld_gap: 1/16}}}\n"
        "sections: {s: {clear: 50, build: b}}\nalso_cut: [{name: batten, section: [1, 2], length: 40}]\n"
        "order_of_work: yes\n");
    for (const WorkStep& step : steps_of_work(whole.job, whole.solution))
        if (step.work == Work::prime) CHECK(step.sections.empty());
    const std::vector<std::string> lines = work_tables(whole.job, whole.solution)[0].about;
    CHECK(lines[1] ==
          "2. Prime the loose sticks (batten) on all faces and both ends, before anything is put together.");
    CHECK(lines[5] == "6. Prime what was welded, all round.");
}

TEST_CASE("rods of one length and another thread are another line", "[crew][order]") {
    const auto text = [](const char* second) {
        return std::string(
                   "units: in\npost_fixings:\n  a: {anchored_in: wood, rod: {floor: 8, washer: 1/8, nut: 1/2, spare: "
                   "1/4, diameter: 1/2}}\n  b: {anchored_in: wood, rod: {floor: 8, washer: 1/8, nut: 1/2, spare: "
                   "1/4") +
               second +
               "}}\nposts: {p: {size: 4, reveal: 1, fixing: a}, q: {size: 4, reveal: 1, fixing: b}}\n"
               "builds: {r: {height: 36, upper: [{name: rail, width: 2, depth: 2}]}}\n"
               "sections: {s: {from: p, to: q, clear: 40, build: r}}\norder_list: yes\n";
    };
    const std::vector<OrderLine> alike = planned(text(", diameter: 1/2")).order(Ordered::rod),
                                 unlike = planned(text(", diameter: 3/8")).order(Ordered::rod),
                                 unknown = planned(text("")).order(Ordered::rod);
    REQUIRE(alike.size() == 1);
    CHECK((alike[0].needed == 2 && alike[0].section.width == 0.5));
    REQUIRE(unlike.size() == 2);
    CHECK((unlike[0].section.width == 0.5 && unlike[1].section.width == 0.375));
    REQUIRE(unknown.size() == 2);
    CHECK(unknown[1].section.width == 0);
}

}  // namespace rakewright::tests
