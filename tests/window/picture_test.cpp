// Pictures of every state, drawn without a display. They land in the folder that HARDOVER_PICTURES names, for
// the documents and for looking at; without it, in a folder that is removed again.
#include <catch2/catch.hpp>
#include <cstdlib>

#include "app/window/screens/bench.hpp"
#include "app/window/screens/job.hpp"
#include "app/window/screens/knowledge.hpp"
#include "app/window/screens/rail.hpp"
#include "app/window/screens/worksheets.hpp"
#include "sample_pages.hpp"
#include "sample_places.hpp"
#include "shipped.hpp"
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

// Where a picture goes by its name.
class Pictures {
  public:
    std::string path(const std::string& name) const {
        const char* wanted = std::getenv("HARDOVER_PICTURES");
        return wanted == nullptr ? scratch_.file(name + ".png") : std::string(wanted) + "/" + name + ".png";
    }
    // One place in both themes at 1280 x 800, and at twice the text size.
    void take(const std::string& name, const Harness::Draw& draw) const {
        for (const Look look : {Look::light, Look::dark}) {
            Harness harness(1280, 800, 1, look, draw);
            const std::string to = path(name + "-" + look_name(look));
            harness.save_picture(to);
            check_picture(to);
        }
        Harness large(1280, 800, 2, Look::light, draw);
        large.save_picture(path(name + "-200"));
        check_picture(path(name + "-200"));
    }

  private:
    ScratchFolder scratch_;
};

}  // namespace

TEST_CASE("The worksheets can be drawn in both themes and at twice the text size") {
    const Pictures pictures;
    for (const char* id :
         {"", "turns_lock_to_lock", "rim_force", "ram_centring", "fitting_figures", "units"}) {
        SheetsState sheets = sample_sheets(id);
        sheets.view.choosing_plot = false;
        sheets.view.notice = "";
        const std::string name = std::string("worksheets-") + (*id == 0 ? "all" : id);
        pictures.take(name, [&](Kit& kit) {
            draw_rail(kit, {hardover::window::Place::worksheets, true});
            draw_worksheets(kit, sheets);
        });
    }
}

TEST_CASE("The knowledge and what the bench finds can be drawn in both themes and at twice the text size") {
    const Pictures pictures;
    for (const auto& [kind, id] :
         {std::pair("cause", ""), std::pair("cause", "air_in_oil"), std::pair("check", "sponge_test")}) {
        KnowledgeState known = sample_knowledge(kind, id);
        const std::string name = std::string("knowledge-") + (*id == 0 ? "all" : id);
        pictures.take(name, [&](Kit& kit) {
            draw_rail(kit, {hardover::window::Place::knowledge, true});
            draw_knowledge(kit, known);
        });
    }
    BenchPage page = sample_bench();
    BenchView view;
    view.search = "groans when hard over";
    page.hits = search(SearchIndex(shipped()), shipped(), {}, view.search, 12);
    pictures.take("bench-found", [&](Kit& kit) {
        draw_rail(kit, {hardover::window::Place::bench, true});
        draw_bench(kit, page, view);
    });
}

TEST_CASE("Every state of the job screen and the bench can be drawn in both themes") {
    const Pictures pictures;
    const auto path = [&](const std::string& name) { return pictures.path(name); };
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
