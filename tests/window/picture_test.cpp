// Pictures of every state, drawn without a display. They land in the folder that HARDOVER_PICTURES names, for
// the documents and for looking at; without it, in a folder that is removed again.
#include <catch2/catch.hpp>
#include <cstdlib>

#include "app/window/screens/bench.hpp"
#include "app/window/screens/job.hpp"
#include "sample_pages.hpp"
#include "shop.hpp"

using namespace hardover;
using namespace hardover::window;
using namespace hardover_tests;

namespace {

std::string look_name(Look look) {
    return look == Look::light ? "light" : "dark";
}

// A picture of one colour packs into almost nothing; one with text does not.
void check_picture(const std::string& path) {
    INFO(path);
    CHECK(std::filesystem::file_size(path) > 20000);
}

}  // namespace

TEST_CASE("Every state of the job screen and the bench can be drawn in both themes") {
    const ScratchFolder scratch;
    const char* wanted = std::getenv("HARDOVER_PICTURES");
    const auto path = [&](const std::string& name) {
        return wanted == nullptr ? scratch.file(name + ".png") : std::string(wanted) + "/" + name + ".png";
    };
    const auto rows = sample_look_up();
    const BenchPage bench = sample_bench();
    for (const Look look : {Look::light, Look::dark}) {
        for (const NamedPage& named : all_sample_pages()) {
            JobView view;
            Harness harness(1280, 800, 1, look, [&](Kit& kit) {
                draw_job(kit, {named.page, nullptr, rows}, view);
            });
            harness.save_picture(path("job-" + named.name + "-" + look_name(look)));
            check_picture(path("job-" + named.name + "-" + look_name(look)));
        }
        BenchView view;
        Harness harness(1280, 800, 1, look, [&](Kit& kit) { draw_bench(kit, bench, view); });
        harness.save_picture(path("bench-" + look_name(look)));
        check_picture(path("bench-" + look_name(look)));
    }
}
