// Long work of the place Class, beside the window.
#include <algorithm>
#include <thread>

#include "app/window/class_desk.hpp"

namespace hardover::window {

void ClassDesk::work(const BesideRecords::About& about, Work work) {
    if (page_.working) return;
    page_.working_tab = view.tab;
    beside_.start(store_.path(), about, [work = std::move(work)](const BesideRecords::Beside& beside) {
        ClassStore classes(beside.store);
        return work({beside, classes});
    });
}

Background::Outcome ClassDesk::refusal(const std::string& at, const Error& error) {
    return [this, at, error] { refused(at, error); };
}

Background::Outcome ClassDesk::stopped(const std::string& at, const std::string& text) {
    return [this, at, text] { page_.told = {at, text, Told::Kind::stopped, "", ""}; };
}

void ClassDesk::apply(const StopClassWork&) {
    beside_.stop();
}

int ClassDesk::threads_to_spare() {
    return std::max(1, static_cast<int>(std::thread::hardware_concurrency()) - 1);
}

}  // namespace hardover::window
