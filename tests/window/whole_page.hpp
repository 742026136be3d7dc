// Pictures of a long page as a whole, of which 1280 x 800 shows the beginning only.
#pragma once

#include "album.hpp"

namespace hardover_tests {

// A screen 1280 wide and as high as is asked for, in every theme and at twice the text size; light only,
// where no pictures are wanted.
void take_whole(const Album& album, const std::string& name, const Harness::Draw& draw, float height);

}  // namespace hardover_tests
