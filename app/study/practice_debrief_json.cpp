// The debrief as JSON, for other programs. Names, once written, stay.
#include <nlohmann/json.hpp>

#include "app/study/practice_debrief.hpp"

namespace hardover::study::practice {

namespace {

using nlohmann::ordered_json;

ordered_json json_of(const std::vector<RankLine>& ranking) {
    ordered_json list = ordered_json::array();
    for (const RankLine& line : ranking) {
        list.push_back({{"cause", line.name}, {"probability", line.probability}, {"there", line.true_fault}});
    }
    return list;
}

ordered_json json_of(const DebriefStep& step) {
    return {{"step", step.number},         {"did", step.did},
            {"found", step.found},         {"minutes", step.work},
            {"avoidable", step.avoidable}, {"luck", step.luck},
            {"good", step.good},           {"verdict", step.verdict},
            {"best", step.best},           {"why", step.why},
            {"notes", step.notes},         {"ranking", json_of(step.ranking)}};
}

}  // namespace

std::string debrief_json(const Session& session, const Debrief& debrief) {
    const Ended& ended = debrief.ended;
    const bool over = session.over();  // what the expert took and how right one was tell what is wrong
    std::vector<std::string> skipped;  // a line each
    for (const SkippedCautions& work : debrief.skipped_cautions) {
        for (const std::string& caution : work.cautions) skipped.push_back(work.work + ": " + caution);
    }
    ordered_json json = {{"seed", session.begun().seed},
                         {"level", ended.level},
                         {"guidance", guidance_id(ended.guidance)},
                         {"knowledge", session.knowledge().fingerprint},
                         {"cautions_skipped_first", skipped},
                         {"finished", over},
                         {"cured", ended.cured},
                         {"headline", debrief.headline},
                         {"truth", debrief.truth},
                         {"minutes", ended.minutes},
                         {"expected", ended.expected},
                         {"expert", over ? ordered_json(ended.expert) : ordered_json(nullptr)},
                         {"avoidable", ended.avoidable},
                         {"luck", ended.luck},
                         {"told_nothing", ended.told_nothing},
                         {"unproved", ended.unproved},
                         {"cautions_skipped", ended.cautions_skipped},
                         {"hints", {ended.hints[0], ended.hints[1], ended.hints[2]}},
                         {"statements", ended.statements}};
    json["brier"] = over && ended.statements > 0 ? ordered_json(ended.brier) : ordered_json(nullptr);
    json["habits"] = ordered_json::array();
    for (const Habit& habit : debrief.habits) {
        json["habits"].push_back({{"habit", habit.name}, {"kept", habit.kept}, {"text", habit.text}});
    }
    json["ranking_at_start"] = json_of(debrief.ranking_at_start);
    json["steps"] = ordered_json::array();
    for (const DebriefStep& step : debrief.steps) json["steps"].push_back(json_of(step));
    json["practise"] = debrief.practise;
    return json.dump(2, ' ', false, ordered_json::error_handler_t::replace);
}

}  // namespace hardover::study::practice
