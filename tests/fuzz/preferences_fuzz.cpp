// The window's preferences file: read, or refused at its place in the file.
#include "app/window/preferences.hpp"
#include "fuzz/target.hpp"

using namespace hardover::window;
using namespace hardover_fuzz;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    static const std::string file = "window.json";
    const std::string text = text_of(data, size);
    const hardover::Result<Preferences> read = preferences_of(text, file);
    if (!read) {
        demand_located(read.error(), file, text);
        demand(!read.error().cure.empty(), "a refusal without what to do: " + read.error().text());
        return 0;
    }
    demand(read.value().text_percent >= least_text && read.value().text_percent <= most_text,
           "a text size beyond what the window draws: " + text);
    return 0;
}
