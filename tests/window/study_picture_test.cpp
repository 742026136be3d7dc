// Pictures of the place Study in every state. They land in the folder that HARDOVER_PICTURES names; without
// it, in a folder that is removed again.
#include <catch2/catch.hpp>

#include <cstdlib>

#include "app/window/screens/rail.hpp"
#include "app/window/screens/study/study.hpp"
#include "shop.hpp"
#include "study_samples.hpp"

using namespace hardover;
using namespace hardover::window;
using namespace hardover_tests;

TEST_CASE("The place Study can be drawn in every state, in every theme and at twice the text size",
          "[pictures]") {
    const ScratchFolder scratch;
    const char* wanted = std::getenv("HARDOVER_PICTURES");
    for (const StudyState& state : study_states()) {
        StudyView view = state.view;
        const auto draw = [&](Kit& kit) {
            draw_rail(kit, {hardover::window::Place::study, true});
            draw_study(kit, state.page, view);
        };
        const auto take = [&](float scale, Look look, const std::string& name) {
            const std::string file = "study-" + state.name + "-" + name;
            const std::string path =
                wanted == nullptr ? scratch.file(file + ".png") : std::string(wanted) + "/" + file + ".png";
            Harness harness(1280, 800, scale, look, draw);
            harness.save_picture(path);
            INFO(path);
            CHECK(std::filesystem::file_size(path) > 10000);
        };
        for (const LookRow& look : looks()) take(1, look.look, std::string(look.id));
        take(2, Look::light, "200");
    }
}
