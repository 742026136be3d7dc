// The real window on a display of its own: starts, takes keys, rests, ends; what was typed is in the records.
#include "app/window/window.hpp"

#include <sys/wait.h>

#include <catch2/catch.hpp>
#include <cstdlib>

#include "shop.hpp"
#include "support.hpp"

using namespace hardover;
using namespace hardover_tests;

TEST_CASE("The real window takes a job by keys, rests while nothing happens, and ends with 0") {
    ScratchFolder folder;
    const std::string command = source_path("tests/window/xvfb_smoke") + " " + HARDOVER_PROGRAM + " " +
                                source_path("") + " " + folder.file("") + " >" + folder.file("said") +
                                " 2>&1";
    const int status = std::system(command.c_str());
    INFO(file_text(folder.file("said")) << file_text(folder.file("errors")));
    REQUIRE(WIFEXITED(status));
    if (WEXITSTATUS(status) == 77) {
        WARN("the tools for a display without a screen are missing; this was not tried");
        return;
    }
    REQUIRE(WEXITSTATUS(status) == 0);
    const auto store = Store::open(folder.file("records.db"));
    REQUIRE_OK(store);
    const auto jobs = store.value().jobs();
    REQUIRE_OK(jobs);
    REQUIRE(jobs.value().size() == 1);
    CHECK(jobs.value().front().summary.boat == "Grey Heron");
    CHECK(file_text(folder.file("window.json")).find("dark") != std::string::npos);
}

TEST_CASE("Without a display the refusal names the command that needs none") {
    const char* display = std::getenv("DISPLAY");
    const std::string kept = display == nullptr ? "" : display;
    setenv("DISPLAY", ":9753", 1);
    const auto available = display_available();
    if (kept.empty()) {
        unsetenv("DISPLAY");
    } else {
        setenv("DISPLAY", kept.c_str(), 1);
    }
    REQUIRE_FALSE(available.ok());
    CHECK(available.error().text().find("hardover interview") != std::string::npos);
}
