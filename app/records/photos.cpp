#include "app/records/photos.hpp"

#include <algorithm>
#include <array>
#include <filesystem>
#include <fstream>
#include <string_view>
#include <system_error>

#include "app/records/whole_file.hpp"

namespace hardover {

namespace fs = std::filesystem;

namespace {

constexpr std::size_t hash_digits = 64;
constexpr std::uint64_t most_of_photo = 1'000'000'000;  // bytes; a film of some minutes fits

// How files of a kind start (their published formats), and the ending that opens them.
struct Start {
    std::size_t at;
    std::string_view bytes;
    const char* ending;
};
constexpr std::array<Start, 10> starts = {{
    {0, "\xff\xd8\xff", ".jpg"},
    {0, "\x89PNG\r\n\x1a\n", ".png"},
    {0, "GIF8", ".gif"},
    {8, "WEBP", ".webp"},
    {4, "ftypheic", ".heic"},
    {4, "ftypmif1", ".heic"},
    {4, "ftypavif", ".avif"},
    {4, "ftyp", ".mp4"},
    {0, "%PDF-", ".pdf"},
    {0, "BM", ".bmp"},
}};

std::string ending_of(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    std::array<char, 16> first{};
    file.read(first.data(), first.size());
    const std::string_view got(first.data(), static_cast<std::size_t>(file.gcount()));
    for (const Start& start : starts) {
        if (got.size() > start.at && got.substr(start.at).starts_with(start.bytes)) return start.ending;
    }
    return "";
}

Result<void> make_folder(const std::string& folder) {
    std::error_code failed;
    fs::create_directories(folder, failed);
    if (!failed) return {};
    return Error{Error::Kind::storage, "the folder for photos cannot be made: " + failed.message(), folder,
                 "get the right to write there, or make room on the disk"};
}

std::string in_folder(const std::string& folder, const std::string& file) {
    return (fs::path(folder) / file).string();
}

Result<void> copy_one(const std::string& from, const std::string& folder, const std::string& file) {
    const std::string to = in_folder(folder, file);
    const auto copied = copy_whole_file(from, to);
    if (!copied.ok()) return copied.error();
    // Read back, since a copy that nobody looked at is a hope only.
    if (look_at_photo(folder, file) == PhotoState::whole) return {};
    std::error_code failed;
    fs::remove(to, failed);
    return Error{Error::Kind::storage, "the copy of a photo is not what was read", to,
                 "check the disk, then do it again"};
}

}  // namespace

std::string photos_folder(const std::string& beside) {
    return (fs::path(beside).parent_path() / "photos").string();
}

bool is_photo_name(const std::string& name) {
    if (name.size() < hash_digits || name.size() > hash_digits + 6) return false;
    const auto hexadecimal = [](char c) { return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'f'); };
    if (!std::all_of(name.begin(), name.begin() + hash_digits, hexadecimal)) return false;
    const std::string ending = name.substr(hash_digits);
    const auto letter = [](char c) { return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z'); };
    return ending.empty() ||
           (ending.size() > 1 && ending[0] == '.' && std::all_of(ending.begin() + 1, ending.end(), letter));
}

Result<KeptFile> keep_photo(const std::string& folder, const std::string& from) {
    if (auto fits = no_larger_than(from, most_of_photo); !fits.ok()) return fits.error();
    std::error_code failed;
    const auto bytes = fs::file_size(from, failed);
    if (!failed && bytes == 0) {
        return Error{Error::Kind::bad_input, "this file is empty", from, "name a file with something in it"};
    }
    const auto hash = sha256_of_file(from);
    if (!hash.ok()) return hash.error();
    if (auto made = make_folder(folder); !made.ok()) return made.error();
    const KeptFile kept{hash.value() + ending_of(from), static_cast<std::int64_t>(bytes)};
    // One that is there but was altered is put right by the way.
    if (look_at_photo(folder, kept.file) == PhotoState::whole) return kept;
    if (auto copied = copy_one(from, folder, kept.file); !copied.ok()) return copied.error();
    return kept;
}

PhotoState look_at_photo(const std::string& folder, const std::string& file) {
    if (!photo_is_there(folder, file)) return PhotoState::missing;
    const auto hash = sha256_of_file(in_folder(folder, file));
    return hash.ok() && hash.value() == file.substr(0, hash_digits) ? PhotoState::whole : PhotoState::altered;
}

bool photo_is_there(const std::string& folder, const std::string& file) {
    std::error_code failed;
    return is_photo_name(file) && fs::is_regular_file(in_folder(folder, file), failed);
}

Result<CopiedPhotos> copy_photos(const std::vector<std::string>& files, const std::string& from,
                                 const std::string& to) {
    CopiedPhotos done;
    std::error_code failed;
    const bool one_folder = fs::equivalent(from, to, failed);
    for (const std::string& file : files) {
        if (photo_is_there(to, file) && (one_folder || look_at_photo(to, file) == PhotoState::whole)) {
            ++done.there;
            continue;
        }
        const PhotoState state = look_at_photo(from, file);
        if (state == PhotoState::missing) done.missing.push_back(file);
        if (state == PhotoState::altered) done.altered.push_back(file);
        if (state != PhotoState::whole) continue;
        if (auto made = make_folder(to); !made.ok()) return made.error();
        if (auto copied = copy_one(in_folder(from, file), to, file); !copied.ok()) return copied.error();
        ++done.copied;
    }
    return done;
}

}  // namespace hardover
