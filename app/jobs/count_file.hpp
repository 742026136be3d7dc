// Counts of closed jobs as a file that shops hand to each other, and several such files put together.
// Knows no records and no disk: text in, text out.
#pragma once

#include <cstdint>
#include <map>
#include <string>

#include "rules/reasoning/learning.hpp"
#include "rules/result/result.hpp"

namespace hardover {

// One shop's export. `number` grows with every export that differs from the one before.
struct ShopCounts {
    std::int64_t number = 1;
    ClosedJobs jobs;
    friend bool operator==(const ShopCounts&, const ShopCounts&) = default;
};

// By shop id: letters a to f and digits.
using Shops = std::map<std::string, ShopCounts>;

// The newest export of every shop. Grouping, order and repetition of such steps make no difference. Error:
// the same number of the same shop with other counts, which nobody can put in order.
Result<Shops> merged(const Shops& a, const Shops& b);

ClosedJobs sum_of(const Shops& shops);

// {"hardover_counts": 1, "shops": [{"shop", "number", "jobs": {history: {cause: jobs}},
//  "readings": {cause: {finding: {reading: jobs}}}}]}, in one form: equal counts give equal bytes.
std::string count_file_text(const Shops& shops);

// Errors name the file, the line and column, and the field where there is one: not JSON, not such a file, a
// newer form, a field twice, missing or unknown, something that is no count or no id, a shop twice.
Result<Shops> read_count_file(const std::string& text, const std::string& file);

// {"jobs", "readings"} as in the file: what the records keep of one shop.
std::string counts_text(const ClosedJobs& jobs);
Result<ClosedJobs> read_counts(const std::string& text, const std::string& where);

}  // namespace hardover
