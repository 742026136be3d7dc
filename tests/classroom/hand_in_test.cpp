// A hand-in is taken whole and unchanged, or refused with one message that says what is wrong with it.
#include "app/classroom/hand_in.hpp"

#include <catch2/catch.hpp>

#include "classroom_support.hpp"

using namespace hardover;
using namespace hardover::classroom;
using namespace hardover_tests;

namespace {

const std::string attempt = "0123456789abcdef0123456789abcdef";

ClassSet small_set() {
    ClassSet set;
    set.id = "S1";
    set.sitting = "ffffffffffffffffffffffffffffffff";
    set.knowledge = "k";
    return set;
}

std::string file_with(const std::vector<std::string>& answers) {
    return hand_in_file(answers_of(small_set(), "A07", attempt, answers), key_numbered(1));
}

std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines;
    std::istringstream in(text);
    for (std::string line; std::getline(in, line);) lines.push_back(line);
    return lines;
}

std::string joined(const std::vector<std::string>& lines) {
    std::string text;
    for (const std::string& line : lines) text += line + "\n";
    return text;
}

std::string refusal(const std::string& text) {
    const auto read = read_hand_in(text, "S1_A07");
    return read.ok() ? "taken" : read.error().text();
}

}  // namespace

TEST_CASE("A hand-in comes back with every record as it was written") {
    const std::string text = file_with({"b", "a c", "12.5 in"});
    const auto read = read_hand_in(text, "S1_A07");
    REQUIRE_OK(read);
    CHECK(read.value().of.seat == "A07");
    CHECK(read.value().of.attempt == attempt);
    REQUIRE(read.value().records.size() == 4);
    const auto& answered = std::get<Answered>(read.value().records[3].content);
    CHECK(answered.answer == "12.5 in");
    CHECK(answered.number == 3);
    CHECK(answered.sure == 0.7);
    CHECK(answered.seconds == 12.5);
    CHECK(read.value().key == key_numbered(1).public_key);
    CHECK(text.size() < 2000);
}

TEST_CASE("A hand-in with any one byte changed is refused") {
    const std::string text = file_with({"b", "?"});
    int taken = 0;
    for (std::size_t i = 0; i < text.size(); ++i) {
        for (const int flipped : {0x01, 0x20, 0x80}) {
            std::string changed = text;
            changed[i] = static_cast<char>(changed[i] ^ flipped);
            taken += read_hand_in(changed, "x").ok() ? 1 : 0;
        }
    }
    CHECK(taken == 0);
}

TEST_CASE("A hand-in cut short anywhere is refused") {
    const std::string text = file_with({"b", "?"});
    for (std::size_t length = 0; length < text.size(); ++length) {
        CHECK_FALSE(read_hand_in(text.substr(0, length), "x").ok());
    }
    CHECK_FALSE(read_hand_in(text + "\n", "x").ok());
    CHECK_FALSE(read_hand_in(text + text, "x").ok());
}

TEST_CASE("A hand-in without its last record is refused, even with the count put right") {
    std::vector<std::string> lines = lines_of(file_with({"b", "c", "d"}));
    lines.erase(lines.end() - 2);
    CHECK(refusal(joined(lines)).find("should have 4 records") != std::string::npos);
    lines[0].replace(lines[0].find("\"count\":4"), 9, "\"count\":3");
    CHECK(refusal(joined(lines)).find("changed") != std::string::npos);
}

TEST_CASE("A hand-in with two records swapped is refused and names the first that is out of place") {
    std::vector<std::string> lines = lines_of(file_with({"b", "c", "d"}));
    std::swap(lines[2], lines[3]);
    CHECK(refusal(joined(lines)) ==
          "S1_A07: this hand-in is not taken: record 2 bears the number 3: records were moved, left out or "
          "added (nothing of it was kept; hand it in once more from the student's PC)");
}

TEST_CASE("A record put in from another seat is refused") {
    std::vector<std::string> lines = lines_of(file_with({"b", "c"}));
    lines[2] = answers_of(small_set(), "A08", attempt, {"b", "c"})[1].line;
    CHECK(refusal(joined(lines)).find("record 2 belongs to another seat") != std::string::npos);
}

TEST_CASE("A hand-in whose records were written anew does not fit its signature") {
    std::vector<std::string> lines = lines_of(file_with({"b", "c"}));
    const std::vector<std::string> better = lines_of(file_with({"a", "c"}));
    lines[2] = better[2];
    CHECK(refusal(joined(lines)).find("was changed after it was made") != std::string::npos);
    lines.back() =
        lines_of(hand_in_file(answers_of(small_set(), "A07", attempt, {"a", "c"}), key_numbered(2))).back();
    CHECK(refusal(joined(lines)).find("signature does not fit") != std::string::npos);
}

TEST_CASE("What is no hand-in, or one of a newer form, is told apart from a damaged one") {
    CHECK(refusal("").find("this is no hand-in") != std::string::npos);
    CHECK(refusal("seat,name\n").find("this is no hand-in") != std::string::npos);
    std::string text = file_with({"b"});
    text.replace(text.find("\"hardover_hand_in\":1"), 20, "\"hardover_hand_in\":2");
    CHECK(refusal(text).find("made by a newer version") != std::string::npos);
}

TEST_CASE("A record of a newer version or an unknown kind is kept with every byte") {
    std::vector<Record> records = answers_of(small_set(), "A07", attempt, {"b"});
    std::string newer = records[1].line;
    newer.replace(newer.find("\"v\":1"), 5, "\"v\":2");
    std::string odd = records[1].line;
    odd.replace(odd.find("\"answered\""), 10, "\"sketched\"");
    odd.replace(odd.find("\"seq\":2"), 7, "\"seq\":3");
    for (const std::string& line : {newer, odd}) {
        const auto record = read_record(line);
        REQUIRE_OK(record);
        CHECK(std::holds_alternative<std::monostate>(record.value().content));
        records.resize(line == newer ? 1 : 2);
        records.push_back(record.value());
    }
    const auto read = read_hand_in(hand_in_file(records, key_numbered(1)), "x");
    REQUIRE_OK(read);
    CHECK(read.value().records[1].line == newer);
    CHECK(read.value().records[2].line == odd);
}

TEST_CASE("A record whose time is no moment in UTC is refused with what it should look like") {
    const Record record = answers_of(small_set(), "A07", attempt, {"b"}).front();
    for (const std::string time : {"20262026-12-04T09:00:00Z", "2026-12-04T09:00:00", "yesterday", ""}) {
        INFO(time);
        std::string line = record.line;
        line.replace(line.find(record.at), record.at.size(), time);
        const auto read = read_record(line);
        REQUIRE_FALSE(read.ok());
        CHECK(read.error().text().find("'" + time + "' is not a moment such as 2026-11-25T15:03:13Z") !=
              std::string::npos);
    }
}

TEST_CASE("A record that nests without end is refused before it is worked on") {
    std::vector<Record> records = answers_of(small_set(), "A07", attempt, {"b"});
    std::string& line = records[1].line;
    const std::string deep = std::string(200000, '[') + std::string(200000, ']');
    line.insert(line.size() - 1, ",\"review\":{\"item\":" + deep + "}");
    CHECK(refusal(hand_in_file(records, key_numbered(1))).find("record 2 cannot be read") !=
          std::string::npos);
    CHECK(read_record(records[0].line).ok());
}
