// The preferences file: {"theme": "dark", "text_percent": 150, "projector_percent": 200, "still": false}.
#include "app/window/preferences.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>

namespace hardover::window {

namespace {

std::string set_aside_name(const std::string& path) {
    return path + ".unreadable";
}

}  // namespace

Result<Preferences> read_preferences(const std::string& path) {
    Preferences preferences;
    std::ifstream file(path);
    if (!file) return preferences;
    const nlohmann::json read = nlohmann::json::parse(file, nullptr, false);
    const bool fits = read.is_object() && read.value("theme", nlohmann::json("light")).is_string() &&
                      read.value("text_percent", nlohmann::json(100)).is_number_integer() &&
                      read.value("projector_percent", nlohmann::json(200)).is_number_integer() &&
                      read.value("still", nlohmann::json(false)).is_boolean();
    if (!fits) {
        return Error{Error::Kind::bad_input,
                     "the window's preferences cannot be read, so it starts in light and at 100 %", path,
                     "choose again under Settings; the file as it is goes on as " + set_aside_name(path)};
    }
    const std::string theme = read.value("theme", "light");
    for (const LookRow& row : looks()) {
        if (row.id == theme) preferences.look = row.look;
    }
    preferences.text_percent = std::clamp(read.value("text_percent", 100), least_text, most_text);
    preferences.projector_percent = std::clamp(read.value("projector_percent", 200), least_text, most_text);
    preferences.still = read.value("still", false);
    return preferences;
}

Result<void> write_preferences(const std::string& path, const Preferences& preferences) {
    std::error_code failed;
    const std::filesystem::path folder = std::filesystem::path(path).parent_path();
    if (!folder.empty()) std::filesystem::create_directories(folder, failed);
    // What cannot be read may be somebody's work all the same: it is kept beside.
    if (!read_preferences(path)) std::filesystem::rename(path, set_aside_name(path), failed);
    std::ofstream file(path);
    const nlohmann::json text = {{"theme", look_id(preferences.look)},
                                 {"text_percent", preferences.text_percent},
                                 {"projector_percent", preferences.projector_percent},
                                 {"still", preferences.still}};
    file << text.dump(2) << "\n";
    file.close();
    if (!file) return Error{Error::Kind::storage, "the window preferences cannot be written", path, ""};
    return {};
}

}  // namespace hardover::window
