#include <cstdio>
#include <rakewright/solve.hpp>

// A program that uses the installed library: a level rail of three metres between two posts.
int main() {
    using namespace rakewright;
    Job job;
    job.units = Unit::millimetre;
    Build build;
    build.height = 1000;
    build.upper = {{"rail", 60, 40}};
    job.builds.push_back(build);
    Section section;
    section.build.index = 0;
    section.clear = 3000;
    job.sections.push_back(section);
    const Solution solution = solve(job);
    if (solution.refused() || solution.sections[0].members[0].length != 3000) return 1;
    std::puts("the installed library works");
    return 0;
}
