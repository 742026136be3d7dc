// The job's events, one line each, in the knowledge's words.
#include <fmt/format.h>

#include <utility>

#include "app/jobs/page_parts.hpp"
#include "app/jobs/photos.hpp"
#include "app/jobs/proved.hpp"
#include "app/jobs/replay.hpp"
#include "app/jobs/wording.hpp"
#include "rules/reading/reading.hpp"

namespace hardover::jobs_detail {

namespace {

template <typename E>
std::string name_of_id(const std::vector<E>& entries, const std::string& id) {
    const Index index = find(entries, id);
    return index == none ? spoken_id(id) : entries[index].name;
}

// An event of this or an older knowledge: what is no longer known is shown as it was written.
class EventText {
  public:
    EventText(const Knowledge& knowledge, UnitSystem units) : knowledge_(knowledge), units_(units) {}

    std::string operator()(const Opened& e) const {
        return e.words.empty() ? fmt::format("Opened for {}", e.boat)
                               : fmt::format("Opened for {}: {}", e.boat, quoted(e.words));
    }
    std::string operator()(const RigSet& e) const {
        const std::string name = name_of_id(knowledge_.rig_fields, e.field);
        if (e.value.empty()) return fmt::format("{}: not known after all", name);
        const Index field = find(knowledge_.rig_fields, e.field);
        if (field == none) return fmt::format("{}: {}", name, spoken_id(e.value));
        const auto value = read_rig_value(knowledge_.rig_fields[field], e.value);
        return fmt::format("{}: {}", name,
                           value.ok() ? rig_value_text(knowledge_.rig_fields[field], value.value(), units_)
                                      : spoken_id(e.value));
    }
    std::string operator()(const HistorySet& e) const {
        if (e.history.empty()) return "History: not known after all";
        return fmt::format("History: {}", lower_first(name_of_id(knowledge_.histories, e.history)));
    }
    std::string operator()(const ComplaintsSet& e) const {
        std::vector<std::string> names;
        for (const std::string& id : e.complaints) {
            names.push_back(lower_first(name_of_id(knowledge_.complaints, id)));
        }
        return names.empty() ? "Complaint: none" : fmt::format("Complaint: {}", listed(names));
    }
    std::string operator()(const Answered& e) const {
        const Index finding = find(knowledge_.findings, e.finding);
        std::string text = spoken_id(e.answer);
        if (finding != none) {
            const auto answer = read_answer(knowledge_.findings[finding], e.answer);
            if (answer.ok()) text = answer_text(knowledge_, finding, answer.value(), units_);
        }
        return fmt::format("{}: {}", name_of_id(knowledge_.findings, e.finding), text);
    }
    std::string operator()(const TakenBack& e) const {
        return fmt::format("Answer taken back: {}", lower_first(name_of_id(knowledge_.findings, e.finding)));
    }
    std::string operator()(const NeedMarked& e) const {
        return fmt::format("{}: {}", name_of_id(knowledge_.needs, e.need),
                           e.available ? "available" : "not available now");
    }
    std::string operator()(const Tried& e) const {
        const auto outcome = outcome_of(e.outcome);
        return fmt::format("{}: {}", name_of_id(knowledge_.remedies, e.remedy),
                           outcome ? outcome_text(*outcome) : spoken_id(e.outcome));
    }
    std::string operator()(const Noted& e) const { return fmt::format("Note: {}", e.text); }
    std::string operator()(const HandedBack& e) const {
        const std::string note = e.note.empty() ? "" : fmt::format(" {}", quoted(e.note));
        return fmt::format("Handed back. {}: {}.{}", e.further.empty() ? "Cause" : "Causes",
                           recorded_text(knowledge_, causes_of(e)), note);
    }
    std::string operator()(const Reopened& e) const {
        return e.why.empty() ? "Reopened" : fmt::format("Reopened: {}", quoted(e.why));
    }
    std::string operator()(const Attached& e) const { return fmt::format("Photo: {}", photo_name(e)); }
    std::string operator()(const Undone& e) const { return fmt::format("Step {} taken back", e.sequence); }

  private:
    const Knowledge& knowledge_;
    UnitSystem units_;
};

// "Taken back: Wheel: springy", or "Brought back: ..." where what took it back was taken back itself.
std::string undone_text(const std::vector<EventLine>& before, int sequence) {
    for (const EventLine& line : before) {
        if (line.sequence != sequence) continue;
        if (line.kind == EventLine::Kind::took_back) return "Brought back: " + line.about;
        return "Taken back: " + (line.kind == EventLine::Kind::brought_back ? line.about : line.text);
    }
    return fmt::format("Step {} taken back", sequence);
}

}  // namespace

std::vector<EventLine> event_lines(const View& view) {
    const auto counts = counting(view.job.events);
    std::vector<EventLine> lines;
    for (const StoredEvent& stored : view.job.events) {
        const auto event = from_stored(stored);
        EventLine line{stored.sequence, stored.at, "", counts.at(stored.sequence)};
        const Undone* undone = event.ok() ? std::get_if<Undone>(&event.value()) : nullptr;
        if (undone != nullptr) {
            line.text = undone_text(lines, undone->sequence);
            const bool brought = line.text.starts_with("Brought back: ");
            line.kind = brought ? EventLine::Kind::brought_back : EventLine::Kind::took_back;
            line.about = line.text.substr(std::min(line.text.size(), line.text.find(": ") + 2));
        } else {
            line.text = event.ok() ? std::visit(EventText(view.knowledge, view.units()), event.value())
                                   : fmt::format("Not understood: {}", spoken_id(stored.kind));
        }
        lines.push_back(std::move(line));
    }
    return lines;
}

}  // namespace hardover::jobs_detail
