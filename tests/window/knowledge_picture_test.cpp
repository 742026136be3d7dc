// Pictures of the knowledge and of what the bench finds, drawn without a display.
#include <catch2/catch.hpp>

#include "album.hpp"
#include "app/window/screens/bench.hpp"
#include "app/window/screens/knowledge.hpp"
#include "app/window/screens/rail.hpp"
#include "sample_pages.hpp"
#include "sample_places.hpp"

using namespace hardover;
using namespace hardover::window;
using namespace hardover_tests;

TEST_CASE("The knowledge and what the bench finds can be drawn in both themes and at twice the text size",
          "[pictures]") {
    const Album album;
    for (const auto& [kind, id] :
         {std::pair("cause", ""), std::pair("cause", "air_in_oil"), std::pair("check", "sponge_test")}) {
        KnowledgeState known = sample_knowledge(kind, id);
        album.take(std::string("knowledge-") + (*id == 0 ? "all" : id), [&](Kit& kit) {
            draw_rail(kit, {hardover::window::Place::knowledge, true});
            draw_knowledge(kit, known);
        });
    }
    BenchPage page = sample_bench();
    BenchView view;
    view.search = "groans when hard over";
    page.hits = search(SearchIndex(shipped()), shipped(), {}, view.search, 12);
    album.take("bench-found", [&](Kit& kit) {
        draw_rail(kit, {hardover::window::Place::bench, true});
        draw_bench(kit, page, view);
    });
}
