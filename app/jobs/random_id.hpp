// A name that nobody else gives. Knows nothing of what it names.
#pragma once

#include <string>

namespace hardover {

// 32 hexadecimal digits drawn at random.
std::string random_id();

}  // namespace hardover
