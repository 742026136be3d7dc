// The preferences file: {"theme": "dark", "text_percent": 150, "projector_percent": 200, "still": false}.
#include "app/window/preferences.hpp"

#include <algorithm>
#include <cstdint>
#include <filesystem>
#include <nlohmann/json.hpp>

#include "app/jobs/json_fields.hpp"
#include "app/jobs/json_place.hpp"
#include "app/records/whole_file.hpp"

namespace hardover::window {

namespace {

std::string set_aside_name(const std::string& path) {
    return path + ".unreadable";
}

// Where the text is not what is written here, as "line:column"; "": nowhere. What lacks is as usual.
std::string wrong_place(const std::string& text, const nlohmann::json& read) {
    const std::string broken = json_break(text);
    if (!broken.empty()) return broken;
    if (!read.is_object()) return json_place(text, "");
    const auto fits = [&](const char* name, bool (*is)(const nlohmann::json&)) {
        return !read.contains(name) || is(read[name]);
    };
    if (!fits("theme", [](const nlohmann::json& value) { return value.is_string(); })) {
        return json_place(text, "theme");
    }
    for (const char* name : {"text_percent", "projector_percent"}) {
        if (!fits(name, [](const nlohmann::json& value) { return value.is_number_integer(); })) {
            return json_place(text, name);
        }
    }
    if (!fits("still", [](const nlohmann::json& value) { return value.is_boolean(); })) {
        return json_place(text, "still");
    }
    return {};
}

// Looked at as wide as it is: a number beyond an int would turn into another one.
int percent_of(const nlohmann::json& read, const char* name, int usual) {
    const nlohmann::json percent = read.value(name, nlohmann::json(usual));
    if (percent.is_number_unsigned()) {
        const auto wide = std::min<std::uint64_t>(percent.get<std::uint64_t>(), most_text);
        return std::max(static_cast<int>(wide), least_text);
    }
    const auto wide = std::clamp<std::int64_t>(percent.get<std::int64_t>(), least_text, most_text);
    return static_cast<int>(wide);
}

}  // namespace

Result<Preferences> preferences_of(const std::string& text, const std::string& path) {
    const nlohmann::json read = shallow_json(text);
    const std::string place = wrong_place(text, read);
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
    preferences.text_percent = percent_of(read, "text_percent", 100);
    preferences.projector_percent = percent_of(read, "projector_percent", 200);
    preferences.still = read.value("still", false);
    return preferences;
}

Result<Preferences> read_preferences(const std::string& path) {
    const Result<std::string> text = read_whole_file(path);
    if (text) return preferences_of(text.value(), path);
    if (text.error().kind == Error::Kind::not_found) return Preferences();
    return text.error();
}

Result<void> write_preferences(const std::string& path, const Preferences& preferences) {
    std::error_code failed;
    const std::filesystem::path folder = std::filesystem::path(path).parent_path();
    if (!folder.empty()) std::filesystem::create_directories(folder, failed);
    // What cannot be read may be somebody's work all the same: it is kept beside.
    if (!read_preferences(path)) std::filesystem::rename(path, set_aside_name(path), failed);
    const nlohmann::json text = {{"theme", look_id(preferences.look)},
                                 {"text_percent", preferences.text_percent},
                                 {"projector_percent", preferences.projector_percent},
                                 {"still", preferences.still}};
    const Result<void> written = write_whole_file(path, text.dump(2) + "\n");
    if (written) return {};
    return Error{Error::Kind::storage, "the window preferences cannot be written: " + written.error().what,
                 path, written.error().cure};
}

}  // namespace hardover::window
