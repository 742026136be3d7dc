#include "app/study/practice_event.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "app/jobs/json_fields.hpp"

namespace hardover::study::practice {

namespace {

using nlohmann::json;

constexpr const char* guidance_ids[] = {"worked", "half", "nudged", "unaided"};

std::string text_of(const json& body) {
    return body.dump(-1, ' ', false, json::error_handler_t::replace);
}

struct ToJson {
    json operator()(const Asked& e) const { return {{"did", "asked"}, {"finding", e.finding}}; }
    json operator()(const WorkedOut& e) const { return {{"did", "worked_out"}, {"worksheet", e.worksheet}}; }
    json operator()(const Suspected& e) const {
        return {{"did", "suspected"}, {"cause", e.cause}, {"sure", e.sure}};
    }
    json operator()(const Named& e) const { return {{"did", "named"}, {"cause", e.cause}, {"sure", e.sure}}; }
    json operator()(const Hinted& e) const { return {{"did", "hinted"}, {"level", e.level}}; }
    json operator()(const Precautions& e) const {
        return {{"did", "precautions"}, {"work", e.work}, {"named", e.named}, {"skipped", e.skipped}};
    }
    json operator()(const Proved& e) const { return {{"did", "proved"}, {"cause", e.cause}}; }
    json operator()(const Remedied& e) const { return {{"did", "remedied"}, {"remedy", e.remedy}}; }
    json operator()(const HandedOver& e) const { return {{"did", "handed_over"}, {"checked", e.checked}}; }
    json operator()(const GaveUp&) const { return {{"did", "gave_up"}}; }
    json operator()(const Reflected& e) const { return {{"did", "reflected"}, {"text", e.text}}; }
};

// An event of kind `did`; a kind that is not known is refused by the fields.
PracticeEvent event_of(const std::string& did, JsonFields& fields) {
    // Braces, not parentheses: they fix the order in which the fields are asked for.
    if (did == "asked") return Asked{fields.text("finding")};
    if (did == "worked_out") return WorkedOut{fields.text("worksheet")};
    if (did == "suspected") return Suspected{fields.text("cause"), fields.chance("sure")};
    if (did == "named") return Named{fields.text("cause"), fields.chance("sure")};
    if (did == "hinted") return Hinted{fields.count("level")};
    if (did == "precautions") {
        return Precautions{fields.text("work"), fields.texts("named"), fields.flag("skipped")};
    }
    if (did == "proved") return Proved{fields.text("cause")};
    if (did == "remedied") return Remedied{fields.text("remedy")};
    if (did == "handed_over") return HandedOver{fields.flag("checked")};
    if (did == "reflected") return Reflected{fields.text("text")};
    if (did != "gave_up") fields.refuse("tells of '" + did + "', which is not known");
    return GaveUp{};
}

Guidance guidance_in(JsonFields& fields) {
    const Result<Guidance> guidance = read_guidance(fields.text("guidance"));
    if (!guidance) fields.refuse("has a 'guidance' that is not worked, half, nudged or unaided");
    return guidance ? guidance.value() : Guidance::unaided;
}

template <typename T>
Result<T> given(T read, const JsonFields& fields) {
    if (fields.fault().empty()) return read;
    return Error{Error::Kind::bad_input, "this is not an event of a practice boat: it " + fields.fault(), "",
                 ""};
}

}  // namespace

std::string guidance_id(Guidance guidance) {
    return guidance_ids[static_cast<std::size_t>(guidance)];
}

Result<Guidance> read_guidance(const std::string& id) {
    for (std::size_t g = 0; g < std::size(guidance_ids); ++g) {
        if (id == guidance_ids[g]) return static_cast<Guidance>(g);
    }
    return Error{Error::Kind::bad_input, "there is no guidance '" + id + "'", "",
                 "worked, half, nudged or unaided"};
}

std::string body_of(const Begun& begun) {
    return text_of({{"seed", begun.seed},
                    {"level", begun.level},
                    {"guidance", guidance_id(begun.guidance)},
                    {"knowledge", begun.knowledge},
                    {"day", begun.day}});
}

std::string body_of(int practice, const PracticeEvent& event) {
    json body = std::visit(ToJson{}, event);
    body["practice"] = practice;
    return text_of(body);
}

std::string body_of(int practice, const Ended& ended) {
    return text_of({{"practice", practice},
                    {"cured", ended.cured},
                    {"minutes", ended.minutes},
                    {"expected", ended.expected},
                    {"expert", ended.expert},
                    {"avoidable", ended.avoidable},
                    {"luck", ended.luck},
                    {"hints", {ended.hints[0], ended.hints[1], ended.hints[2]}},
                    {"unproved", ended.unproved},
                    {"cautions_skipped", ended.cautions_skipped},
                    {"told_nothing", ended.told_nothing},
                    {"statements", ended.statements},
                    {"brier", ended.brier},
                    {"level", ended.level},
                    {"guidance", guidance_id(ended.guidance)}});
}

Result<Begun> read_begun(const std::string& body) {
    JsonFields fields(body);
    Begun begun;
    begun.seed = fields.seed("seed");
    begun.level = fields.count("level");
    begun.knowledge = fields.text("knowledge");
    begun.day = fields.day("day");
    begun.guidance = guidance_in(fields);
    return given(begun, fields);
}

Result<OfPractice<PracticeEvent>> read_did(const std::string& body) {
    JsonFields fields(body);
    const std::string did = fields.text("did");
    const int practice = fields.count("practice");
    return given(OfPractice<PracticeEvent>{practice, event_of(did, fields)}, fields);
}

Result<OfPractice<Ended>> read_ended(const std::string& body) {
    JsonFields fields(body);
    Ended ended;
    ended.cured = fields.flag("cured");
    ended.minutes = fields.number("minutes");
    ended.expected = fields.number("expected");
    ended.expert = fields.number("expert");
    ended.avoidable = fields.number("avoidable");
    ended.luck = fields.number("luck");
    const std::vector<int> hints = fields.counts("hints", std::size(ended.hints));
    std::copy(hints.begin(), hints.end(), ended.hints);
    ended.unproved = fields.count("unproved");
    ended.cautions_skipped = fields.count("cautions_skipped");
    ended.told_nothing = fields.count("told_nothing");
    ended.statements = fields.count("statements");
    ended.brier = fields.number("brier");
    ended.level = fields.count("level");
    ended.guidance = guidance_in(fields);
    const int practice = fields.count("practice");
    return given(OfPractice<Ended>{practice, ended}, fields);
}

}  // namespace hardover::study::practice
