#include "app/window/hand_back.hpp"

namespace hardover::window {

const CauseLine* cause_shown(const JobPage& page, const std::string& cause) {
    for (const auto* lines : {&page.put_right, &page.causes}) {
        for (const CauseLine& line : *lines) {
            if (line.id == cause) return &line;
        }
    }
    return nullptr;
}

std::vector<std::string> causes_ticked(const JobView& view, const JobPage& page) {
    if (view.hand_back_causes) return *view.hand_back_causes;
    std::vector<std::string> causes;
    for (const CauseLine& line : page.put_right) causes.push_back(line.id);
    return causes;
}

std::vector<RecordedCause> causes_told(const JobView& view, const JobPage& page) {
    std::vector<RecordedCause> told;
    for (const std::string& cause : causes_ticked(view, page)) {
        const auto seen = view.hand_back_seen.find(cause);
        told.push_back({cause, seen != view.hand_back_seen.end() && seen->second});
    }
    return told;
}

std::string why_not_handed_back(const JobView& view, const JobPage& page) {
    const std::vector<std::string> causes = causes_ticked(view, page);
    if (causes.empty()) return "Say first what it was.";
    for (const std::string& cause : causes) {
        const CauseLine* line = cause_shown(page, cause);
        const bool proved = line != nullptr && line->proved;
        if (proved || view.hand_back_seen.contains(cause)) continue;
        return causes.size() == 1 ? "Say first whether it was seen and proved."
                                  : "Say first of each whether it was seen and proved.";
    }
    return "";
}

}  // namespace hardover::window
