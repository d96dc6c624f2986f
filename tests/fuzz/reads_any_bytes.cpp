#include <cstdint>
#include <cstdlib>

#include "../../cli/read/reader.hpp"

// Whatever the bytes are, they are a job or are refused, with places inside the text and words to show.

namespace {

bool lies_in(rakewright::Place place, std::size_t size) { return std::size_t{place.begin} + place.size <= size; }

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    using namespace rakewright;
    const Source source = source_of("job", {reinterpret_cast<const char*>(data), size});
    const ReadJob read = read_job(source);
    if (read.job.has_value() != read.refusals.empty()) std::abort();
    for (const Refusal& refusal : read.refusals) {
        if (!lies_in(refusal.place, source.text.size()) || refusal.sentence.empty()) std::abort();
        for (const AlsoHere& also : refusal.also)
            if (!lies_in(also.place, source.text.size())) std::abort();
    }
    if (!read.job && rendered(source, read.refusals, true).empty()) std::abort();
    return 0;
}
