// Opens the shop for a test.
#include "shop.hpp"

#include "shipped.hpp"

namespace hardover_tests {

using namespace hardover;
using namespace hardover::window;

Shop::Shop(float width, float height) : w(width), h(height) {
    start_again();
}

void Shop::start_again() {
    harness.reset();
    state.reset();
    store.reset();
    auto opened = Store::open(folder.file("records.db"));
    REQUIRE_OK(opened);
    store = std::make_unique<Store>(std::move(opened.value()));
    state = std::make_unique<AppState>(shipped(), *store, [] { return "2026-11-25T15:03:13Z"; });
    show_bench(*state);
    harness = std::make_unique<Harness>(w, h, 1, Look::light, [this](Kit& kit) {
        if (const auto action = draw_app(kit, *state)) carry_out(*state, *action);
    });
}

void Shop::start_job(const std::string& boat, const std::string& words) {
    harness->click("new.boat");
    harness->type(boat);
    harness->click("new.words");
    harness->type(words);
    harness->click("new.start");
    REQUIRE(state->job.has_value());
}

}  // namespace hardover_tests
