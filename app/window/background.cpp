#include "app/window/background.hpp"

#include <utility>

namespace hardover::window {

bool Background::Watch::go_on(std::size_t done, std::size_t of) {
    if (dropped_) return false;
    done_ = done;
    of_ = of;
    if (wake_) wake_();
    return true;
}

Background::Background(std::function<void()> wake) : wake_(std::move(wake)), thread_([this] { run(); }) {}

Background::~Background() {
    {
        const std::lock_guard lock(mutex_);
        ending_ = true;
        for (auto& [name, watch] : wanted_) watch->dropped_ = true;
        waiting_.clear();
    }
    changed_.notify_all();
    thread_.join();
}

void Background::start(const std::string& name, Work work) {
    auto watch = std::make_shared<Watch>();
    watch->wake_ = wake_;
    {
        const std::lock_guard lock(mutex_);
        drop_locked(name);
        wanted_[name] = watch;
        waiting_.push_back({name, std::move(work), {}, std::move(watch)});
    }
    changed_.notify_all();
}

void Background::drop(const std::string& name) {
    const std::lock_guard lock(mutex_);
    drop_locked(name);
}

void Background::drop_all() {
    std::unique_lock lock(mutex_);
    while (!wanted_.empty()) drop_locked(wanted_.begin()->first);
    changed_.wait(lock, [this] { return !busy_; });
}

void Background::drop_locked(const std::string& name) {
    const auto found = wanted_.find(name);
    if (found == wanted_.end()) return;
    const std::shared_ptr<Watch> watch = found->second;
    watch->dropped_ = true;
    std::erase_if(waiting_, [&](const Piece& piece) { return piece.watch == watch; });
    std::erase_if(ready_, [&](const Piece& piece) { return piece.watch == watch; });
    wanted_.erase(found);
}

bool Background::working_on(const std::string& name) const {
    const std::lock_guard lock(mutex_);
    return wanted_.contains(name);
}

Background::Progress Background::progress(const std::string& name) const {
    const std::lock_guard lock(mutex_);
    const auto found = wanted_.find(name);
    if (found == wanted_.end()) return {};
    return {found->second->done_, found->second->of_};
}

bool Background::collect() {
    std::deque<Piece> ready;
    {
        const std::lock_guard lock(mutex_);
        ready.swap(ready_);
        for (const Piece& piece : ready) wanted_.erase(piece.name);
    }
    // Outside the lock: an outcome may start new work.
    for (const Piece& piece : ready) {
        if (piece.outcome) piece.outcome();
    }
    return !ready.empty();
}

void Background::wait() {
    std::unique_lock lock(mutex_);
    changed_.wait(lock, [this] { return !ready_.empty() || (waiting_.empty() && !busy_); });
}

void Background::run() {
    std::unique_lock lock(mutex_);
    while (true) {
        changed_.wait(lock, [this] { return ending_ || !waiting_.empty(); });
        if (ending_) return;
        Piece piece = std::move(waiting_.front());
        waiting_.pop_front();
        busy_ = true;
        lock.unlock();
        piece.outcome = piece.work(*piece.watch);
        piece.work = nullptr;  // what it held is let go before anybody is told that it is done
        lock.lock();
        busy_ = false;
        const bool kept = !ending_ && !piece.watch->dropped_;
        if (kept) ready_.push_back(std::move(piece));
        changed_.notify_all();
        if (!kept || !wake_) continue;
        lock.unlock();
        wake_();
        lock.lock();
    }
}

}  // namespace hardover::window
