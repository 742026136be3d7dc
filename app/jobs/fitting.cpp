// Whether an event fits the knowledge and the job, before it is recorded, and its full form.
#include <fmt/format.h>
#include <charconv>

#include <algorithm>
#include <utility>

#include "app/jobs/replay.hpp"
#include "app/records/photos.hpp"
#include "rules/reading/reading.hpp"
#include "rules/result/nearest.hpp"

namespace hardover::jobs_detail {

namespace {

template <typename E>
std::vector<std::string> ids_of(const std::vector<E>& entries) {
    std::vector<std::string> ids;
    for (const E& entry : entries) ids.push_back(entry.id);
    return ids;
}

template <typename E>
Result<Index> known(const std::vector<E>& entries, const std::string& id, const char* what) {
    const Index index = find(entries, id);
    if (index != none) return index;
    return Error{Error::Kind::not_found, std::string("there is no ") + what + " '" + id + "'", "",
                 did_you_mean(id, ids_of(entries))};
}

Error refused(std::string what, std::string cure = "") {
    return {Error::Kind::bad_input, std::move(what), "", std::move(cure)};
}

// The number in a unit with this factor and offset, in as few digits as give the same value in SI again:
// 1.29 in turned to metres and back is 1.2899999999999998 in, which nobody said. No power of ten.
std::string exact_number(double value, double factor, double offset = 0) {
    double number = (value - offset) / factor;
    for (int digits = 1; digits < 17; ++digits) {
        const std::string fewer = fmt::format("{:.{}g}", number, digits);
        double back = 0;
        std::from_chars(fewer.data(), fewer.data() + fewer.size(), back);
        if (back * factor + offset != value) continue;
        number = back;
        break;
    }
    std::string text = fmt::format("{}", number);
    if (text.find('e') == std::string::npos) return text;
    text = fmt::format("{:.30f}", number);
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.') text.pop_back();
    return text;
}

class Fit {
  public:
    Fit(const Knowledge& knowledge, const Job& job) : knowledge_(knowledge), job_(job) {}

    Result<Event> operator()(const Opened&) const {
        return refused("this job is opened already", "start another job");
    }

    Result<Event> operator()(RigSet e) const {
        const auto field = known(knowledge_.rig_fields, e.field, "rig field");
        if (!field.ok()) return field.error();
        if (e.value.empty()) return Event(std::move(e));
        const RigField& entry = knowledge_.rig_fields[field.value()];
        const auto value = read_rig_value(entry, e.value);
        if (!value.ok()) return value.error();
        const Quantity* quantity = std::get_if<Quantity>(&value.value());
        e.value = quantity != nullptr && entry.unit ? exact_text(*quantity, *entry.unit)
                                                    : std::get<std::string>(value.value());
        return Event(std::move(e));
    }

    Result<Event> operator()(HistorySet e) const {
        if (e.history.empty()) return Event(std::move(e));
        const auto history = known(knowledge_.histories, e.history, "history");
        if (!history.ok()) return history.error();
        return Event(std::move(e));
    }

    Result<Event> operator()(const ComplaintsSet& e) const {
        ComplaintsSet each_once;
        for (const std::string& id : e.complaints) {
            const auto complaint = known(knowledge_.complaints, id, "complaint");
            if (!complaint.ok()) return complaint.error();
            const auto& there = each_once.complaints;
            if (std::find(there.begin(), there.end(), id) == there.end()) each_once.complaints.push_back(id);
        }
        return Event(std::move(each_once));
    }

    Result<Event> operator()(Answered e) const {
        const auto finding = known(knowledge_.findings, e.finding, "finding");
        if (!finding.ok()) return finding.error();
        const Finding& entry = knowledge_.findings[finding.value()];
        const auto answer = read_answer(entry, e.answer);
        if (!answer.ok()) return answer.error();
        const auto& given = answer.value().given;
        if (const int* reading = std::get_if<int>(&given)) {
            e.answer = entry.readings[*reading].id;
        } else if (const Quantity* quantity = std::get_if<Quantity>(&given)) {
            Quantity full = *quantity;
            if (full.spread == 0) full.spread = entry.spread;
            e.answer = exact_text(full, *entry.unit);
        } else {
            e.answer = "cannot_tell";
        }
        return Event(std::move(e));
    }

    Result<Event> operator()(TakenBack e) const {
        const auto finding = known(knowledge_.findings, e.finding, "finding");
        if (!finding.ok()) return finding.error();
        if (!job_.facts.answers.count(finding.value())) {
            return refused("'" + e.finding + "' has no answer to take back");
        }
        return Event(std::move(e));
    }

    Result<Event> operator()(NeedMarked e) const {
        const auto need = known(knowledge_.needs, e.need, "circumstance");
        if (!need.ok()) return need.error();
        return Event(std::move(e));
    }

    Result<Event> operator()(Tried e) const {
        const auto remedy = known(knowledge_.remedies, e.remedy, "remedy");
        if (!remedy.ok()) return remedy.error();
        if (!outcome_of(e.outcome)) {
            return refused("unknown outcome '" + e.outcome + "'", "say cured, better or not_cured");
        }
        return Event(std::move(e));
    }

    Result<Event> operator()(Noted e) const {
        if (e.text.find_first_not_of(" \t\r\n") == std::string::npos) return refused("the note is empty");
        return Event(std::move(e));
    }

    Result<Event> operator()(HandedBack e) const {
        for (const RecordedCause& one : causes_of(e)) {
            if (one.cause == "not_listed") continue;
            const auto cause = known(knowledge_.causes, one.cause, "cause");
            if (cause.ok()) continue;
            Error error = cause.error();
            if (error.cure.empty()) error.cure = "not_listed stands for something that is not on the list";
            return error;
        }
        const std::string twice = named_twice(e);
        if (!twice.empty()) return refused("the cause '" + twice + "' is named twice", "name it once");
        return Event(std::move(e));
    }

    Result<Event> operator()(Reopened e) const {
        if (!job_.handed_back) {
            return refused("this job is not handed back",
                           "go on with: hardover interview --job " + std::to_string(job_.number));
        }
        return Event(e);
    }

    Result<Event> operator()(Undone e) const {
        const auto counts = counting(job_.events);
        const auto target = counts.find(e.sequence);
        const std::string event = "event " + std::to_string(e.sequence);
        if (target == counts.end()) return refused("this job has no " + event);
        if (!target->second) return refused(event + " is taken back already");
        if (e.sequence == job_.events.front().sequence) return refused("the opening cannot be taken back");
        return Event(e);
    }

    Result<Event> operator()(Attached e) const {
        if (!is_photo_name(e.file)) return refused("'" + e.file + "' is no file of the records");
        return Event(std::move(e));
    }

  private:
    const Knowledge& knowledge_;
    const Job& job_;
};

}  // namespace

std::string exact_text(const Quantity& quantity, const Unit& unit) {
    std::string text = exact_number(quantity.value, unit.factor, unit.offset) + " " + unit.name;
    if (quantity.spread > 0) text += " ± " + exact_number(quantity.spread, unit.factor) + " " + unit.name;
    return text;
}

Result<Event> fitted(const Knowledge& knowledge, const Job& job, const Event& event) {
    const bool always = std::holds_alternative<Reopened>(event) || std::holds_alternative<Noted>(event) ||
                        std::holds_alternative<Undone>(event) || std::holds_alternative<Attached>(event);
    if (job.handed_back && !always) return refused("this job is handed back", "reopen it first");
    return std::visit(Fit(knowledge, job), event);
}

}  // namespace hardover::jobs_detail
