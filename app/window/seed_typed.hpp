// The number of a practice boat as a person types it, or any.
#pragma once

#include <cstdint>
#include <string>

#include "rules/result/result.hpp"

namespace hardover::window {

// A number that is another one every second, short enough to be read to the next bench.
std::uint64_t seed_of(const std::string& utc);

// The seed typed, or one made from the clock where nothing is. Error bad_input: no whole number.
Result<std::uint64_t> seed_typed(const std::string& typed, const std::string& utc);

}  // namespace hardover::window
