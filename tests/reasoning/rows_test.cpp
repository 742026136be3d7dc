// The store of lists in one piece of memory.
#include "rules/reasoning/rows.hpp"

#include <catch2/catch.hpp>

#include "chance.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

template <typename Number>
std::vector<Number> row(const Rows<Number>& rows, std::size_t at) {
    return {rows[at].begin(), rows[at].end()};
}

}  // namespace

TEST_CASE("A row can be given whole, filled piece by piece, or be as an earlier one") {
    Rows<double> rows;
    CHECK(rows.empty());
    rows.push_back({1, 2, 3});
    rows.add();
    rows.append(2, 5);
    rows.append(1, 7)[0] = 6;
    rows.add_same_as(0);
    rows.add();
    CHECK(rows.size() == 4);
    CHECK(row(rows, 0) == std::vector<double>{1, 2, 3});
    CHECK(row(rows, 1) == std::vector<double>{6, 5, 7});
    CHECK(row(rows, 2) == row(rows, 0));
    CHECK(rows[3].empty());
}

TEST_CASE("Pairs sorted into rows keep their order within a row") {
    for (unsigned seed = 1; seed <= 200; ++seed) {
        Chance chance(seed);
        const auto count = static_cast<std::size_t>(1 + chance.upto(9));
        std::vector<std::vector<int>> plain(count);
        std::vector<std::pair<int, int>> pairs;
        for (int n = chance.upto(40); n > 0; --n) {
            pairs.push_back({chance.upto(static_cast<int>(count) - 1), chance.upto(5)});
            plain[static_cast<std::size_t>(pairs.back().first)].push_back(pairs.back().second);
        }
        const Rows<int> rows = Rows<int>::of_pairs(count, pairs);
        REQUIRE(rows.size() == count);
        for (std::size_t at = 0; at < count; ++at) REQUIRE(row(rows, at) == plain[at]);
    }
}
