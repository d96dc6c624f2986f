#include <unistd.h>

#include <CLI/CLI.hpp>
#include <csignal>
#include <filesystem>

#include "../solver/solve.hpp"
#include "../solver/stock_plan.hpp"
#include "embedded.hpp"
#include "read/reader.hpp"
#include "refused.hpp"
#include "rule_files.hpp"
#include "show/cut_sheet.hpp"
#include "show/json.hpp"
#include "show/manual.hpp"
#include "show/schema.hpp"
#include "show/template_page.hpp"
#include "told.hpp"
#include "typed.hpp"

namespace {

using namespace rakewright;

constexpr const char* examples =
    "Examples:\n"
    "  rakewright example > porch.yaml         a commented job to start from\n"
    "  rakewright solve porch.yaml             the tables that you cut from\n"
    "  rakewright solve porch.yaml --format csv -o porch.csv\n"
    "  rakewright check porch.yaml             each limit, its clause and the margin\n"
    "  rakewright check --rules irc-2021 --rises '7 3/4, 7 1/2, 7 1/4' --runs 10\n"
    "  rakewright schema > job.schema.json     for editors that complete and check job files\n";

constexpr const char* statuses =
    "Exit status: 0 done, 1 a check failed, 2 the job or the command line was refused,\n"
    "3 a file could not be read or written.";

enum class Format { table, json, csv };

struct Options {
    std::string job, output, format_word = "table";
    Format format = Format::table;
    std::vector<std::string> rules;
    TypedStair typed;
    bool print_job = false;
    bool ranges = false;
};

/// A job, what it is judged by, and all that came out of it.
struct Whole {
    Job job;
    std::vector<RuleSet> sets;
    Solution solution;
    Verdicts verdicts;
};

/// Solves a job, measures its openings and judges it; what was wrong was said. `rules`, if any, are judged by in place
/// of the job's own.
Status judge_whole(const Source& source, const std::string& folder, const std::vector<std::string>& rules,
                   Whole& whole) {
    ReadJob read = read_job(source);
    if (!read.job) return refuse(source, read.refusals);
    whole.job = std::move(*read.job);
    LoadedRules loaded = rules.empty() ? load_rules(whole.job.rules, source, folder) : load_rules(rules);
    if (loaded.status != Status::done) return loaded.status;
    whole.sets = std::move(loaded.sets);
    whole.solution = solve(whole.job, whole.sets);
    if (whole.solution.refused()) return refuse(source, refusals_of(whole.job, whole.solution));
    measure_openings(whole.job, whole.solution);
    whole.verdicts = judge(whole.job, whole.solution, whole.sets);
    return Status::done;
}

/// The same, and its plan of what to buy.
Status solve_whole(const Source& source, const std::string& folder, const std::vector<std::string>& rules,
                   Whole& whole) {
    const Status status = judge_whole(source, folder, rules, whole);
    if (status != Status::done) return status;
    compare_spacings(whole.job, whole.solution);
    plan_stock(whole.job, whole.solution);
    return whole.solution.refused() ? refuse(source, refusals_of(whole.job, whole.solution)) : Status::done;
}

/// Where the rules of a job are looked for.
std::string folder_of(const std::string& job) {
    return job == "-" ? std::string() : std::filesystem::path(job).parent_path().string();
}

/// What the verdicts make of a delivery.
Status judged(Status delivered, const Verdicts& verdicts) {
    return delivered == Status::done && verdicts.any_fails() ? Status::check_failed : delivered;
}

/// Delivers what is asked for, made by the function for its format; tables are told whether titles may be bold.
template <class Json, class Csv, class Tables>
Status deliver_as(const Options& options, const Json& as_json, const Csv& as_values, const Tables& as_tables) {
    switch (options.format) {
        case Format::json: return deliver(as_json(), options.output);
        case Format::csv: return deliver(as_values(), options.output);
        case Format::table: break;
    }
    return deliver(as_tables(options.output.empty() && colour_on(STDOUT_FILENO)), options.output);
}

Status solve_job(const Options& options) {
    const std::optional<Source> source = read_source(options.job);
    if (!source) return Status::no_file;
    Whole whole;
    const Status status = solve_whole(*source, folder_of(options.job), options.rules, whole);
    if (status != Status::done) return status;
    const Status delivered = deliver_as(
        options, [&] { return json(whole.job, whole.solution, whole.verdicts); },
        [&] { return cut_sheet_csv(whole.job, whole.solution, whole.verdicts); },
        [&](bool bold) { return cut_sheet(whole.job, whole.solution, whole.verdicts, bold); });
    return judged(delivered, whole.verdicts);
}

Status draw_templates(const Options& options) {
    const std::optional<Source> source = read_source(options.job);
    if (!source) return Status::no_file;
    Whole whole;
    const Status status = judge_whole(*source, folder_of(options.job), {}, whole);
    if (status != Status::done) return status;
    const std::string page = template_page(whole.job, whole.solution);
    if (!page.empty()) return deliver(page, options.output);
    complain(
        "rakewright: nothing of this job is coped: templates are for rails that meet round posts, "
        "and for round handrails whose ends are not square\n");
    return Status::refused;
}

/// The job to be judged: a file's, or the one that a typed stair stands for.
std::optional<Source> source_to_check(const Options& options) {
    if (!options.job.empty()) return read_source(options.job);
    return Source{"<command line>", job_text(options.typed)};
}

Status check_job(const Options& options) {
    const std::optional<Source> source = source_to_check(options);
    if (!source) return Status::no_file;
    Whole whole;
    const Status status = judge_whole(*source, folder_of(options.job), options.rules, whole);
    if (status != Status::done) return status;
    if (whole.sets.empty()) {
        complain(
            "rakewright: nothing says what to judge by: name `rules` in the job, or give --rules, such as irc-2021\n");
        return Status::refused;
    }
    if (options.job.empty())
        for (NotJudged& rule : whole.verdicts.not_judged) rule.missing = typed_remedy(std::move(rule.missing));
    if (options.ranges) {
        const std::vector<PassingRange> ranges = ranges_of(whole.job, whole.verdicts);
        const Table table = range_table(whole.job, ranges);
        return deliver_as(
            options, [&] { return json(ranges); }, [&] { return as_csv({table}); },
            [&](bool bold) { return as_text(table, bold); });
    }
    const Status delivered = deliver_as(
        options, [&] { return json(whole.verdicts); }, [&] { return check_sheet_csv(whole.job, whole.verdicts); },
        [&](bool bold) {
            return check_sheet(whole.job, whole.verdicts, whole.sets, bold) + '\n' + words_of_unjudged(whole.sets);
        });
    return judged(delivered, whole.verdicts);
}

std::vector<std::string> command_names(const CLI::App& app) {
    std::vector<std::string> names;
    for (const CLI::App* command : app.get_subcommands({})) names.push_back(command->get_name());
    return names;
}

const CLI::App* command_named(const CLI::App& app, const std::string& name) {
    for (const CLI::App* command : app.get_subcommands({}))
        if (command->get_name() == name) return command;
    return nullptr;
}

std::vector<std::string> option_names(const CLI::App& app) {
    std::vector<std::string> names;
    for (const CLI::Option* option : app.get_options())
        for (const std::string& name : option->get_lnames()) names.push_back("--" + name);
    return names;
}

std::string suggestion(const std::string& word, const std::vector<std::string>& names) {
    const std::string near = nearest(word, names);
    return near.empty() ? std::string() : "; did you mean " + near + "?";
}

/// What is wrong with a command line, in our own words, looking for the first word that is not understood.
std::string complaint(const CLI::App& app, const std::vector<std::string>& words, const CLI::ParseError& error) {
    const CLI::App* command = &app;
    for (const std::string& word : words) {
        const bool is_option = word.size() > 1 && word[0] == '-';
        if (command == &app && !is_option) {
            const CLI::App* const named = command_named(app, word);
            if (!named) return "there is no command '" + word + "'" + suggestion(word, command_names(app));
            command = named;
            continue;
        }
        if (word.rfind("--", 0) != 0 || word.size() == 2) continue;
        const std::string name = word.substr(0, word.find('='));
        const std::vector<std::string> known = option_names(*command);
        if (std::find(known.begin(), known.end(), name) == known.end())
            return "there is no option '" + name + "'" + suggestion(name, known);
    }
    if (dynamic_cast<const CLI::RequiredError*>(&error))
        return command == &app ? "which command?" : "which job? Name its file, or - for standard input";
    if (dynamic_cast<const CLI::ExtrasError*>(&error)) return "there is a word too many on the command line";
    return error.what();
}

/// Lists the rule sets, or prints the one that is named.
/// Names on the left, what they are of beside them.
std::string page_of_rule_sets() {
    constexpr std::size_t beside = 20;
    std::string page;
    for (const ListedRules& rules : list_of_rule_sets()) {
        const std::size_t blanks = std::min(beside - 2, rules.name.size());
        page += rules.name + wrapped(rules.document, 80, std::string(beside, ' ')).substr(blanks);
    }
    return page;
}

Status show_rules(const std::string& name) {
    if (name.empty()) return deliver(page_of_rule_sets());
    if (const std::string* text = text_of_rule_set(name)) return deliver(*text);
    complain("rakewright: there are no rules '" + name + "'" + suggestion(name, rule_set_names()) + '\n');
    return Status::refused;
}

Status show_results_manual() {
    const Source source{"specimen", manual_specimen};
    Whole whole;
    const Status status = solve_whole(source, {}, {}, whole);
    return status == Status::done ? deliver(results_manual(whole.job, whole.solution, whole.verdicts,
                                                           ranges_of(whole.job, whole.verdicts)))
                                  : status;
}

int number_of(Status status) { return static_cast<int>(status); }

void add_output_options(CLI::App& command, Options& options) {
    command.add_option("--rules", options.rules, "Judge by these and not by the job's: names, or paths of amendments")
        ->delimiter(',');
    command.add_option("--format", options.format_word, "table, json or csv (table)")->take_last();
    command.add_option("-o,--output", options.output, "Write to this file and not to standard output");
    command.footer(statuses);
}

/// The options that stand for a job file of one stair and the rail on it.
void add_typed_options(CLI::App& command, TypedStair& typed, bool& print_job) {
    const std::string stair = "One stair, without a job";
    const auto one = [&](const char* name, std::string& value, const char* about) {
        command.add_option(name, value, about)->group(stair);
    };
    const auto list = [&](const char* name, std::vector<std::string>& values, const char* about) {
        command.add_option(name, values, about)->delimiter(',')->group(stair);
    };
    one("--units", typed.units, "in or mm (in)");
    list("--rises", typed.rises, "One for all with --risers, or each, lowest first: '7 3/4, 7 1/4'");
    one("--risers", typed.risers, "How many, where they are alike");
    list("--runs", typed.runs, "One for all, or each, nosing to nosing");
    one("--nosing", typed.nosing, "Projection of the nosings past the riser faces");
    one("--wash", typed.wash, "Slope of the treads, such as '1/4 in 12'");
    one("--clear-width", typed.clear_width, "Level, across the way");
    one("--headroom", typed.headroom, "Plumb, over the nosing line");
    one("--drop", typed.drop, "Plumb, the greatest fall beside the stair");
    list("--heights", typed.heights, "Of the rail, plumb at nosings 1, 2, ...; - where none was read");
    one("--widest-gap", typed.widest_gap, "The widest clear opening found");
    list("--passed", typed.passed, "A ball that passed: its size, or SIZE@TREAD under the rail");
    list("--stopped", typed.stopped, "A ball that did not pass");
    one("--grip", typed.grip, "Diameter of a round handrail");
    one("--clearance", typed.clearance, "From the handrail to the wall");
    command.add_flag("--print-job", print_job, "Print the job file that this stands for, and judge nothing")
        ->group(stair);
}

int run(int argc, char** argv) {
    CLI::App app{
        std::string("Geometry of stair and porch rails: from what a tape reads to the tables that are\ncut from.\n\n") +
        examples};
    app.name("rakewright");
    app.require_subcommand(1);
    app.footer(statuses);
    app.set_version_flag("--version", "rakewright " RAKEWRIGHT_VERSION);

    Options options;
    CLI::App* const solve_command = app.add_subcommand("solve", "Print the tables of a job");
    solve_command->add_option("JOB", options.job, "The job file, or - for standard input")->required();
    add_output_options(*solve_command, options);
    CLI::App* const check_command =
        app.add_subcommand("check", "Hold a job, or one stair by its numbers, against published limits");
    check_command->add_option("JOB", options.job, "The job file, or - for standard input");
    add_output_options(*check_command, options);
    check_command->add_flag("--ranges", options.ranges, "Show what each quantity may be, and judge nothing");
    add_typed_options(*check_command, options.typed, options.print_job);
    CLI::App* const template_command =
        app.add_subcommand("template", "Draw copes and mitered ends of round handrails full size, as one SVG to print");
    template_command->add_option("JOB", options.job, "The job file, or - for standard input")->required();
    template_command->add_option("-o,--output", options.output, "Write to this file and not to standard output");
    template_command->footer(statuses);
    CLI::App* const example_command = app.add_subcommand("example", "Print a commented job that solves");
    CLI::App* const keys_command = app.add_subcommand("keys", "Explain every key of a job file");
    CLI::App* const results_command = app.add_subcommand("results", "Explain every key of the JSON results");
    std::string rules;
    CLI::App* const rules_command =
        app.add_subcommand("rules", "List the published limits that are known, or print one set");
    bool rule_keys = false;
    rules_command->add_flag("--keys", rule_keys, "Explain every key of a file of rules, and how a job is judged");
    rules_command->add_option("SET", rules, "The set to print, with clause, limit and source of each rule");
    CLI::App* const schema_command = app.add_subcommand("schema", "Print a JSON Schema of the job file");

    try {
        app.parse(argc, argv);
    } catch (const CLI::CallForHelp&) {
        const auto commands = app.get_subcommands();
        return number_of(deliver(commands.empty() ? app.help() : commands.front()->help()));
    } catch (const CLI::CallForVersion& version) {
        return number_of(deliver(std::string(version.what()) + '\n'));
    } catch (const CLI::ParseError& error) {
        complain("rakewright: " + complaint(app, {argv + std::min(argc, 1), argv + argc}, error) +
                 "\nTry: rakewright --help\n");
        return number_of(Status::refused);
    }

    if (*template_command) return number_of(draw_templates(options));
    if (*example_command) return number_of(deliver(example_job));
    if (*keys_command) return number_of(deliver(job_manual()));
    if (*results_command) return number_of(show_results_manual());
    if (*rules_command) return number_of(rule_keys ? deliver(rule_manual()) : show_rules(rules));
    if (*schema_command) return number_of(deliver(job_schema()));
    const std::vector<std::string> formats{"table", "json", "csv"};
    const auto chosen = std::find(formats.begin(), formats.end(), options.format_word);
    if (chosen == formats.end()) {
        complain("rakewright: there is no format '" + options.format_word + "': table, json or csv" +
                 suggestion(options.format_word, formats) + '\n');
        return number_of(Status::refused);
    }
    options.format = static_cast<Format>(chosen - formats.begin());
    if (*solve_command) return number_of(solve_job(options));
    if (options.job.empty() == !options.typed.has_stair()) {
        complain(options.job.empty() ? "rakewright: which job? Name its file, or type one stair: --rises and --runs\n"
                                     : "rakewright: a job file and a typed stair are two jobs: give one of them\n");
        return number_of(Status::refused);
    }
    if (options.job.empty()) {
        if (options.typed.lacks_risers()) {
            complain("rakewright: how many risers? Type each one, or their number with --risers\n");
            return number_of(Status::refused);
        }
        if (const std::optional<std::string> miscount = options.typed.miscount()) {
            complain("rakewright: " + *miscount + ": leave --risers out, or give one figure for all steps\n");
            return number_of(Status::refused);
        }
        options.typed.rules = std::move(options.rules);
        options.rules.clear();
        if (options.print_job) return number_of(deliver(job_text(options.typed), options.output));
    }
    return number_of(check_job(options));
}

}  // namespace

int main(int argc, char** argv) {
    // A closed pipe is seen where it is written to, and a file-size limit is an error like a full disk.
    std::signal(SIGPIPE, SIG_IGN);
    std::signal(SIGXFSZ, SIG_IGN);
    try {
        return run(argc, argv);
    } catch (const std::bad_alloc&) {
        complain("rakewright: there is not enough memory for this job\n");
        return number_of(Status::refused);
    }
}
