// "Did you mean": which spelling is near, and when nothing is.
#include "rules/result/nearest.hpp"

#include "support.hpp"

using namespace hardover;

TEST_CASE("The spelling distance counts letters put in, left out, changed and swapped") {
    // From memory: the pair that tells optimal string alignment (3) from unrestricted swaps (2).
    CHECK(spelling_distance("ca", "abc") == 3);
    CHECK(spelling_distance("kitten", "sitting") == 3);  // Levenshtein's textbook pair
    CHECK(spelling_distance("oil", "oli") == 1);
    CHECK(spelling_distance("", "ram") == 3);
    CHECK(spelling_distance("ram", "ram") == 0);
}

TEST_CASE("The distance is the same both ways") {
    CHECK(spelling_distance("air_in_oil", "air_oil") == spelling_distance("air_oil", "air_in_oil"));
    CHECK(spelling_distance("ca", "abc") == spelling_distance("abc", "ca"));
}

TEST_CASE("Two swapped letters find the right word") {
    CHECK(nearest_spelling("air_in_oli", {"oil_low", "air_in_oil", "air_in_hose"}) == "air_in_oil");
    CHECK(did_you_mean("air_in_oli", {"oil_low", "air_in_oil"}) == "did you mean 'air_in_oil'?");
}

TEST_CASE("A word that resembles nothing gets no advice") {
    CHECK(nearest_spelling("bracket", {"oil_low", "air_in_oil"}).empty());
    CHECK(did_you_mean("bracket", {"oil_low", "air_in_oil"}).empty());
    CHECK(did_you_mean("bracket", {}).empty());
}

TEST_CASE("Of two words equally near the first is taken") {
    CHECK(nearest_spelling("ran", {"ram", "rat"}) == "ram");
    CHECK(nearest_spelling("ran", {"rat", "ram"}) == "rat");
}

TEST_CASE("Longer words may hold more slips, up to a third of their letters") {
    CHECK(nearest_spelling("resrvoir_oyl", {"reservoir_oil"}) == "reservoir_oil");
    CHECK(nearest_spelling("abcxyzghi", {"abcdefghi"}) == "abcdefghi");  // 3 of 9
    CHECK(nearest_spelling("abwxyzghi", {"abcdefghi"}).empty());         // 4 of 9
}

TEST_CASE("A word far longer than any candidate is passed over at once") {
    const std::vector<std::string> candidates(1000, "reservoir_oil");
    CHECK(nearest_spelling(std::string(10'000'000, 'x'), candidates).empty());
}
