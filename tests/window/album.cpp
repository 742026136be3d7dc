#include "album.hpp"

#include <catch2/catch.hpp>

namespace hardover_tests {

using hardover::window::Look;

void Album::take(const std::string& name, const Harness::Draw& draw) const {
    const auto one = [&](const std::string& suffix, Look look, float scale) {
        const std::string to = path(name + suffix);
        Harness harness(1280, 800, scale, look, draw);
        harness.save_picture(to);
        INFO(to);
        CHECK(std::filesystem::file_size(to) > 10000);  // a picture of one colour packs into almost nothing
    };
    one("-light", Look::light, 1);
    one("-dark", Look::dark, 1);
    one("-200", Look::light, 2);
    if (pictures_folder() == nullptr) return;
    one("-dark-200", Look::dark, 2);
    one("-high_contrast", Look::high_contrast, 1);
    one("-high_contrast-200", Look::high_contrast, 2);
}

}  // namespace hardover_tests
