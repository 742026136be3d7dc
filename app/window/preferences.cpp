// The preferences file: {"theme": "dark", "text_percent": 150}.
#include "app/window/preferences.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>

namespace hardover::window {

Result<Preferences> read_preferences(const std::string& path) {
    Preferences preferences;
    std::ifstream file(path);
    if (!file) return preferences;
    const nlohmann::json read = nlohmann::json::parse(file, nullptr, false);
    const bool fits = read.is_object() && read.value("theme", nlohmann::json("light")).is_string() &&
                      read.value("text_percent", nlohmann::json(100)).is_number_integer();
    if (!fits) {
        return Error{Error::Kind::bad_input, "this is not a file of window preferences", path,
                     "remove it, and it is written anew"};
    }
    preferences.look = read.value("theme", "light") == "dark" ? Look::dark : Look::light;
    preferences.text_percent = std::clamp(read.value("text_percent", 100), least_text, most_text);
    return preferences;
}

Result<void> write_preferences(const std::string& path, const Preferences& preferences) {
    std::error_code failed;
    const std::filesystem::path folder = std::filesystem::path(path).parent_path();
    if (!folder.empty()) std::filesystem::create_directories(folder, failed);
    std::ofstream file(path);
    const nlohmann::json text = {{"theme", preferences.look == Look::dark ? "dark" : "light"},
                                 {"text_percent", preferences.text_percent}};
    file << text.dump(2) << "\n";
    file.close();
    if (!file) return Error{Error::Kind::storage, "the window preferences cannot be written", path, ""};
    return {};
}

}  // namespace hardover::window
