// Taking in another records file or a job file, and telling what is new, in words.
#pragma once

#include <string>
#include <vector>

#include "app/jobs/watched.hpp"
#include "app/records/arriving.hpp"
#include "app/records/photos.hpp"
#include "app/records/store.hpp"
#include "rules/model/knowledge.hpp"
#include "rules/result/result.hpp"

namespace hardover {

struct TakenIn {
    ArrivedAll all;
    CopiedPhotos photos;
    std::string photo_fault;  // not empty: why photos could not be copied; doing it again goes on with them
    std::vector<std::string> lines;  // what came of it, for people; one says so when nothing is new
};

// Jobs, learners and counts of another records file. That file keeps every byte; its settings stay there.
// Counts of the shop whose jobs come in are left out, since they would count twice. Nothing is doubled, in
// whatever order and however often files are merged. `watched` is told how many jobs are looked at, of how
// many; told to stop, nothing comes in, and an error says so. Errors: as Store::open for the other file;
// nothing is written then.
Result<TakenIn> merge_records(Store& store, const std::string& other, const Watched& watched = {});

// The jobs of a job file, and the photos beside it.
Result<TakenIn> import_jobs(Store& store, const Knowledge& knowledge, const std::string& file,
                            const Watched& watched = {});

}  // namespace hardover
