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

// Hands a file on piece by piece.
Result<void> each_piece(const std::string& path, const std::function<Result<void>(std::string_view)>& take) {
    std::error_code failed;
    if (std::filesystem::is_directory(path, failed)) {
        return Error{Error::Kind::bad_input, "this is a folder, not a file", path, "name a file"};
    }
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
    std::error_code failed;
    if (path.empty() || std::filesystem::is_directory(path, failed)) return not_written(path, EISDIR);
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

Result<void> write_whole_file(const std::string& path, const std::string& bytes) {
    auto file = WholeFile::start(path);
    if (!file.ok()) return file.error();
    if (auto added = file.value().add(bytes); !added.ok()) return added;
    return file.value().finish();
}

Result<std::string> read_whole_file(const std::string& path) {
    std::string text;
    const auto read = each_piece(path, [&text](std::string_view piece) -> Result<void> {
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
