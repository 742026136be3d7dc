// A shop whose long work is done beside the window; what is asked for can be made to wait until it is let go,
// so that a stop comes before its end, however quick this machine is.
#pragma once

#include <future>

#include "app/window/class_desk.hpp"
#include "app/window/records_desk.hpp"
#include "shop.hpp"

namespace hardover_tests {

struct BusyShop : Shop {
    BusyShop() : Shop(1280, 3000) { use_background(*state, background); }

    void hold() {
        gate = std::promise<void>();
        background.start("held", [waits = gate.get_future().share()](hardover::window::Background::Watch&) {
            waits.wait();
            return hardover::window::Background::Outcome();
        });
    }
    void let_go() { gate.set_value(); }

    // Until all of it is done and its outcome is seen.
    void finish() {
        while (state->records->page.working || state->classes->page().working) {
            background.wait();
            take_in_background(*state);
        }
        harness->frames(6);
    }

    hardover::window::Background background;
    std::promise<void> gate;  // goes first, which lets go
};

}  // namespace hardover_tests
