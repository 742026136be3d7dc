// The steering knowledge as shipped, read once for all tests of a program.
#pragma once

#include <catch2/catch.hpp>
#include <utility>

#include "app/rig/functions.hpp"
#include "rules/reading/reading.hpp"
#include "support.hpp"

namespace hardover_tests {

inline const hardover::Knowledge& shipped() {
    static const hardover::Knowledge knowledge = [] {
        auto read = hardover::read_knowledge_folder(source_path("knowledge"), hardover::rig::rig_functions());
        for (const hardover::Fault& fault : read.faults) {
            if (!fault.warning) UNSCOPED_INFO(fault.text());
        }
        REQUIRE(read.knowledge.has_value());
        return std::move(*read.knowledge);
    }();
    return knowledge;
}

}  // namespace hardover_tests
