// A larger base of knowledge made from a smaller one, for measuring how the time grows. Made up: says nothing
// about any boat.
#pragma once

#include "rules/model/knowledge.hpp"

namespace hardover_bench {

// `copies` of every cause, its remedy, its checks and its findings under names of their own, with the odds
// shared out. What complaints tell is shared by all copies, so that each of them comes into question. Copies
// beyond the first are proved by no condition and worked out by no worksheet, and no rule speaks of them.
hardover::Knowledge enlarged(const hardover::Knowledge& knowledge, int copies);

}  // namespace hardover_bench
