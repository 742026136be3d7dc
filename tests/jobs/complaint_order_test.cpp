// The complaint the customer means stands first on the intake page.
#include "app/jobs/complaint_order.hpp"
#include <algorithm>
#include <set>

#include "jobs_support.hpp"

using namespace hardover;
using namespace hardover_tests;
using jobs_detail::complaints_nearest_first;

namespace {

std::string first_for(const std::string& said) {
    const auto& complaints = shipped().complaints;
    return complaints[static_cast<std::size_t>(complaints_nearest_first(shipped(), said).front())].id;
}

}  // namespace

TEST_CASE("What customers say brings the complaint they mean to the top") {
    CHECK(first_for("Springy wheel since Saturday") == "springy_wheel");
    CHECK(first_for("she WANDERS all over the place") == "wander");
    CHECK(first_for("groans when hard over") == "noise_at_full_lock");
    CHECK(first_for("tight to starboard") == "hard_one_way");
}

TEST_CASE("Without a telling word every complaint keeps its place, and none is lost") {
    const auto& complaints = shipped().complaints;
    for (const char* said : {"", "it is odd", "qwertz"}) {
        const std::vector<Index> order = complaints_nearest_first(shipped(), said);
        REQUIRE(order.size() == complaints.size());
        CHECK(std::is_sorted(order.begin(), order.end()));
    }
    const std::vector<Index> order = complaints_nearest_first(shipped(), "springy, wanders and leaks");
    CHECK(std::set<Index>(order.begin(), order.end()).size() == complaints.size());
}
