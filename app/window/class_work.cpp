// Long work of the place Class: on the background's thread, with a connection to the records of its own,
// since a Store belongs to one thread.
#include "app/window/class_desk.hpp"

#include <algorithm>
#include <thread>

#include "app/window/study_work.hpp"

namespace hardover::window {

using namespace classroom;

namespace {

constexpr const char* class_work = "class";

}  // namespace

void ClassDesk::work(const WorkAbout& about, Work work) {
    if (page_.working) return;  // one after the other; its buttons are off meanwhile
    page_.working = ClassWork{about.at, about.what, "", 0, view.tab, about.can_stop};
    stop_ = std::make_shared<std::atomic<bool>>(false);
    const auto on_thread = [this, at = about.at, stop = stop_, path = store_.path(),
                            work = std::move(work)](Background::Watch& watch) -> Background::Outcome {
        auto store = Store::open(path);
        if (!store) {
            return [this, at, error = store.error()] {
                page_.working.reset();
                refused(at, error);
            };
        }
        ClassStore classes(store.value());
        const study::Watched watched = [&watch, &stop](std::size_t done, std::size_t of) {
            return watch.go_on(done, of) && !*stop;
        };
        Background::Outcome outcome = work({store.value(), classes, watched, *stop});
        return [this, outcome = std::move(outcome), wrote = store.value().has_written()] {
            page_.working.reset();
            wrote_beside_ = wrote_beside_ || wrote;
            outcome();
        };
    };
    if (background_ != nullptr) {
        background_->start(class_work, on_thread);
        return;
    }
    Background::Watch watch;
    on_thread(watch)();
}

Background::Outcome ClassDesk::refusal(const std::string& at, const Error& error) {
    return [this, at, error] { refused(at, error); };
}

Background::Outcome ClassDesk::stopped(const std::string& at, const std::string& text) {
    return [this, at, text] { page_.told = {at, text, Told::Kind::stopped, "", ""}; };
}

void ClassDesk::drop_work() {
    page_.working.reset();
    if (background_ != nullptr) background_->drop(class_work);
}

void ClassDesk::apply(const StopClassWork&) {
    if (!page_.working || !page_.working->can_stop) return;
    *stop_ = true;
    page_.working->what = "Stopping";
}

void ClassDesk::note_progress() {
    if (!page_.working) return;
    if (!background_->working_on(class_work)) return drop_work();  // another part of the program dropped it
    const Background::Progress progress = background_->progress(class_work);
    if (progress.of == 0) return;
    page_.working->progress = std::to_string(progress.done) + " of " + std::to_string(progress.of);
    page_.working->share =
        std::min(1.0, static_cast<double>(progress.done) / static_cast<double>(progress.of));
}

int ClassDesk::threads_to_spare() {
    return std::max(1, static_cast<int>(std::thread::hardware_concurrency()) - 1);
}

}  // namespace hardover::window
