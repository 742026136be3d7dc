#include "rules/model/knowledge.hpp"

#include <algorithm>

namespace hardover {

bool puts_right(const Knowledge& knowledge, Index remedy, Index cause) {
    if (remedy < 0 || static_cast<std::size_t>(remedy) >= knowledge.remedies.size()) return false;
    if (knowledge.causes[static_cast<std::size_t>(cause)].remedy == remedy) return true;
    const std::vector<Index>& also = knowledge.remedies[static_cast<std::size_t>(remedy)].also_cures;
    return std::find(also.begin(), also.end(), cause) != also.end();
}

std::vector<Index> sources_of_origin(const Cause& cause, Index origin) {
    for (const OriginSource& own : cause.origin_sources) {
        if (own.cause == origin) return own.sources;
    }
    return {};
}

int find_reading(const Finding& finding, std::string_view id) {
    for (std::size_t i = 0; i < finding.readings.size(); ++i) {
        if (finding.readings[i].id == id) return static_cast<int>(i);
    }
    return -1;
}

}  // namespace hardover
