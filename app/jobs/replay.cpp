// Events replayed to facts. What today's knowledge does not understand is set aside and named.
#include "app/jobs/replay.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <utility>

#include "rules/reading/reading.hpp"

namespace hardover::jobs_detail {

namespace {

// Applies one event to a job. Gives "" or what today's knowledge lacks.
class Apply {
  public:
    Apply(const Knowledge& knowledge, Job& job) : knowledge_(knowledge), job_(job) {}

    std::string operator()(const Opened& e) {
        job_.boat = e.boat;
        job_.words = e.words;
        job_.knowledge = e.knowledge;
        return "";
    }

    std::string operator()(const RigSet& e) {
        const Index field = find(knowledge_.rig_fields, e.field);
        if (field == none) return lacks("rig field", e.field);
        if (e.value.empty()) {
            job_.facts.rig.erase(field);
            return "";
        }
        const auto value = read_rig_value(knowledge_.rig_fields[field], e.value);
        if (!value.ok()) return fmt::format("'{}' no longer fits this rig field", spoken_id(e.value));
        job_.facts.rig[field] = value.value();
        return "";
    }

    std::string operator()(const HistorySet& e) {
        const Index history = find(knowledge_.histories, e.history);
        if (history == none && !e.history.empty()) {
            return lacks("history", e.history);
        }
        job_.facts.history = history;
        return "";
    }

    std::string operator()(const ComplaintsSet& e) {
        job_.facts.complaints.clear();
        std::string lacking;
        for (const std::string& id : e.complaints) {
            const Index complaint = find(knowledge_.complaints, id);
            if (complaint != none) {
                job_.facts.complaints.insert(complaint);
            } else if (lacking.empty()) {
                lacking = lacks("complaint", id);
            }
        }
        return lacking;
    }

    std::string operator()(const Answered& e) {
        const Index finding = find(knowledge_.findings, e.finding);
        if (finding == none) return lacks("finding", e.finding);
        const auto answer = read_answer(knowledge_.findings[finding], e.answer);
        if (!answer.ok()) return fmt::format("'{}' no longer fits this finding", spoken_id(e.answer));
        keep_answer(job_.facts, finding, answer.value(), stage_);
        return "";
    }

    std::string operator()(const TakenBack& e) {
        const Index finding = find(knowledge_.findings, e.finding);
        if (finding != none) take_back(finding);
        return "";
    }

    std::string operator()(const NeedMarked& e) {
        const Index need = find(knowledge_.needs, e.need);
        if (need == none) return lacks("circumstance", e.need);
        if (e.available) {
            job_.facts.unavailable.erase(need);
        } else {
            job_.facts.unavailable.insert(need);
        }
        return "";
    }

    std::string operator()(const Tried& e) {
        const Index remedy = find(knowledge_.remedies, e.remedy);
        if (remedy == none) return lacks("remedy", e.remedy);
        const auto outcome = outcome_of(e.outcome);
        if (!outcome) return fmt::format("'{}' is not an outcome", spoken_id(e.outcome));
        // Tried again, it was not done well the first time: the last time counts.
        job_.facts.tried[remedy] = *outcome;
        job_.facts.tried_as[remedy] = ++stage_;
        return "";
    }

    std::string operator()(const Noted& e) {
        job_.notes.push_back(e.text);
        return "";
    }

    std::string operator()(const HandedBack& e) {
        job_.handed_back = e;
        return "";
    }

    // A boat that comes back after a cure: the work helped, and something is wrong again.
    std::string operator()(const Reopened&) {
        job_.handed_back.reset();
        for (auto& [remedy, outcome] : job_.facts.tried) {
            if (outcome == Outcome::cured) outcome = Outcome::better;
        }
        return "";
    }

    std::string operator()(const Undone&) { return ""; }

    std::string operator()(const Attached& e) {
        job_.photos.push_back(e);
        return "";
    }

  private:
    // The latest answer goes; the one before it, if any, is the latest again.
    void take_back(Index finding) {
        Facts& facts = job_.facts;
        facts.answers.erase(finding);
        facts.answered_at.erase(finding);
        for (auto earlier = facts.earlier.rbegin(); earlier != facts.earlier.rend(); ++earlier) {
            if (earlier->finding != finding) continue;
            facts.answers[finding] = earlier->answer;
            if (earlier->stage > 0) facts.answered_at[finding] = earlier->stage;
            facts.earlier.erase(std::next(earlier).base());
            return;
        }
    }

    static std::string lacks(const char* what, const std::string& id) {
        return fmt::format("there is no {} '{}'", what, spoken_id(id));
    }

    const Knowledge& knowledge_;
    Job& job_;
    int stage_ = 0;  // how many remedies have been tried
};

std::string left_out_line(int sequence, const std::string& what, const std::string& why) {
    return fmt::format("Event {} is left out ({}): {}.", sequence, what, why);
}

}  // namespace

void keep_answer(Facts& facts, Index finding, const Answer& answer, int stage) {
    const auto before = facts.answers.find(finding);
    const int stage_before = answer_stage(facts, finding);
    if (before != facts.answers.end() && stage_before < stage) {
        const auto later = std::find_if(facts.earlier.begin(), facts.earlier.end(),
                                        [&](const EarlierAnswer& e) { return e.stage > stage_before; });
        facts.earlier.insert(later, {finding, stage_before, before->second});
    }
    facts.answers[finding] = answer;
    if (stage > 0) facts.answered_at[finding] = stage;
}

std::optional<Outcome> outcome_of(const std::string& word) {
    if (word == "cured") return Outcome::cured;
    if (word == "better") return Outcome::better;
    if (word == "not_cured") return Outcome::not_cured;
    return std::nullopt;
}

std::string spoken_id(const std::string& id) {
    std::string spoken = id;
    std::replace(spoken.begin(), spoken.end(), '_', ' ');
    return spoken;
}

std::map<int, bool> counting(const std::vector<StoredEvent>& events) {
    std::map<int, bool> counts;
    for (const StoredEvent& stored : events) counts[stored.sequence] = true;
    // From the last to the first: an Undone only reaches back, so when it is met its own fate is settled.
    for (auto stored = events.rbegin(); stored != events.rend(); ++stored) {
        if (!counts[stored->sequence]) continue;
        const auto event = from_stored(*stored);
        const Undone* undone = event.ok() ? std::get_if<Undone>(&event.value()) : nullptr;
        if (undone == nullptr || undone->sequence >= stored->sequence) continue;
        if (const auto target = counts.find(undone->sequence); target != counts.end()) target->second = false;
    }
    return counts;
}

std::vector<int> changes_to(const std::vector<StoredEvent>& events, int sequence) {
    std::vector<StoredEvent> then = events;
    std::erase_if(then, [sequence](const StoredEvent& stored) { return stored.sequence > sequence; });
    const auto wanted = counting(then);
    const auto now = counting(events);
    std::vector<int> changes;
    for (auto stored = events.rbegin(); stored != events.rend(); ++stored) {
        if (!now.at(stored->sequence)) continue;
        const auto event = from_stored(*stored);
        const Undone* undone = event.ok() ? std::get_if<Undone>(&event.value()) : nullptr;
        const auto then_counted = [&wanted](int one) {
            const auto at = wanted.find(one);
            return at != wanted.end() && at->second;
        };
        // What took back an event that counted then goes; what took back a later one may stay.
        const bool goes = undone == nullptr ? !then_counted(stored->sequence)
                                            : stored->sequence > sequence && then_counted(undone->sequence);
        if (goes) changes.push_back(stored->sequence);
    }
    return changes;
}

Job replay_facts(const Knowledge& knowledge, JobNumber number, std::vector<StoredEvent> events,
                 const ShopWays& shop) {
    Job job;
    job.number = number;
    job.shop = shop;
    job.facts.shop_rate = shop.rate;
    job.events = std::move(events);
    const auto counts = counting(job.events);
    Apply apply(knowledge, job);
    for (const StoredEvent& stored : job.events) {
        if (!counts.at(stored.sequence)) continue;
        const auto event = from_stored(stored);
        if (!event.ok()) {
            job.left_out.push_back(
                left_out_line(stored.sequence, spoken_id(stored.kind), spoken_id(event.error().what)));
            continue;
        }
        const std::string lacking = std::visit(apply, event.value());
        if (!lacking.empty()) {
            job.left_out.push_back(
                left_out_line(stored.sequence, spoken_id(plain_text(event.value())), lacking));
        }
    }
    return job;
}

JobSummary summary_of(const Knowledge& knowledge, const Job& job) {
    JobSummary summary{job.boat, job.handed_back ? "handed back" : "in hand", ""};
    for (const Index complaint : job.facts.complaints) {
        if (!summary.complaint.empty()) summary.complaint += ", ";
        summary.complaint += knowledge.complaints[complaint].id;
    }
    return summary;
}

}  // namespace hardover::jobs_detail
