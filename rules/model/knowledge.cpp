#include "rules/model/knowledge.hpp"

namespace hardover {

int find_reading(const Finding& finding, std::string_view id) {
    for (std::size_t i = 0; i < finding.readings.size(); ++i) {
        if (finding.readings[i].id == id) return static_cast<int>(i);
    }
    return -1;
}

}  // namespace hardover
