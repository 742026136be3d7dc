// SQLite's own online copy from one open file to another. Inner part of app/records.
#pragma once

#include "app/records/database.hpp"

namespace hardover::records_detail {

// A whole state of `from`, whatever is written meanwhile, in the place of everything in `to`; all or nothing.
Result<void> copy_all(const Database& from, const Database& to);

}  // namespace hardover::records_detail
