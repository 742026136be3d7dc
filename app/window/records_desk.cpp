#include "app/window/records_desk.hpp"

#include <fmt/format.h>
#include <filesystem>

#include "app/jobs/job_file.hpp"
#include "app/jobs/records_care.hpp"
#include "app/jobs/records_merge.hpp"
#include "app/window/app_state.hpp"

namespace hardover::window {

namespace {

constexpr std::size_t most_found = 40;

std::string folder_of(const Store& store) {
    return std::filesystem::path(store.path()).parent_path().string();
}

}  // namespace

void RecordsDesk::refused(const std::string& at, const Error& error) {
    page.told = {at, {error.text()}, true, ""};
}

void RecordsDesk::done(const std::string& at, const std::vector<std::string>& lines,
                       const std::string& folder) {
    page.told = {at, lines, false, folder};
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

void RecordsDesk::apply(AppState& state, const ExportJobs& exporting) {
    const std::string name = exporting.job == 0 ? "jobs" : fmt::format("job {}", exporting.job);
    const std::string folder = (std::filesystem::path(folder_of(state.store)) / "exports").string();
    std::error_code failed;
    std::filesystem::create_directories(folder, failed);
    std::vector<JobNumber> jobs;
    if (exporting.job != 0) jobs.push_back(exporting.job);
    const std::string path = folder + "/" + name + ".json";
    const auto written = write_job_file(state.store, path, jobs, true);
    if (!written) return refused("export", written.error());
    const auto table = write_job_table(state.store, state.knowledge, folder + "/" + name + ".csv", jobs);
    if (!table) return refused("export", table.error());
    std::vector<std::string> lines{fmt::format(
        "{} written to {}, and the list of them as a table beside it.",
        written.value().jobs == 1 ? "1 job is" : fmt::format("{} jobs are", written.value().jobs), path)};
    const std::string photos = copied_text(written.value().photos);
    if (!photos.empty()) lines.push_back(photos);
    done("export", lines, folder);
}

void RecordsDesk::apply(AppState& state, const ImportJobs& import) {
    const bool jobs = std::filesystem::path(import.path).extension() == ".json";
    const auto taken = jobs ? import_jobs(state.store, state.knowledge, import.path)
                            : merge_records(state.store, import.path);
    if (!taken) return refused("import", taken.error());
    show_bench(state);
    done("import", taken.value().lines);
}

void RecordsDesk::apply(AppState& state, const CheckRecords&) {
    auto checked = check_records(state.store, state.prepared);
    if (!checked) return refused("check", checked.error());
    page.checked = std::move(checked.value());
    done("check", page.checked->told);
}

// Pressed twice: once to see what will happen, once to do it.
void RecordsDesk::apply(AppState& state, const RestoreBackup& restore) {
    if (!restore.sure) {
        view.restoring = restore.path;
        return;
    }
    view.restoring.clear();
    const auto restored = restore_records(state.store.path(), restore.path, state.now());
    if (!restored) return refused("restore", restored.error());
    state.job.reset();
    state.looked_into.clear();
    take_shop(state);
    show_bench(state);
    show(state);
    done("restore", restored.value());
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
