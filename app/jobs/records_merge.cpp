#include "app/jobs/records_merge.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>

#include "app/jobs/job_file.hpp"
#include "app/jobs/learning.hpp"
#include "app/jobs/photos.hpp"
#include "app/records/backups.hpp"

namespace hardover {

namespace {

std::string counted(std::size_t n, const char* what) {
    return fmt::format("{} {}{}", n, what, n == 1 ? "" : "s");
}

std::string job_line(const ArrivedJob& job) {
    const std::string events = counted(static_cast<std::size_t>(job.events), "event");
    switch (job.what) {
        case Arrival::went_on:
            return fmt::format("Job {}: went on there, {} new (job {} there).", job.here, events, job.there);
        case Arrival::added:
            return fmt::format("Job {}: new, {} (job {} there).", job.here, events, job.there);
        case Arrival::added_apart:
            return fmt::format(
                "Job {}: new, {} (job {} there). It is here already and went on differently: both are kept, "
                "and each names the other.",
                job.here, events, job.there);
        case Arrival::known:
            break;
    }
    return "";
}

std::string learner_line(const ArrivedLearner& learner) {
    const std::string events = counted(static_cast<std::size_t>(learner.events), "event");
    switch (learner.what) {
        case Arrival::went_on:
            return fmt::format("Learner {}: went on there, {} new.", learner.here, events);
        case Arrival::added:
            return fmt::format("Learner {}: new, {}.", learner.here, events);
        case Arrival::added_apart:
            return fmt::format(
                "Learner {}: new, {}. There is another {} here with other answers: both are kept.",
                learner.here, events, plain_name(learner.there));
        case Arrival::known:
            break;
    }
    return "";
}

std::vector<std::string> lines_of(const TakenIn& taken) {
    std::vector<std::string> lines;
    std::size_t known = 0;
    for (const ArrivedJob& job : taken.all.jobs) {
        if (job.what == Arrival::known) ++known;
        if (std::string line = job_line(job); !line.empty()) lines.push_back(std::move(line));
    }
    const std::size_t fresh = lines.size();
    lines.insert(lines.begin(), fmt::format("{}: {} new or longer, {} here already.",
                                            counted(taken.all.jobs.size(), "job"), fresh, known));
    for (const ArrivedLearner& learner : taken.all.learners) {
        if (std::string line = learner_line(learner); !line.empty()) lines.push_back(std::move(line));
    }
    if (taken.all.counts > 0) {
        lines.push_back(
            fmt::format("Counts of {}.", counted(static_cast<std::size_t>(taken.all.counts), "other shop")));
    }
    if (taken.all.classes + taken.all.class_records > 0) {
        lines.push_back(fmt::format("Classes: {} new, {} of hand-ins new.", taken.all.classes,
                                    counted(static_cast<std::size_t>(taken.all.class_records), "record")));
    }
    if (const std::string photos = copied_text(taken.photos); !photos.empty()) {
        lines.push_back(photos);
    }
    if (!taken.photo_fault.empty()) lines.push_back("Photos were not all copied: " + taken.photo_fault);
    return lines;
}

// The same jobs, told one by one as they are loaded. An error ends the transaction they come in by.
void watch(Arriving& arriving, const Watched& watched) {
    if (!watched) return;
    arriving.job = [load = arriving.job, watched, of = arriving.heads.size(),
                    done = std::size_t{0}](const ArrivingHead& head) mutable -> Result<ArrivingJob> {
        if (watched(std::min(done++, of), of)) return load(head);
        return Error{Error::Kind::storage, "taking in was stopped", "", "nothing came in; take it in again"};
    };
}

// The jobs first, then the photos: a photo without its job is litter, a job without its photo says so.
Result<TakenIn> take_in(Store& store, Arriving& arriving, const std::vector<std::string>& photos,
                        const std::string& photos_from, const Watched& watched) {
    TakenIn taken;
    watch(arriving, watched);
    auto all = store.take_in(arriving);
    if (!all.ok()) return all.error();
    taken.all = std::move(all.value());
    auto copied = copy_photos(photos, photos_from, photos_folder(store.path()));
    if (copied.ok()) {
        taken.photos = std::move(copied.value());
    } else {
        taken.photo_fault = copied.error().text();
    }
    taken.lines = lines_of(taken);
    return taken;
}

// Counts of shops whose jobs are here, or come in now, go: their jobs count by themselves.
Result<void> leave_out_counted(const Store& ours, const Store& theirs, Arriving& arriving) {
    const auto counted_here = shops_counted_as_own(ours), counted_there = shops_counted_as_own(theirs);
    if (!counted_here.ok()) return counted_here.error();
    if (!counted_there.ok()) return counted_there.error();
    const auto own = own_shop_id(ours);
    if (!own.ok()) return own.error();
    std::erase_if(arriving.counts, [&](const StoredCounts& counts) {
        return counted_here.value().count(counts.shop) > 0 || counted_there.value().count(counts.shop) > 0;
    });
    for (const std::string& shop : counted_there.value()) {
        if (shop == own.value()) continue;
        arriving.dropped_counts.push_back(shop);
        arriving.marks.push_back(joined_shop_setting(shop));
    }
    return {};
}

bool same_file(const std::string& a, const std::string& b) {
    std::error_code failed;
    return std::filesystem::equivalent(a, b, failed);
}

}  // namespace

Result<TakenIn> merge_records(Store& store, const std::string& other, const Watched& watched) {
    if (same_file(store.path(), other)) {
        return Error{Error::Kind::bad_input, "this is the records file in use", other,
                     "name the records file of the other computer"};
    }
    const auto copy = BorrowedCopy::of(other);
    if (!copy.ok()) return copy.error();
    const Store& theirs = copy.value().store();
    auto arriving = arriving_from(theirs);
    if (!arriving.ok()) return arriving.error();
    auto photos = photos_named(theirs);
    if (!photos.ok()) return photos.error();
    if (auto left_out = leave_out_counted(store, theirs, arriving.value()); !left_out.ok()) {
        return left_out.error();
    }
    return take_in(store, arriving.value(), photos.value(),
                   photos_folder(std::filesystem::absolute(other).string()), watched);
}

Result<TakenIn> import_jobs(Store& store, const Knowledge& knowledge, const std::string& file,
                            const Watched& watched) {
    auto read = read_job_file(knowledge, file);
    if (!read.ok()) return read.error();
    return take_in(store, read.value().arriving, read.value().photos,
                   photos_folder(std::filesystem::absolute(file).string()), watched);
}

}  // namespace hardover
