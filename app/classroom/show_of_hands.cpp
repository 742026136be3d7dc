#include "app/classroom/show_of_hands.hpp"

#include <algorithm>
#include <numeric>

#include "app/study/practice_marks.hpp"
#include "app/study/practice_page.hpp"
#include "rules/reasoning/assessment.hpp"

namespace hardover::classroom {

using namespace study::practice;

namespace {

template <typename E>
const E& at(const std::vector<E>& entries, Index index) {
    return entries[static_cast<std::size_t>(index)];
}

Error refused(const std::string& what, const std::string& cure = "") {
    return {Error::Kind::bad_input, what, "", cure};
}

// Where an event stands in the knowledge: what is looked at first, then what is fitted, then the rest.
std::pair<int, Index> place_of(const Knowledge& knowledge, const PracticeEvent& event) {
    if (const auto* asked = std::get_if<Asked>(&event)) return {0, find(knowledge.findings, asked->finding)};
    if (const auto* said = std::get_if<Suspected>(&event)) return {0, find(knowledge.causes, said->cause)};
    if (const auto* done = std::get_if<Remedied>(&event)) return {1, find(knowledge.remedies, done->remedy)};
    return {2, none};
}

bool same_choice(const PracticeEvent& a, const PracticeEvent& b) {
    if (a.index() != b.index()) return false;
    if (const auto* asked = std::get_if<Asked>(&a)) return asked->finding == std::get<Asked>(b).finding;
    if (const auto* said = std::get_if<Suspected>(&a)) return said->cause == std::get<Suspected>(b).cause;
    if (const auto* done = std::get_if<Remedied>(&a)) return done->remedy == std::get<Remedied>(b).remedy;
    if (const auto* over = std::get_if<HandedOver>(&a))
        return over->checked == std::get<HandedOver>(b).checked;
    return std::holds_alternative<GaveUp>(a);
}

class Choices {
  public:
    explicit Choices(std::size_t most) : most_(most) {}
    void add(const PracticeEvent& event) {
        const bool there = std::any_of(events_.begin(), events_.end(),
                                       [&](const PracticeEvent& other) { return same_choice(event, other); });
        if (!there && events_.size() < most_) events_.push_back(event);
    }
    void allow(std::size_t most) { most_ = most; }
    void sort(const Knowledge& knowledge) {
        std::stable_sort(events_.begin(), events_.end(), [&](const PracticeEvent& a, const PracticeEvent& b) {
            return place_of(knowledge, a) < place_of(knowledge, b);
        });
    }
    std::vector<PracticeEvent> take() { return std::move(events_); }

  private:
    std::size_t most_;
    std::vector<PracticeEvent> events_;
};

Assessment numbers_now(const Session& session) {
    return assess(session.prepared(), session.facts(), Detail{false, false});
}

// The first causes that may still be there.
std::vector<Index> leading_causes(const Assessment& now, std::size_t most) {
    std::vector<Index> leading;
    for (const RankedCause& cause : now.ranking) {
        if (leading.size() == most) break;
        if (cause.probability > 0 && !cause.put_right) leading.push_back(cause.cause);
    }
    return leading;
}

Result<void> check_hands(const Voted& voted) {
    if (voted.taken >= voted.ballot.choices.size()) return refused("no choice of the ballot was taken");
    if (!voted.hands.empty() && voted.hands.size() != voted.ballot.choices.size()) {
        return refused("hands were counted for other choices than those of the ballot");
    }
    const bool odd = std::any_of(voted.hands.begin(), voted.hands.end(),
                                 [](int hands) { return hands < 0 || hands > most_hands; });
    if (odd) return refused("hands are counted from 0 to 999");
    return {};
}

}  // namespace

std::optional<std::size_t> majority(const std::vector<int>& hands) {
    const auto most = std::max_element(hands.begin(), hands.end());
    if (most == hands.end() || *most <= 0) return std::nullopt;
    if (std::count(hands.begin(), hands.end(), *most) > 1) return std::nullopt;
    return static_cast<std::size_t>(most - hands.begin());
}

int all_hands(const std::vector<int>& hands) {
    return std::accumulate(hands.begin(), hands.end(), 0);
}

Result<void> ShowOfHands::take(const ClassEvent& event) {
    if (std::holds_alternative<FaultShown>(event)) {
        fault_shown_ = true;
        return {};
    }
    if (const auto* voted = std::get_if<Voted>(&event)) return settle(*voted);
    const auto& did = std::get<PracticeEvent>(event);
    Result<void> taken = session_.take(did);
    if (taken && agreed_ && same_choice(did, *agreed_)) agreed_.reset();
    return taken;
}

Result<void> ShowOfHands::settle(const Voted& voted) {
    if (ended()) return refused("this boat has been handed over");
    if (Result<void> counted = check_hands(voted); !counted) return counted;
    const PracticeEvent& taken = voted.ballot.choices[voted.taken];
    if (voted.ballot.asks == Asks::step) {
        // A step that cannot be done now is refused before it is agreed on, not after.
        Session ahead = session_;
        if (Result<void> can = ahead.take(taken); !can) return can;
        agreed_ = taken;
    } else if (const auto* said = std::get_if<Suspected>(&taken)) {
        // How sure the class is: the share of its hands. Without hands nothing was said about it.
        const int all = all_hands(voted.hands);
        if (!said->cause.empty() && all > 0) {
            const double share = static_cast<double>(voted.hands[voted.taken]) / all;
            if (Result<void> noted = session_.take(Suspected{said->cause, share}); !noted) return noted;
        }
    } else {
        return refused("this is no choice of a ballot on the cause");
    }
    votes_.push_back({voted, session_.work().size()});
    return {};
}

Ballot step_ballot(const ShowOfHands& boat, const std::vector<PracticeEvent>& added) {
    const Session& session = boat.session();
    Ballot ballot{Asks::step, {}};
    if (session.boat_is_right()) {
        ballot.choices = {HandedOver{true}, HandedOver{false}};
        return ballot;
    }
    const Knowledge& knowledge = session.knowledge();
    const Assessment now = numbers_now(session);
    Choices choices(usual_choices - 1);
    choices.add(event_of_step(knowledge, now.next));
    for (const NextStep& also : now.also) choices.add(event_of_step(knowledge, also));
    choices.allow(usual_choices);
    for (const Index cause : leading_causes(now, 1)) {
        choices.add(Remedied{at(knowledge.remedies, at(knowledge.causes, cause).remedy).id});
    }
    for (const FindingItem& item : make_page(session).near) {
        if (item.answer.empty()) choices.add(Asked{item.id});
    }
    choices.sort(knowledge);
    choices.allow(most_choices);
    for (const PracticeEvent& one : added) choices.add(one);
    ballot.choices = choices.take();
    return ballot;
}

Ballot cause_ballot(const ShowOfHands& boat, const std::vector<PracticeEvent>& added) {
    const Session& session = boat.session();
    const Knowledge& knowledge = session.knowledge();
    Choices choices(most_choices - 1);
    for (const Index cause : leading_causes(numbers_now(session), usual_choices)) {
        choices.add(Suspected{at(knowledge.causes, cause).id, 0});
    }
    choices.sort(knowledge);
    for (const PracticeEvent& one : added) choices.add(one);
    choices.allow(most_choices);
    choices.add(Suspected{"", 0});
    return {Asks::cause, choices.take()};
}

int hands_for_the_fault(const ShowOfHands& boat, const Vote& vote) {
    if (vote.voted.hands.empty()) return 0;
    // Of the faults that were still there: those that no remedy before this vote had cured.
    const Session& session = boat.session();
    const Knowledge& knowledge = session.knowledge();
    const auto still_there = [&](const std::string& id) {
        const Index cause = find(knowledge.causes, id);
        const auto& faults = session.boat().faults;
        if (cause == none || std::find(faults.begin(), faults.end(), cause) == faults.end()) return false;
        for (std::size_t i = 0; i < vote.after; ++i) {
            const Work& work = session.work()[i];
            if (work.was_present && work.index == at(knowledge.causes, cause).remedy) return false;
        }
        return true;
    };
    int right = 0;
    int otherwise = 0;
    bool listed = false;
    for (std::size_t i = 0; i < vote.voted.ballot.choices.size(); ++i) {
        const auto* said = std::get_if<Suspected>(&vote.voted.ballot.choices[i]);
        if (said == nullptr) continue;
        if (said->cause.empty()) {
            otherwise = vote.voted.hands[i];
        } else if (still_there(said->cause)) {
            listed = true;
            right += vote.voted.hands[i];
        }
    }
    return listed ? right : otherwise;
}

}  // namespace hardover::classroom
