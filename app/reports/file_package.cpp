#include "app/reports/file_package.hpp"

#include <zip.h>

#include <filesystem>
#include <memory>

#include "app/records/folded.hpp"
#include "app/records/whole_file.hpp"

namespace hardover {

namespace {

constexpr std::time_t written = 946684800;  // 2000-01-01: no clock, so that equal files give equal bytes

Error zip_error(zip_error_t* error, const std::string& path) {
    return {Error::Kind::unsupported,
            std::string("the zip file cannot be put together: ") + zip_error_strerror(error), path,
            "write to a folder instead"};
}

Result<std::string> zipped(const std::string& path, const std::vector<PackageFile>& files) {
    zip_error_t error;
    zip_error_init(&error);
    zip_source_t* buffer = zip_source_buffer_create(nullptr, 0, 0, &error);
    if (buffer == nullptr) return zip_error(&error, path);
    const std::unique_ptr<zip_source_t, decltype(&zip_source_free)> kept(buffer, zip_source_free);
    zip_source_keep(buffer);  // closing the archive gives one hold away
    zip_t* archive = zip_open_from_source(buffer, ZIP_TRUNCATE, &error);
    if (archive == nullptr) {
        zip_source_free(buffer);
        return zip_error(&error, path);
    }
    for (const PackageFile& file : files) {
        zip_source_t* source = zip_source_buffer(archive, file.bytes.data(), file.bytes.size(), 0);
        const zip_int64_t index = zip_file_add(archive, file.name.c_str(), source, ZIP_FL_ENC_UTF_8);
        if (index < 0) {
            zip_source_free(source);
            const Error failed = zip_error(zip_get_error(archive), path);
            zip_discard(archive);
            return failed;
        }
        zip_file_set_mtime(archive, static_cast<zip_uint64_t>(index), written, 0);
        zip_file_set_external_attributes(archive, static_cast<zip_uint64_t>(index), 0, ZIP_OPSYS_UNIX,
                                         0100644U << 16U);
    }
    if (zip_close(archive) != 0) {
        const Error failed = zip_error(zip_get_error(archive), path);
        zip_discard(archive);
        return failed;
    }
    zip_stat_t stat;
    zip_source_stat(buffer, &stat);
    std::string bytes(static_cast<std::size_t>(stat.size), '\0');
    zip_source_open(buffer);
    zip_source_read(buffer, bytes.data(), bytes.size());
    zip_source_close(buffer);
    return bytes;
}

}  // namespace

bool is_zip_name(const std::string& path) {
    return folded(std::filesystem::path(path).extension().string()) == ".zip";
}

Result<void> demand_empty_folder(const std::string& path) {
    std::error_code failed;
    if (!std::filesystem::is_directory(path, failed) || std::filesystem::is_empty(path, failed)) return {};
    return Error{Error::Kind::bad_input, "there are files in this folder already, which would mix with these",
                 path, "name a new folder, or a zip file"};
}

Result<void> write_package(const std::string& path, const std::vector<PackageFile>& files) {
    const std::filesystem::path out(path);
    if (is_zip_name(path)) {
        const Result<std::string> bytes = zipped(path, files);
        return bytes ? write_whole_file(path, bytes.value()) : Result<void>(bytes.error());
    }
    if (auto there = folder_above(path); !there.ok()) return there;
    for (const PackageFile& file : files) {
        const std::filesystem::path place = out / file.name;
        std::error_code failed;
        std::filesystem::create_directories(place.parent_path(), failed);
        if (failed) {
            return Error{Error::Kind::bad_input, "the folder cannot be made: " + failed.message(),
                         place.parent_path().string(), "name another folder"};
        }
        if (const auto done = write_whole_file(place.string(), file.bytes); !done) return done.error();
    }
    return {};
}

}  // namespace hardover
