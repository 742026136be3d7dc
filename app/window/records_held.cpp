#include "app/window/records_held.hpp"

#include "app/window/records_desk.hpp"

namespace hardover::window {

namespace {

template <typename... Kinds, typename Variant>
bool is_one_of(const Variant& action) {
    return (std::holds_alternative<Kinds>(action) || ...);
}

// A new action of a place with records waits unless it is named here.
struct Waits {
    bool operator()(const StartJob&) const { return true; }
    bool operator()(const ReloadKnowledge&) const { return true; }
    bool operator()(const JobAction& action) const {
        return !is_one_of<Show, WorkOutTurning, WriteSheet, OpenOutside>(action);
    }
    bool operator()(const SheetAction& action) const { return is_one_of<UseInJob>(action); }
    bool operator()(const StudyAction& action) const {
        return !is_one_of<ShowStudy, DropWork, StopWork>(action);
    }
    bool operator()(const ProjectAction& action) const {
        return !is_one_of<ShowTheFault, SteerProjected, LeaveProjector>(action);
    }
    bool operator()(const ClassAction& action) const {
        return !is_one_of<ShowClassTab, ShutKeys, AddQuizTask, AddBoatTask, DropTask, StopClassWork>(action);
    }
    bool operator()(const RecordsAction& action) const {
        return !is_one_of<FindJobs, ShowEarlierJobs, OpenPhoto, StopRecordsWork>(action);
    }
    bool operator()(const SettingsAction& action) const { return is_one_of<SetShop, SetRate>(action); }
    template <typename Other>
    bool operator()(const Other&) const {
        return false;  // goes somewhere, shows something, or changes how it looks
    }
};

}  // namespace

const WorkShown* work_that_holds(const AppState& state) {
    const std::optional<WorkShown>& work = state.records->page.working;
    return work && work->holds ? &*work : nullptr;
}

Place shown_at(const WorkShown& work) {
    return work.at == "export" || work.at == "import" ? Place::bench : Place::settings;
}

bool has_to_wait(const Action& action) {
    return std::visit(Waits{}, action);
}

bool held_up(AppState& state, const Action& action) {
    if (work_that_holds(state) == nullptr || !has_to_wait(action)) return false;
    const auto* reload = std::get_if<ReloadKnowledge>(&action);
    const bool by_itself = reload != nullptr && reload->only_if_changed;
    if (!by_itself)
        state.held_up = "That was not done, and nothing was written. Do it again when this has ended.";
    return true;
}

}  // namespace hardover::window
