#include "rules/result/result.hpp"

namespace hardover {

std::string Error::text() const {
    std::string line;
    if (!where.empty()) line += where + ": ";
    line += what;
    if (!cure.empty()) line += " (" + cure + ")";
    return line;
}

}  // namespace hardover
