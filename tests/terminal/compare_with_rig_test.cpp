// `hardover knowledge compare-with-rig`: the shipped table agrees with the numeric boat or says why not, and
// a reason taken away is missed.
#include <filesystem>
#include <fstream>
#include <sstream>

#include "support.hpp"
#include "terminal/program.hpp"

using namespace hardover_tests;

namespace {

bool holds(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

std::string text_of(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

}  // namespace

TEST_CASE(
    "The shipped table and the numeric boat differ nowhere without a reason, whatever boats are sampled") {
    for (const char* seed : {"1", "2", "3"}) {
        const Ran ran = run_program({"knowledge", "compare-with-rig", "--seed", seed});
        INFO("seed " << seed << "\n" << ran.out << ran.err);
        CHECK(ran.code == 0);
        CHECK(holds(ran.out, " 0 differences not explained"));
        CHECK_FALSE(holds(ran.out, "not explained: "));
    }
}

TEST_CASE("A reason taken out of a cause is missed by name, and the comparison fails") {
    const TemporaryFolder folder;
    std::filesystem::copy(source_path("knowledge"), folder.file("knowledge"));
    const std::string causes = folder.file("knowledge/causes_fitting.yaml");
    std::string text = text_of(causes);
    const std::size_t at = text.find("    ram_equality: The numeric rams were set");
    REQUIRE(at != std::string::npos);
    text.erase(at, text.find('\n', at) - at + 1);
    write_file(causes, text);
    const Ran ran = run_program({"--knowledge", folder.file("knowledge"), "knowledge", "compare-with-rig"});
    INFO(ran.out << ran.err);
    CHECK(ran.code == 1);
    CHECK(holds(ran.out, "not explained: drive_marked_crooked, ram_equality unequal"));
    CHECK(holds(ran.out, " 1 differences not explained"));
}

TEST_CASE("Asked for all, the comparison gives the reasons too, fewer boats than one are refused") {
    const Ran all = run_program({"knowledge", "compare-with-rig", "--all", "--boats", "10"});
    CHECK(holds(all.out, "explained: "));
    CHECK(holds(all.out, "0 boats, "));  // ten for each cause
    CHECK(run_program({"knowledge", "compare-with-rig", "--boats", "0"}).code == 2);
}
