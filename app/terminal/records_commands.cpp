// `hardover records ...`: backups, checking, exports, other records files.
#include "app/terminal/records_commands.hpp"

#include <memory>

#include "app/jobs/job.hpp"
#include "app/jobs/job_file.hpp"
#include "app/jobs/photos.hpp"
#include "app/jobs/records_care.hpp"
#include "app/jobs/records_check.hpp"
#include "app/jobs/records_mend.hpp"
#include "app/jobs/records_merge.hpp"
#include "app/records/way_back.hpp"
#include "app/terminal/typed.hpp"

namespace hardover {

namespace {

int print(Context& context, const std::vector<std::string>& lines) {
    for (const std::string& line : lines) context.streams.out << line << "\n";
    return 0;
}

int run_backup(Context& context, const std::string& folder, int keep) {
    // How many are kept is a setting, and may be made before there is a job.
    Result<Store> store = keep >= 0 ? open_records(context) : open_records_on_file(context);
    if (!store) return refuse(context, store.error());
    if (keep >= 0) {
        const Result<void> kept = keep_backups(store.value(), keep);
        if (!kept) return refuse(context, kept.error());
    }
    const Result<BackupMade> made = back_up(store.value(), folder, utc_now());
    if (!made) return refuse(context, made.error());
    print(context, backup_lines(made.value()));
    if (keep == 0) {
        context.streams.out << "From now on no backup is made by itself. Turn that back on with: hardover "
                               "records backup --keep "
                            << backups_kept_as_shipped << "\n";
    }
    return 0;
}

int run_list_backups(Context& context, const std::string& folder) {
    const Result<std::string> path = records_path(context);
    if (!path) return refuse(context, path.error());
    const std::string where = folder.empty() ? backups_folder(path.value()) : folder;
    const std::vector<Backup> backups = list_backups(where, path.value());
    if (backups.empty() && !folder.empty()) {
        return refuse(context,
                      {Error::Kind::not_found, "there are no backups of these records in this folder", folder,
                       "make one there with: hardover records backup " + folder});
    }
    if (backups.empty() && !records_begun(path.value())) {
        return refuse(context, records_there(path.value()).error());
    }
    return print(context, list_lines(backups, where));
}

int run_restore(Context& context, const std::string& which) {
    const Result<std::string> path = records_path(context);
    if (!path) return refuse(context, path.error());
    const Result<std::vector<std::string>> lines = restore_records(path.value(), which, utc_now());
    if (!lines) return refuse(context, lines.error());
    return print(context, lines.value());
}

int run_merge(Context& context, const std::vector<std::string>& files) {
    Result<Store> store = open_records(context);
    if (!store) return refuse(context, store.error());
    int code = 0;
    for (const std::string& file : files) {
        const Result<TakenIn> taken = merge_records(store.value(), file);
        if (!taken) return refuse(context, taken.error());
        if (!taken.value().photo_fault.empty()) code = 1;
        print(context, taken.value().lines);
    }
    back_up_on_close(context, store.value());
    return code;
}

int run_import(Context& context, const std::string& file) {
    Result<Store> store = open_records(context);
    if (!store) return refuse(context, store.error());
    const Result<Knowledge> knowledge = load_knowledge(context, store.value());
    if (!knowledge) return refuse(context, knowledge.error());
    const Result<TakenIn> taken = import_jobs(store.value(), knowledge.value(), file);
    if (!taken) return refuse(context, taken.error());
    print(context, taken.value().lines);
    back_up_on_close(context, store.value());
    return taken.value().photo_fault.empty() ? 0 : 1;
}

struct ExportWish {
    std::string file;
    std::vector<JobNumber> jobs;
    bool with_photos = false;
    bool csv = false;
    bool events = false;
};

int run_export(Context& context, const ExportWish& wish) {
    const Result<Store> store = open_records_on_file(context);
    if (!store) return refuse(context, store.error());
    Result<int> jobs = 0;
    std::vector<std::string> lines;
    if (wish.events) {
        jobs = write_event_table(store.value(), wish.file, wish.jobs);
    } else if (wish.csv) {
        const Result<Knowledge> knowledge = load_knowledge(context, store.value());
        if (!knowledge) return refuse(context, knowledge.error());
        jobs = write_job_table(store.value(), knowledge.value(), wish.file, wish.jobs);
    } else {
        const Result<JobFileWritten> written =
            write_job_file(store.value(), wish.file, wish.jobs, wish.with_photos);
        if (!written) return refuse(context, written.error());
        jobs = written.value().jobs;
        if (wish.with_photos) lines.push_back(copied_text(written.value().photos));
    }
    if (!jobs) return refuse(context, jobs.error());
    lines.insert(lines.begin(), std::to_string(jobs.value()) + (jobs.value() == 1 ? " job" : " jobs") +
                                    " written to " + wish.file);
    return print(context, lines);
}

int run_check(Context& context) {
    const Result<Store> store = open_records_on_file(context);
    if (!store) return refuse(context, store.error());
    const Result<Knowledge> knowledge = load_knowledge(context, store.value());
    if (!knowledge) return refuse(context, knowledge.error());
    const PreparedKnowledge prepared(knowledge.value());
    const Watched progress = [&context](std::size_t done, std::size_t all) {
        if (context.streams.colour && done % 1000 == 0) {
            context.streams.err << done << " of " << all << " jobs\n";
        }
        return true;
    };
    const Result<RecordsChecked> checked = check_records(store.value(), prepared, progress);
    if (!checked) return refuse(context, checked.error());
    for (const RecordsFinding& finding : checked.value().findings) {
        context.streams.out << finding.where << ": " << finding.what << " (" << finding.cure << ")\n";
    }
    print(context, checked.value().told);
    context.streams.out << (checked.value().in_order() ? "The records are in order.\n"
                                                       : "The records are not in order.\n");
    return checked.value().in_order() ? 0 : 1;
}

int run_mend(Context& context, bool as_it_reads) {
    const Result<std::string> path = records_path(context);
    if (!path) return refuse(context, path.error());
    if (const Result<void> there = records_there(path.value()); !there) return refuse(context, there.error());
    Result<Store> store = Store::open_to_mend(path.value());
    if (!store) return refuse(context, store.error());
    const Result<Knowledge> knowledge = load_knowledge(context, store.value());
    if (!knowledge) return refuse(context, knowledge.error());
    const Result<RecordsMended> mended =
        mend_records(store.value(), knowledge.value(), as_it_reads, utc_now());
    if (!mended) return refuse(context, mended.error());
    print(context, mended.value().lines);
    return mended.value().all ? 0 : 1;
}

void add_moving(CLI::App& records, RunCommand& run) {
    const auto wish = std::make_shared<ExportWish>();
    CLI::App* exporting = records.add_subcommand("export", "Write jobs to a file, as JSON or as a table");
    exporting->add_option("FILE", wish->file, "File to be written")->required()->check(not_empty());
    exporting->add_option("--job", wish->jobs, "Only this job; may be given several times")
        ->check(a_job_number());
    CLI::Option* photos =
        exporting->add_flag("--with-photos", wish->with_photos, "Put the photos into 'photos' beside it");
    CLI::Option* csv =
        exporting->add_flag("--csv", wish->csv, "A table, a line each job; cannot be imported");
    CLI::Option* events = exporting->add_flag("--csv-events", wish->events, "A table, a line each event");
    csv->excludes(photos)->excludes(events);
    events->excludes(photos);
    exporting->callback(
        [&run, wish] { run = [wish](Context& context) { return run_export(context, *wish); }; });

    const auto file = std::make_shared<std::string>();
    CLI::App* importing = records.add_subcommand("import", "Take in the jobs of a JSON file; doubles none");
    importing->add_option("FILE", *file, "File made by export")->required()->check(not_empty());
    importing->callback(
        [&run, file] { run = [file](Context& context) { return run_import(context, *file); }; });

    const auto files = std::make_shared<std::vector<std::string>>();
    CLI::App* merge = records.add_subcommand(
        "merge", "Take in jobs, learners and counts of another records file; doubles none");
    merge->add_option("FILES", *files, "Records files of other computers; they stay as they are")
        ->required()
        ->check(not_empty());
    merge->callback(
        [&run, files] { run = [files](Context& context) { return run_merge(context, *files); }; });
}

}  // namespace

void back_up_on_close(Context& context, const Store& store) {
    const auto made = back_up_on_close(store, utc_now());
    if (made.ok()) return;
    context.streams.err << "hardover: no backup was made: " << made.error().text() << "\n";
}

void add_records(CLI::App& app, RunCommand& run) {
    CLI::App* records = app.add_subcommand("records", "Keep the records safe, and take them elsewhere");
    records->require_subcommand(1);
    records->add_subcommand("check", "Is every event there, readable, and still coming to the same?")
        ->callback([&run] { run = run_check; });

    const auto as_it_reads = std::make_shared<bool>(false);
    CLI::App* mend = records->add_subcommand("mend", "Put right what check finds not as it was written");
    mend->add_flag("--as-it-reads", *as_it_reads,
                   "What neither its checksum nor a backup brings back counts as it reads now");
    mend->callback([&run, as_it_reads] {
        run = [as_it_reads](Context& context) { return run_mend(context, *as_it_reads); };
    });

    const auto folder = std::make_shared<std::string>();
    const auto keep = std::make_shared<int>(-1);
    CLI::App* backup =
        records->add_subcommand("backup", "Copy everything as of now, and look the copy through");
    backup->add_option("OUT", *folder, "Folder, such as on a stick; 'backups' beside the records if missing")
        ->check(not_empty());
    backup
        ->add_option("--keep", *keep, "How many stay beside the records from now on (10; 0: none by itself)")
        ->check(CLI::Range(0, most_backups_kept));
    backup->callback([&run, folder, keep] {
        run = [=](Context& context) { return run_backup(context, *folder, *keep); };
    });
    CLI::App* list = records->add_subcommand("list-backups", "The backups, the newest first");
    list->add_option("FOLDER", *folder, "'backups' beside the records if missing")->check(not_empty());
    list->callback(
        [&run, folder] { run = [=](Context& context) { return run_list_backups(context, *folder); }; });

    const auto which = std::make_shared<std::string>();
    CLI::App* restore =
        records->add_subcommand("restore", "Bring a backup back; what is there now is kept aside first");
    restore->add_option("BACKUP", *which, "Its number as list-backups says it, or a file")
        ->required()
        ->check(not_empty());
    restore->callback(
        [&run, which] { run = [which](Context& context) { return run_restore(context, *which); }; });
    add_moving(*records, run);
}

}  // namespace hardover
