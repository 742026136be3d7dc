#include "app/window/beside_records.hpp"

#include <algorithm>

namespace hardover::window {

void BesideRecords::start(const std::string& path, const About& about, Work work) {
    start_unopened(about,
                   [this, path, at = about.at, damaged_rows = about.damaged_rows, work = std::move(work)](
                       const Watched& watched, const std::atomic<bool>& stop) -> Background::Outcome {
                       auto store = damaged_rows ? Store::open_to_mend(path) : Store::open(path);
                       if (!store) return [this, at, error = store.error()] { refused_(at, error); };
                       Background::Outcome outcome = work({store.value(), watched, stop});
                       return [this, outcome = std::move(outcome), wrote = store.value().has_written()] {
                           wrote_ = wrote_ || wrote;
                           outcome();
                       };
                   });
}

void BesideRecords::start_unopened(const About& about, Unopened work) {
    if (shown_) return;  // one after the other; its buttons are off meanwhile
    shown_ = WorkShown{about.at, about.what, "", 0, about.can_stop, about.in_percent, about.holds};
    stop_ = std::make_shared<std::atomic<bool>>(false);
    const auto on_thread = [this, stop = stop_,
                            work = std::move(work)](Background::Watch& watch) -> Background::Outcome {
        const Watched watched = [&watch, &stop](std::size_t done, std::size_t of) {
            return watch.go_on(done, of) && !*stop;
        };
        return [this, outcome = work(watched, *stop)] {
            shown_.reset();
            outcome();
        };
    };
    if (background_ != nullptr) {
        background_->start(name_, on_thread);
        return;
    }
    Background::Watch watch;
    on_thread(watch)();
}

void BesideRecords::stop() {
    if (!shown_ || !shown_->can_stop) return;
    *stop_ = true;
    shown_->what = "Stopping";
}

void BesideRecords::drop() {
    shown_.reset();
    if (background_ != nullptr) background_->drop(name_);
}

void BesideRecords::note_progress() {
    if (!shown_ || background_ == nullptr) return;
    if (!background_->working_on(name_)) return drop();  // another part of the program dropped it
    const Background::Progress progress = background_->progress(name_);
    if (progress.of == 0) return;
    shown_->share = std::min(1.0, static_cast<double>(progress.done) / static_cast<double>(progress.of));
    shown_->progress = shown_->in_percent
                           ? std::to_string(static_cast<int>(100 * shown_->share)) + " %"
                           : std::to_string(progress.done) + " of " + std::to_string(progress.of);
}

}  // namespace hardover::window
