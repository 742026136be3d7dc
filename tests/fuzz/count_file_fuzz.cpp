// Files of counts that shops hand to each other: read and put together, or refused at their place in the
// file.
#include "app/jobs/count_file.hpp"
#include "fuzz/target.hpp"

using namespace hardover;
using namespace hardover_fuzz;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    static const std::string file = "north.json";
    const std::string text = text_of(data, size);
    const Result<Shops> shops = read_count_file(text, file);
    if (!shops) {
        demand_located(shops.error(), file, text);
        return 0;
    }
    const std::string written = count_file_text(shops.value());
    const Result<Shops> again = read_count_file(written, file);
    demand(again.ok() && again.value() == shops.value(), "counts that do not come back: " + written);
    const Result<Shops> twice = merged(shops.value(), again.value());
    demand(twice.ok() && twice.value() == shops.value(), "counts merged with themselves are others");
    sum_of(shops.value());
    const std::string counts = counts_text(sum_of(shops.value()));
    demand(read_counts(counts, file).ok(), "counts of one shop that do not come back: " + counts);
    return 0;
}
