#include "killed_writer.hpp"

#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <random>
#include <thread>

#include "records_support.hpp"

namespace hardover_tests {

using hardover::Store;

namespace {

// Appends events to job 1 until killed, and tells each confirmed sequence number through the pipe.
[[noreturn]] void append_for_ever(const std::string& path, int pipe) {
    auto store = Store::open(path);
    if (!store.ok()) ::_exit(1);
    const auto events = store.value().events(1);
    if (!events.ok()) ::_exit(1);
    for (int i = static_cast<int>(events.value().size()) + 1;; ++i) {
        if (!store.value().append(1, event(i), summary()).ok()) ::_exit(1);
        if (::write(pipe, &i, sizeof i) != sizeof i) ::_exit(1);
    }
}

// Lets one work for so long, from its start or from its first event, and gives the last number it confirmed.
int kill_one(const std::string& path, std::chrono::microseconds after, bool from_first_event, int before) {
    int ends[2];
    REQUIRE(::pipe(ends) == 0);
    const pid_t child = ::fork();
    REQUIRE(child >= 0);
    if (child == 0) {
        ::close(ends[0]);
        append_for_ever(path, ends[1]);
    }
    ::close(ends[1]);
    int confirmed = before;
    if (from_first_event) REQUIRE(::read(ends[0], &confirmed, sizeof confirmed) == sizeof confirmed);
    std::this_thread::sleep_for(after);
    ::kill(child, SIGKILL);
    int status = 0;
    REQUIRE(::waitpid(child, &status, 0) == child);
    REQUIRE(WIFSIGNALED(status));
    for (int next = 0; ::read(ends[0], &next, sizeof next) == sizeof next;) confirmed = next;
    ::close(ends[0]);
    return confirmed;
}

}  // namespace

int kill_writers(const std::string& path, int kills, unsigned seed) {
    std::mt19937 random(seed);
    std::uniform_int_distribution<int> microseconds(1000, 40000);
    int found = 1;
    for (int kill = 0; kill < kills; ++kill) {
        INFO("kill " << kill);
        // Every second time it has got to work for certain; otherwise the kill may come while it opens the
        // file.
        const int confirmed =
            kill_one(path, std::chrono::microseconds(microseconds(random)), kill % 2 == 0, found);
        auto store = Store::open(path);
        REQUIRE_OK(store);
        const auto events = store.value().events(1);
        REQUIRE_OK(events);
        // One more may have reached the disk without its confirmation reaching the pipe.
        found = static_cast<int>(events.value().size());
        CHECK(found >= confirmed);
        CHECK(found <= confirmed + 1);
        CHECK(in_order(events.value()));
        REQUIRE_OK(store.value().check());
    }
    return found;
}

}  // namespace hardover_tests
