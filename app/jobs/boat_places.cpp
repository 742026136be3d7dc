// Where on a drawing the knowledge's findings and causes are, and what the knowledge has at a part. A part of
// a drawing names its place by the knowledge's part; a cause that is on one side only, or at one part only,
// says so by the numeric boat's parameters.
#include <algorithm>
#include <set>

#include "app/jobs/boat_view.hpp"
#include "rules/reasoning/situation.hpp"

namespace hardover {

namespace {

bool ends_with_side(const std::string& id, const std::string& side) {
    return id.size() > side.size() && id.ends_with(side) && id[id.size() - side.size() - 1] == '_';
}

// "port", "starboard", or "" when the names are of both sides or of none.
std::string only_side(const std::vector<std::string>& names) {
    std::set<std::string> sides;
    for (const std::string& name : names) {
        bool any = false;
        for (const char* side : {"starboard", "port"}) {
            if (any || !ends_with_side(name, side)) continue;
            sides.insert(side);
            any = true;
        }
    }
    return sides.size() == 1 ? *sides.begin() : "";
}

std::vector<std::string> parts_at(const Knowledge& knowledge, const drawing::Drawing& drawing, Index place,
                                  const std::string& side) {
    std::vector<std::string> all, of_side;
    if (place == none) return all;
    const std::string& id = knowledge.parts[static_cast<std::size_t>(place)].id;
    for (const drawing::Part& part : drawing.parts) {
        if (part.place != id) continue;
        all.push_back(part.id);
        if (!side.empty() && ends_with_side(part.id, side)) of_side.push_back(part.id);
    }
    return of_side.empty() ? all : of_side;
}

}  // namespace

std::vector<PossibleFault> possible_faults(const PreparedKnowledge& prepared, const Facts& facts) {
    const Knowledge& knowledge = prepared.knowledge();
    Situation situation(prepared, facts);
    std::vector<std::pair<Index, PossibleFault>> found;
    for (const Cause& cause : knowledge.causes) {
        if (cause.on_the_rig.empty() || situation.holds(cause.possible_when) == Truth::no) continue;
        const std::string part =
            cause.part == none ? "" : knowledge.parts[static_cast<std::size_t>(cause.part)].name;
        found.push_back({cause.part, {cause.id, cause.name, part, cause.about}});
    }
    std::stable_sort(found.begin(), found.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    std::vector<PossibleFault> faults;
    for (auto& [part, fault] : found) faults.push_back(std::move(fault));
    return faults;
}

std::vector<std::string> parts_of_cause(const Knowledge& knowledge, const drawing::Drawing& drawing,
                                        const std::string& cause) {
    const Index index = find(knowledge.causes, cause);
    if (index == none) return {};
    const Cause& found = knowledge.causes[static_cast<std::size_t>(index)];
    std::vector<std::string> parameters;
    for (const ModelChange& change : found.on_the_rig) parameters.push_back(change.parameter);
    // "second_helm.leak_port" is at the part second_helm.
    for (const std::string& parameter : parameters) {
        const std::string part = parameter.substr(0, parameter.find('.'));
        if (drawing::find_part(drawing, part) != nullptr) return {part};
    }
    return parts_at(knowledge, drawing, found.part, only_side(parameters));
}

std::vector<std::string> parts_of_finding(const Knowledge& knowledge, const drawing::Drawing& drawing,
                                          const std::string& finding) {
    const Index index = find(knowledge.findings, finding);
    if (index == none) return {};
    const Finding& found = knowledge.findings[static_cast<std::size_t>(index)];
    return parts_at(knowledge, drawing, found.part, only_side({found.id, found.gauge}));
}

PartPlace place_of_part(const PreparedKnowledge& prepared, const Facts& facts,
                        const drawing::Drawing& drawing, const std::string& part) {
    PartPlace place;
    place.part = part;
    const drawing::Part* drawn = drawing::find_part(drawing, part);
    if (drawn == nullptr) return place;
    const Knowledge& knowledge = prepared.knowledge();
    place.words = drawn->words;
    const Index index = find(knowledge.parts, drawn->place);
    if (index != none) place.place = knowledge.parts[static_cast<std::size_t>(index)].name;
    Situation situation(prepared, facts);
    const auto here = [&](const std::vector<std::string>& parts) {
        return std::find(parts.begin(), parts.end(), part) != parts.end();
    };
    for (const Finding& finding : knowledge.findings) {
        if (situation.holds(finding.possible_when) == Truth::no) continue;
        if (here(parts_of_finding(knowledge, drawing, finding.id)))
            place.findings.push_back({finding.id, finding.name});
    }
    for (const Cause& cause : knowledge.causes) {
        if (situation.holds(cause.possible_when) == Truth::no) continue;
        if (here(parts_of_cause(knowledge, drawing, cause.id)))
            place.causes.push_back({cause.id, cause.name});
    }
    return place;
}

}  // namespace hardover
