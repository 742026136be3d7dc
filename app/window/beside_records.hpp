// Long work on the records beside the window: on the background's thread, with a connection to the records of
// its own, since a Store belongs to one thread. One piece at a time. Knows neither what the work is nor any
// screen.
#pragma once

#include <atomic>
#include <functional>
#include <memory>
#include <optional>
#include <string>

#include "app/jobs/watched.hpp"
#include "app/records/store.hpp"
#include "app/window/background.hpp"

namespace hardover::window {

// What is being done, for a page: shown where it was asked for.
struct WorkShown {
    std::string at;
    std::string what;      // "Marking what was handed in"
    std::string progress;  // "3 of 12"; "" until it is known
    double share = 0;      // that is done
    bool can_stop = true;
    bool in_percent = false;
    bool holds = false;  // nothing else can be written to the records meanwhile
};

class BesideRecords {
  public:
    // What the work has on its thread: it may use nothing else that the window's thread may change.
    struct Beside {
        Store& store;
        Watched watched;
        const std::atomic<bool>& stop;  // it was stopped: what it came to is nothing to be shown
    };
    using Work = std::function<Background::Outcome(const Beside&)>;
    // The same without a connection: it opens what it needs itself.
    using Unopened =
        std::function<Background::Outcome(const Watched& watched, const std::atomic<bool>& stop)>;
    struct About {
        std::string at;
        std::string what;
        bool can_stop = true;
        bool in_percent = false;    // its steps are nothing a person could count
        bool damaged_rows = false;  // the work can do with rows that are not as they were written
        bool holds = false;         // nothing else may be written to the records meanwhile
    };
    // Carried out on the window's thread when the records cannot be opened for the work.
    using Refused = std::function<void(const std::string& at, const Error& error)>;

    // `name`: under which the background does it; `shown`: the page's, which must live as long as this.
    BesideRecords(std::string name, std::optional<WorkShown>& shown, Refused refused)
        : name_(std::move(name)), shown_(shown), refused_(std::move(refused)) {}

    // Without a background the work is done at once.
    void work_in(Background& background) { background_ = &background; }
    // Does nothing while other work of this place is being done.
    void start(const std::string& path, const About& about, Work work);
    void start_unopened(const About& about, Unopened work);
    // Lets the step in hand end; what was not done yet stays undone.
    void stop();
    // Its outcome will never be carried out.
    void drop();
    // How far it has come, for the page.
    void note_progress();
    // It has written to the records.
    bool wrote() const { return wrote_; }

  private:
    std::string name_;
    std::optional<WorkShown>& shown_;
    Refused refused_;
    Background* background_ = nullptr;
    std::shared_ptr<std::atomic<bool>> stop_;
    bool wrote_ = false;
};

}  // namespace hardover::window
