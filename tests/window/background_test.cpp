// Work beside the window: one piece at a time, told to stop when it is not wanted, handed over when asked
// for.
#include "app/window/background.hpp"

#include <catch2/catch.hpp>

#include <future>
#include <vector>

using namespace hardover::window;

namespace {

// Work that says when it has begun and goes on until it is let go or told to stop.
struct Held {
    std::promise<void> begun;
    std::promise<void> let_go;
    std::atomic<bool> stopped{false};

    Background::Work work(Background::Outcome outcome) {
        return [this, outcome = std::move(outcome)](Background::Watch& watch) -> Background::Outcome {
            begun.set_value();
            std::future<void> free = let_go.get_future();
            while (free.wait_for(std::chrono::milliseconds(1)) != std::future_status::ready) {
                if (watch.go_on(1, 4)) continue;
                stopped = true;
                return {};
            }
            return outcome;
        };
    }
};

}  // namespace

TEST_CASE("What work comes to is carried out on the thread that collects it, and only then") {
    Background background;
    std::thread::id worked, carried_out;
    background.start("sum", [&](Background::Watch&) -> Background::Outcome {
        worked = std::this_thread::get_id();
        return [&] { carried_out = std::this_thread::get_id(); };
    });
    background.wait();
    CHECK(background.working_on("sum"));
    CHECK(carried_out == std::thread::id());
    CHECK(background.collect());
    CHECK(carried_out == std::this_thread::get_id());
    CHECK(worked != std::this_thread::get_id());
    CHECK_FALSE(background.working_on("sum"));
    CHECK_FALSE(background.collect());
}

TEST_CASE("Work tells how far it has come, and dropped work stops and comes to nothing") {
    Held held;
    bool carried_out = false;
    Background background;
    background.start("marks", held.work([&] { carried_out = true; }));
    held.begun.get_future().wait();
    while (background.progress("marks").of == 0) std::this_thread::yield();
    CHECK(background.progress("marks").done == 1);
    CHECK(background.progress("marks").of == 4);
    background.drop("marks");
    CHECK_FALSE(background.working_on("marks"));
    background.wait();
    CHECK(held.stopped);
    CHECK_FALSE(background.collect());
    CHECK_FALSE(carried_out);
}

TEST_CASE("Newer work of the same name takes the place of the older, whether that is done or not") {
    std::vector<int> came;
    Background background;
    background.start("turn",
                     [&](Background::Watch&) -> Background::Outcome { return [&] { came.push_back(1); }; });
    background.wait();
    Held held;
    background.start("turn", held.work([&] { came.push_back(2); }));
    held.begun.get_future().wait();
    background.start("turn",
                     [&](Background::Watch&) -> Background::Outcome { return [&] { came.push_back(3); }; });
    background.wait();
    CHECK(background.collect());
    CHECK(held.stopped);
    CHECK(came == std::vector<int>{3});
}

TEST_CASE("An outcome may start the next piece of work") {
    std::vector<int> came;
    Background background;
    background.start("first", [&](Background::Watch&) -> Background::Outcome {
        return [&] {
            came.push_back(1);
            background.start("first", [&](Background::Watch&) -> Background::Outcome {
                return [&] { came.push_back(2); };
            });
        };
    });
    background.wait();
    CHECK(background.collect());
    CHECK(background.working_on("first"));
    background.wait();
    CHECK(background.collect());
    CHECK(came == std::vector<int>{1, 2});
}

TEST_CASE("Everything dropped means that nothing is being worked on any more") {
    Held held;
    Background background;
    background.start("long", held.work([] {}));
    background.start("next", [](Background::Watch&) -> Background::Outcome { return [] {}; });
    held.begun.get_future().wait();
    background.drop_all();
    CHECK(held.stopped);
    CHECK_FALSE(background.working_on("long"));
    CHECK_FALSE(background.working_on("next"));
    CHECK_FALSE(background.collect());
}

TEST_CASE("Whoever sleeps is woken by progress and by the end of the work, and not after it") {
    std::atomic<int> woken{0};
    Background background([&] { ++woken; });
    background.start("steps", [](Background::Watch& watch) -> Background::Outcome {
        for (std::size_t step = 1; step <= 3; ++step) watch.go_on(step, 3);
        return [] {};
    });
    while (woken < 4) std::this_thread::yield();
    CHECK(background.collect());
    std::this_thread::sleep_for(std::chrono::milliseconds(20));
    CHECK(woken == 4);
}

TEST_CASE("Leaving while work goes on tells it to stop and waits for no more than that") {
    Held held;
    {
        Background background;
        background.start("long", held.work([] {}));
        held.begun.get_future().wait();
    }
    CHECK(held.stopped);
}
