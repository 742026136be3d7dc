#include "app/jobs/records_mend.hpp"

#include "app/jobs/job.hpp"
#include "app/jobs/replay.hpp"
#include "app/records/backups.hpp"
#include "app/records/mend.hpp"

namespace hardover {

using namespace jobs_detail;

namespace {

void tell(std::vector<std::string>& lines, const std::string& what, const std::vector<std::string>& rows) {
    for (const std::string& row : rows) lines.push_back(what + ": " + row);
}

// The lines of the list that are still damaged, from the events of their jobs.
Result<void> list_anew(Store& store, const Knowledge& knowledge, std::vector<std::string>& lines) {
    const auto rows = store.jobs();
    if (!rows.ok()) return rows.error();
    for (const JobRow& row : rows.value()) {
        if (row.sound) continue;
        const auto events = store.events(row.number);
        if (!events.ok()) continue;  // is told as damaged itself
        const Job job = replay_facts(knowledge, row.number, events.value());
        const auto listed = store.list_anew(row.number, summary_of(knowledge, job));
        if (!listed.ok()) return listed;
        lines.push_back("Made anew from its events: the line of job " + std::to_string(row.number) +
                        " in the list");
    }
    return {};
}

std::vector<std::string> files_of(const std::vector<Backup>& backups) {
    std::vector<std::string> files;
    for (const Backup& backup : backups) files.push_back(backup.path);
    return files;
}

}  // namespace

Result<RecordsMended> mend_records(Store& store, const Knowledge& knowledge, bool as_it_reads,
                                   const std::string& now) {
    if (store.check().ok()) {
        return RecordsMended{{"Nothing to mend: everything is as it was written."}, true, false};
    }
    const auto aside = keep_aside_as_it_is(store, now);
    if (!aside.ok()) return aside.error();
    RecordsMended done;
    done.lines.push_back("The records as they were are kept: " + aside.value());
    const auto backups = list_backups(backups_folder(store.path()), store.path());
    const auto mended = store.mend({files_of(backups), as_it_reads});
    if (!mended.ok()) return mended.error();
    tell(done.lines, "Mended, one bit had turned", mended.value().by_bit);
    tell(done.lines, "Brought back", mended.value().by_backup);
    tell(done.lines, "Counts as it reads now", mended.value().as_they_read);
    if (auto listed = list_anew(store, knowledge, done.lines); !listed.ok()) return listed.error();
    const auto left = store.damaged();
    if (!left.ok()) return left.error();
    tell(done.lines, "Still damaged, and in no backup beside the records", left.value());
    const auto checked = store.check();
    done.all = checked.ok();
    done.left = !left.value().empty();
    if (!left.value().empty()) {
        done.lines.emplace_back(
            "Let it count as it reads now with: hardover records mend --as-it-reads; or bring a whole backup "
            "back with: hardover records restore");
    } else if (!checked.ok()) {
        done.lines.push_back("Not in order yet: " + checked.error().what +
                             ". Bring a backup back with: hardover records restore");
    }
    return done;
}

}  // namespace hardover
