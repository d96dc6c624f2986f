#include <unistd.h>

#include <CLI/CLI.hpp>
#include <csignal>
#include <cstdlib>
#include <iostream>

#include "../solver/solve.hpp"
#include "embedded.hpp"
#include "read/reader.hpp"
#include "show/cut_sheet.hpp"
#include "show/json.hpp"
#include "show/manual.hpp"
#include "show/schema.hpp"
#include "told.hpp"
#include "write.hpp"

namespace {

using namespace rakewright;

/// What the program tells its caller. Nothing else is ever returned.
enum class Status { done = 0, check_failed = 1, refused = 2, no_file = 3 };

constexpr const char* examples =
    "Examples:\n"
    "  rakewright example > porch.yaml         a commented job to start from\n"
    "  rakewright solve porch.yaml             the tables that you cut from\n"
    "  rakewright solve porch.yaml --format csv -o porch.csv\n"
    "  rakewright schema > job.schema.json     for editors that complete and check job files\n";

constexpr const char* statuses =
    "Exit status: 0 done, 1 a check failed, 2 the job or the command line was refused,\n"
    "3 a file could not be read or written.";

bool colour_on(int handle) {
    const char* const none = std::getenv("NO_COLOR");
    const char* const terminal = std::getenv("TERM");
    return ::isatty(handle) && !(none && *none) && !(terminal && std::string_view(terminal) == "dumb");
}

void complain(const std::string& text) { std::cerr << text; }

Status print(const std::string& text) {
    std::string why;
    switch (write_out(text, why)) {
        case Written::whole:
        case Written::reader_left: return Status::done;
        case Written::failed: break;
    }
    complain("rakewright: standard output could not be written: " + why + '\n');
    return Status::no_file;
}

Status deliver(const std::string& text, const std::string& path) {
    if (path.empty()) return print(text);
    if (const std::optional<std::string> why = write_file(path, text)) {
        complain("rakewright: " + path + " could not be written: " + *why + '\n');
        return Status::no_file;
    }
    return Status::done;
}

/// What makes a job impossible, as refusals with their places.
std::vector<Refusal> refusals_of(const Job& job, const Solution& solution) {
    std::vector<Refusal> refusals;
    for (const Finding& finding : solution.findings) {
        if (!refuses(finding.trouble)) continue;
        const Told told = tell(job, finding);
        Refusal refusal;
        refusal.place = finding.place;
        refusal.sentence = told.sentence;
        refusal.expected = told.remedy;
        if (finding.also.size > 0) refusal.also.push_back({finding.also, "see also"});
        refusals.push_back(std::move(refusal));
    }
    return refusals;
}

Status refuse(const Source& source, const std::vector<Refusal>& refusals) {
    complain(rendered(source, refusals, colour_on(STDERR_FILENO)));
    return Status::refused;
}

enum class Format { table, json, csv };

struct SolveOptions {
    std::string job, output;
    Format format = Format::table;
};

Status solve_job(const SolveOptions& options) {
    std::string why;
    const std::optional<std::string> text = read_file(options.job, largest_job, why);
    if (!text) {
        complain("rakewright: " + options.job + " could not be read: " + why + '\n');
        return Status::no_file;
    }
    const Source source = source_of(options.job == "-" ? "<stdin>" : options.job, *text);
    const ReadResult read = read_job(source);
    if (!read.job) return refuse(source, read.refusals);
    Solution solution = solve(*read.job);
    if (solution.refused()) return refuse(source, refusals_of(*read.job, solution));
    measure_openings(*read.job, solution);
    switch (options.format) {
        case Format::json: return deliver(json(*read.job, solution), options.output);
        case Format::csv: return deliver(cut_sheet_csv(*read.job, solution), options.output);
        case Format::table: break;
    }
    const bool bold = options.output.empty() && colour_on(STDOUT_FILENO);
    return deliver(cut_sheet(*read.job, solution, bold), options.output);
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

/// What stands behind a key at the top of a rule set.
std::string heading_of(const std::string& set, const std::string& key) {
    const std::size_t begin = set.find(key + ": ");
    return begin == std::string::npos
               ? ""
               : set.substr(begin + key.size() + 2, set.find('\n', begin) - begin - key.size() - 2);
}

/// Lists the rule sets, or prints the one that is named.
Status show_rules(const std::string& name) {
    std::string list;
    std::vector<std::string> names;
    for (const auto& [set_name, text] : rule_sets) {
        if (set_name == name) return print(text);
        names.push_back(set_name);
        list += set_name + std::string(20 - std::min<std::size_t>(18, set_name.size()), ' ') +
                heading_of(text, "document") + ", " + heading_of(text, "edition") + '\n';
    }
    if (name.empty()) return print(list);
    complain("rakewright: there are no rules '" + name + "'" + suggestion(name, names) + '\n');
    return Status::refused;
}

int number_of(Status status) { return static_cast<int>(status); }

int run(int argc, char** argv) {
    CLI::App app{
        std::string("Geometry of stair and porch rails: from what a tape reads to the tables that are\ncut from.\n\n") +
        examples};
    app.name("rakewright");
    app.require_subcommand(1);
    app.footer(statuses);
    app.set_version_flag("--version", "rakewright " RAKEWRIGHT_VERSION);

    SolveOptions options;
    std::string format = "table";
    CLI::App* const solve_command = app.add_subcommand("solve", "Print the tables of a job");
    solve_command->add_option("JOB", options.job, "The job file, or - for standard input")->required();
    solve_command->add_option("--format", format, "table, json or csv (table)")->take_last();
    solve_command->add_option("-o,--output", options.output, "Write to this file and not to standard output");
    solve_command->footer(statuses);
    CLI::App* const example_command = app.add_subcommand("example", "Print a commented job that solves");
    CLI::App* const keys_command = app.add_subcommand("keys", "Explain every key of a job file");
    CLI::App* const results_command = app.add_subcommand("results", "Explain every key of the JSON results");
    std::string rules;
    CLI::App* const rules_command =
        app.add_subcommand("rules", "List the published limits that are known, or print one set");
    rules_command->add_option("SET", rules, "The set to print, with clause, limit and source of each rule");
    CLI::App* const schema_command = app.add_subcommand("schema", "Print a JSON Schema of the job file");

    try {
        app.parse(argc, argv);
    } catch (const CLI::CallForHelp&) {
        const auto commands = app.get_subcommands();
        return number_of(print(commands.empty() ? app.help() : commands.front()->help()));
    } catch (const CLI::CallForVersion& version) {
        return number_of(print(std::string(version.what()) + '\n'));
    } catch (const CLI::ParseError& error) {
        complain("rakewright: " + complaint(app, {argv + std::min(argc, 1), argv + argc}, error) +
                 "\nTry: rakewright --help\n");
        return number_of(Status::refused);
    }

    if (*example_command) return number_of(print(example_job));
    if (*keys_command) return number_of(print(job_manual()));
    if (*results_command) {
        const Job job = *read_job(source_of("example", manual_specimen)).job;
        Solution solution = solve(job);
        measure_openings(job, solution);
        return number_of(print(results_manual(job, solution)));
    }
    if (*rules_command) return number_of(show_rules(rules));
    if (*schema_command) return number_of(print(job_schema()));
    const std::vector<std::string> formats{"table", "json", "csv"};
    const auto chosen = std::find(formats.begin(), formats.end(), format);
    if (chosen == formats.end()) {
        complain("rakewright: there is no format '" + format + "': table, json or csv" + suggestion(format, formats) +
                 '\n');
        return number_of(Status::refused);
    }
    options.format = static_cast<Format>(chosen - formats.begin());
    return number_of(solve_job(options));
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
