// Events to JSON and back. The names of kinds and fields are part of the records' form: once written, they
// stay.
#include "app/jobs/event.hpp"

#include <nlohmann/json.hpp>
#include <set>

#include "app/jobs/json_fields.hpp"

namespace hardover {

namespace {

using nlohmann::json;

template <typename... Parts>
struct Overloaded : Parts... {
    using Parts::operator()...;
};
template <typename... Parts>
Overloaded(Parts...) -> Overloaded<Parts...>;

StoredEvent stored(const char* kind, const json& body) {
    // Letters that are no UTF-8 are replaced: a note pasted from elsewhere must not lose the event.
    return {0, "", kind, body.dump(-1, ' ', false, json::error_handler_t::replace)};
}

// Four texts, or nothing where an older program did not write it.
AssessedMark assessed_mark(JsonFields& fields) {
    const std::vector<std::string> texts =
        fields.texts_in("assessed", {"knowledge", "odds", "found", "ranked"});
    if (texts.empty()) return {};
    return {texts[0], texts[1], texts[2], texts[3]};
}

// None where an older program did not write them.
std::vector<RecordedCause> further_causes(JsonFields& fields) {
    std::vector<RecordedCause> causes;
    for (const auto& [cause, confirmed] : fields.flagged_texts("further", "cause", "confirmed")) {
        causes.push_back({cause, confirmed});
    }
    return causes;
}

HandedBack handed_back(JsonFields& fields) {
    HandedBack back{fields.text("cause"), fields.flag("confirmed"), fields.text("note"),
                    assessed_mark(fields), further_causes(fields)};
    const std::string twice = named_twice(back);
    if (!twice.empty()) fields.refuse("names the cause '" + twice + "' twice");
    return back;
}

std::string joined(const std::vector<std::string>& words) {
    std::string line;
    for (const std::string& word : words) line += (line.empty() ? "" : ", ") + word;
    return line;
}

}  // namespace

std::vector<RecordedCause> causes_of(const HandedBack& back) {
    std::vector<RecordedCause> causes{{back.cause, back.confirmed}};
    causes.insert(causes.end(), back.further.begin(), back.further.end());
    return causes;
}

std::string named_twice(const HandedBack& back) {
    std::set<std::string> named;
    for (const RecordedCause& one : causes_of(back)) {
        if (!named.insert(one.cause).second) return one.cause;
    }
    return "";
}

StoredEvent to_stored(const Event& event) {
    return std::visit(
        Overloaded{
            [](const Opened& e) {
                json body = {{"boat", e.boat}, {"words", e.words}, {"knowledge", e.knowledge}};
                if (!e.job.empty()) body["job"] = e.job;
                return stored("opened", body);
            },
            [](const RigSet& e) {
                return stored("rig_set", {{"field", e.field}, {"value", e.value}});
            },
            [](const HistorySet& e) {
                return stored("history_set", {{"history", e.history}});
            },
            [](const ComplaintsSet& e) {
                return stored("complaints_set", {{"complaints", e.complaints}});
            },
            [](const Answered& e) {
                return stored("answered", {{"finding", e.finding}, {"answer", e.answer}});
            },
            [](const TakenBack& e) {
                return stored("taken_back", {{"finding", e.finding}});
            },
            [](const NeedMarked& e) {
                return stored("need_marked", {{"need", e.need}, {"available", e.available}});
            },
            [](const Tried& e) {
                return stored("tried", {{"remedy", e.remedy}, {"outcome", e.outcome}});
            },
            [](const Noted& e) {
                return stored("noted", {{"text", e.text}});
            },
            [](const HandedBack& e) {
                json body = {{"cause", e.cause}, {"confirmed", e.confirmed}, {"note", e.note}};
                if (e.assessed != AssessedMark{}) {
                    body["assessed"] = {{"knowledge", e.assessed.knowledge},
                                        {"odds", e.assessed.odds},
                                        {"found", e.assessed.found},
                                        {"ranked", e.assessed.ranked}};
                }
                for (const RecordedCause& one : e.further) {
                    body["further"].push_back({{"cause", one.cause}, {"confirmed", one.confirmed}});
                }
                return stored("handed_back", body);
            },
            [](const Reopened& e) {
                return stored("reopened", e.why.empty() ? json::object() : json{{"why", e.why}});
            },
            [](const Undone& e) {
                return stored("undone", {{"sequence", e.sequence}});
            },
            [](const Attached& e) {
                return stored(
                    "attached",
                    {{"file", e.file}, {"name", e.name}, {"caption", e.caption}, {"bytes", e.bytes}});
            },
        },
        event);
}

Result<Event> from_stored(const StoredEvent& stored) {
    JsonFields fields(stored.body);
    const auto give = [&](Event event) -> Result<Event> {
        if (fields.fault().empty()) return event;
        return Error{Error::Kind::bad_input, "the event '" + stored.kind + "' " + fields.fault(), "", ""};
    };
    // Braces, not parentheses: they fix the order in which the fields are asked for.
    if (stored.kind == "opened") {
        return give(Opened{fields.text("boat"), fields.text("words"), fields.text("knowledge"),
                           fields.text_if_there("job")});
    }
    if (stored.kind == "rig_set") return give(RigSet{fields.text("field"), fields.text("value")});
    if (stored.kind == "history_set") return give(HistorySet{fields.text("history")});
    if (stored.kind == "complaints_set") return give(ComplaintsSet{fields.texts("complaints")});
    if (stored.kind == "answered") {
        return give(Answered{fields.text("finding"), fields.text("answer")});
    }
    if (stored.kind == "taken_back") return give(TakenBack{fields.text("finding")});
    if (stored.kind == "need_marked") {
        return give(NeedMarked{fields.text("need"), fields.flag("available")});
    }
    if (stored.kind == "tried") return give(Tried{fields.text("remedy"), fields.text("outcome")});
    if (stored.kind == "noted") return give(Noted{fields.text("text")});
    if (stored.kind == "handed_back") {
        return give(handed_back(fields));
    }
    if (stored.kind == "reopened") return give(Reopened{fields.text_if_there("why")});
    if (stored.kind == "attached") {
        return give(Attached{fields.text("file"), fields.text("name"), fields.text("caption"),
                             fields.count("bytes", 1)});
    }
    if (stored.kind == "undone") return give(Undone{fields.count("sequence", 1)});
    return Error{Error::Kind::unsupported, "unknown kind of event '" + stored.kind + "'", "",
                 "a newer version of the program may have written it"};
}

std::string plain_text(const Event& event) {
    return std::visit(
        Overloaded{
            [](const Opened& e) { return "opened: " + e.boat + ", \"" + e.words + "\""; },
            [](const RigSet& e) { return "rig " + e.field + ": " + (e.value.empty() ? "unknown" : e.value); },
            [](const HistorySet& e) { return "history: " + (e.history.empty() ? "unknown" : e.history); },
            [](const ComplaintsSet& e) { return "complaints: " + joined(e.complaints); },
            [](const Answered& e) { return "answered " + e.finding + ": " + e.answer; },
            [](const TakenBack& e) { return "took back the answer to " + e.finding; },
            [](const NeedMarked& e) { return e.need + (e.available ? ": available" : ": not available"); },
            [](const Tried& e) { return "tried " + e.remedy + ": " + e.outcome; },
            [](const Noted& e) { return "note: " + e.text; },
            [](const HandedBack& e) {
                const std::string note = e.note.empty() ? "" : ", \"" + e.note + "\"";
                std::string causes;
                for (const RecordedCause& one : causes_of(e)) {
                    causes += (causes.empty() ? "" : "; ") + one.cause +
                              (one.confirmed ? ", confirmed" : ", not confirmed");
                }
                return "handed back: " + causes + note;
            },
            [](const Reopened& e) { return "reopened" + (e.why.empty() ? "" : ": " + e.why); },
            [](const Undone& e) { return "undid event " + std::to_string(e.sequence); },
            [](const Attached& e) {
                return "attached " + e.name + (e.caption.empty() ? "" : ": " + e.caption) + " (" + e.file +
                       ")";
            },
        },
        event);
}

}  // namespace hardover
