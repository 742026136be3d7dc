// The records of a shop with very many jobs: how long it takes to take them in, to open the file, to list,
// search and filter, to write one answer, and to back up. Jobs are made up, fifty events each, most of them
// answers.
#include <cstdlib>
#include <filesystem>
#include <functional>
#include <iostream>
#include <random>

#include "app/jobs/boat_history.hpp"
#include "app/jobs/event.hpp"
#include "app/jobs/find_jobs.hpp"
#include "app/jobs/job.hpp"
#include "app/jobs/learning.hpp"
#include "app/records/arriving.hpp"
#include "bench/common.hpp"

using namespace hardover;
using namespace hardover_bench;

namespace {

constexpr int answers_each = 43;

std::string moment(int job, int minute) {
    char text[32];
    std::snprintf(text, sizeof text, "20%02d-%02d-%02dT%02d:%02d:00Z", 10 + job / 8000 % 80,
                  1 + job / 28 % 12, 1 + job % 28, 8 + minute / 60, minute % 60);
    return text;
}

const char* const notes[] = {"The owner says it began after the winter", "Bracket repainted, looks sound",
                             "Oil topped up before we came", "Hoses are new, fittings are not"};

ArrivingJob made_up(const Knowledge& knowledge, int number) {
    std::mt19937 random(static_cast<unsigned>(number));
    const auto one_of = [&random](const auto& list) -> const auto& {
        return list[random() % std::size(list)];
    };
    ArrivingJob job;
    const auto tell = [&](const Event& event) {
        StoredEvent stored = to_stored(event);
        stored.sequence = static_cast<int>(job.events.size()) + 1;
        stored.at = moment(number, stored.sequence);
        job.events.push_back(std::move(stored));
    };
    const std::string boat = "Boat " + std::to_string(number % 40000);
    const std::string& complaint = one_of(knowledge.complaints).id;
    tell(Opened{boat, "It does not steer as it did", knowledge.fingerprint, std::to_string(number)});
    tell(HistorySet{one_of(knowledge.histories).id});
    tell(ComplaintsSet{{complaint}});
    for (int answer = 0; answer < answers_each; ++answer) {
        const Finding& finding = one_of(knowledge.findings);
        tell(Answered{finding.id, finding.readings.empty() ? "cannot_tell" : one_of(finding.readings).id});
    }
    tell(Noted{one_of(notes)});
    tell(Noted{number % 1000 == 7 ? "A dolphin was seen" : one_of(notes)});
    const Cause& cause = one_of(knowledge.causes);
    tell(Tried{knowledge.remedies[static_cast<std::size_t>(cause.remedy)].id, "cured"});
    const bool closed = number % 50 != 0;
    if (closed) tell(HandedBack{cause.id, true, ""});
    job.summary = {boat, closed ? "handed back" : "in hand", complaint};
    return job;
}

Arriving many(const Knowledge& knowledge, int jobs) {
    Arriving arriving;
    for (int number = 1; number <= jobs; ++number) {
        arriving.heads.push_back({number, made_up(knowledge, number).events.front()});
    }
    arriving.job = [&knowledge](const ArrivingHead& head) -> Result<ArrivingJob> {
        return made_up(knowledge, static_cast<int>(head.number));
    };
    return arriving;
}

// Ends the program with the error's words.
template <typename T>
T must(Result<T> result) {
    if (!result.ok()) {
        std::cerr << result.error().text() << "\n";
        std::exit(1);
    }
    return std::move(result).value();
}
void must(const Result<void>& result) {
    if (result.ok()) return;
    std::cerr << result.error().text() << "\n";
    std::exit(1);
}

class Table {
  public:
    // The median of so many runs.
    void time(const std::string& what, int runs, const std::function<void()>& work) {
        std::vector<double> times;
        for (int n = 0; n < runs; ++n) {
            const double before = wall_milliseconds();
            work();
            times.push_back(wall_milliseconds() - before);
        }
        rows_.push_back({what, fixed(percentile(times, 0.5), 1)});
    }
    void print() const { print_table(rows_); }

  private:
    std::vector<std::vector<std::string>> rows_ = {{"what", "ms"}};
};

void time_all(const Knowledge& knowledge, const std::string& path, Table& table) {
    const PreparedKnowledge prepared(knowledge);
    table.time("open the file", 5, [&] { must(Store::open(path)); });
    Store store = must(Store::open(path));
    table.time("the last 50 jobs", 5, [&] { must(store.jobs(50)); });
    table.time("all jobs, as rows", 3, [&] { must(store.jobs()); });
    const auto find = [&](const std::string& what, JobFilter filter) {
        filter.most = 50;
        table.time("find: " + what, 3, [&] { must(find_jobs(store, knowledge, filter)); });
    };
    find("in hand", {.state = "in hand"});
    find("by boat", {.boat = "boat 777"});
    find("by complaint", {.complaint = knowledge.complaints.front().id});
    find("by cause", {.cause = knowledge.causes.front().id});
    find("by words in notes", {.words = "dolphin seen"});
    find("words that are nowhere", {.words = "zebra"});
    table.time("the jobs of one boat, compared", 3, [&] { must(boat_history(store, prepared, "Boat 777")); });
    table.time("load a job", 5, [&] { must(load_job(store, prepared, 777)); });
    table.time("odds learned from closed jobs", 3, [&] { must(learned_knowledge(knowledge, store)); });
    const JobNumber job = must(store.start_job(made_up(knowledge, 1).events.front(), {"New", "in hand", ""}));
    int sequence = 1;
    table.time("write one answer", 15, [&] {
        StoredEvent event = to_stored(Noted{"one more"});
        event.sequence = ++sequence;
        event.at = "2099-01-01T00:00:00Z";
        must(store.append(job, event, {"New", "in hand", ""}));
    });
    table.time("back up, and look the copy through", 1, [&] { must(store.backup(path + ".copy")); });
    table.time("integrity, foreign keys, order of events", 1, [&] { must(store.check()); });
}

}  // namespace

int main(int argc, char** argv) {
    const int jobs = argument(argc, argv, 1, 100000);
    const Knowledge knowledge = shipped_knowledge();
    std::string folder = (std::filesystem::temp_directory_path() / "hardover_records_XXXXXX").string();
    if (mkdtemp(folder.data()) == nullptr) return 1;
    const std::string path = folder + "/records.db";
    Table table;
    std::int64_t events = 0;
    {
        Store store = must(Store::open(path));
        const Arriving arriving = many(knowledge, jobs);
        table.time("take all jobs in, as a merge does", 1, [&] { must(store.take_in(arriving)); });
        must(store.each_event({}, [&events](JobNumber, const StoredEvent&) { ++events; }));
    }
    std::cout << jobs << " jobs, " << events << " events, "
              << fixed(static_cast<double>(std::filesystem::file_size(path)) / 1e6, 0) << " MB\n\n";
    time_all(knowledge, path, table);
    table.print();
    std::error_code failed;
    std::filesystem::remove_all(folder, failed);
    return 0;
}
