// What the tests of the records share: a folder that goes away again, events with a number, files compared.
#pragma once

#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <map>
#include <string>

#include "app/records/store.hpp"
#include "support.hpp"

namespace hardover_tests {

namespace fs = std::filesystem;

class TemporaryFolder {
  public:
    TemporaryFolder() {
        static int made = 0;
        path_ = fs::temp_directory_path() /
                ("hardover-records-" + std::to_string(::getpid()) + "-" + std::to_string(++made));
        fs::create_directories(path_);
    }
    ~TemporaryFolder() {
        std::error_code failed;
        fs::remove_all(path_, failed);
    }
    TemporaryFolder(const TemporaryFolder&) = delete;
    TemporaryFolder& operator=(const TemporaryFolder&) = delete;

    std::string file(const std::string& name) const { return (path_ / name).string(); }

    // Every file of the folder with its bytes.
    std::map<std::string, std::string> content() const {
        std::map<std::string, std::string> files;
        for (const auto& entry : fs::directory_iterator(path_)) {
            files[entry.path().filename().string()] =
                entry.is_directory() ? "(folder)" : file_text(entry.path().string());
        }
        return files;
    }

  private:
    fs::path path_;
};

inline void write_file(const std::string& path, const std::string& text) {
    std::ofstream file(path, std::ios::binary | std::ios::trunc);
    file << text;
}

inline hardover::StoredEvent event(int sequence) {
    return {sequence, "2026-11-25T15:03:13Z", "noted",
            R"({"text":"event )" + std::to_string(sequence) + "\"}"};
}

inline hardover::JobSummary summary() {
    return {"Grey Heron", "in hand", "wander"};
}

// A closed records file with one job of `events` events.
inline void make_records(const std::string& path, int events) {
    auto store = hardover::Store::open(path);
    REQUIRE_OK(store);
    const auto job = store.value().start_job(event(1), summary());
    REQUIRE_OK(job);
    for (int i = 2; i <= events; ++i) REQUIRE_OK(store.value().append(job.value(), event(i), summary()));
}

// Whether the job's events are 1, 2, 3 ... with the bodies they were written with.
inline bool in_order(const std::vector<hardover::StoredEvent>& events) {
    for (std::size_t i = 0; i < events.size(); ++i) {
        const auto expected = event(static_cast<int>(i) + 1);
        if (events[i].sequence != expected.sequence || events[i].body != expected.body) return false;
    }
    return true;
}

}  // namespace hardover_tests
