// Errors as one line, and what a Result holds.
#include "rules/result/result.hpp"

#include "support.hpp"

using namespace hardover;

TEST_CASE("An error is one line: where, what, and the cure in brackets") {
    const Error whole{Error::Kind::bad_knowledge, "unknown cause 'air_in_oli'", "causes.yaml:14:12",
                      "did you mean 'air_in_oil'?"};
    CHECK(whole.text() == "causes.yaml:14:12: unknown cause 'air_in_oli' (did you mean 'air_in_oil'?)");
    CHECK(Error{Error::Kind::storage, "the disk is full", "", ""}.text() == "the disk is full");
    CHECK(Error{Error::Kind::storage, "the disk is full", "jobs.db", ""}.text() ==
          "jobs.db: the disk is full");
}

TEST_CASE("A result is a value or an error, never both") {
    const Result<int> value = 3;
    REQUIRE(value.ok());
    CHECK(value.value() == 3);
    const Result<int> refused = Error{Error::Kind::not_found, "no such job", "", ""};
    REQUIRE_FALSE(refused.ok());
    CHECK(refused.error().kind == Error::Kind::not_found);
    CHECK(Result<void>().ok());
    CHECK_FALSE(Result<void>(Error{}).ok());
}
