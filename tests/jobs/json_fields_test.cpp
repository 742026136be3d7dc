// Fields of JSON objects: what fits is given, what does not is refused by its name.
#include <catch2/catch.hpp>
#include <limits>
#include <nlohmann/json.hpp>

#include "app/jobs/json_fields.hpp"

using namespace hardover;

TEST_CASE("Fields give what fits their type and range") {
    JsonFields fields(
        R"({"t": "a", "n": 3, "x": -2.5, "s": 18446744073709551615, "l": ["b"], "c": [1, 0], "f": true})");
    CHECK(fields.text("t") == "a");
    CHECK(fields.count("n") == 3);
    CHECK(fields.number("x") == -2.5);
    CHECK(fields.number("n") == 3);
    CHECK(fields.seed("s") == std::numeric_limits<std::uint64_t>::max());
    CHECK(fields.texts("l") == std::vector<std::string>{"b"});
    CHECK(fields.counts("c", 2) == std::vector<int>{1, 0});
    CHECK(fields.flag("f"));
    CHECK(fields.fault().empty());
    CHECK_FALSE(fields.has("g"));
}

TEST_CASE("A number that does not fit is refused, never turned into another") {
    const auto fault = [](const std::string& number, auto ask) {
        JsonFields fields("{\"n\": " + number + "}");
        ask(fields);
        return fields.fault();
    };
    const auto count = [](JsonFields& fields) { (void)fields.count("n"); };
    const auto seed = [](JsonFields& fields) { (void)fields.seed("n"); };
    const auto chance = [](JsonFields& fields) { (void)fields.chance("n"); };
    for (const char* number : {"1e300", "2.7", "-1", "4294967297", "18446744073709551615", "true", "null"}) {
        INFO(number);
        CHECK(fault(number, count) == "has a 'n' that is not a whole number from 0");
    }
    for (const char* number : {"18446744073709551616", "-1", "3.0", "\"3\""}) {
        INFO(number);
        CHECK(fault(number, seed) == "has a 'n' that is not a whole number from 0");
    }
    for (const char* number : {"-0.1", "1.1", "1e400", "[]"}) {
        INFO(number);
        CHECK(!fault(number, chance).empty());
    }
}

TEST_CASE("The first fault of several is told") {
    JsonFields fields("{\"a\": 1}");
    (void)fields.text("a");
    (void)fields.text("b");
    CHECK(fields.fault() == "has a 'a' that is not a text");
}

TEST_CASE("JSON nested without end is no JSON to us, since a walk over it would run out of stack") {
    const auto nested = [](int depth) {
        return std::string(static_cast<std::size_t>(depth), '[') +
               std::string(static_cast<std::size_t>(depth), ']');
    };
    CHECK(shallow_json(nested(64)).is_array());
    CHECK(shallow_json(nested(65)).is_discarded());
    CHECK(shallow_json(nested(1'000'000)).is_discarded());
    CHECK(shallow_json("[\"" + nested(500) + "\", \"\\\"[\"]").is_array());  // brackets in texts do not count
    JsonFields fields("{\"a\": " + nested(1'000'000) + "}");
    CHECK(fields.fault() == "has a body that cannot be read");
}

TEST_CASE("A whole number asked for by a reader that lets the library throw is looked at too") {
    const auto object =
        nlohmann::json::parse(R"({"good": 7, "float": 1e300, "great": 4294967297, "below": -1})");
    CHECK(whole_at(object, "good") == 7);
    CHECK(seed_at(object, "great") == 4294967297);
    for (const char* field : {"float", "great", "below"}) {
        CHECK_THROWS_AS(whole_at(object, field), nlohmann::json::exception);
    }
    CHECK_THROWS_AS(seed_at(object, "float"), nlohmann::json::exception);
    CHECK_THROWS_AS(whole_at(object, "missing"), nlohmann::json::exception);
}
