// What a shop has settled for all its jobs, kept in the records beside them. Both front ends read it here.
// Knows no screen.
#pragma once

#include <string>

#include "app/records/store.hpp"
#include "rules/quantity/quantity.hpp"
#include "rules/result/result.hpp"

namespace hardover {

// What the reasoning and the pages of a job take from it.
struct ShopWays {
    UnitSystem units = UnitSystem::us;  // in which figures are shown; any unit may be typed
    double rate = 0;                    // price of an hour; 0: as in the knowledge
    friend bool operator==(const ShopWays&, const ShopWays&) = default;
};

struct ShopSettings {
    std::string name;  // on the job sheet; "" leaves a line to write it on
    ShopWays ways;
    bool a4 = false;         // paper of the job sheet; else Letter
    std::string waters;      // rig field `waters` of a new job; "" leaves it open
    std::string vessel_use;  // rig field `vessel_use` of a new job; "" leaves it open
    friend bool operator==(const ShopSettings&, const ShopSettings&) = default;
};

// A value that cannot be read counts as not settled.
Result<ShopSettings> read_shop(const Store& store);

// All of it, or nothing.
Result<void> keep_shop(Store& store, const ShopSettings& shop);

// "95" or "95.50" as a price of an hour; "" is 0. Error bad_input says what would be right.
Result<double> read_rate(const std::string& text);
std::string rate_text(double rate);  // "" for 0

}  // namespace hardover
