#include "app/jobs/random_id.hpp"

#include <random>

namespace hardover {

std::string random_id() {
    std::random_device random;
    std::string id;
    for (int i = 0; i < 32; ++i) id += "0123456789abcdef"[random() % 16];
    return id;
}

}  // namespace hardover
