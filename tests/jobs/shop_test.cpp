// What a shop settles for all its jobs: kept, read again, and never a guess where it cannot be read. And the
// rig figures worth asking for first.
#include "app/jobs/shop.hpp"

#include "app/jobs/rig_matters.hpp"
#include "jobs_support.hpp"

using namespace hardover;
using namespace hardover_tests;

TEST_CASE("A shop's settings are read as they were kept") {
    const Knowledge pump = pump_knowledge();
    Bench bench(pump);
    CHECK(read_shop(bench.store()).value() == ShopSettings{});
    const ShopSettings shop{"Invented Yard", {UnitSystem::metric, 95.5}, true, "canada", "classed"};
    REQUIRE_OK(keep_shop(bench.store(), shop));
    CHECK(read_shop(bench.store()).value() == shop);
    CHECK(bench.reloaded().shop == shop.ways);
    REQUIRE_OK(keep_shop(bench.store(), ShopSettings{}));
    CHECK(read_shop(bench.store()).value() == ShopSettings{});
    CHECK(bench.store().settings().value().empty());
}

TEST_CASE("A price of an hour is a plain number, anything else is refused with what would be right") {
    CHECK(read_rate("95").value() == 95);
    CHECK(read_rate(" 95.50 ").value() == 95.5);
    CHECK(read_rate("").value() == 0);
    for (const char* wrong : {"-5", "95 an hour", "$95", "1e99", "nan", "9,5"}) {
        INFO(wrong);
        CHECK_FALSE(read_rate(wrong).ok());
    }
    CHECK(read_rate("x").error().cure.find("95.50") != std::string::npos);
}

TEST_CASE("A setting of the shop that cannot be read counts as not settled") {
    const Knowledge pump = pump_knowledge();
    Bench bench(pump);
    BesideJobs change;
    change.settings = {{"units", "cubits"}, {"shop_rate", "much"}};
    REQUIRE_OK(bench.store().keep(change));
    CHECK(read_shop(bench.store()).value() == ShopSettings{});
}

TEST_CASE("The rig figures asked for first follow the complaint") {
    const Knowledge& steering = shipped();
    std::set<std::set<Index>> different;
    for (std::size_t c = 0; c < steering.complaints.size(); ++c) {
        const auto first = jobs_detail::rig_fields_that_matter(steering, {static_cast<Index>(c)});
        INFO(steering.complaints[c].id);
        CHECK_FALSE(first.empty());
        CHECK(first.size() <= jobs_detail::most_that_matter);
        different.insert(first);
    }
    CHECK(different.size() > steering.complaints.size() / 2);
    // Which kind of helm it is decides on most causes of this trade (common practice, no source).
    CHECK(jobs_detail::rig_fields_that_matter(steering, {}).contains(find(steering.rig_fields, "helm")));
}

TEST_CASE("Metric pages show millimetres where US pages show inches, and take either when typed") {
    const Knowledge& steering = shipped();
    Bench bench(steering);
    ShopSettings shop;
    shop.ways.units = UnitSystem::metric;
    REQUIRE_OK(keep_shop(bench.store(), shop));
    bench.tell(RigSet{"ram_stroke", "9 in"});
    const JobPage page = make_job_page(steering, bench.reloaded());
    const bool shown = std::any_of(page.rig.begin(), page.rig.end(),
                                   [](const RigLine& line) { return line.value == "229 mm"; });
    CHECK(shown);
    CHECK(page.events.back().text.find("229 mm") != std::string::npos);
}
