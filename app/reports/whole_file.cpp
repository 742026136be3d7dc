#include "app/reports/whole_file.hpp"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <filesystem>

namespace hardover {

namespace {

Error not_written(const std::string& path, int reason) {
    const bool no_room = reason == ENOSPC || reason == EDQUOT || reason == EFBIG;
    return {
        Error::Kind::storage, std::string("the file cannot be written: ") + std::strerror(reason), path,
        no_room ? "make room on the disk and write it again" : "name a file in a folder you may write to"};
}

// Gives errno, or 0.
int write_all(int file, const std::string& bytes) {
    std::size_t done = 0;
    while (done < bytes.size()) {
        const ssize_t now = write(file, bytes.data() + done, bytes.size() - done);
        if (now < 0 && errno == EINTR) continue;
        if (now < 0) return errno;
        done += static_cast<std::size_t>(now);
    }
    return fsync(file) == 0 ? 0 : errno;
}

// What a file made in the usual way may be read and written by.
mode_t usual_mode() {
    const mode_t mask = umask(0);
    umask(mask);
    return 0666 & ~mask;
}

}  // namespace

Result<void> write_whole_file(const std::string& path, const std::string& bytes) {
    std::error_code failed;
    if (path.empty() || std::filesystem::is_directory(path, failed)) return not_written(path, EISDIR);
    std::string beside = path + ".XXXXXX";
    const int file = mkstemp(beside.data());
    if (file < 0) return not_written(path, errno);
    int reason = write_all(file, bytes);
    if (reason == 0 && fchmod(file, usual_mode()) != 0) reason = errno;
    if (close(file) != 0 && reason == 0) reason = errno;
    if (reason == 0 && std::rename(beside.c_str(), path.c_str()) != 0) reason = errno;
    if (reason == 0) return {};
    unlink(beside.c_str());
    return not_written(path, reason);
}

}  // namespace hardover
