#include "crew_sheet.hpp"

namespace rakewright {

const char* words(Ordered what) {
    switch (what) {
        case Ordered::bar: return "bar";
        case Ordered::stick: return "stick";
        case Ordered::turned_picket: return "turned picket";
        case Ordered::bracket: return "bracket";
        case Ordered::screw: return "screw";
        case Ordered::post: return "post";
        case Ordered::base_plate: return "base plate";
        case Ordered::rod: return "threaded rod";
        case Ordered::cap: return "cap";
    }
    return "";
}

const char* words(SectionShape shape) {
    switch (shape) {
        case SectionShape::rectangle: return "rectangle";
        case SectionShape::circle: return "round";
        case SectionShape::profile: return "profile";
    }
    return "";
}

const char* words(Work work) {
    static constexpr const char* of_step[work_steps] = {"cut",
                                                        "cope",
                                                        "bend",
                                                        "seat rails",
                                                        "plough",
                                                        "prime",
                                                        "set posts",
                                                        "seat posts",
                                                        "set brackets",
                                                        "splice",
                                                        "set brackets on rails",
                                                        "lay out",
                                                        "assemble",
                                                        "weld",
                                                        "prime panels",
                                                        "galvanise",
                                                        "fit",
                                                        "put in pickets",
                                                        "join",
                                                        "stand pickets",
                                                        "fasten pickets",
                                                        "fit fillets",
                                                        "set feet",
                                                        "fit handrails",
                                                        "paint",
                                                        "cap"};
    return of_step[static_cast<std::size_t>(work)];
}

namespace {

std::vector<double> lengths_of(const std::vector<Reading>& readings) { return {readings.begin(), readings.end()}; }

void describe(Sheet& sheet, const Job& job, const Solution& solution, const BracketKind& kind) {
    const BracketUse& first = kind.uses.front();
    const BracketBuild& build = bracket_build_of(job, first.section);
    sheet.over_square("included_deg", solution.sections[first.section].brackets[first.bracket].over_square,
                      "of the first of a kind of bracket, between its legs, inside; a kind agrees to a tenth");
    sheet.length("post_leg", build.post_leg, "of a bracket, from the inside of the bend");
    sheet.length("rail_leg", build.rail_leg, "of a bracket, from the inside of the bend");
    sheet.length("inside_radius", build.inside_radius ? std::optional<double>(*build.inside_radius) : std::nullopt,
                 "of a bracket's bend, where the job gives it");
    sheet.lengths("post_holes", lengths_of(build.post_hole), "of a bracket, from the inside of the bend");
    sheet.lengths("rail_holes", lengths_of(build.rail_hole), "of a bracket, from the inside of the bend");
}

void describe(Sheet& sheet, const Job& job, const Solution& solution, const OrderLine& line) {
    sheet.word("what", words(line.what),
               "bar, as the stock is planned; stick, of a section that has no stock; turned picket, bracket, screw, "
               "post, base plate, threaded rod or cap");
    sheet.word("shape", words(line.shape),
               "of its section: rectangle; round; profile, of a handrail that is known by its perimeter");
    sheet.lengths("section", {line.section.width, line.section.depth},
                  "what it is across; a bracket's plate: its width and thickness; a profile: a square of its width; a "
                  "screw or rod: its diameter twice; nought where the job does not say");
    if (!line.nominal.empty()) sheet.word("nominal", line.nominal, "a post's timber size, as the job has it");
    sheet.length(
        "length", line.length,
        "of one bar, turned picket, screw, rod, or post as far as the job says; of a base plate its thickness");
    if (line.holes)
        sheet.lengths("holes", {line.holes->width, line.holes->depth}, "of a base plate, centre to centre, both ways");
    sheet.length("hole", line.hole, "their diameter");
    sheet.length("in_all", line.in_all, "of sticks: their lengths tip to tip, added up, with no waste");
    sheet.length("reaches", line.reaches,
                 "of posts: the top of the highest rail on any of them, plumb above what it stands on");
    if (line.bracket) describe(sheet, job, solution, *line.bracket);
    sheet.count("needed", line.needed, "what the job takes; of sticks, how many pieces");
    sheet.count("spare", line.spare, "to be bought besides");
    sheet.count("quantity", line.quantity(), "both together");
}

void describe(Sheet& sheet, const Surface& surface) {
    sheet.number(
        "sides", surface.sides,
        "along them, each side to its own slanted or coped ends; of turned pickets blocks, shoulders and frusta");
    sheet.number("ends", surface.ends,
                 "of both ends as they are cut: of a coped one the surface of the post that it covers, exact");
    sheet.number("area", surface.all(), "both together");
}

void describe(Sheet& sheet, const PaintList& list) {
    sheet.list("pieces", list.pieces, "pieces of the cut list, in the order of the saw's table, then `also_cut`",
               [](Sheet& row, const PaintedPiece& piece) {
                   row.word("mark", piece.mark, "as in the saw's table");
                   row.word("name", piece.name, "as the job calls it");
                   row.count("count", piece.count, "how many in all");
                   row.part("each", "the surface of one, in square feet in inch jobs, square metres in mm jobs",
                            [&](Sheet& part) { describe(part, piece.each); });
               });
    sheet.part("all", "of all pieces together, in the same unit", [&](Sheet& part) { describe(part, list.all); });
    sheet.number("volume", list.volume,
                 "all coats of the paint whose coverage is given: gallons in inch jobs, litres in mm jobs");
}

}  // namespace

void describe_crew(Sheet& sheet, const Job& job, const Solution& solution) {
    if (job.order_list)
        sheet.list("order", order_list(job, solution), "what to buy, where the job asks for it",
                   [&](Sheet& row, const OrderLine& line) { describe(row, job, solution, line); });
    if (job.paint)
        sheet.part("paint", "the surface to prime and paint, where the job asks for it",
                   [&](Sheet& part) { describe(part, paint_list(job, solution)); });
    if (job.order_of_work)
        sheet.list(
            "work", steps_of_work(job, solution), "the steps of the work, in order (common practice)",
            [&](Sheet& row, const WorkStep& step) {
                row.word("step", words(step.work),
                         "cut, cope, bend, seat rails, plough, prime, set posts, seat posts, set brackets, splice, set "
                         "brackets on rails, lay out, assemble, weld, prime panels, galvanise, fit, put in pickets, "
                         "join, stand pickets, fit fillets, set feet, fit handrails, paint or cap");
                row.list("sections", step.sections, "that have it; none where it is no section's",
                         [&](Sheet& part, int section) {
                             part.word("section", job.sections[static_cast<std::size_t>(section)].id.name, "its name");
                         });
                row.list(
                    "brackets", step.brackets,
                    "that it fastens, in the order that a straight driver asks for; of put in pickets, those whose "
                    "picket goes in after",
                    [&](Sheet& part, const BracketOfSection& of) {
                        const Bracket& bracket = solution.sections[of.section].brackets[of.bracket];
                        part.word("section", job.sections[of.section].id.name, "its section");
                        part.word("end", bracket.end == End::from ? "from" : "to", "from or to");
                        part.word("group", bracket.group == Group::upper ? "upper" : "lower", "upper or lower");
                    });
            });
}

}  // namespace rakewright
