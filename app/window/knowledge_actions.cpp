// What is done at the place Knowledge: nothing is changed there but what is looked at.
#include <algorithm>

#include "app/window/app_state.hpp"
#include "app/window/condition_words.hpp"

namespace hardover::window {

namespace {

constexpr std::size_t rows_at_once = 40;
constexpr std::size_t most_hits = 40;

std::optional<EntryPlace> place_of(AppState& state, const EntryKey& entry) {
    if (entry.kind != "cause" && entry.kind != "finding") return std::nullopt;
    show_boat(state);
    const BoatDesk::Where where = state.boat.where_is(entry);
    if (where.parts.empty()) return std::nullopt;
    EntryPlace place{*where.drawing, where.parts, ""};
    for (const std::string& part : where.parts)
        place.words += (place.words.empty() ? "" : "; ") + drawing::find_part(place.drawing, part)->words;
    return place;
}

struct Apply {
    AppState& state;
    KnowledgeState& known = state.known;

    void operator()(const ShowKnowledge& action) const {
        if (state.place != Place::knowledge) {
            known.came_from = state.place;
            known.history.clear();
            known.at = 0;
        }
        if (action.entry.kind.empty()) {
            known.at = 0;
        } else {
            known.history.resize(known.at);
            known.history.push_back(action.entry);
            known.at = known.history.size();
        }
        if (state.place != Place::knowledge) {
            state.before = state.place;
            state.place = Place::knowledge;
            state.listed = Listed::nothing;
        }
    }
    void operator()(const SearchKnowledge& action) const {
        known.filter = action.words;
        known.at = 0;
    }
    void operator()(const BrowseKind& action) const {
        known.kind = action.kind;
        known.most = rows_at_once;
        known.filter.clear();
    }
    void operator()(const ShowMore&) const { known.most += rows_at_once; }
    void operator()(const ShowOnBoat& action) const {
        carry_out(state, GoTo{hardover::window::Place::boat});
        state.boat.carry_out(LookAtEntry{action.entry});
        state.boat_view.tab = BoatTab::place;
    }
    void operator()(const StepInHistory& action) const {
        if (action.by > 0) {
            known.at = std::min(known.at + 1, known.history.size());
        } else if (known.at > 1 || (known.at == 1 && known.came_from == Place::knowledge)) {
            --known.at;
        } else {
            carry_out(state, GoTo{known.came_from == Place::knowledge ? Place::bench : known.came_from});
        }
    }
};

}  // namespace

void show_knowledge(AppState& state) {
    KnowledgeState& known = state.known;
    const Knowledge& knowledge = state.knowledge;
    const Job* job = state.job ? &*state.job : nullptr;
    if (!known.links || known.links_of != knowledge.fingerprint) {
        known.links.emplace(knowledge);
        known.links_of = knowledge.fingerprint;
        known.kinds = browsable_kinds(knowledge);
    }
    if (state.search_index.fingerprint() != knowledge.fingerprint)
        state.search_index = SearchIndex(knowledge);
    known.where.reset();
    if (known.at > 0) {
        known.where = place_of(state, known.history[known.at - 1]);
        known.page = make_entry_page(knowledge, *known.links, known.history[known.at - 1], job,
                                     state.prepared, state.shop.ways.units);
        say_conditions(knowledge, known.page);
        return;
    }
    known.hits = state.search_index.find(known.filter, {}, most_hits);
    known.entries = entries_of(knowledge, known.kind);
    known.all_entries = known.entries.size();
    if (known.entries.size() > known.most) known.entries.resize(known.most);
    known.fired = job == nullptr ? std::vector<EntryText>{} : fired_in_job(knowledge, *job);
    known.fired_in = job == nullptr ? "" : "job " + std::to_string(job->number);
}

void carry_out_on_knowledge(AppState& state, const KnowledgeAction& action) {
    std::visit(Apply{state}, action);
    if (state.place == Place::knowledge) show_knowledge(state);
}

}  // namespace hardover::window
