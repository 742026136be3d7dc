// Bodies of a learner's events that hold numbers no event can have: refused in words, found by tests/fuzz.
#include <catch2/catch.hpp>

#include "app/study/learner.hpp"
#include "app/study/practice_event.hpp"

using namespace hardover::study;

namespace {

std::string with(std::string body, const std::string& from, const std::string& to) {
    const std::size_t at = body.find(from);
    REQUIRE(at != std::string::npos);
    return body.replace(at, from.size(), to);
}

}  // namespace

TEST_CASE("A review with a number that does not fit is refused and says which") {
    Review review;
    review.day = 20000;
    review.seed = 7;
    const std::string body = review_body(review);
    REQUIRE(read_review(body).ok());
    const auto refusal = [&](const std::string& from, const std::string& to) {
        const auto read = read_review(with(body, from, to));
        REQUIRE_FALSE(read.ok());
        return read.error().what;
    };
    CHECK(refusal("\"seed\":7", "\"seed\":18446744073709551626") ==
          "this is not a review: it has a 'seed' that is not a whole number from 0");
    CHECK(refusal("\"day\":20000", "\"day\":1e300") ==
          "this is not a review: it has a 'day' that is not a whole number from -1000000000");
    CHECK(read_review(with(body, "\"day\":20000", "\"day\":-1")).ok());  // a clock that has lost its time
    CHECK(refusal("\"grade\":1", "\"grade\":5") ==
          "this is not a review: it has a 'grade' that is not a whole number from 1");
    CHECK(refusal("\"mark\":0.0", "\"mark\":-1e308").find("'mark'") != std::string::npos);
}

TEST_CASE("An event of a practice boat that does not fit is refused and says why") {
    using namespace practice;
    const auto refusal = [](const auto& read) {
        REQUIRE_FALSE(read.ok());
        return read.error().what;
    };
    const std::string start = "this is not an event of a practice boat: it ";
    CHECK(refusal(read_did(R"({"practice":1,"did":"swam"})")) ==
          start + "tells of 'swam', which is not known");
    CHECK(refusal(read_did(R"({"practice":1e300,"did":"gave_up"})")) ==
          start + "has a 'practice' that is not a whole number from 0");
    CHECK(refusal(read_did(R"({"practice":1,"did":"named","cause":"x","sure":2})")) ==
          start + "has a 'sure' that is not a number from 0 to 1");
    Ended ended;
    const std::string body = body_of(3, ended);
    REQUIRE(read_ended(body).ok());
    CHECK(refusal(read_ended(with(body, "[0,0,0]", "[0,0]"))) ==
          start + "has a 'hints' that is not a list of 3 whole numbers from 0");
    CHECK(refusal(read_begun(with(body_of(Begun{}), "unaided", "some"))) ==
          start + "has a 'guidance' that is not worked, half, nudged or unaided");
}
