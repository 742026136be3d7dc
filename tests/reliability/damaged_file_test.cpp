// Damaged records files: cut at every page border and at random bytes, with bits turned, or not a records
// file at all. Each is refused in words and kept byte by byte, or everything confirmed is still in it.
#include <fcntl.h>
#include <sys/stat.h>

#include <filesystem>
#include <map>
#include <random>

#include "app/records/store.hpp"
#include "records/whole_content.hpp"
#include "records_seen.hpp"
#include "scratch_folder.hpp"
#include "support.hpp"
#include "tally.hpp"
#include "terminal/program.hpp"

using namespace hardover;
using namespace hardover_tests;
namespace fs = std::filesystem;

namespace {

constexpr std::size_t page = 4096;

std::map<std::string, std::string> bytes_of(const ScratchFolder& folder) {
    std::map<std::string, std::string> files;
    for (const auto& entry : fs::directory_iterator(folder.file(""))) {
        if (entry.is_regular_file()) files[entry.path().filename()] = file_text(entry.path());
    }
    return files;
}

enum class Came { refused, unharmed, changed };

// Opens the damaged file as a program does, and reads all of it. Refused at opening it keeps every byte.
Came open_damaged(const ScratchFolder& folder, const std::string& path, const Content& expected) {
    const auto before = bytes_of(folder);
    auto store = Store::open(path);
    if (store.ok()) {
        const Difference now = difference(expected, content_of(store.value()), store.value());
        return now == Difference::none    ? Came::unharmed
               : now == Difference::named ? Came::refused
                                          : Came::changed;
    }
    INFO(store.error().text());
    for (const auto& [name, bytes] : bytes_of(folder)) {
        INFO(name);
        // A fault that shows only when the file is opened to be written leaves an empty log beside it.
        const bool log = name == "records.db-shm" || (name == "records.db-wal" && bytes.empty());
        CHECK((log || (before.count(name) == 1 && before.at(name) == bytes)));
    }
    CHECK_FALSE(store.error().what.empty());
    CHECK(store.error().where == path);
    CHECK_FALSE(store.error().cure.empty());
    CHECK(store.error().what.find("could not be used") == std::string::npos);
    return Came::refused;
}

void count(const char* fault, Came came) {
    Tried& line = tried(fault);
    ++line.tried;
    ++line.confirmed;
    if (came == Came::refused) ++line.refused;
    if (came == Came::unharmed) ++line.carried_on;
    if (came == Came::changed) ++line.lost;
}

// A sound file and what is confirmed in it, to be damaged again and again.
struct SoundFile {
    SoundFile() {
        make_full_records(path, 6, 60);
        bytes = file_text(path);
        auto store = Store::open(path);
        REQUIRE_OK(store);
        expected = content_of(store.value());
        REQUIRE(bytes.size() > 8 * page);
    }
    ScratchFolder folder;
    std::string path = folder.file("records.db");
    std::string bytes;
    Content expected;
};

}  // namespace

TEST_CASE("A records file cut at any page border or byte is refused and kept") {
    const SoundFile sound;
    std::vector<std::size_t> sizes;
    for (std::size_t size = page; size < sound.bytes.size(); size += page) sizes.push_back(size);
    std::mt19937 random(20261126);
    std::uniform_int_distribution<std::size_t> anywhere(1, sound.bytes.size() - 1);
    for (int i = so_many(200, 20); i > 0; --i) sizes.push_back(anywhere(random));
    for (const std::size_t size : sizes) {
        INFO("cut to " << size << " of " << sound.bytes.size() << " bytes");
        write_file(sound.path, sound.bytes.substr(0, size));
        const Came came = open_damaged(sound.folder, sound.path, sound.expected);
        count("records file cut at page borders and at random bytes", came);
        CHECK(came == Came::refused);
    }
}

TEST_CASE("A bit turned anywhere is refused, at opening or where it is read, or does no harm") {
    const SoundFile sound;
    std::mt19937 random(20261126);
    std::uniform_int_distribution<std::size_t> anywhere(0, sound.bytes.size() * 8 - 1);
    for (int i = so_many(2000, 100); i > 0; --i) {
        const std::size_t bit = anywhere(random);
        INFO("bit " << bit % 8 << " of byte " << bit / 8);
        std::string wrong = sound.bytes;
        wrong[bit / 8] = static_cast<char>(static_cast<unsigned char>(wrong[bit / 8]) ^ (1U << (bit % 8)));
        write_file(sound.path, wrong);
        const Came came = open_damaged(sound.folder, sound.path, sound.expected);
        count("one bit of the records file turned", came);
        CHECK(came != Came::changed);
    }
}

TEST_CASE("What is no records file is refused by every command in one line, and kept") {
    const TemporaryFolder folder;
    const auto path = [&](const char* name) { return folder.file(name); };
    write_file(path("text.db"), "Notes of the yard at Saltmarsh Landing\n");
    write_file(path("noise.db"), std::string("SQLite format 3\0", 16) + std::string(5000, '\x5a'));
    fs::create_directory(path("folder.db"));
    fs::create_symlink(path("nowhere/records.db"), path("dangling.db"));
    fs::create_symlink(path("loop.db"), path("loop.db"));
    REQUIRE(mkfifo(path("pipe.db").c_str(), 0600) == 0);
    {
        SoundFile newer;
        write_file(path("newer.db"), newer.bytes);
        REQUIRE(std::system(("sqlite3 '" + path("newer.db") + "' 'PRAGMA user_version = 999'").c_str()) == 0);
    }
    for (const char* name : {"text.db", "noise.db", "folder.db", "loop.db", "pipe.db", "newer.db"}) {
        for (const std::vector<std::string>& command :
             {std::vector<std::string>{"job", "list"}, {"interview"}, {"learner", "add", "A07"}}) {
            std::vector<std::string> words = {"--records", path(name)};
            words.insert(words.end(), command.begin(), command.end());
            std::error_code loops;
            const bool plain = fs::is_regular_file(path(name), loops);
            const std::string before = plain ? file_text(path(name)) : "";
            Surroundings around;
            around.most = std::chrono::seconds(30);
            const Ran ran = run_program(words, "", around);
            Tried& line = tried("no records file: text, noise, folder, loop, pipe, newer version");
            ++line.tried;
            line.refused += ran.code == 1 ? 1 : 0;
            INFO(name << ", " << command.front() << ": " << ran.err);
            CHECK(ran.code == 1);
            CHECK_FALSE(ran.hung);
            CHECK(ran.err.rfind("hardover: " + path(name), 0) == 0);
            if (plain) CHECK(file_text(path(name)) == before);
        }
    }
    // A link to a file that is not there yet is a place for a new one, if its folder can be made.
    CHECK(run_program({"--records", path("dangling.db"), "learner", "add", "A07"}).code <= 1);
}
