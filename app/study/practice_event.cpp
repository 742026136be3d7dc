#include "app/study/practice_event.hpp"

#include <nlohmann/json.hpp>

namespace hardover::study::practice {

namespace {

using nlohmann::json;

constexpr const char* guidance_ids[] = {"worked", "half", "nudged", "unaided"};

Error not_practice(const std::string& what) {
    return {Error::Kind::bad_input, "this is not an event of a practice boat: " + what, "", ""};
}

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

PracticeEvent event_of(const std::string& did, const json& body) {
    const auto text = [&](const char* key) { return body.at(key).get<std::string>(); };
    const auto sure = [&] { return body.at("sure").get<double>(); };
    if (did == "asked") return Asked{text("finding")};
    if (did == "worked_out") return WorkedOut{text("worksheet")};
    if (did == "suspected") return Suspected{text("cause"), sure()};
    if (did == "named") return Named{text("cause"), sure()};
    if (did == "hinted") return Hinted{body.at("level").get<int>()};
    if (did == "precautions") {
        return Precautions{text("work"), body.at("named").get<std::vector<std::string>>(),
                           body.at("skipped").get<bool>()};
    }
    if (did == "proved") return Proved{text("cause")};
    if (did == "remedied") return Remedied{text("remedy")};
    if (did == "handed_over") return HandedOver{body.at("checked").get<bool>()};
    if (did == "reflected") return Reflected{text("text")};
    return GaveUp{};
}

bool is_known(const std::string& did) {
    for (const char* known : {"asked", "worked_out", "suspected", "named", "hinted", "precautions", "proved",
                              "remedied", "handed_over", "gave_up", "reflected"}) {
        if (did == known) return true;
    }
    return false;
}

// Reads a body with `take`, which may throw what the JSON library throws.
template <typename T, typename Take>
Result<T> read(const std::string& body, Take take) {
    const json parsed = json::parse(body, nullptr, false);
    if (!parsed.is_object()) return not_practice("no JSON object");
    try {
        return take(parsed);
    } catch (const json::exception& error) {
        return not_practice(error.what());
    }
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
    return read<Begun>(body, [](const json& from) -> Result<Begun> {
        Begun begun;
        begun.seed = from.at("seed").get<std::uint64_t>();
        begun.level = from.at("level").get<int>();
        begun.knowledge = from.at("knowledge").get<std::string>();
        begun.day = from.at("day").get<int>();
        const Result<Guidance> guidance = read_guidance(from.at("guidance").get<std::string>());
        if (!guidance) return guidance.error();
        begun.guidance = guidance.value();
        return begun;
    });
}

Result<OfPractice<PracticeEvent>> read_did(const std::string& body) {
    return read<OfPractice<PracticeEvent>>(body, [](const json& from) -> Result<OfPractice<PracticeEvent>> {
        const std::string did = from.at("did").get<std::string>();
        if (!is_known(did)) return not_practice("'" + did + "'");
        return OfPractice<PracticeEvent>{from.at("practice").get<int>(), event_of(did, from)};
    });
}

Result<OfPractice<Ended>> read_ended(const std::string& body) {
    return read<OfPractice<Ended>>(body, [](const json& from) -> Result<OfPractice<Ended>> {
        Ended ended;
        ended.cured = from.at("cured").get<bool>();
        ended.minutes = from.at("minutes").get<double>();
        ended.expected = from.at("expected").get<double>();
        ended.expert = from.at("expert").get<double>();
        ended.avoidable = from.at("avoidable").get<double>();
        ended.luck = from.at("luck").get<double>();
        for (std::size_t i = 0; i < 3; ++i) ended.hints[i] = from.at("hints").at(i).get<int>();
        ended.unproved = from.at("unproved").get<int>();
        ended.cautions_skipped = from.at("cautions_skipped").get<int>();
        ended.told_nothing = from.at("told_nothing").get<int>();
        ended.statements = from.at("statements").get<int>();
        ended.brier = from.at("brier").get<double>();
        ended.level = from.at("level").get<int>();
        const Result<Guidance> guidance = read_guidance(from.at("guidance").get<std::string>());
        if (!guidance) return guidance.error();
        ended.guidance = guidance.value();
        return OfPractice<Ended>{from.at("practice").get<int>(), ended};
    });
}

}  // namespace hardover::study::practice
