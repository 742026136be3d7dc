// Which of what arrives is here already, and taking in the rest, in one transaction.
#include "app/records/arriving.hpp"

#include <algorithm>
#include <map>
#include <tuple>
#include <utility>

#include "app/records/arriving_classes.hpp"
#include "app/records/checksum.hpp"
#include "app/records/connection.hpp"
#include "app/records/folded.hpp"
#include "app/records/whole_file.hpp"

namespace hardover {

using namespace records_detail;

namespace {

using History = std::vector<StoredEvent>;

bool same(const StoredEvent& a, const StoredEvent& b) {
    return std::tie(a.at, a.kind, a.body) == std::tie(b.at, b.kind, b.body);
}

bool starts_with(const History& longer, const History& shorter) {
    return shorter.size() <= longer.size() &&
           std::equal(shorter.begin(), shorter.end(), longer.begin(), same);
}

// Appends events behind those of a job or learner, by a prepared statement of its own.
class Appender {
  public:
    Appender(const Database& database, const char* table)
        : database_(database), insert_(database, insertion(table)) {}

    Result<void> append(std::int64_t owner, const History& events, std::size_t from) {
        for (std::size_t i = from; i < events.size(); ++i) {
            insert_.again();
            insert_.bind(owner).bind(static_cast<std::int64_t>(i + 1)).bind(events[i].at);
            insert_.bind(events[i].kind).bind(events[i].body);
            if (const int code = insert_.step(); code != SQLITE_DONE) return database_.error(code);
        }
        return {};
    }

  private:
    const Database& database_;
    Statement insert_;
};

class JobsIn {
  public:
    JobsIn(const Store& store, const Database& database)
        : store_(store), database_(database), events_(database, "events") {}

    Result<std::vector<ArrivedJob>> take(const Arriving& arriving) {
        const auto there = store_.number_of_jobs();
        if (!there.ok()) return there.error();
        keep_numbers_ = there.value() == 0;
        std::vector<ArrivingHead> heads = arriving.heads;
        // Jobs that start alike stand beside each other then.
        std::sort(heads.begin(), heads.end(), [](const ArrivingHead& a, const ArrivingHead& b) {
            return std::tie(a.first.at, a.first.kind, a.first.body, a.number) <
                   std::tie(b.first.at, b.first.kind, b.first.body, b.number);
        });
        std::vector<ArrivedJob> arrived;
        for (std::size_t from = 0, to = 0; from < heads.size(); from = to) {
            for (to = from + 1; to < heads.size() && same(heads[from].first, heads[to].first);) ++to;
            const std::vector<ArrivingHead> alike(heads.begin() + static_cast<std::ptrdiff_t>(from),
                                                  heads.begin() + static_cast<std::ptrdiff_t>(to));
            if (auto taken = take_alike(arriving, alike, arrived); !taken.ok()) return taken.error();
        }
        std::stable_sort(arrived.begin(), arrived.end(),
                         [](const ArrivedJob& a, const ArrivedJob& b) { return a.there < b.there; });
        return arrived;
    }

  private:
    // Jobs with one and the same first event.
    Result<void> take_alike(const Arriving& arriving, const std::vector<ArrivingHead>& alike,
                            std::vector<ArrivedJob>& arrived) {
        const auto numbers = store_.jobs_started_by(alike.front().first);
        if (!numbers.ok()) return numbers.error();
        std::vector<History> ours;
        for (const JobNumber number : numbers.value()) {
            auto events = store_.events(number);
            if (!events.ok()) return events.error();
            ours.push_back(std::move(events.value()));
        }
        std::vector<ArrivingJob> jobs;
        std::vector<History> theirs;
        for (const ArrivingHead& head : alike) {
            auto job = arriving.job(head);
            if (!job.ok()) return job.error();
            theirs.push_back(job.value().events);
            jobs.push_back(std::move(job.value()));
        }
        const auto pairs = pair_histories(ours, theirs);
        for (std::size_t i = 0; i < jobs.size(); ++i) {
            ArrivedJob one{alike[i].number, 0, pairs[i].what, 0};
            if (one.what == Arrival::added) {
                if (!ours.empty()) one.what = Arrival::added_apart;
                const auto number = add(alike[i].number, jobs[i]);
                if (!number.ok()) return number.error();
                one.here = number.value();
                one.events = static_cast<int>(theirs[i].size());
            } else {
                one.here = numbers.value()[pairs[i].ours];
                const std::size_t known = ours[pairs[i].ours].size();
                if (one.what == Arrival::went_on) {
                    one.events = static_cast<int>(theirs[i].size() - known);
                    if (auto done = go_on(one.here, jobs[i], known); !done.ok()) return done;
                }
            }
            arrived.push_back(one);
        }
        return {};
    }

    Result<JobNumber> add(JobNumber wanted, const ArrivingJob& job) {
        const auto number = keep_numbers_ ? Result<JobNumber>(wanted) : next_job(database_);
        if (!number.ok()) return number;
        if (auto listed = insert_job(database_, number.value(), job.summary, job.events); !listed.ok()) {
            return listed.error();
        }
        if (auto written = events_.append(number.value(), job.events, 0); !written.ok()) {
            return written.error();
        }
        return number;
    }

    Result<void> go_on(JobNumber number, const ArrivingJob& job, std::size_t known) {
        if (auto written = events_.append(number, job.events, known); !written.ok()) return written;
        StoredEvent last = job.events.back();
        last.sequence = static_cast<int>(job.events.size());
        return update_job(database_, number, job.summary, last);
    }

    const Store& store_;
    const Database& database_;
    Appender events_;
    bool keep_numbers_ = false;
};

class LearnersIn {
  public:
    LearnersIn(const Store& store, const Database& database)
        : store_(store), database_(database), events_(database, "study_events") {}

    Result<std::vector<ArrivedLearner>> take(const Arriving& arriving) {
        std::map<std::string, std::vector<ArrivingLearner>> by_name;
        for (const ArrivingLearner& learner : arriving.learners) {
            by_name[folded(plain_name(learner.name))].push_back(learner);
        }
        std::vector<ArrivedLearner> arrived;
        for (const auto& [name, alike] : by_name) {
            if (auto taken = take_alike(name, alike, arrived); !taken.ok()) return taken.error();
        }
        return arrived;
    }

  private:
    Result<void> take_alike(const std::string& name, const std::vector<ArrivingLearner>& alike,
                            std::vector<ArrivedLearner>& arrived) {
        const auto rows = store_.learners();
        if (!rows.ok()) return rows.error();
        std::vector<LearnerRow> here;
        std::vector<History> ours, theirs;
        for (const LearnerRow& row : rows.value()) {
            if (folded(plain_name(row.name)) != name) continue;
            auto events = store_.study_events(row.number);
            if (!events.ok()) return events.error();
            here.push_back(row);
            ours.push_back(std::move(events.value()));
        }
        for (const ArrivingLearner& learner : alike) theirs.push_back(learner.events);
        const auto pairs = pair_histories(ours, theirs);
        for (std::size_t i = 0; i < alike.size(); ++i) {
            ArrivedLearner one{alike[i].name, "", pairs[i].what, 0};
            std::int64_t number = 0;
            std::size_t known = 0;
            if (one.what == Arrival::added) {
                if (!ours.empty()) one.what = Arrival::added_apart;
                const auto added = add(alike[i], one.here);
                if (!added.ok()) return added.error();
                number = added.value();
            } else {
                number = here[pairs[i].ours].number;
                one.here = here[pairs[i].ours].name;
                known = ours[pairs[i].ours].size();
            }
            if (one.what != Arrival::known) {
                one.events = static_cast<int>(theirs[i].size() - known);
                if (auto written = events_.append(number, theirs[i], known); !written.ok()) return written;
                const auto last = static_cast<std::int64_t>(theirs[i].size());
                if (auto listed = update_learner(database_, number, last); !listed.ok()) return listed;
            }
            arrived.push_back(std::move(one));
        }
        return {};
    }

    // Under its name, or the first free one of "Ann (2)", "Ann (3)" ...
    Result<LearnerNumber> add(const ArrivingLearner& learner, std::string& name) {
        name = learner.name;
        for (int twin = 2;; ++twin) {
            const auto taken = same_learner(database_, name);
            if (!taken.ok()) return taken.error();
            if (!taken.value()) break;
            name = plain_name(learner.name) + " (" + std::to_string(twin) + ")";
        }
        return insert_learner(database_, name, learner.added_at);
    }

    const Store& store_;
    const Database& database_;
    Appender events_;
};

// Of two exports of a shop with the same number, which cannot be told apart by age, the same one stays on
// every computer.
Result<int> take_counts(const Store& store, const Database& database,
                        const std::vector<StoredCounts>& theirs) {
    const auto known = store.counts();
    if (!known.ok()) return known.error();
    int taken = 0;
    for (const StoredCounts& counts : theirs) {
        const auto ours = std::find_if(known.value().begin(), known.value().end(),
                                       [&](const StoredCounts& one) { return one.shop == counts.shop; });
        if (ours != known.value().end() &&
            std::tie(ours->number, ours->counts) >= std::tie(counts.number, counts.counts)) {
            continue;
        }
        if (auto written = write_counts(database, counts); !written.ok()) return written.error();
        ++taken;
    }
    return taken;
}

// The place of the first of ours that is free and `fits`; ours.size() when there is none.
template <typename Fits>
std::size_t first_free(const std::vector<History>& ours, const std::vector<bool>& taken, const Fits& fits) {
    std::size_t i = 0;
    while (i < ours.size() && (taken[i] || !fits(ours[i]))) ++i;
    return i;
}

}  // namespace

std::vector<Pairing> pair_histories(const std::vector<std::vector<StoredEvent>>& ours,
                                    const std::vector<std::vector<StoredEvent>>& theirs) {
    std::vector<Pairing> pairs(theirs.size());
    std::vector<bool> taken(ours.size(), false), settled(theirs.size(), false);
    const auto settle = [&](std::size_t i, std::size_t with, Arrival what) {
        if (with == ours.size()) return;
        pairs[i] = {what, with};
        taken[with] = settled[i] = true;
    };
    for (std::size_t i = 0; i < theirs.size(); ++i) {
        const auto equal = [&](const History& one) {
            return one.size() == theirs[i].size() && starts_with(one, theirs[i]);
        };
        settle(i, first_free(ours, taken, equal), Arrival::known);
    }
    for (std::size_t i = 0; i < theirs.size(); ++i) {
        if (settled[i]) continue;
        settle(i, first_free(ours, taken, [&](const History& one) { return starts_with(one, theirs[i]); }),
               Arrival::known);
    }
    for (std::size_t i = 0; i < theirs.size(); ++i) {
        if (settled[i]) continue;
        // The longest of ours that theirs goes on from.
        std::size_t longest = ours.size();
        for (std::size_t j = 0; j < ours.size(); ++j) {
            if (taken[j] || !starts_with(theirs[i], ours[j])) continue;
            if (longest == ours.size() || ours[j].size() > ours[longest].size()) longest = j;
        }
        settle(i, longest, Arrival::went_on);
    }
    return pairs;
}

std::string identity_of(const StoredEvent& first) {
    return sha256_of(first.at + "\n" + first.kind + "\n" + first.body);
}

std::string plain_name(const std::string& name) {
    const std::size_t open = name.rfind(" (");
    if (open == std::string::npos || open == 0 || name.back() != ')' || open + 3 >= name.size()) return name;
    const std::string digits = name.substr(open + 2, name.size() - open - 3);
    return digits.find_first_not_of("0123456789") == std::string::npos ? name.substr(0, open) : name;
}

Result<Arriving> arriving_from(const Store& store) {
    Arriving arriving;
    const auto read = store.each_first_event([&arriving](JobNumber job, const StoredEvent& event) {
        arriving.heads.push_back({job, event});
    });
    if (!read.ok()) return read.error();
    arriving.job = [&store](const ArrivingHead& head) -> Result<ArrivingJob> {
        auto row = store.job(head.number);
        if (!row.ok()) return row.error();
        auto events = store.events(head.number);
        if (!events.ok()) return events.error();
        return ArrivingJob{row.value().summary, std::move(events.value())};
    };
    const auto learners = store.learners();
    if (!learners.ok()) return learners.error();
    for (const LearnerRow& row : learners.value()) {
        auto events = store.study_events(row.number);
        if (!events.ok()) return events.error();
        arriving.learners.push_back({row.name, row.added_at, std::move(events.value())});
    }
    auto counts = store.counts();
    if (!counts.ok()) return counts.error();
    arriving.counts = std::move(counts.value());
    arriving.classes = &store;
    return arriving;
}

Result<ArrivedAll> Store::take_in(const Arriving& arriving) {
    const Database& database = connection_->database;
    Transaction transaction(database);
    if (auto begun = transaction.begin(); !begun.ok()) return begun.error();
    ArrivedAll all;
    auto jobs = JobsIn(*this, database).take(arriving);
    if (!jobs.ok()) return jobs.error();
    all.jobs = std::move(jobs.value());
    auto learners = LearnersIn(*this, database).take(arriving);
    if (!learners.ok()) return learners.error();
    all.learners = std::move(learners.value());
    const auto counts = take_counts(*this, database, arriving.counts);
    if (!counts.ok()) return counts.error();
    all.counts = counts.value();
    for (const std::string& mark : arriving.marks) {
        Statement write(database, insertion("settings", "INSERT OR REPLACE"));
        if (const int code = write.bind(mark).bind("yes").step(); code != SQLITE_DONE) {
            return database.error(code);
        }
    }
    for (const std::string& shop : arriving.dropped_counts) {
        Statement drop(database, "DELETE FROM counts WHERE shop = ?");
        if (const int code = drop.bind(shop).step(); code != SQLITE_DONE) return database.error(code);
    }
    if (arriving.classes != nullptr) {
        const auto classes = take_classes(arriving.classes->connection_->database, database);
        if (!classes.ok()) return classes.error();
        all.classes = classes.value().classes;
        all.class_records = classes.value().records;
    }
    if (auto committed = transaction.commit(); !committed.ok()) return committed.error();
    return all;
}

}  // namespace hardover
