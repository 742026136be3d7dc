// Choices side by side: as many as can be read.
#include <catch2/catch.hpp>

#include "app/window/screens/choices.hpp"
#include "harness.hpp"

using namespace hardover::window;
using namespace hardover_tests;

TEST_CASE("Choices go side by side only while no word of them is broken in the middle") {
    const std::vector<ChoiceLook> looks{{.label = "Look", .cap = "L"},
                                        {.label = "Suspect", .cap = "W"},
                                        {.label = "Put right", .cap = "R"},
                                        {.label = "Sheets", .cap = "M"},
                                        {.label = "Help", .cap = "H"}};
    std::size_t wide = 0, narrow = 0;
    Harness harness(1280, 800, 1, Look::light, [&](Kit& kit) {
        wide = choice_cells(kit, looks, 1200, 5).across;
        narrow = choice_cells(kit, looks, 795, 5).across;  // 151 each: "Suspect" and its tick need more
    });
    harness.frames(1);
    CHECK(wide == 5);
    CHECK(narrow == 3);
}
