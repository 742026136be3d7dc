// Where a value of a JSON text stands, so that a refusal can name its line and column.
#include <catch2/catch.hpp>

#include "app/jobs/json_place.hpp"

using namespace hardover;

TEST_CASE("The place of a JSON value is the line and column of its first letter") {
    const std::string text =
        "{\"ä\": \"}\\\"\",\n \"shops\": [1, {\"jobs\": {\"in_use\": -2}}],\n \"n\": [[], 3] }";
    CHECK(json_place(text, "") == "1:1");
    CHECK(json_place(text, "ä") == "1:7");
    CHECK(json_place(text, "shops") == "2:11");
    CHECK(json_place(text, "shops[1]") == "2:15");
    CHECK(json_place(text, "shops[1].jobs.in_use") == "2:35");
    CHECK(json_place(text, "n[1]") == "3:12");
}

TEST_CASE("A way that does not go on gives the place it ends at") {
    const std::string text = "{\"shops\": [{\"jobs\": 3}]}";
    CHECK(json_place(text, "shops[0].readings") == "1:12");
    CHECK(json_place(text, "shops[4]") == "1:11");
    CHECK(json_place(text, "shops[0].jobs.in_use") == "1:21");
    CHECK(json_place(" 3", "shops") == "1:2");
}

TEST_CASE("A key given twice is found by what it says, whatever way it is written") {
    CHECK_FALSE(repeated_key("{\"a\": {\"b\": 1}, \"b\": [\"a\", \"a\"]}"));
    const auto plain = repeated_key("{\"a\": 1,\n\"b\": {\"c\": 1, \"c\": 2}}");
    REQUIRE(plain);
    CHECK(plain->key == "c");
    CHECK(plain->byte == 23);
    const auto escaped = repeated_key("{\"a\": 1, \"\\u0061\": 2}");
    REQUIRE(escaped);
    CHECK(escaped->key == "a");
}

TEST_CASE("Where a text stops being JSON is told, also when a number is too great to be kept") {
    CHECK(json_break("{\"a\": [1, 2]}").empty());
    CHECK(json_break("{\n \"a\": tru}") == "2:10");
    CHECK(json_break("{\"a\":\n 1e999}").substr(0, 2) == "2:");
    CHECK(json_break("") == "1:1");
}
