// What the records' parts on the bench and in the settings share.
#pragma once

#include "app/window/records_desk.hpp"
#include "app/window/screens/records/records.hpp"

namespace hardover::window {

struct RecordsScene {
    Kit& kit;
    AppState& state;
    std::optional<Action> action;

    const RecordsPage& page() const { return state.records->page; }
    bool busy() const { return page().working.has_value(); }  // one long piece of work at a time
    RecordsDesk::View& view() { return state.records->view; }
    void ask(RecordsAction what) { action = Action{std::move(what)}; }
};

// A field with its name over it. True when Enter was pressed in it.
bool draw_records_field(Kit& kit, const std::string& id, const std::string& name, std::string& text,
                        const std::string& placeholder);
// What came of what was pressed there, or how far it has come.
void draw_records_told(RecordsScene& scene, const std::string& at);

}  // namespace hardover::window
