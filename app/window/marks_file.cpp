// {"frame": 12, "settled": true, "scale": 1, "marks": [{"id": ..., "text": ..., "box": [x, y, w, h], ...}]}
#include "app/window/marks_file.hpp"

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>

namespace hardover::window {

namespace {

nlohmann::json box_json(const Box& box) {
    return {box.x, box.y, box.w, box.h};
}

}  // namespace

std::string marks_file_wanted() {
    const char* named = std::getenv("HARDOVER_MARKS");
    return named == nullptr ? "" : named;
}

Result<void> write_marks(const std::string& path, const MarksOfFrame& told) {
    nlohmann::json marks = nlohmann::json::array();
    for (const Mark& mark : told.marks) {
        marks.push_back({{"id", mark.id},
                         {"text", mark.text},
                         {"box", box_json(mark.box)},
                         {"visible", box_json(mark.visible)},
                         {"control", mark.control},
                         {"enabled", mark.enabled},
                         {"focused", mark.focused},
                         {"selected", mark.selected},
                         {"cut", mark.cut}});
    }
    const nlohmann::json all = {
        {"frame", told.frame}, {"settled", told.settled}, {"scale", told.scale}, {"marks", marks}};
    const std::string unfinished = path + ".unfinished";
    std::ofstream file(unfinished);
    file << all.dump();
    file.close();
    std::error_code failed;
    if (file) std::filesystem::rename(unfinished, path, failed);
    if (!file || failed) return Error{Error::Kind::storage, "the marks cannot be written", path, ""};
    return {};
}

}  // namespace hardover::window
