// Takes away the triggers that refuse a change, for as long as a transaction. Knows no table.
#pragma once

#include <string>
#include <vector>

#include "app/records/database.hpp"

namespace hardover::records_detail {

// begin() and end() both within one open transaction; rolled back, it leaves the triggers as they were.
class WithoutTriggers {
  public:
    Result<void> begin(const Database& database);
    Result<void> end(const Database& database) const;

  private:
    std::vector<std::string> again_;
};

}  // namespace hardover::records_detail
