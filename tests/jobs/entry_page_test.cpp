// Entries as pages: every link leads to an entry, and the job in hand says what it knows of each.
#include "app/jobs/entry_page.hpp"

#include <algorithm>

#include "jobs_support.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

const EntryLinks& shipped_links() {
    static const EntryLinks links(shipped());
    return links;
}

std::string all_text(const std::vector<EntryRow>& rows) {
    std::string text;
    for (const EntryRow& row : rows) {
        text += row.label + ": ";
        for (const EntryText& item : row.items) text += item.plain() + "\n";
    }
    return text;
}

}  // namespace

TEST_CASE("Every link of every entry leads to an entry that is there") {
    const PreparedKnowledge prepared(shipped());
    int links = 0;
    for (const KindCount& kind : browsable_kinds(shipped())) {
        for (const EntryName& name : entries_of(shipped(), kind.kind)) {
            const EntryPage page = make_entry_page(shipped(), shipped_links(), name.key, nullptr, prepared);
            INFO(name.key.kind << " " << name.key.id);
            CHECK(page.in_job.empty());
            for (const EntryRow& row : page.rows) {
                REQUIRE_FALSE(row.items.empty());
                for (const EntryText& item : row.items) {
                    for (const EntryPiece& piece : item.pieces) {
                        if (piece.to.kind.empty()) continue;
                        const auto there = entries_of(shipped(), piece.to.kind);
                        INFO(piece.to.kind << " " << piece.to.id);
                        REQUIRE(std::any_of(there.begin(), there.end(),
                                            [&](const EntryName& each) { return each.key == piece.to; }));
                        if (++links > 4000) return;  // each costs a look through its kind
                    }
                }
            }
        }
    }
    CHECK(links > 1000);
}

TEST_CASE("An entry that is gone gives a page that says so") {
    const PreparedKnowledge prepared(shipped());
    const EntryPage page = make_entry_page(shipped(), shipped_links(), {"cause", "gone"}, nullptr, prepared);
    CHECK(page.rows.empty());
    CHECK(page.name == "There is no such entry: gone");
}

TEST_CASE(
    "With a job in hand a cause shows how probable it is and what speaks for it, a finding its answer") {
    const PreparedKnowledge prepared(shipped());
    Bench bench(shipped());
    bench.answer("wheel_feel", "springy");
    const EntryPage cause =
        make_entry_page(shipped(), shipped_links(), {"cause", "air_in_oil"}, &bench.job(), prepared);
    CHECK(all_text(cause.in_job).find("% probable") != std::string::npos);
    CHECK(all_text(cause.in_job).find("Feel of the wheel: ") != std::string::npos);
    const EntryPage finding =
        make_entry_page(shipped(), shipped_links(), {"finding", "wheel_feel"}, &bench.job(), prepared);
    CHECK(all_text(finding.in_job).find("(answered)") != std::string::npos);
    const EntryPage open =
        make_entry_page(shipped(), shipped_links(), {"finding", "reservoir_oil"}, &bench.job(), prepared);
    CHECK(all_text(open.in_job).find("Not answered yet.") != std::string::npos);
}

TEST_CASE("A rule that fired says because of what, and stands in the list of those that fired") {
    const PreparedKnowledge prepared(shipped());
    Bench bench(shipped());
    bench.answer("wheel_feel", "springy").tell(HistorySet{"just_fitted"});
    const auto fired = fired_in_job(shipped(), bench.job());
    REQUIRE(fired.size() == bench.job().assessment.fired.size());
    for (const EntryText& line : fired) {
        const EntryPage rule =
            make_entry_page(shipped(), shipped_links(), line.pieces.front().to, &bench.job(), prepared);
        INFO(rule.name);
        CHECK(all_text(rule.in_job).find("It fired because ") != std::string::npos);
    }
    const auto idle = std::find_if(shipped().rules.begin(), shipped().rules.end(), [&](const Rule& rule) {
        return std::none_of(fired.begin(), fired.end(),
                            [&](const EntryText& line) { return line.pieces.front().to.id == rule.id; });
    });
    REQUIRE(idle != shipped().rules.end());
    const EntryPage page =
        make_entry_page(shipped(), shipped_links(), {"rule", idle->id}, &bench.job(), prepared);
    CHECK(all_text(page.in_job).find("It has not fired.") != std::string::npos);
}

TEST_CASE("Entries show the shop's units") {
    const PreparedKnowledge prepared(shipped());
    const auto text = [&](const EntryKey& key, UnitSystem units) {
        return all_text(make_entry_page(shipped(), shipped_links(), key, nullptr, prepared, units).rows);
    };
    CHECK(text({"rig_field", "hose_length"}, UnitSystem::us).find("18 ft") != std::string::npos);
    CHECK(text({"rig_field", "hose_length"}, UnitSystem::metric).find("5.49 m") != std::string::npos);
    CHECK(text({"worksheet", "ram_centring"}, UnitSystem::metric).find(" mm") != std::string::npos);
    CHECK(text({"worksheet", "ram_centring"}, UnitSystem::us).find(" mm") == std::string::npos);
}
