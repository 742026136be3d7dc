#include "app/terminal/places.hpp"

#include <cstdlib>
#include <filesystem>

namespace hardover {

namespace {

std::string environment(const char* name) {
    const char* value = std::getenv(name);
    return value == nullptr ? "" : value;
}

// An installed program goes first: what lies beside its bin folder may be anybody's.
Result<std::string> shipped_folder(const std::string& name) {
    std::error_code failed;
    const std::filesystem::path program =
        std::filesystem::read_symlink("/proc/self/exe", failed).parent_path();
    const std::filesystem::path installed = (program / HARDOVER_DATA_FROM_PROGRAM / name).lexically_normal();
    const std::filesystem::path built = program.parent_path() / name;
    for (const std::filesystem::path& folder : {installed, built}) {
        if (std::filesystem::is_directory(folder, failed)) return folder.string();
    }
    return Error{
        Error::Kind::not_found,
        "the program's folder '" + name + "' is neither " + installed.string() + " nor " + built.string(), "",
        name == "knowledge" ? "name one with --knowledge FOLDER" : "install the program again"};
}

}  // namespace

Result<std::string> shipped_knowledge_folder() {
    const std::string chosen = environment("HARDOVER_KNOWLEDGE");
    if (!chosen.empty()) return chosen;
    return shipped_folder("knowledge");
}

Result<std::string> shipped_assets_folder() {
    const std::string chosen = environment("HARDOVER_ASSETS");
    if (!chosen.empty()) return chosen;
    return shipped_folder("assets");
}

Result<std::string> user_data_folder() {
    const std::string data = environment("XDG_DATA_HOME");
    // The XDG Base Directory specification: a path that is not absolute is to be ignored.
    if (data.starts_with('/')) return data + "/hardover";
    const std::string home = environment("HOME");
    if (!home.empty()) return home + "/.local/share/hardover";
    return Error{
        Error::Kind::not_found,
        "there is no folder for the records: neither XDG_DATA_HOME names one from / on, nor is HOME set", "",
        "name the records file with --records FILE"};
}

}  // namespace hardover
