// Whatever stands in the files, reading ends, and a refusal says where.
#include <random>

#include "reading/reading_support.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

std::string repeated(const std::string& text, int times) {
    std::string all;
    for (int i = 0; i < times; ++i) all += text;
    return all;
}

// Deletes, doubles, swaps or replaces a few bytes, or a whole line.
void damage(std::string& text, std::mt19937& random) {
    const auto below = [&](std::size_t n) { return static_cast<std::size_t>(random() % n); };
    if (text.empty()) return;
    const std::size_t at = below(text.size());
    const std::size_t length = std::min(text.size() - at, 1 + below(12));
    static const std::string letters = ":-{}[]\"'#&*!|>%@`,? \n\tabz019_.\xC2\xB1";
    switch (random() % 5) {
        case 0:
            text.erase(at, length);
            break;
        case 1:
            text.insert(at, text.substr(at, length));
            break;
        case 2:
            text[at] = letters[below(letters.size())];
            break;
        case 3:
            text.insert(at, 1, letters[below(letters.size())]);
            break;
        default: {
            const std::size_t end = std::min(text.find('\n', at), text.size() - 1) + 1;
            const std::string line = text.substr(at, end - at);
            text.erase(at, end - at);
            if (!text.empty() && random() % 2 == 0) text.insert(below(text.size()), line);
        }
    }
}

}  // namespace

TEST_CASE("Damaged files are read or refused with a line, and never crash or hang") {
    const std::vector<KnowledgeFile> whole = garden_pump();
    std::mt19937 random(20240229);
    int refused = 0;
    for (int round = 0; round < 2000; ++round) {
        std::vector<KnowledgeFile> files = whole;
        const int wounds = 1 + static_cast<int>(random() % 3);
        for (int i = 0; i < wounds; ++i) damage(files[random() % files.size()].text, random);
        const KnowledgeRead read = read_knowledge(files, Functions{});
        if (read.knowledge) {
            check_sense(*read.knowledge);
            continue;
        }
        ++refused;
        REQUIRE_FALSE(read.faults.empty());
        for (const Fault& fault : read.faults) {
            INFO("round " << round << ": " << fault.text());
            REQUIRE(fault.place.line > 0);
            REQUIRE(fault.place.column > 0);
            REQUIRE_FALSE(fault.what.empty());
        }
    }
    CHECK(refused > 1000);  // most wounds are noticed; those in comments and free texts need not be
}

TEST_CASE("Deeply nested brackets are refused") {
    for (const char* bracket : {"[", "{", "- ", "? "}) {
        INFO(bracket);
        const KnowledgeRead read =
            read_knowledge({{"deep.yaml", "- cause: " + repeated(bracket, 20000) + "\n"}}, Functions{});
        CHECK_FALSE(read.knowledge);
        REQUIRE_FALSE(read.faults.empty());
        CHECK(read.faults.front().place.line >= 1);
    }
    const KnowledgeRead read =
        read_knowledge({{"deep.yaml", repeated("[", 150) + repeated("]", 150)}}, Functions{});
    CHECK(read.faults.front().text() ==
          "deep.yaml:1:101: not readable as YAML: nested more than 100 deep (look at the indentation, quotes "
          "and "
          "brackets here and just above)");
}

TEST_CASE("A text that breaks off in the middle of an escape is refused at its end, not behind it") {
    for (const char* escape : {"\\x", "\\u", "\\u1", "\\U"}) {
        INFO(escape);
        const std::string text = std::string("- caution: a\n  name: \"é") + escape;
        const KnowledgeRead read = read_knowledge({{"short.yaml", text}}, Functions{});
        REQUIRE_FALSE(read.faults.empty());
        const Place& place = read.faults.front().place;
        CHECK(place.line == 2);
        CHECK(place.column > 8);
        CHECK(place.column <= 11 + static_cast<int>(std::string(escape).size()));
    }
}

TEST_CASE("Deep indentation is refused") {
    std::string text;
    for (int i = 0; i < 3000; ++i) text += std::string(i, ' ') + "a:\n";
    const KnowledgeRead read = read_knowledge({{"deep.yaml", text}}, Functions{});
    CHECK_FALSE(read.knowledge);
}

TEST_CASE("Aliases that would grow without end are refused and not followed") {
    std::string text = "- &a0 [x, x, x, x, x, x, x, x, x, x]\n";
    for (int i = 1; i < 60; ++i) {
        const std::string before = "*a" + std::to_string(i - 1);
        text += "- &a" + std::to_string(i) + " [" + repeated(before + ", ", 9) + before + "]\n";
    }
    const KnowledgeRead read = read_knowledge({{"growing.yaml", text}}, Functions{});
    CHECK_FALSE(read.knowledge);
    CHECK(as_text(read.faults).find("an alias (*name) is not used in these files") != std::string::npos);
}

TEST_CASE("A very long line, key or number does no harm") {
    const std::string longest(200000, 'x');
    CHECK_FALSE(
        read_changed({{"", "setup.yaml", "name: Motor", "name: Motor\n  " + longest + ": 1"}}).knowledge);
    CHECK(read_changed({{"", "setup.yaml", "name: Motor", "name: " + longest}}).knowledge);
    CHECK_FALSE(read_changed({{"", "setup.yaml", "share: 0.4", "share: 1" + repeated("0", 5000)}}).knowledge);
    CHECK_FALSE(read_changed({{"", "setup.yaml", "share: 0.4", "share: nan"}}).knowledge);
}

TEST_CASE("A fault of form behind letters of several bytes is at its own letter") {
    const KnowledgeRead read = read_knowledge({{"wide.yaml", "- a: ± ½ [\n- b: \"°°° {\n"}}, Functions{});
    CHECK_FALSE(read.knowledge);
    REQUIRE_FALSE(read.faults.empty());
    const Fault& of_form = read.faults.back();  // after what the first line has
    INFO(of_form.text());
    CHECK(of_form.place.line == 2);
    CHECK(of_form.place.column <= 13);
}
