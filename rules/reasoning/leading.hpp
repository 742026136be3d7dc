// Which cause comes first, without the work of a whole assessment: for looking at many "what if"s.
#pragma once

#include <vector>

#include "rules/model/facts.hpp"
#include "rules/model/knowledge.hpp"
#include "rules/reasoning/diagnosis_case.hpp"
#include "rules/reasoning/prepared_knowledge.hpp"

namespace hardover {

// The most probable listed cause that is not put right; none when the facts leave nothing possible.
struct Leading {
    Index first = none;
    double probability = 0;
    std::vector<double> all;  // by cause; 0 for those put right
    double log_evidence = 0;
};

Leading leading(const DiagnosisCase& diagnosis, const FaultCase& given);

// From facts, with the rules that fire on them.
Leading leading(const PreparedKnowledge& prepared, const Facts& facts);

}  // namespace hardover
