// Where a picture goes: the folder that HARDOVER_PICTURES names, or one that is removed again.
#pragma once

#include <cstdlib>
#include <string>

#include "shop.hpp"

namespace hardover_tests {

// The folder wanted for pictures; nothing where none is named.
inline const char* pictures_folder() {
    const char* wanted = std::getenv("HARDOVER_PICTURES");
    return wanted != nullptr && *wanted != '\0' ? wanted : nullptr;
}

class Album {
  public:
    std::string path(const std::string& name) const {
        const char* wanted = pictures_folder();
        return wanted == nullptr ? scratch_.file(name + ".png") : std::string(wanted) + "/" + name + ".png";
    }
    // A screen at 1280 x 800 in the light and the dark theme, and at twice the text size.
    void take(const std::string& name, const Harness::Draw& draw) const;
    std::string file(const std::string& name) const { return scratch_.file(name); }

  private:
    ScratchFolder scratch_;
};

}  // namespace hardover_tests
