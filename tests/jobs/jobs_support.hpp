// What the tests of jobs share: a records file that goes away, jobs told event by event, a page's texts.
#pragma once

#include <unistd.h>

#include <filesystem>
#include <string>
#include <utility>
#include <vector>

#include "app/jobs/job.hpp"
#include "app/jobs/page.hpp"
#include "reading/reading_support.hpp"
#include "shipped.hpp"
#include "support.hpp"

namespace hardover_tests {

inline const char* noon = "2026-11-25T12:00:00Z";

// A job in a records file of its own.
class Bench {
  public:
    explicit Bench(const hardover::Knowledge& knowledge) : knowledge_(knowledge), store_(opened()) {
        auto job = hardover::start_job(store_, knowledge_, {"Marsh Hen", "it is all wrong", ""}, noon);
        REQUIRE_OK(job);
        job_ = std::move(job.value());
    }
    ~Bench() {
        std::error_code failed;
        std::filesystem::remove_all(folder_, failed);
    }
    Bench(const Bench&) = delete;
    Bench& operator=(const Bench&) = delete;

    Bench& tell(const hardover::Event& event) {
        REQUIRE_OK(hardover::record(store_, knowledge_, job_, event, noon));
        return *this;
    }
    Bench& answer(const std::string& finding, const std::string& answer) {
        return tell(hardover::Answered{finding, answer});
    }
    hardover::Result<void> try_undo() { return hardover::undo(store_, knowledge_, job_, noon); }
    Bench& undo() {
        REQUIRE_OK(try_undo());
        return *this;
    }
    // The error for an event that must be refused, with nothing written and the job as before.
    hardover::Error refused(const hardover::Event& event) {
        const auto facts = job_.facts;
        const auto events = job_.events.size();
        const auto done = hardover::record(store_, knowledge_, job_, event, noon);
        REQUIRE_FALSE(done.ok());
        CHECK(job_.facts == facts);
        CHECK(job_.events.size() == events);
        CHECK(store_.events(job_.number).value().size() == events);
        return done.error();
    }

    const hardover::Job& job() const { return job_; }
    hardover::Store& store() { return store_; }
    hardover::JobPage page() const { return hardover::make_job_page(knowledge_, job_); }
    std::string last_body() const { return job_.events.back().body; }

    // The job as another start of the program finds it.
    hardover::Job reloaded() const {
        auto store = hardover::Store::open(store_.path());
        REQUIRE_OK(store);
        auto job = hardover::load_job(store.value(), knowledge_, job_.number);
        REQUIRE_OK(job);
        return std::move(job.value());
    }

  private:
    hardover::Store opened() {
        static int made = 0;
        folder_ = std::filesystem::temp_directory_path() /
                  ("hardover-jobs-" + std::to_string(::getpid()) + "-" + std::to_string(++made));
        auto store = hardover::Store::open((folder_ / "jobs.db").string());
        REQUIRE_OK(store);
        return std::move(store.value());
    }

    const hardover::Knowledge& knowledge_;
    std::filesystem::path folder_;
    hardover::Store store_;
    hardover::Job job_;
};

// A text a person reads, with the place on the page it stands at.
using PageText = std::pair<std::string, std::string>;

std::vector<PageText> texts_of(const hardover::JobPage& page);
std::vector<PageText> texts_of(const hardover::StepCard& card);

// The whole page as one text, ids and numbers included, to compare two pages.
std::string whole_page(const hardover::JobPage& page);

// The first person-facing text that holds a word with an underscore, or "".
std::string internal_id_in(const std::vector<PageText>& texts);

}  // namespace hardover_tests
