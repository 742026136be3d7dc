// Pictures of the place Study in every state. They land in the folder that HARDOVER_PICTURES names; without
// it, in a folder that is removed again.
#include <catch2/catch.hpp>

#include "album.hpp"
#include "app/window/screens/rail.hpp"
#include "app/window/screens/study/study.hpp"
#include "study_samples.hpp"

using namespace hardover;
using namespace hardover::window;
using namespace hardover_tests;

TEST_CASE("The place Study can be drawn in every state, in every theme and at twice the text size",
          "[pictures]") {
    const Album album;
    for (const StudyState& state : study_states()) {
        StudyView view = state.view;
        album.take("study-" + state.name, [&](Kit& kit) {
            draw_rail(kit, {hardover::window::Place::study, true});
            draw_study(kit, state.page, view);
        });
    }
}
