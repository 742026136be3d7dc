// The preferences file: {"theme": "dark", "text_percent": 150}.
#include "app/window/preferences.hpp"

#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

#include "app/jobs/json_fields.hpp"
#include "app/jobs/json_place.hpp"

namespace hardover::window {

namespace {

std::string set_aside_name(const std::string& path) {
    return path + ".unreadable";
}

}  // namespace

Result<Preferences> preferences_of(const std::string& text, const std::string& path) {
    std::string place = json_break(text);
    const nlohmann::json read = shallow_json(text);
    if (place.empty() && !read.is_object()) place = json_place(text, "");
    if (place.empty() && !read.value("theme", nlohmann::json("light")).is_string()) {
        place = json_place(text, "theme");
    }
    const nlohmann::json percent =
        place.empty() ? read.value("text_percent", nlohmann::json(least_text)) : nlohmann::json();
    if (place.empty() && !percent.is_number_integer()) place = json_place(text, "text_percent");
    if (!place.empty()) {
        return Error{Error::Kind::bad_input,
                     "the window's preferences cannot be read, so it starts in light and at 100 %",
                     path + ":" + place,
                     "choose again under Settings; the file as it is goes on as " + set_aside_name(path)};
    }
    Preferences preferences;
    const std::string theme = read.value("theme", "light");
    for (const LookRow& row : looks()) {
        if (row.id == theme) preferences.look = row.look;
    }
    // Compared as they are: a number beyond an int would turn into another one.
    const bool beyond = percent > most_text;
    const bool below = percent < least_text;
    preferences.text_percent = beyond ? most_text : below ? least_text : percent.get<int>();
    return preferences;
}

Result<Preferences> read_preferences(const std::string& path) {
    std::ifstream file(path);
    if (!file) return Preferences();
    std::ostringstream text;
    text << file.rdbuf();
    return preferences_of(text.str(), path);
}

Result<void> write_preferences(const std::string& path, const Preferences& preferences) {
    std::error_code failed;
    const std::filesystem::path folder = std::filesystem::path(path).parent_path();
    if (!folder.empty()) std::filesystem::create_directories(folder, failed);
    // What cannot be read may be somebody's work all the same: it is kept beside.
    if (!read_preferences(path)) std::filesystem::rename(path, set_aside_name(path), failed);
    std::ofstream file(path);
    const nlohmann::json text = {{"theme", look_id(preferences.look)},
                                 {"text_percent", preferences.text_percent}};
    file << text.dump(2) << "\n";
    file.close();
    if (!file) return Error{Error::Kind::storage, "the window preferences cannot be written", path, ""};
    return {};
}

}  // namespace hardover::window
