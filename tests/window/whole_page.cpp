#include "whole_page.hpp"

#include <catch2/catch.hpp>

namespace hardover_tests {

using namespace hardover::window;

void take_whole(const Album& album, const std::string& name, const Harness::Draw& draw, float height) {
    const bool wanted = pictures_folder() != nullptr;
    for (const LookRow& row : looks()) {
        for (const float scale : {1.0F, 2.0F}) {
            if (!wanted && (row.look != Look::light || scale > 1)) continue;
            Harness harness(1280, scale * height, scale, row.look, draw);
            const std::string path = album.path(name + "-" + std::string(row.id) + (scale > 1 ? "-200" : ""));
            harness.save_picture(path);
            INFO(path);
            CHECK(std::filesystem::file_size(path) > 10000);
        }
    }
}

}  // namespace hardover_tests
