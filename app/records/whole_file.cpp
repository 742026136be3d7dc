#include "app/records/whole_file.hpp"

#include <fcntl.h>
#include <sodium.h>
#include <sys/stat.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <functional>
#include <sstream>
#include <utility>

namespace hardover {

namespace {

Error not_written(const std::string& path, int reason) {
    const bool no_room = reason == ENOSPC || reason == EDQUOT || reason == EFBIG;
    return {
        Error::Kind::storage, std::string("the file cannot be written: ") + std::strerror(reason), path,
        no_room ? "make room on the disk and write it again" : "name a file in a folder you may write to"};
}

// What a file made in the usual way may be read and written by.
mode_t usual_mode() {
    const mode_t mask = umask(0);
    umask(mask);
    return 0666 & ~mask;
}

class Sha256 {
  public:
    Sha256() { crypto_hash_sha256_init(&state_); }
    void add(std::string_view bytes) {
        crypto_hash_sha256_update(&state_, reinterpret_cast<const unsigned char*>(bytes.data()),
                                  bytes.size());
    }
    std::string digits() {
        std::array<unsigned char, crypto_hash_sha256_BYTES> hash{};
        crypto_hash_sha256_final(&state_, hash.data());
        std::string digits(2 * hash.size() + 1, '\0');
        sodium_bin2hex(digits.data(), digits.size(), hash.data(), hash.size());
        digits.pop_back();
        return digits;
    }

  private:
    crypto_hash_sha256_state state_;
};

Error too_large(const std::string& path, std::uint64_t most) {
    return {Error::Kind::bad_input,
            "this file is larger than the " + std::to_string(most / 1'000'000) + " MB that may be read", path,
            "check that it is the file you mean"};
}

// What is no plain file may never end, or make the reader wait for ever. Nothing is opened to find out.
Result<void> plain_file(const std::string& path) {
    std::error_code failed;
    const auto state = std::filesystem::status(path, failed);
    if (std::filesystem::is_directory(state)) {
        return Error{Error::Kind::bad_input, "this is a folder, not a file", path, "name a file"};
    }
    if (std::filesystem::exists(state) && !std::filesystem::is_regular_file(state)) {
        return Error{Error::Kind::bad_input, "this is a device or a pipe, not a file", path, "name a file"};
    }
    return {};
}

// Hands a file on piece by piece.
Result<void> each_piece(const std::string& path, const std::function<Result<void>(std::string_view)>& take) {
    if (auto plain = plain_file(path); !plain.ok()) return plain;
    std::ifstream file(path, std::ios::binary);
    if (!file) return Error{Error::Kind::not_found, "the file cannot be read", path, "check its name"};
    std::string piece(1 << 16, '\0');
    while (file) {
        file.read(piece.data(), static_cast<std::streamsize>(piece.size()));
        const auto got = static_cast<std::size_t>(file.gcount());
        if (auto taken = take(std::string_view(piece).substr(0, got)); !taken.ok()) return taken;
    }
    if (file.bad()) return Error{Error::Kind::storage, "the file could not be read to its end", path, ""};
    return {};
}

}  // namespace

void settle_folder(const std::string& path) {
    const std::string folder = std::filesystem::path(path).parent_path().string();
    const int opened = open(folder.empty() ? "." : folder.c_str(), O_RDONLY | O_DIRECTORY);
    if (opened < 0) return;
    fsync(opened);
    close(opened);
}

WholeFile::WholeFile(std::string path, std::string beside, int file)
    : path_(std::move(path)), beside_(std::move(beside)), file_(file) {}

WholeFile::WholeFile(WholeFile&& other) noexcept
    : path_(std::move(other.path_)),
      beside_(std::exchange(other.beside_, "")),
      file_(std::exchange(other.file_, -1)) {}

WholeFile::~WholeFile() {
    if (file_ >= 0) close(file_);
    if (!beside_.empty()) unlink(beside_.c_str());
}

Result<WholeFile> WholeFile::start(const std::string& path) {
    if (path.empty()) return not_written(path, EISDIR);
    std::error_code failed;
    if (std::filesystem::is_directory(path, failed)) return not_written(path, EISDIR);
    if (auto plain = plain_file(path); !plain.ok()) return plain.error();
    std::string beside = path + ".XXXXXX";
    const int file = mkstemp(beside.data());
    if (file < 0) return not_written(path, errno);
    return WholeFile(path, beside, file);
}

Result<void> WholeFile::add(std::string_view bytes) {
    std::size_t done = 0;
    while (done < bytes.size()) {
        const ssize_t now = write(file_, bytes.data() + done, bytes.size() - done);
        if (now < 0 && errno == EINTR) continue;
        if (now < 0) return not_written(path_, errno);
        done += static_cast<std::size_t>(now);
    }
    return {};
}

Result<void> WholeFile::finish() {
    int reason = fsync(file_) == 0 ? 0 : errno;
    if (reason == 0 && fchmod(file_, usual_mode()) != 0) reason = errno;
    if (close(std::exchange(file_, -1)) != 0 && reason == 0) reason = errno;
    if (reason == 0 && std::rename(beside_.c_str(), path_.c_str()) != 0) reason = errno;
    if (reason != 0) return not_written(path_, reason);
    beside_.clear();
    settle_folder(path_);
    return {};
}

Result<void> folder_above(const std::string& folder) {
    std::error_code failed;
    std::filesystem::path full = std::filesystem::absolute(folder, failed).lexically_normal();
    if (!full.has_filename()) full = full.parent_path();  // "stick/" is "stick"
    if (std::filesystem::is_directory(full.parent_path(), failed)) return {};
    return Error{Error::Kind::not_found, "this folder is not there", full.parent_path().string(),
                 "make it, or look whether the name is right and the stick is plugged in"};
}

Result<void> write_whole_file(const std::string& path, const std::string& bytes) {
    auto file = WholeFile::start(path);
    if (!file.ok()) return file.error();
    if (auto added = file.value().add(bytes); !added.ok()) return added;
    return file.value().finish();
}

Result<void> no_larger_than(const std::string& path, std::uint64_t most) {
    if (auto plain = plain_file(path); !plain.ok()) return plain;
    std::error_code failed;
    const auto bytes = std::filesystem::file_size(path, failed);
    if (failed || bytes <= most) return {};
    return too_large(path, most);
}

Result<std::string> read_whole_file(const std::string& path, std::uint64_t most) {
    if (auto fits = no_larger_than(path, most); !fits.ok()) return fits.error();
    std::string text;
    // The size is what the disk told; a file that grows meanwhile is not followed for ever.
    const auto read = each_piece(path, [&](std::string_view piece) -> Result<void> {
        if (text.size() + piece.size() > most) return too_large(path, most);
        text += piece;
        return {};
    });
    if (!read.ok()) return read.error();
    return text;
}

Result<std::string> copy_whole_file(const std::string& from, const std::string& to) {
    auto file = WholeFile::start(to);
    if (!file.ok()) return file.error();
    Sha256 hash;
    const auto copied = each_piece(from, [&](std::string_view piece) {
        hash.add(piece);
        return file.value().add(piece);
    });
    if (!copied.ok()) return copied.error();
    if (auto finished = file.value().finish(); !finished.ok()) return finished.error();
    return hash.digits();
}

std::string sha256_of(std::string_view bytes) {
    Sha256 hash;
    hash.add(bytes);
    return hash.digits();
}

Result<std::string> sha256_of_file(const std::string& path) {
    Sha256 hash;
    const auto read = each_piece(path, [&hash](std::string_view piece) -> Result<void> {
        hash.add(piece);
        return {};
    });
    if (!read.ok()) return read.error();
    return hash.digits();
}

}  // namespace hardover
