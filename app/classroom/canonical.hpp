// JSON in one form only, so that equal values have equal bytes: keys sorted, no spaces, numbers as short as
// they can be told (RFC 8785; whole numbers beyond 2^53 are kept whole). Knows no record.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>

namespace hardover::classroom {

// What is not UTF-8 in a text is replaced; infinity and not-a-number become null.
std::string canonical(const nlohmann::json& value);

}  // namespace hardover::classroom
