// What the window shows of the shop's records beside the job in hand: jobs found among many, the jobs of one
// boat beside each other, photos, files going out and coming in, backups, and a look through everything.
// Knows no drawing library.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "app/jobs/boat_history.hpp"
#include "app/jobs/find_jobs.hpp"
#include "app/jobs/photos.hpp"
#include "app/jobs/records_check.hpp"
#include "app/records/backups.hpp"
#include "app/window/beside_records.hpp"
#include "app/window/records_actions.hpp"

namespace hardover::window {

struct AppState;

// Where something was refused or done: beside what was pressed.
struct RecordsTold {
    std::string at;  // "find", "photo", "import" ...
    std::vector<std::string> lines;
    bool trouble = false;
    bool stopped = false;
    std::string folder;  // where what was written is
};

struct RecordsPage {
    std::optional<FoundJobs> found;
    std::optional<BoatHistory> history;
    std::vector<PhotoLine> photos;  // of the job in hand
    std::vector<Backup> backups;
    int backups_kept = 0;
    std::optional<RecordsChecked> checked;
    bool mend_as_it_reads = false;  // mending left rows that are in no backup
    RecordsTold told;
    std::optional<WorkShown> working;  // long work that is being done
};

class RecordsDesk {
  public:
    // What is being typed. Nothing here is on record.
    struct View {
        std::string words, boat, state;
        std::string photo_path, caption, import_path;
        std::string restoring;  // the backup that was pressed once
        bool find_open = false, photos_open = false, exchange_open = false;
    };
    View view;
    RecordsPage page;

    // Long work is done beside the window from now on; without it, at once.
    void work_in(Background& background) { beside_.work_in(background); }
    // Between two frames: how far it has come.
    void note_progress() { beside_.note_progress(); }
    // Long work has written to the records by a connection of its own.
    bool wrote_beside() const { return beside_.wrote(); }

    // Backups and the photos of the job in hand, anew.
    void show(AppState& state);
    void apply(AppState& state, const FindJobs& find);
    void apply(AppState& state, const ShowEarlierJobs& show);
    void apply(AppState& state, const AttachPhoto& attach);
    void apply(AppState& state, const OpenPhoto& open);
    void apply(AppState& state, const ExportJobs& exporting);
    void apply(AppState& state, const ImportJobs& import);
    void apply(AppState& state, const CheckRecords& check);
    void apply(AppState& state, const MendRecords& mend);
    void apply(AppState& state, const BackUpRecords& back_up);
    void apply(AppState& state, const RestoreBackup& restore);
    void apply(AppState& state, const KeepBackups& keep);
    void apply(AppState& state, const StopRecordsWork& stop);
    void apply(AppState& state, const DropFiles& drop);

  private:
    void read_anew(AppState& state);
    void refused(const std::string& at, const Error& error);
    void done(const std::string& at, const std::vector<std::string>& lines, const std::string& folder = "");
    void put_back(AppState& state, const std::string& backup);
    // What long work comes to: carried out on the window's thread.
    Background::Outcome refusal(const std::string& at, const Error& error);
    Background::Outcome stopped(const std::string& at, const std::string& text);

    BesideRecords beside_{"records", page.working,
                          [this](const std::string& at, const Error& error) { refused(at, error); }};
};

}  // namespace hardover::window
