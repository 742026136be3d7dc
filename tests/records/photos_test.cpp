// Photos beside the records: once, whole, and told when they are not.
#include "app/records/photos.hpp"

#include <sys/resource.h>
#include <sys/stat.h>
#include <csignal>

#include "app/records/whole_file.hpp"
#include "records_support.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

const std::string jpeg = std::string("\xff\xd8\xff\xe0", 4) + "a picture of a bracket";

std::size_t files_in(const std::string& folder) {
    std::size_t count = 0;
    for (const auto& entry : fs::directory_iterator(folder)) count += entry.is_regular_file() ? 1 : 0;
    return count;
}

}  // namespace

TEST_CASE("SHA-256 is the published function") {
    // FIPS 180-4, examples of NIST: the digests of "abc" and of the empty text.
    CHECK(sha256_of("abc") == "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    CHECK(sha256_of("") == "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
}

TEST_CASE("A photo is kept under its hash, the same one twice is kept once") {
    const TemporaryFolder folder;
    write_file(folder.file("one.jpeg"), jpeg);
    write_file(folder.file("two.txt"), jpeg);
    const auto one = keep_photo(folder.file("photos"), folder.file("one.jpeg"));
    REQUIRE_OK(one);
    CHECK(one.value().file == sha256_of(jpeg) + ".jpg");
    CHECK(one.value().bytes == static_cast<std::int64_t>(jpeg.size()));
    const auto two = keep_photo(folder.file("photos"), folder.file("two.txt"));
    REQUIRE_OK(two);
    CHECK(two.value().file == one.value().file);
    CHECK(files_in(folder.file("photos")) == 1);
    CHECK(file_text(folder.file("photos/" + one.value().file)) == jpeg);
}

TEST_CASE("A missing and an altered photo are told apart from a whole one") {
    const TemporaryFolder folder;
    write_file(folder.file("one.jpg"), jpeg);
    const auto kept = keep_photo(folder.file("photos"), folder.file("one.jpg"));
    REQUIRE_OK(kept);
    const std::string file = kept.value().file;
    CHECK(look_at_photo(folder.file("photos"), file) == PhotoState::whole);
    std::string bytes = jpeg;
    bytes[10] ^= 1;
    write_file(folder.file("photos/" + file), bytes);
    CHECK(look_at_photo(folder.file("photos"), file) == PhotoState::altered);
    // Attaching it again puts it right.
    REQUIRE_OK(keep_photo(folder.file("photos"), folder.file("one.jpg")));
    CHECK(look_at_photo(folder.file("photos"), file) == PhotoState::whole);
    fs::remove(folder.file("photos/" + file));
    CHECK(look_at_photo(folder.file("photos"), file) == PhotoState::missing);
}

TEST_CASE("A name that leads out of the folder is no photo") {
    const std::string hash(64, 'a');
    CHECK(is_photo_name(hash));
    CHECK(is_photo_name(hash + ".jpg"));
    for (const std::string& name : {std::string("../records.db"), hash + "/../../x", hash + ".", hash + ".J",
                                    hash + ".toolong", std::string(64, 'A'), std::string()}) {
        CHECK_FALSE(is_photo_name(name));
    }
}

TEST_CASE("A file that is empty, a folder or not there is not attached, and nothing is left behind") {
    const TemporaryFolder folder;
    write_file(folder.file("empty"), "");
    CHECK(keep_photo(folder.file("photos"), folder.file("empty")).error().what == "this file is empty");
    CHECK(keep_photo(folder.file("photos"), folder.file("")).error().what == "this is a folder, not a file");
    CHECK(keep_photo(folder.file("photos"), folder.file("gone")).error().kind == Error::Kind::not_found);
    CHECK_FALSE(fs::exists(folder.file("photos")));
}

TEST_CASE("A pipe, a device and a file beyond what may be read are refused at once") {
    const TemporaryFolder folder;
    const std::string pipe = folder.file("pipe");
    REQUIRE(mkfifo(pipe.c_str(), 0600) == 0);
    for (const std::string& path : {pipe, std::string("/dev/zero")}) {
        const std::string what = "this is a device or a pipe, not a file";
        CHECK(keep_photo(folder.file("photos"), path).error().what == what);
        CHECK(read_whole_file(path).error().what == what);
        CHECK(sha256_of_file(path).error().what == what);
        CHECK(copy_whole_file(path, folder.file("copy")).error().what == what);
    }
    CHECK(write_whole_file(pipe, "bytes").error().what == "this is a device or a pipe, not a file");
    CHECK(fs::is_fifo(pipe));
    write_file(folder.file("large"), std::string(2'000'001, 'x'));
    CHECK(read_whole_file(folder.file("large"), 2'000'000).error().what ==
          "this file is larger than the 2 MB that may be read");
    CHECK(read_whole_file(folder.file("large"), 2'000'001).ok());
    // A film of 3 GB that takes no room on the disk.
    write_file(folder.file("film"), "");
    fs::resize_file(folder.file("film"), 3'000'000'000);
    CHECK(keep_photo(folder.file("photos"), folder.file("film")).error().what ==
          "this file is larger than the 1000 MB that may be read");
    CHECK_FALSE(fs::exists(folder.file("photos")));
}

TEST_CASE("When the disk fills while a photo is copied, no half of it is left") {
    const TemporaryFolder folder;
    write_file(folder.file("large.jpg"), jpeg + std::string(5000, 'x'));
    write_file(folder.file("small.jpg"), jpeg);
    REQUIRE_OK(keep_photo(folder.file("photos"), folder.file("small.jpg")));
    // A file may grow to 1000 bytes only: the same refusal in the middle of writing as on a full disk.
    rlimit before{};
    getrlimit(RLIMIT_FSIZE, &before);
    const auto old_handler = std::signal(SIGXFSZ, SIG_IGN);
    const rlimit tight{1000, before.rlim_max};
    setrlimit(RLIMIT_FSIZE, &tight);
    const auto kept = keep_photo(folder.file("photos"), folder.file("large.jpg"));
    setrlimit(RLIMIT_FSIZE, &before);
    std::signal(SIGXFSZ, old_handler);
    REQUIRE_FALSE(kept.ok());
    CHECK(kept.error().cure == "make room on the disk and write it again");
    CHECK(files_in(folder.file("photos")) == 1);
}

TEST_CASE("Copying photos copies each once, and names those that are missing or altered") {
    const TemporaryFolder folder;
    std::vector<std::string> files;
    for (const std::string& text : {jpeg + "1", jpeg + "2", jpeg + "3"}) {
        write_file(folder.file("photo"), text);
        files.push_back(keep_photo(folder.file("photos"), folder.file("photo")).value().file);
    }
    fs::remove(folder.file("photos/" + files[0]));
    write_file(folder.file("photos/" + files[1]), "altered");
    const auto first = copy_photos(files, folder.file("photos"), folder.file("copy"));
    REQUIRE_OK(first);
    CHECK(first.value().missing == std::vector<std::string>{files[0]});
    CHECK(first.value().altered == std::vector<std::string>{files[1]});
    CHECK(first.value().copied == 1);
    CHECK(files_in(folder.file("copy")) == 1);
    CHECK(copy_photos(files, folder.file("photos"), folder.file("copy")).value().there == 1);
}
