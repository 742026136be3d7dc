// Work that would hold up a frame: done one piece after another on a thread of its own, with its progress,
// and handed over where the window asks for it. Knows neither what the work is nor any screen.
#pragma once

#include <atomic>
#include <condition_variable>
#include <cstddef>
#include <deque>
#include <functional>
#include <map>
#include <memory>
#include <mutex>
#include <string>
#include <thread>

namespace hardover::window {

class Background {
  public:
    struct Progress {
        std::size_t done = 0;
        std::size_t of = 0;  // 0: not told yet
    };

    // For the work, on its own thread.
    class Watch {
      public:
        // Tells how far it has come. False: it is no longer wanted and had better stop.
        bool go_on(std::size_t done, std::size_t of);

      private:
        friend class Background;
        std::atomic<bool> dropped_{false};
        std::atomic<std::size_t> done_{0};
        std::atomic<std::size_t> of_{0};
        std::function<void()> wake_;
    };

    // What the work came to: carried out by collect(), so it may change what only the window's thread may.
    using Outcome = std::function<void()>;
    using Work = std::function<Outcome(Watch&)>;

    // `wake` is called from the other thread when there is something to show or to collect.
    explicit Background(std::function<void()> wake = {});
    ~Background();  // drops everything; waits only for the step that is being worked on
    Background(const Background&) = delete;
    Background& operator=(const Background&) = delete;

    // Under a name there is one piece of work at a time: an older one is dropped.
    void start(const std::string& name, Work work);
    // Its outcome will never be carried out.
    void drop(const std::string& name);
    // The same of everything, and waits until nothing is being worked on.
    void drop_all();

    // Started and not yet collected.
    bool working_on(const std::string& name) const;
    Progress progress(const std::string& name) const;

    // Carries out what is ready, on the calling thread. True: something was.
    bool collect();
    // Waits until something is ready or nothing is left to do. For tests.
    void wait();

  private:
    struct Piece {
        std::string name;
        Work work;
        Outcome outcome;
        std::shared_ptr<Watch> watch;
    };

    void run();
    void drop_locked(const std::string& name);

    std::function<void()> wake_;
    mutable std::mutex mutex_;
    std::condition_variable changed_;
    std::map<std::string, std::shared_ptr<Watch>> wanted_;  // by name
    std::deque<Piece> waiting_;
    std::deque<Piece> ready_;
    bool busy_ = false;
    bool ending_ = false;
    std::thread thread_;  // last: it uses all of the above
};

}  // namespace hardover::window
