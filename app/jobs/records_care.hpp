// Keeping the records safe: backups when something was written, on demand, and bringing one back, told in
// words. Both front ends call these; the clock is passed in.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/jobs/watched.hpp"
#include "app/records/backups.hpp"
#include "app/records/store.hpp"
#include "rules/result/result.hpp"

namespace hardover {

inline constexpr int backups_kept_as_shipped = 10;
inline constexpr int most_backups_kept = 1000;

// How many backups stay in the folder beside the records; 0: none is made by itself.
Result<int> backups_kept(const Store& store);

// Error bad_input: not from 0 to most_backups_kept.
Result<void> keep_backups(Store& store, int count);

// To be called when a window or an interview closes: makes a backup beside the records if this Store has
// written something, and clears away the oldest. Nothing when there was nothing to do.
Result<std::optional<BackupMade>> back_up_on_close(const Store& store, const std::string& now);

// Makes one now. `folder` empty: beside the records, where the oldest goes; any other folder keeps all.
// `watched` is told of the photos; stopped, it gives an error and there is no backup.
Result<BackupMade> back_up(const Store& store, const std::string& folder, const std::string& now,
                           const Watched& watched = {});

std::vector<std::string> backup_lines(const BackupMade& made);

// "17  2026-11-26 00:52  12 kB  records-00017-....db", in the time of the place, the newest first; one line
// when there is none.
std::vector<std::string> list_lines(const std::vector<Backup>& backups, const std::string& folder);

// Puts a backup, or any records file, in the place of the records, and its photos beside them. `which`: a
// file, or the number of a backup beside the records. What was there is kept aside first. Gives what
// happened, in words. Errors: no such backup, it is damaged, the disk is full, it was stopped; the records
// are as before then. `watched` is told of the photos; once they are there it goes on to its end.
Result<std::vector<std::string>> restore_records(const std::string& records_path, const std::string& which,
                                                 const std::string& now, const Watched& watched = {});

}  // namespace hardover
