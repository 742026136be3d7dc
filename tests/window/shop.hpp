// The whole window without a display: the shipped knowledge, records in a folder of their own, and keys.
#pragma once

#include <filesystem>
#include <memory>
#include <string>

#include "app/window/app_frame.hpp"
#include "harness.hpp"
#include "scratch_folder.hpp"
#include "shipped.hpp"

namespace hardover_tests {

struct Shop {
    explicit Shop(float w = 1280, float h = 800);

    // As when the program is closed and started again.
    void start_again();
    void start_job(const std::string& boat, const std::string& words);

    ScratchFolder folder;
    std::unique_ptr<hardover::Store> store;
    std::unique_ptr<hardover::window::AppState> state;
    std::unique_ptr<Harness> harness;
    float w;
    float h;
};

}  // namespace hardover_tests
