// Whether a window can be opened here, and what is said when not. The real window: see real_window_test.
#include "app/window/window.hpp"

#include <catch2/catch.hpp>
#include <cstdlib>

#include "support.hpp"

using namespace hardover;
using namespace hardover_tests;

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
