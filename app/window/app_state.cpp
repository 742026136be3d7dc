// Applies actions: where one goes, what is opened, how the window looks. Each place applies its own.
#include "app/window/app_state.hpp"
#include "app/window/class_desk.hpp"
#include "app/window/records_desk.hpp"
#include "app/window/records_held.hpp"

#include <algorithm>

namespace hardover::window {

AppState::AppState(const Knowledge& knowledge, Store& store, std::function<std::string()> now)
    : knowledge(knowledge),
      prepared(knowledge),
      store(store),
      now(std::move(now)),
      boat(prepared),
      classes(std::make_shared<ClassDesk>(prepared, store, this->now)),
      records(std::make_shared<RecordsDesk>()) {}

namespace {

struct Apply {
    AppState& state;

    void go(Place place) const {
        state.listed = Listed::nothing;
        if (place == Place::job && !state.job) place = Place::bench;
        if (place != state.place) state.before = state.place;
        state.place = place;
        if (place == Place::bench) show_bench(state);
        if (place == Place::bench || place == Place::settings) state.records->show(state);
        if (place == Place::boat) show_boat(state);
        if (place == Place::settings) take_shop(state);
        if (place == Place::worksheets) show_sheets(state);
        if (place == Place::study) state.study.show(state.shop.ways.units);
        if (place == Place::classroom) {
            state.project.show(state.shop.ways.units);
            state.classes->use_fonts(state.fonts_folder);
            state.classes->use_units(state.shop.ways.units);
            state.classes->show();
        }
        if (place == Place::knowledge) show_knowledge(state);
    }
    void operator()(const GoTo& action) const { go(action.place); }
    void operator()(const GoBack&) const { go(state.before); }
    void operator()(const ListPlaces&) const { state.listed = Listed::places; }
    void operator()(const SwitchKeyList&) const {
        state.listed = state.listed == Listed::keys ? Listed::nothing : Listed::keys;
    }

    void open(Result<Job> job, Showing showing) const {
        if (!job) {
            state.bench_view.trouble = job.error().text();
            return;
        }
        state.bench_view = {};
        forget_turning(state);
        state.job = std::move(job.value());
        state.view = {};
        state.view.showing = showing;
        show_job(state);
        go(Place::job);
    }
    void operator()(const OpenJob& action) const {
        open(load_job(state.store, state.prepared, action.number), Showing::step);
    }
    void operator()(const StartJob& action) const {
        Result<Job> job =
            start_job(state.store, state.prepared, {action.boat, action.words, ""}, state.now());
        std::string refused;
        if (job && !action.complaint.empty()) {
            const Result<void> kept = record(state.store, state.prepared, job.value(),
                                             ComplaintsSet{{action.complaint}}, state.now());
            if (!kept) refused = kept.error().text();
        }
        open(std::move(job), Showing::intake);
        if (!refused.empty()) state.view.trouble = refused;
    }
    void operator()(const SearchBench& action) const {
        state.bench_view.search = action.words;
        search_bench(state);
    }
    void operator()(const ReadJobState& action) const { look_into(state, action.number); }
    // A key may arrive just after the job was left.
    void operator()(const JobAction& action) const {
        if (state.job) carry_out_on_job(state, action);
    }
    void operator()(const BoatAction& action) const { state.boat.carry_out(action); }
    void operator()(const KnowledgeAction& action) const { carry_out_on_knowledge(state, action); }
    void operator()(const SettingsAction& action) const { carry_out_on_settings(state, action); }
    void operator()(const SheetAction& action) const { carry_out_on_sheets(state, action); }
    // A set that was taken up is worked on at the place Study.
    void operator()(const ClassAction& action) const {
        state.classes->carry_out(action);
        if (auto taking = state.classes->taken_up()) {
            state.study.take_set(std::move(*taking));
            go(Place::study);
        }
    }
    void operator()(const RecordsAction& action) const { carry_out_on_records(state, action); }
    void operator()(const ProjectAction& action) const { state.project.carry_out(action); }
    void operator()(const StudyAction& action) const {
        state.study.carry_out(action);
        // A name that was refused stays typed.
        const bool added = std::holds_alternative<AddLearner>(action) && state.study.page().trouble.empty();
        if (added) state.study_view.name.clear();
    }
    // A practice boat that is done, where its faults can be seen at work.
    void operator()(const OpenOnBoat&) const {
        const auto boat = state.study.finished_boat();
        if (!boat) return;
        go(Place::boat);
        state.boat.open(boat->told, boat->faults);
    }
    // What is typed and looked at stays; the job's events are replayed with the new knowledge.
    void operator()(const ReloadKnowledge& action) const {
        if (state.in_use == nullptr) return;
        if (action.only_if_changed && !state.in_use->changed_on_disk()) return;
        // What is being worked out uses the knowledge as it was.
        if (state.background != nullptr) state.background->drop_all();
        const Result<void> read = state.in_use->reload(state.store);
        const std::string told = state.in_use->told(read);
        state.view.notice = state.bench_view.notice = read ? told : "";
        state.view.trouble = state.bench_view.trouble = read ? "" : told;
        if (!read) return;
        state.prepared = state.in_use->prepared();
        state.boat.use(state.prepared);
        state.study.use(state.prepared);
        state.project.use(state.prepared);
        state.classes->use(state.prepared);
        state.looked_into.clear();
        show_bench(state);
        if (state.job) {
            forget_turning(state);
            state.job = replay(state.prepared, state.job->number, state.job->events, state.job->shop);
            show_job(state);
        }
        if (state.place == Place::boat) show_boat(state);
        show_sheets(state);
        if (state.place == Place::knowledge) show_knowledge(state);
    }
    void operator()(const SwitchLook&) const {
        const auto at = static_cast<std::size_t>(state.preferences.look);
        state.preferences.look = looks()[(at + 1) % looks().size()].look;
    }
    void operator()(const ChangeTextSize& action) const {
        const bool projected = is_projecting(state);
        int& percent = projected ? state.preferences.projector_percent : state.preferences.text_percent;
        percent =
            action.by == 0 ? (projected ? 200 : 100) : std::clamp(percent + action.by, least_text, most_text);
    }
};

}  // namespace

void use_background(AppState& state, Background& background) {
    state.background = &background;
    state.study.work_in(background);
    state.classes->work_in(background);
    state.records->work_in(background);
}

bool take_in_background(AppState& state) {
    if (state.background == nullptr) return false;
    const bool any = state.background->collect();
    state.study.note_progress();
    state.classes->note_progress();
    state.records->note_progress();
    if (work_that_holds(state) == nullptr) state.held_up.clear();
    return any;
}

bool is_projecting(const AppState& state) {
    return state.place == Place::classroom && state.project.projecting();
}

void show_boat(AppState& state) {
    state.boat.show(state.job ? &state.job->facts : nullptr, state.shop.ways.units);
}

void carry_out(AppState& state, const Action& action) {
    if (held_up(state, action)) return;
    const bool by_itself =
        std::holds_alternative<ReloadKnowledge>(action) || std::holds_alternative<ReadJobState>(action);
    if (!by_itself) state.view.notice = state.bench_view.notice = "";
    std::visit(Apply{state}, action);
}

}  // namespace hardover::window
