#include "status.hpp"

#include <unistd.h>

#include <cstdlib>
#include <iostream>

#include "read/bytes.hpp"
#include "write.hpp"

namespace rakewright {

bool colour_on(int handle) {
    const char* const none = std::getenv("NO_COLOR");
    const char* const terminal = std::getenv("TERM");
    return ::isatty(handle) && !(none && *none) && !(terminal && std::string_view(terminal) == "dumb");
}

void complain(const std::string& text) { std::cerr << text; }

Status refuse(const Source& source, const std::vector<Refusal>& refusals) {
    complain(rendered(source, refusals, colour_on(STDERR_FILENO)));
    return Status::refused;
}

std::optional<Source> read_source(const std::string& path) {
    std::string why;
    const std::optional<std::string> text = read_file(path, largest_job, why);
    if (text) return source_of(path == "-" ? "<stdin>" : path, *text);
    complain("rakewright: " + path + " could not be read: " + why + '\n');
    return std::nullopt;
}

Status deliver(const std::string& text, const std::string& path) {
    if (!path.empty()) {
        const std::optional<std::string> why = write_file(path, text);
        if (!why) return Status::done;
        complain("rakewright: " + path + " could not be written: " + *why + '\n');
        return Status::no_file;
    }
    std::string why;
    switch (write_out(text, why)) {
        case Written::whole:
        case Written::reader_left: return Status::done;
        case Written::failed: break;
    }
    complain("rakewright: standard output could not be written: " + why + '\n');
    return Status::no_file;
}

}  // namespace rakewright
