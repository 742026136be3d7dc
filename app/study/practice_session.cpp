#include "app/study/practice_session.hpp"

#include <algorithm>

#include "app/jobs/replay.hpp"
#include "rules/reasoning/check_cautions.hpp"
#include "rules/reasoning/effort.hpp"
#include "rules/reasoning/situation.hpp"
#include "rules/result/nearest.hpp"

namespace hardover::study::practice {

namespace {

template <typename E>
const E& at(const std::vector<E>& entries, Index index) {
    return entries[static_cast<std::size_t>(index)];
}

Error refused(const std::string& what, const std::string& cure = "") {
    return {Error::Kind::bad_input, what, "", cure};
}

template <typename E>
Result<Index> named(const std::vector<E>& entries, const char* kind, const std::string& id) {
    const Index found = find(entries, id);
    if (found != none) return found;
    std::vector<std::string> ids;
    for (const E& entry : entries) ids.push_back(entry.id);
    return Error{Error::Kind::not_found, std::string("there is no ") + kind + " '" + id + "'", "",
                 did_you_mean(id, ids)};
}

void add_once(std::vector<Index>& list, Index index) {
    if (std::find(list.begin(), list.end(), index) == list.end()) list.push_back(index);
}

}  // namespace

Session::Session(PreparedKnowledge prepared, std::shared_ptr<const PracticeBoat> boat, Begun begun)
    : prepared_(std::move(prepared)),
      boat_(std::move(boat)),
      begun_(std::move(begun)),
      facts_(boat_->told),
      gone_(boat_->faults.size(), false) {}

Result<Index> Session::finding_named(const std::string& id) const {
    const Result<Index> finding = named(knowledge().findings, "finding", id);
    if (!finding) return finding;
    if (!makes_sense(finding.value())) {
        return refused("'" + at(knowledge().findings, finding.value()).name + "' makes no sense on this rig");
    }
    return finding;
}

Result<Index> Session::cause_named(const std::string& id) const {
    return named(knowledge().causes, "cause", id);
}

Result<void> Session::take(const PracticeEvent& event) {
    if (phase_ == Phase::ended && !std::holds_alternative<Reflected>(event)) {
        return refused("this boat has been handed over");
    }
    const Result<void> taken = std::visit(
        [this](const auto& e) -> Result<void> {
            using E = std::decay_t<decltype(e)>;
            if constexpr (std::is_same_v<E, Asked>) {
                return ask(e, none);
            } else if constexpr (std::is_same_v<E, WorkedOut>) {
                const Result<Index> sheet = named(knowledge().worksheets, "worksheet", e.worksheet);
                return sheet ? Result<void>() : Result<void>(sheet.error());
            } else if constexpr (std::is_same_v<E, Suspected>) {
                return state(e.cause, e.sure, false);
            } else if constexpr (std::is_same_v<E, Named>) {
                return state(e.cause, e.sure, true);
            } else if constexpr (std::is_same_v<E, Hinted>) {
                if (e.level < 1 || e.level > 3) return refused("there is no such help", "1, 2 or 3");
                hints_.push_back({e.level, work_.size()});
                return {};
            } else if constexpr (std::is_same_v<E, Precautions>) {
                spoken_of_[e.work] = e;
                return {};
            } else if constexpr (std::is_same_v<E, Proved>) {
                return prove(e);
            } else if constexpr (std::is_same_v<E, Remedied>) {
                return remedy(e);
            } else if constexpr (std::is_same_v<E, HandedOver>) {
                return hand_over(e);
            } else if constexpr (std::is_same_v<E, GaveUp>) {
                return call_for_help();
            } else {
                reflections_.push_back(e.text);
                return {};
            }
        },
        event);
    if (taken) events_.push_back(event);
    return taken;
}

Result<void> Session::state(const std::string& cause, double sure, bool for_good) {
    const Result<Index> index = cause_named(cause);
    if (!index) return index.error();
    if (!(sure >= 0 && sure <= 1)) return refused("sureness goes from 0 to 100 in 100");
    if (right_) return refused("the boat is right: what was wrong is known");
    Statement statement{index.value(), sure, for_good, false, work_.size()};
    for (std::size_t n = 0; n < gone_.size(); ++n) {
        statement.right = statement.right || (!gone_[n] && boat_->faults[n] == index.value());
    }
    statements_.push_back(statement);
    return {};
}

// What an event would look at.
std::vector<Index> Session::findings_of(const PracticeEvent& event) const {
    if (const auto* asked = std::get_if<Asked>(&event)) {
        const Result<Index> finding = finding_named(asked->finding);
        if (finding) return {finding.value()};
    }
    if (const auto* proved = std::get_if<Proved>(&event)) {
        const Result<std::vector<Index>> findings = proof_findings(find(knowledge().causes, proved->cause));
        if (findings) return findings.value();
    }
    return {};
}

double Session::minutes_of(const PracticeEvent& event) const {
    if (const auto* remedied = std::get_if<Remedied>(&event)) {
        const Index remedy = find(knowledge().remedies, remedied->remedy);
        return remedy == none ? 0 : minutes_of_remedy(knowledge(), remedy, facts_.shop_rate);
    }
    if (std::holds_alternative<GaveUp>(event)) return knowledge().settings.call_for_help;
    std::set<Index> set_up = set_up_;
    double minutes = 0;
    for (const Index finding : findings_of(event)) {
        minutes += minutes_of_finding(ground(set_up), finding);
        for (const Index check : checks_to_set_up(ground(set_up), finding)) set_up.insert(check);
    }
    return minutes;
}

void Session::add_cautions(Index finding, std::vector<Caution>& found) const {
    for (const Index check : checks_to_set_up(ground(set_up_), finding)) {
        const Check& entry = at(knowledge().checks, check);
        if (spoken_of_.contains(entry.id)) continue;
        std::vector<Index> cautions = cautions_of_check(prepared_, facts_, check);
        if (cautions.empty()) continue;
        const bool there =
            std::any_of(found.begin(), found.end(), [&](const Caution& c) { return c.work == entry.id; });
        if (!there) found.push_back({entry.id, std::move(cautions)});
    }
}

std::vector<Session::Caution> Session::cautions_before(const PracticeEvent& event) const {
    std::vector<Caution> found;
    for (const Index finding : findings_of(event)) add_cautions(finding, found);
    if (const auto* remedied = std::get_if<Remedied>(&event)) {
        const Index remedy = find(knowledge().remedies, remedied->remedy);
        if (remedy == none) return found;
        const Remedy& entry = at(knowledge().remedies, remedy);
        if (!entry.cautions.empty() && !spoken_of_.contains(entry.id)) {
            found.push_back({entry.id, entry.cautions});
        }
    }
    return found;
}

// Notes which of the cautions were spoken of; what was said is used up.
void Session::take_cautions(const std::string& id, const std::vector<Index>& cautions, Work& work) {
    if (cautions.empty()) return;
    for (const Index caution : cautions) add_once(work.cautions, caution);
    const auto said = spoken_of_.find(id);
    const bool silent = said == spoken_of_.end() || said->second.skipped;
    work.skipped = work.skipped || silent;
    for (const Index caution : cautions) {
        const auto names_it = [&](const std::string& named) {
            return named == at(knowledge().cautions, caution).id;
        };
        if (silent || std::none_of(said->second.named.begin(), said->second.named.end(), names_it)) {
            add_once(work.missed, caution);
        }
    }
    if (said != spoken_of_.end()) spoken_of_.erase(said);
}

Result<void> Session::ask(const Asked& event, Index proof_of) {
    const Result<Index> finding = finding_named(event.finding);
    if (!finding) return finding.error();
    if (right_) return refused("the boat is right: hand it over");
    do_finding(finding.value(), proof_of);
    return {};
}

void Session::do_finding(Index finding, Index proof_of) {
    Work work;
    work.index = finding;
    work.proof_of = proof_of;
    work.before = facts_;
    work.event = events_.size();
    work.set_up = set_up_;
    const std::vector<Index> measured = to_measure(ground(set_up_), finding);
    work.again =
        std::all_of(measured.begin(), measured.end(), [&](Index one) { return answered_now(facts_, one); });
    work.minutes = minutes_of_finding(ground(set_up_), finding);
    for (const Index check : checks_to_set_up(ground(set_up_), finding)) {
        take_cautions(at(knowledge().checks, check).id, cautions_of_check(prepared_, facts_, check), work);
        set_up_.insert(check);
    }
    for (const Index one : measured) {
        for (const BoatAnswer& given : boat_->answers(one, gone_)) {
            jobs_detail::keep_answer(facts_, given.finding, given.answer, present_stage(facts_));
            work.answers.push_back(given);
        }
    }
    work.after = facts_;
    minutes_ += work.minutes;
    work_.push_back(std::move(work));
}

Truth Session::proof_of(Index cause) const {
    if (cause == none || at(knowledge().causes, cause).proved_when.empty()) return Truth::unknown;
    return Situation(prepared_, facts_).holds(prepared_.cause_proved_when(cause));
}

Result<std::vector<Index>> Session::proof_findings(Index cause) const {
    if (cause == none) return refused("name a cause to prove");
    const Cause& entry = at(knowledge().causes, cause);
    if (entry.proof == none) {
        return refused("no check proves '" + entry.name + "'", "its remedy is the only proof");
    }
    std::vector<Index> wanted = prepared_.proving_findings(cause);
    if (wanted.empty()) wanted = at(knowledge().checks, entry.proof).gets;
    std::vector<Index> open;
    for (const Index finding : wanted) {
        if (makes_sense(finding) && !answered_now(facts_, finding)) open.push_back(finding);
    }
    if (open.empty()) return refused("what would prove '" + entry.name + "' has been looked at already");
    return open;
}

Result<void> Session::prove(const Proved& event) {
    const Result<Index> cause = cause_named(event.cause);
    if (!cause) return cause.error();
    if (right_) return refused("the boat is right: hand it over");
    const Result<std::vector<Index>> findings = proof_findings(cause.value());
    if (!findings) return findings.error();
    for (const Index finding : findings.value()) do_finding(finding, cause.value());
    return {};
}

Result<void> Session::remedy(const Remedied& event) {
    const Result<Index> remedy = named(knowledge().remedies, "remedy", event.remedy);
    if (!remedy) return remedy.error();
    if (right_) return refused("the boat is right: hand it over");
    Work work;
    work.kind = Work::Kind::remedy;
    work.index = remedy.value();
    work.before = facts_;
    work.set_up = set_up_;
    work.event = events_.size();
    take_cautions(event.remedy, at(knowledge().remedies, remedy.value()).cautions, work);
    work.minutes = minutes_of_remedy(knowledge(), remedy.value(), facts_.shop_rate);
    right_ = true;
    for (std::size_t n = 0; n < gone_.size(); ++n) {
        if (!gone_[n] && puts_right(knowledge(), remedy.value(), boat_->faults[n])) {
            gone_[n] = work.was_present = true;
        }
        right_ = right_ && gone_[n];
    }
    work.outcome = right_ ? Outcome::cured : work.was_present ? Outcome::better : Outcome::not_cured;
    facts_.tried[remedy.value()] = *work.outcome;
    facts_.tried_as[remedy.value()] = present_stage(facts_) + 1;
    work.after = facts_;
    minutes_ += work.minutes;
    if (right_) phase_ = Phase::cured;
    work_.push_back(std::move(work));
    return {};
}

Result<void> Session::call_for_help() {
    if (right_) return refused("the boat is right: hand it over");
    Work work;
    work.kind = Work::Kind::call_for_help;
    work.minutes = knowledge().settings.call_for_help;
    work.before = work.after = facts_;
    work.set_up = set_up_;
    work.event = events_.size();
    minutes_ += work.minutes;
    work_.push_back(std::move(work));
    gave_up_ = true;
    phase_ = Phase::ended;
    return {};
}

Result<void> Session::hand_over(const HandedOver& event) {
    if (!right_) {
        return refused("the boat is not right: the customer would be back tomorrow",
                       "find what is wrong, or call for help");
    }
    checked_after_ = event.checked;
    phase_ = Phase::ended;
    return {};
}

Result<Session> replay(PreparedKnowledge prepared, std::shared_ptr<const PracticeBoat> boat,
                       const Begun& begun, const std::vector<PracticeEvent>& events) {
    Session session(std::move(prepared), std::move(boat), begun);
    for (std::size_t i = 0; i < events.size(); ++i) {
        const Result<void> taken = session.take(events[i]);
        if (taken) continue;
        Error error = taken.error();
        error.where = "event " + std::to_string(i + 1);
        return error;
    }
    return session;
}

}  // namespace hardover::study::practice
