// Events to JSON and back. The names of kinds and fields are part of the records' form: once written, they
// stay.
#include "app/jobs/event.hpp"

#include <nlohmann/json.hpp>

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

// The fields of a body, each asked for with its type. The first fault is kept.
class Fields {
  public:
    explicit Fields(const StoredEvent& stored)
        : kind_(stored.kind), body_(json::parse(stored.body, nullptr, false)) {
        if (!body_.is_object()) fault_ = "has a body that cannot be read";
    }

    std::string text(const char* name) {
        const json* field = find(name);
        if (field == nullptr) return "";
        if (!field->is_string()) return wrong(name, "a text"), "";
        return field->get<std::string>();
    }

    // As text, but "" where an older program did not write it.
    std::string text_if_there(const char* name) {
        return body_.is_object() && body_.contains(name) ? text(name) : "";
    }

    AssessedMark mark(const char* name) {
        AssessedMark mark;
        if (!body_.is_object() || !body_.contains(name)) return mark;
        const json& fields = body_[name];
        for (auto [key, into] : {std::pair("knowledge", &mark.knowledge), std::pair("odds", &mark.odds),
                                 std::pair("found", &mark.found), std::pair("ranked", &mark.ranked)}) {
            const bool there = fields.is_object() && fields.contains(key) && fields[key].is_string();
            if (!there) return wrong(name, "four texts"), AssessedMark();
            *into = fields[key].get<std::string>();
        }
        return mark;
    }

    bool flag(const char* name) {
        const json* field = find(name);
        if (field == nullptr) return false;
        if (!field->is_boolean()) return wrong(name, "true or false"), false;
        return field->get<bool>();
    }

    int number(const char* name) {
        const json* field = find(name);
        if (field == nullptr) return 0;
        const bool fits = field->is_number_integer() && *field >= 1 && *field <= 1'000'000'000;
        if (!fits) return wrong(name, "a whole number from 1"), 0;
        return field->get<int>();
    }

    std::vector<std::string> texts(const char* name) {
        const json* field = find(name);
        if (field == nullptr) return {};
        std::vector<std::string> texts;
        bool fits = field->is_array();
        for (std::size_t i = 0; fits && i < field->size(); ++i) {
            fits = (*field)[i].is_string();
            if (fits) texts.push_back((*field)[i].get<std::string>());
        }
        if (!fits) return wrong(name, "a list of texts"), std::vector<std::string>();
        return texts;
    }

    void refuse(const std::string& fault) {
        if (fault_.empty()) fault_ = fault;
    }

    Result<Event> give(Event event) const {
        if (fault_.empty()) return event;
        return Error{Error::Kind::bad_input, "the event '" + kind_ + "' " + fault_, "", ""};
    }

  private:
    const json* find(const char* name) {
        if (!body_.is_object()) return nullptr;
        const auto field = body_.find(name);
        if (field != body_.end()) return &*field;
        refuse(std::string("lacks '") + name + "'");
        return nullptr;
    }
    void wrong(const char* name, const char* expected) {
        refuse(std::string("has a '") + name + "' that is not " + expected);
    }

    std::string kind_;
    json body_;
    std::string fault_;
};

std::string joined(const std::vector<std::string>& words) {
    std::string line;
    for (const std::string& word : words) line += (line.empty() ? "" : ", ") + word;
    return line;
}

}  // namespace

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
    Fields fields(stored);
    // Braces, not parentheses: they fix the order in which the fields are asked for.
    if (stored.kind == "opened") {
        return fields.give(Opened{fields.text("boat"), fields.text("words"), fields.text("knowledge"),
                                  fields.text_if_there("job")});
    }
    if (stored.kind == "rig_set") return fields.give(RigSet{fields.text("field"), fields.text("value")});
    if (stored.kind == "history_set") return fields.give(HistorySet{fields.text("history")});
    if (stored.kind == "complaints_set") return fields.give(ComplaintsSet{fields.texts("complaints")});
    if (stored.kind == "answered") {
        return fields.give(Answered{fields.text("finding"), fields.text("answer")});
    }
    if (stored.kind == "taken_back") return fields.give(TakenBack{fields.text("finding")});
    if (stored.kind == "need_marked") {
        return fields.give(NeedMarked{fields.text("need"), fields.flag("available")});
    }
    if (stored.kind == "tried") return fields.give(Tried{fields.text("remedy"), fields.text("outcome")});
    if (stored.kind == "noted") return fields.give(Noted{fields.text("text")});
    if (stored.kind == "handed_back") {
        return fields.give(HandedBack{fields.text("cause"), fields.flag("confirmed"), fields.text("note"),
                                      fields.mark("assessed")});
    }
    if (stored.kind == "reopened") return fields.give(Reopened{fields.text_if_there("why")});
    if (stored.kind == "attached") {
        return fields.give(Attached{fields.text("file"), fields.text("name"), fields.text("caption"),
                                    fields.number("bytes")});
    }
    if (stored.kind == "undone") return fields.give(Undone{fields.number("sequence")});
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
                return "handed back: " + e.cause + (e.confirmed ? ", confirmed" : ", not confirmed") + note;
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
