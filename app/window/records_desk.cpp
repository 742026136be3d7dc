#include "app/window/records_desk.hpp"

#include <fmt/format.h>
#include <filesystem>

#include "app/jobs/records_care.hpp"
#include "app/window/app_state.hpp"

namespace hardover::window {

namespace {

constexpr std::size_t most_found = 40;

}  // namespace

void RecordsDesk::refused(const std::string& at, const Error& error) {
    page.told = {at, {error.text()}, true, false, ""};
}

void RecordsDesk::done(const std::string& at, const std::vector<std::string>& lines,
                       const std::string& folder) {
    page.told = {at, lines, false, false, folder};
}

void RecordsDesk::read_anew(AppState& state) {
    state.looked_into.clear();
    take_shop(state);
    show_bench(state);
    show(state);
}

void RecordsDesk::show(AppState& state) {
    page.backups = list_backups(backups_folder(state.store.path()), state.store.path());
    const auto kept = backups_kept(state.store);
    page.backups_kept = kept ? kept.value() : backups_kept_as_shipped;
    page.photos.clear();
    if (state.job) page.photos = photo_lines(state.store.path(), *state.job);
}

void RecordsDesk::apply(AppState& state, const FindJobs& find) {
    JobFilter filter;
    filter.words = find.words;
    filter.boat = find.boat;
    filter.state = find.state;
    filter.most = most_found;
    auto found = find_jobs(state.store, state.knowledge, filter);
    if (!found) return refused("find", found.error());
    page.found = std::move(found.value());
}

void RecordsDesk::apply(AppState& state, const ShowEarlierJobs& show_them) {
    page.history.reset();
    if (show_them.boat.empty()) return;
    auto history = boat_history(state.store, state.prepared, show_them.boat);
    if (!history) return refused("find", history.error());
    page.history = std::move(history.value());
}

void RecordsDesk::apply(AppState& state, const AttachPhoto& attach) {
    if (!state.job) {
        return refused("photo", {Error::Kind::bad_input, "there is no job in hand", "",
                                 "open the job that the photo belongs to"});
    }
    const Result<void> kept =
        attach_photo(state.store, state.prepared, *state.job, attach.path, view.caption, state.now());
    if (!kept) return refused("photo", kept.error());
    view.photo_path.clear();
    view.caption.clear();
    show_job(state);
    show(state);
    done("photo", {"It is kept with the job."});
}

void RecordsDesk::apply(AppState& state, const OpenPhoto& open) {
    if (!state.open_outside) return;
    const Result<void> opened = state.open_outside(open.file);
    if (!opened) refused("photo", opened.error());
}

// Pressed twice: once to see what will happen, once to do it.
void RecordsDesk::apply(AppState& state, const RestoreBackup& restore) {
    view.restoring = restore.sure ? "" : restore.path;
    if (restore.sure) put_back(state, restore.path);
}

void RecordsDesk::apply(AppState& state, const KeepBackups& keep) {
    const Result<void> kept = keep_backups(state.store, keep.count);
    if (!kept) return refused("backups", kept.error());
    show(state);
}

// A photo goes to the job in hand; what is dropped without one is told so.
void RecordsDesk::apply(AppState& state, const DropFiles& drop) {
    if (state.place == Place::classroom) {
        for (const std::string& path : drop.paths) carry_out(state, ClassAction(CollectHandIns{path}));
        return;
    }
    for (const std::string& path : drop.paths) {
        apply(state, AttachPhoto{path});
        if (page.told.trouble) return;
    }
    view.photos_open = true;
}

void carry_out_on_records(AppState& state, const RecordsAction& action) {
    state.records->page.told = {};
    std::visit([&](const auto& one) { state.records->apply(state, one); }, action);
}

}  // namespace hardover::window
