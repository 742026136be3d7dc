// What a class did, counted.
#include <catch2/catch.hpp>

#include "app/classroom/results.hpp"

using namespace hardover::classroom;

TEST_CASE("a learner who only worked on a practice boat counts, and nobody counts twice") {
    ClassResults results;
    results.seats = {{"A01", "", ""}, {"A02", "", ""}, {"A03", "", ""}};
    ItemResult item;
    item.origin.seat = "A01";
    results.items = {item, item};
    BoatResult boat;
    boat.origin.seat = "A01";
    results.boats = {boat};
    boat.origin.seat = "A03";
    results.boats.push_back(boat);
    CHECK(learners_with_results(results) == 2);
}
