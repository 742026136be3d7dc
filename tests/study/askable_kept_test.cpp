// What a quiz can ask, kept in a file: the same as found out anew, whatever became of the file.
#include "app/study/askable_kept.hpp"

#include "app/records/whole_file.hpp"
#include "app/study/mastery.hpp"
#include "scratch_folder.hpp"
#include "study_support.hpp"

using namespace hardover;
using namespace hardover::study;
using namespace hardover_tests;

namespace {

std::vector<std::string> ids_of(const std::vector<Stem>& stems) {
    std::vector<std::string> ids;
    for (const Stem& stem : stems) ids.push_back(stem.id);
    return ids;
}

const std::vector<std::string>& found_anew() {
    static const std::vector<std::string> ids = ids_of(*askable_stems(portraits(), mastery_seed));
    return ids;
}

// What is written for the shipped knowledge.
const std::string& kept_text() {
    static const std::string text = [] {
        const ScratchFolder folder;
        CHECK(ids_of(askable_kept(portraits(), mastery_seed, folder.file("kept"))) == found_anew());
        const Result<std::string> kept = read_whole_file(folder.file("kept"));
        REQUIRE(kept.ok());
        return kept.value();
    }();
    return text;
}

// The same with one item fewer; its sum is that of the whole.
std::string with_one_fewer() {
    std::string text = kept_text();
    text[text.find('1', text.find('\n'))] = '0';
    return text;
}

}  // namespace

TEST_CASE("what a quiz can ask is what its file says, as long as that is whole") {
    const ScratchFolder folder;
    const std::string file = folder.file("kept");
    const auto asked = [&](const std::string& text) {
        REQUIRE(write_whole_file(file, text).ok());
        return ids_of(askable_kept(portraits(), mastery_seed, file));
    };
    CHECK(asked(kept_text()) == found_anew());
    const std::string fewer = with_one_fewer();
    const std::string lines = fewer.substr(0, fewer.rfind('\n', fewer.size() - 2) + 1);
    CHECK(asked(lines + sha256_of(lines) + "\n").size() == found_anew().size() - 1);
    // A letter has turned.
    CHECK(asked(fewer) == found_anew());
    CHECK(read_whole_file(file).value() == kept_text());
}

TEST_CASE("what other odds let a quiz ask is found out anew") {
    const ScratchFolder folder;
    const std::string file = folder.file("kept");
    REQUIRE(write_whole_file(file, kept_text()).ok());
    Knowledge other = shipped();
    for (double& odds : other.causes.front().odds) odds *= 3;
    askable_kept(Portraits(other), mastery_seed, file);
    CHECK(read_whole_file(file).value().substr(0, 64) != kept_text().substr(0, 64));
}

TEST_CASE("where nothing can be kept, what a quiz can ask is found out each time") {
    const std::vector<Stem> askable = askable_kept(portraits(), mastery_seed, "/proc/none/kept");
    CHECK(ids_of(askable) == found_anew());
}
