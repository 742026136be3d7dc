// The classes of another records file. Inner part of app/records.
#pragma once

#include "app/records/database.hpp"
#include "rules/result/result.hpp"

namespace hardover::records_detail {

struct ArrivedClasses {
    int classes = 0;
    int records = 0;
};

// Copies classes, sets, hand-ins and records that `to` lacks, each known by its own id; a class by its public
// key. A class of the same name with another key comes in as "NAME (2)". The roster comes with a new class
// only: a name that was taken out here must not come back. What belongs to the other computer alone stays
// there: its key, attempts in hand, marks that can be worked out again. Needs an open transaction on `to`.
Result<ArrivedClasses> take_classes(const Database& from, const Database& to);

}  // namespace hardover::records_detail
