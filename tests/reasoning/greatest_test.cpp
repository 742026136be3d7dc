// The store that tells the greatest of numbers while they change.
#include "rules/reasoning/greatest.hpp"

#include <algorithm>
#include <catch2/catch.hpp>

#include "chance.hpp"

using namespace hardover;
using namespace hardover_tests;

TEST_CASE("The first of the greatest numbers is told, however they rise and fall") {
    for (unsigned seed = 1; seed <= 200; ++seed) {
        Chance chance(seed);
        const auto count = static_cast<std::size_t>(1 + chance.upto(40));
        Greatest kept(count);
        std::vector<double> plain(count, 0.0);
        CHECK(kept.first() == -1);
        for (int change = 0; change < 100; ++change) {
            const int index = chance.upto(static_cast<int>(count) - 1);
            const double value = chance.upto(5);  // many alike
            kept.set(index, value);
            plain[static_cast<std::size_t>(index)] = value;
            const auto greatest = std::max_element(plain.begin(), plain.end());
            const int expected = *greatest > 0 ? static_cast<int>(greatest - plain.begin()) : -1;
            REQUIRE(kept.first() == expected);
            REQUIRE(kept.at(index) == value);
        }
        std::reverse(plain.begin(), plain.end());
        kept.set_all(count, [&](int index) { return plain[static_cast<std::size_t>(index)]; });
        const auto greatest = std::max_element(plain.begin(), plain.end());
        REQUIRE(kept.first() == (*greatest > 0 ? static_cast<int>(greatest - plain.begin()) : -1));
    }
}
