// A yard's records (invented) for tests that look at many jobs: told with the garden pump, kept in a folder
// that goes away.
#pragma once

#include <filesystem>
#include <string>
#include <utility>
#include <vector>

#include "app/jobs/job.hpp"
#include "reading/reading_support.hpp"
#include "scratch_folder.hpp"
#include "support.hpp"

namespace hardover_tests {

class YardRecords {
  public:
    explicit YardRecords(const std::string& name = "records.db")
        : knowledge_(pump_knowledge()), prepared_(knowledge_), store_(opened(folder_.file(name))) {}

    // Opens a job on a day and tells these events on it.
    hardover::JobNumber job(const std::string& boat, const std::string& day,
                            const std::vector<hardover::Event>& events, const std::string& words = "") {
        const std::string at = day + "T12:00:00Z";
        auto job = hardover::start_job(store_, prepared_, {boat, words, ""}, at);
        REQUIRE_OK(job);
        for (const hardover::Event& event : events) {
            REQUIRE_OK(hardover::record(store_, prepared_, job.value(), event, at));
        }
        return job.value().number;
    }
    void tell(hardover::JobNumber number, const hardover::Event& event,
              const std::string& at = "2026-11-25T12:00:00Z") {
        auto job = hardover::load_job(store_, prepared_, number);
        REQUIRE_OK(job);
        REQUIRE_OK(hardover::record(store_, prepared_, job.value(), event, at));
    }
    // A job with weak water from a leaking foot valve, cured and handed back.
    hardover::JobNumber foot_valve(const std::string& boat, const std::string& day, bool seen = true) {
        return job(boat, day,
                   {hardover::ComplaintsSet{{"weak_water"}}, hardover::HistorySet{"in_use"},
                    hardover::Answered{"prime", "runs_back"}, hardover::Noted{"The bracket is loose"},
                    hardover::Tried{"renew_foot_valve", "cured"},
                    hardover::HandedBack{"foot_valve_leaking", seen, "dirt in it"}},
                   "no pressure at the hose");
    }
    hardover::Job load(hardover::JobNumber number) const {
        auto job = hardover::load_job(store_, prepared_, number);
        REQUIRE_OK(job);
        return std::move(job.value());
    }

    std::string file(const std::string& name) const { return folder_.file(name); }
    const hardover::Knowledge& knowledge() const { return knowledge_; }
    const hardover::PreparedKnowledge& prepared() const { return prepared_; }
    hardover::Store& store() { return store_; }
    const hardover::Store& store() const { return store_; }

  private:
    static hardover::Store opened(const std::string& path) {
        auto store = hardover::Store::open(path);
        REQUIRE_OK(store);
        return std::move(store.value());
    }

    ScratchFolder folder_;
    hardover::Knowledge knowledge_;
    hardover::PreparedKnowledge prepared_;
    hardover::Store store_;
};

inline std::string in_one(const std::vector<std::string>& lines) {
    std::string text;
    for (const std::string& line : lines) text += line + "\n";
    return text;
}

}  // namespace hardover_tests
