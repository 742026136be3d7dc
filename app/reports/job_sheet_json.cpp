// The job sheet as JSON, for other programs and for looking into.
#include "app/reports/job_sheet.hpp"

namespace hardover {

using nlohmann::ordered_json;

namespace {

ordered_json notes_json(const std::vector<SheetNote>& notes) {
    ordered_json list = ordered_json::array();
    for (const SheetNote& note : notes) list.push_back({{"name", note.name}, {"text", note.text}});
    return list;
}

ordered_json cause_json(const SheetCause& cause) {
    return {
        {"name", cause.name},      {"certainty", cause.certainty},    {"proof", cause.proof},
        {"for", cause.speaks_for}, {"against", cause.speaks_against}, {"also_possible", cause.also_possible},
        {"note", cause.note}};
}

ordered_json causes_json(const std::vector<SheetCause>& causes) {
    ordered_json list = ordered_json::array();
    for (const SheetCause& cause : causes) list.push_back(cause_json(cause));
    return list;
}

ordered_json work_json(const std::vector<SheetWork>& work) {
    ordered_json list = ordered_json::array();
    for (const SheetWork& done : work) {
        list.push_back(
            {{"day", done.day}, {"remedy", done.remedy}, {"outcome", done.outcome}, {"parts", done.parts}});
    }
    return list;
}

ordered_json findings_json(const std::vector<SheetFinding>& findings) {
    ordered_json list = ordered_json::array();
    for (const SheetFinding& finding : findings) {
        list.push_back({{"name", finding.name},
                        {"found", finding.found},
                        {"sound", finding.sound},
                        {"origin", finding.origin},
                        {"off", finding.off}});
    }
    return list;
}

ordered_json sketch_json(const JobSheet& sheet) {
    if (!sheet.sketch) return {{"note", sheet.sketch_note}};
    return {{"behind", drawing::in_words(sheet.sketch->behind)},
            {"above", drawing::in_words(sheet.sketch->above)},
            {"note", sheet.sketch_note}};
}

}  // namespace

ordered_json job_sheet_json(const JobSheet& sheet) {
    return {{"shop", sheet.shop},
            {"day", sheet.day},
            {"at", sheet.at},
            {"job", sheet.number},
            {"boat", sheet.boat},
            {"opened", sheet.opened},
            {"state", sheet.state},
            {"stops", notes_json(sheet.stops)},
            {"words", sheet.words},
            {"complaints", sheet.complaints},
            {"history", sheet.history},
            {"cause", cause_json(sheet.cause)},
            {"further_causes", causes_json(sheet.further_causes)},
            {"work", work_json(sheet.work)},
            {"findings", findings_json(sheet.findings)},
            {"figures", sheet.figures},
            {"figure_sources", sheet.figure_sources},
            {"after", sheet.after},
            {"cautions", notes_json(sheet.cautions)},
            {"deferrals", notes_json(sheet.deferrals)},
            {"rig", notes_json(sheet.rig)},
            {"assumptions", sheet.assumptions},
            {"notes", sheet.notes},
            {"photos", sheet.photos},
            {"sketch", sketch_json(sheet)}};
}

}  // namespace hardover
