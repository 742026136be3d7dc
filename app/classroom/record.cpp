#include "app/classroom/record.hpp"

#include <nlohmann/json.hpp>

#include "app/classroom/canonical.hpp"
#include "app/classroom/seal.hpp"
#include "app/jobs/json_fields.hpp"
#include "app/jobs/moment.hpp"
#include "app/study/known_learner.hpp"

namespace hardover::classroom {

namespace {

using nlohmann::json;

constexpr std::size_t id_bytes = 16;

Error not_a_record(const std::string& what) {
    return {Error::Kind::bad_input, "this is no record of a class: " + what, "", ""};
}

struct Body {
    const char* kind = "";
    json fields;
};

struct ToBody {
    Body operator()(const std::monostate&) const { return {"unknown", json::object()}; }
    Body operator()(const Began& began) const { return {"began", {{"knowledge", began.knowledge}}}; }
    Body operator()(const Answered& answered) const {
        json fields = {{"task", answered.task},
                       {"number", answered.number},
                       {"answer", answered.answer},
                       {"seconds", answered.seconds}};
        if (answered.sure) fields["sure"] = *answered.sure;
        if (answered.review) fields["review"] = json::parse(study::review_body(*answered.review));
        return {"answered", fields};
    }
    Body operator()(const Did& did) const {
        const json event = json::parse(study::practice::body_of(did.task, did.event));
        return {"did", {{"task", did.task}, {"event", event}}};
    }
    Body operator()(const TaskDone& done) const {
        json fields = {{"task", done.task}};
        if (done.ended) fields["ended"] = json::parse(study::practice::body_of(done.task, *done.ended));
        return {"task_done", fields};
    }
};

Result<RecordContent> read_answered(const json& read) {
    Answered answered;
    answered.task = whole_at(read, "task");
    answered.number = whole_at(read, "number");
    answered.answer = read.at("answer").get<std::string>();
    answered.seconds = read.at("seconds").get<double>();
    if (read.contains("sure")) answered.sure = read.at("sure").get<double>();
    if (read.contains("review")) {
        const auto review = study::read_review(read.at("review").dump());
        if (!review) return review.error();
        answered.review = review.value();
    }
    return RecordContent(std::move(answered));
}

Result<RecordContent> read_did(const json& read) {
    const auto event = study::practice::read_did(read.at("event").dump());
    if (!event) return event.error();
    return RecordContent(Did{whole_at(read, "task"), event.value().what});
}

Result<RecordContent> read_task_done(const json& read) {
    TaskDone done{whole_at(read, "task"), std::nullopt};
    if (read.contains("ended")) {
        const auto ended = study::practice::read_ended(read.at("ended").dump());
        if (!ended) return ended.error();
        done.ended = ended.value().what;
    }
    return RecordContent(std::move(done));
}

// May throw what the JSON library throws.
Result<RecordContent> read_content(const json& read) {
    if (whole_at(read, "v") != record_version) return RecordContent();
    const std::string kind = read.at("kind").get<std::string>();
    if (kind == "began") return RecordContent(Began{read.at("knowledge").get<std::string>()});
    if (kind == "answered") return read_answered(read);
    if (kind == "did") return read_did(read);
    if (kind == "task_done") return read_task_done(read);
    return RecordContent();
}

}  // namespace

Record make_record(const AttemptOf& of, int sequence, const std::string& at, const RecordContent& content) {
    const Body body = std::visit(ToBody{}, content);
    const int day = study::study_day(at);
    json line = body.fields;
    line["v"] = record_version;
    line["kind"] = body.kind;
    line["set"] = of.set;
    line["sitting"] = of.sitting;
    line["seat"] = of.seat;
    line["attempt"] = of.attempt;
    line["seq"] = sequence;
    line["at"] = at;
    line["day"] = day;
    Record record{canonical(line), "", of, sequence, at, day, content};
    record.id = record_id(record.line);
    return record;
}

Result<Record> read_record(const std::string& line) {
    const json read = shallow_json(line);
    if (!read.is_object()) return not_a_record("no JSON object");
    try {
        Record record;
        record.line = line;
        record.id = record_id(line);
        record.of = {read.at("set").get<std::string>(), read.at("sitting").get<std::string>(),
                     read.at("seat").get<std::string>(), read.at("attempt").get<std::string>()};
        record.sequence = whole_at(read, "seq", 1);
        record.at = read.at("at").get<std::string>();
        if (!is_moment(record.at)) {
            return not_a_record("'" + record.at + "' is not a moment such as 2026-11-25T15:03:13Z");
        }
        record.day = whole_at(read, "day", -1'000'000'000);
        for (const std::string* id : {&record.of.sitting, &record.of.attempt}) {
            if (!from_hex(*id, id_bytes)) return not_a_record("'" + *id + "' is no number of 128 bits");
        }
        auto content = read_content(read);
        if (!content) return content.error();
        record.content = std::move(content).value();
        return record;
    } catch (const json::exception& error) {
        return not_a_record(error.what());
    }
}

std::string chain_over(const std::vector<Record>& records) {
    Bytes last = chain_start();
    for (const Record& record : records) last = chain_next(record_domain, last, record.line);
    return last;
}

}  // namespace hardover::classroom
