// Long work on the records, beside the window: jobs written to a file and taken in, a look through
// everything, mending, a backup and the way back to one.
#include <fmt/format.h>

#include <filesystem>
#include <utility>

#include "app/jobs/job_file.hpp"
#include "app/jobs/records_care.hpp"
#include "app/jobs/records_mend.hpp"
#include "app/jobs/records_merge.hpp"
#include "app/window/app_state.hpp"
#include "app/window/records_desk.hpp"

namespace hardover::window {

namespace {

using Beside = BesideRecords::Beside;

struct ExportWish {
    std::string folder;
    std::string name;
    std::vector<JobNumber> jobs;
};

// The file and the table beside it; no jobs when it was told to stop.
Result<JobFileWritten> write_jobs(const Beside& beside, const Knowledge& knowledge, const ExportWish& wish) {
    std::error_code failed;
    std::filesystem::create_directories(wish.folder, failed);
    const std::string stem = wish.folder + "/" + wish.name;
    auto written =
        write_job_file(beside.store, stem + ".json", wish.jobs, true, part_of(beside.watched, 0, 2));
    if (!written || beside.stop) return written;
    const auto table =
        write_job_table(beside.store, knowledge, stem + ".csv", wish.jobs, part_of(beside.watched, 1, 2));
    if (!table) return table.error();
    return written;
}

std::vector<std::string> written_lines(const JobFileWritten& written, const std::string& path) {
    std::vector<std::string> lines{
        fmt::format("{} written to {}, and the list of them as a table beside it.",
                    written.jobs == 1 ? "1 job is" : fmt::format("{} jobs are", written.jobs), path)};
    const std::string photos = copied_text(written.photos);
    if (!photos.empty()) lines.push_back(photos);
    return lines;
}

}  // namespace

Background::Outcome RecordsDesk::refusal(const std::string& at, const Error& error) {
    return [this, at, error] { refused(at, error); };
}

Background::Outcome RecordsDesk::stopped(const std::string& at, const std::string& text) {
    return [this, at, text] { page.told = {at, {text}, false, true, ""}; };
}

void RecordsDesk::apply(AppState&, const StopRecordsWork&) {
    beside_.stop();
}

void RecordsDesk::apply(AppState& state, const ExportJobs& exporting) {
    ExportWish wish;
    wish.name = exporting.job == 0 ? "jobs" : fmt::format("job {}", exporting.job);
    wish.folder = (std::filesystem::path(state.store.path()).parent_path() / "exports").string();
    if (exporting.job != 0) wish.jobs.push_back(exporting.job);
    const BesideRecords::About about{.at = "export", .what = "Writing the jobs", .in_percent = true};
    beside_.start(state.store.path(), about,
                  [this, wish, prepared = state.prepared](const Beside& beside) -> Background::Outcome {
                      const auto written = write_jobs(beside, prepared.knowledge(), wish);
                      const bool file = written.ok() && written.value().jobs > 0;
                      if (beside.stop) {
                          return stopped("export", file ? "Stopped. The file is written, its table is not."
                                                        : "Stopped. Nothing was written.");
                      }
                      if (!written) return refusal("export", written.error());
                      return [this,
                              lines = written_lines(written.value(), wish.folder + "/" + wish.name + ".json"),
                              folder = wish.folder] { done("export", lines, folder); };
                  });
}

void RecordsDesk::apply(AppState& state, const ImportJobs& import) {
    beside_.start(state.store.path(), {.at = "import", .what = "Taking in the jobs", .holds = true},
                  [this, &state, path = import.path,
                   prepared = state.prepared](const Beside& beside) -> Background::Outcome {
                      const bool jobs = std::filesystem::path(path).extension() == ".json";
                      const auto taken =
                          jobs ? import_jobs(beside.store, prepared.knowledge(), path, beside.watched)
                               : merge_records(beside.store, path, beside.watched);
                      if (!taken && beside.stop) return stopped("import", "Stopped. Nothing came in.");
                      if (!taken) return refusal("import", taken.error());
                      return [this, &state, lines = taken.value().lines] {
                          show_bench(state);
                          done("import", lines);
                      };
                  });
}

void RecordsDesk::apply(AppState& state, const CheckRecords&) {
    page.checked.reset();
    page.mend_as_it_reads = false;
    const BesideRecords::About about{
        .at = "check", .what = "Looking through the records", .damaged_rows = true};
    beside_.start(state.store.path(), about,
                  [this, prepared = state.prepared](const Beside& beside) -> Background::Outcome {
                      const auto checked = check_records(beside.store, prepared, beside.watched);
                      if (beside.stop) return stopped("check", "Stopped. Not everything was looked at.");
                      if (!checked) return refusal("check", checked.error());
                      return [this, found = checked.value()] {
                          page.checked = found;
                          done("check", found.told);
                      };
                  });
}

// The job in hand is read anew: some of its events may have been brought back.
void RecordsDesk::apply(AppState& state, const MendRecords& wish) {
    const BesideRecords::About about{
        .at = "mend", .what = "Mending the records", .can_stop = false, .damaged_rows = true, .holds = true};
    const auto read_job = [&state] {
        if (!state.job) return;
        Result<Job> job = load_job(state.store, state.prepared, state.job->number);
        if (job) state.job = std::move(job.value());
        forget_turning(state);
        show_job(state);
    };
    beside_.start(state.store.path(), about,
                  [this, &state, read_job, as_it_reads = wish.as_it_reads, now = state.now(),
                   prepared = state.prepared](const Beside& beside) -> Background::Outcome {
                      const auto mended = mend_records(beside.store, prepared.knowledge(), as_it_reads, now);
                      if (!mended) return refusal("mend", mended.error());
                      return [this, &state, read_job, mended = mended.value()] {
                          page.checked.reset();
                          page.mend_as_it_reads = mended.left;
                          read_job();
                          read_anew(state);
                          done("mend", mended.lines);
                      };
                  });
}

void RecordsDesk::apply(AppState& state, const BackUpRecords&) {
    SettingsView& told = state.settings_view;
    told.backup.clear();
    told.backup_trouble.clear();
    beside_.start(state.store.path(), {.at = "backup", .what = "Making a backup", .in_percent = true},
                  [this, &state, &told, now = state.now()](const Beside& beside) -> Background::Outcome {
                      const auto made = back_up(beside.store, "", now, beside.watched);
                      if (!made && beside.stop) return stopped("backup", "Stopped. No backup was made.");
                      return [this, &state, &told, made] {
                          told.backup = made ? made.value().backup.path : "";
                          told.backup_trouble = made ? "" : made.error().text();
                          show(state);
                      };
                  });
}

// Opened anew afterwards: where the records were damaged, another file stands in their place.
void RecordsDesk::put_back(AppState& state, const std::string& backup) {
    const BesideRecords::About about{
        .at = "restore", .what = "Going back to a backup", .in_percent = true, .holds = true};
    beside_.start_unopened(about,
                           [this, &state, path = state.store.path(), backup, now = state.now()](
                               const Watched& watched, const std::atomic<bool>& stop) -> Background::Outcome {
                               const auto restored = restore_records(path, backup, now, watched);
                               if (!restored && stop)
                                   return stopped("restore", "Stopped. The records are as they were.");
                               if (!restored) return refusal("restore", restored.error());
                               return [this, &state, path, lines = restored.value()] {
                                   if (auto again = Store::open(path)) state.store = std::move(again.value());
                                   state.job.reset();
                                   read_anew(state);
                                   done("restore", lines);
                               };
                           });
}

}  // namespace hardover::window
