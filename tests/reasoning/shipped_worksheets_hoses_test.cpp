// Worksheets that judge the plumbing: which hose goes where, and whether steering lock to lock can bleed it.
#include "shipped_worksheets.hpp"

using namespace hardover_tests;

TEST_CASE("Any way of connecting two rams is told by what each ram does when the wheel goes to port") {
    const std::vector<std::string> lines = {"port_line", "starboard_line", "plugged"};
    // Pressed on its cap end and free on its rod end a ram goes out, the other way round it goes in.
    const auto goes = [](const std::string& cap, const std::string& rod) {
        if (cap == "port_line" && rod == "starboard_line") return 1;
        if (cap == "starboard_line" && rod == "port_line") return -1;
        return 0;
    };
    for (const std::string& a : lines) {
        for (const std::string& b : lines) {
            for (const std::string& c : lines) {
                for (const std::string& d : lines) {
                    const WorkedSheet worked =
                        work("hoses_two_rams",
                             {{"port_cap", a}, {"port_rod", b}, {"starboard_cap", c}, {"starboard_rod", d}});
                    INFO(a << " " << b << " " << c << " " << d);
                    REQUIRE(worked.complete());
                    const auto number = [&](std::size_t r) {
                        return std::get<Quantity>(worked.results[r]).value;
                    };
                    const int wrong = (a != "starboard_line") + (b != "port_line") + (c != "port_line") +
                                      (d != "starboard_line");
                    CHECK(number(0) == wrong);
                    CHECK(number(1) == goes(a, b));
                    CHECK(number(2) == goes(c, d));
                    // Whatever is wrong there is a fix, and only what is right is called right.
                    CHECK(worked.advice.size() >= (wrong == 0 ? 1u : 2u));
                    CHECK((worked.advice.front().find("All four hose ends") == 0) == (wrong == 0));
                }
            }
        }
    }
}

TEST_CASE("Steering lock to lock bleeds only a hose that holds less than a stroke moves") {
    // BLD-005 and BLD-006, computed: 188.5 mL a stroke against 294.1 mL and 150 mL of hose.
    const auto advice = [](const std::string& length) {
        return work("bleeding_cycles", {{"hose_bore", "7.9 mm"},
                                        {"hose_length", length},
                                        {"bore", "40 mm"},
                                        {"rod", "20 mm"},
                                        {"stroke", "200 mm"}})
            .advice;
    };
    REQUIRE_FALSE(advice("6 m").empty());
    CHECK(advice("6 m").front().find("never brings this hose's air home") != std::string::npos);
    CHECK(advice("3 m").front().find("One full stroke carries the air home") != std::string::npos);
}
