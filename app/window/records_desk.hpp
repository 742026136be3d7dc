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

// What becomes of rows that are not as they were written, when the records are looked through.
enum class Mending {
    none,        // they are told
    bring_back,  // from their checksum or a backup
    as_it_reads  // what cannot be brought back counts as it reads now
};

class RecordsDesk {
  public:
    // What is being typed. Nothing here is on record.
    struct View {
        std::string words, boat, state;
        std::string photo_path, caption, import_path;
        std::string restoring;            // the backup that was pressed once
        Mending mending = Mending::none;  // what the next look through the records is for
        bool stop = false;                // the work in hand is not wanted any more
        bool find_open = false, photos_open = false, exchange_open = false;
    };
    View view;
    RecordsPage page;

    // Long work is done beside the window from now on; without it, at once.
    void work_in(Background& background) { beside_.work_in(background); }
    // Between two frames: how far it has come, or that it is to stop.
    void note_progress();
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
    void apply(AppState& state, const RestoreBackup& restore);
    void apply(AppState& state, const KeepBackups& keep);
    void apply(AppState& state, const DropFiles& drop);

  private:
    void read_anew(AppState& state);
    void refused(const std::string& at, const Error& error);
    void done(const std::string& at, const std::vector<std::string>& lines, const std::string& folder = "");
    void look_through(AppState& state);
    void mend(AppState& state, bool as_it_reads);
    // What long work comes to: carried out on the window's thread.
    Background::Outcome refusal(const std::string& at, const Error& error);
    Background::Outcome stopped(const std::string& at, const std::string& text);

    BesideRecords beside_{"records", page.working,
                          [this](const std::string& at, const Error& error) { refused(at, error); }};
};

}  // namespace hardover::window
