#include "app/study/practice_players.hpp"

#include <algorithm>

#include "app/study/chance.hpp"
#include "app/study/practice_marks.hpp"

namespace hardover::study::practice {

namespace {

constexpr std::size_t most_work = 200;       // nobody goes on for longer: help is called
constexpr std::size_t most_remedies = 5;     // after so many in vain the bad players call for help
constexpr std::size_t questions_each = 3;    // of the guesser, to a remedy
constexpr std::size_t most_of_learner = 30;  // pieces of work, then help is called
constexpr double share_of_questions = 0.7;   // of a learner's careless steps; the others are remedies
constexpr std::size_t guesses = most_remedies * (questions_each + 1);

template <typename E>
const E& at(const std::vector<E>& entries, Index index) {
    return entries[static_cast<std::size_t>(index)];
}

Session begin(const PreparedKnowledge& prepared, const std::shared_ptr<const PracticeBoat>& boat) {
    Begun begun;
    begun.seed = boat->seed;
    begun.level = boat->level;
    begun.knowledge = prepared.knowledge().fingerprint;
    return Session(prepared, boat, begun);
}

// Names every caution that belongs before the event.
void heed(Session& session, const PracticeEvent& event) {
    for (const Session::Caution& before : session.cautions_before(event)) {
        Precautions said{before.work, {}, false};
        for (const Index caution : before.cautions) {
            said.named.push_back(at(session.knowledge().cautions, caution).id);
        }
        (void)session.take(said);  // cannot be refused
    }
}

// Hands over what is right, calls for help where nothing more can be done.
Session finish(Session session) {
    const PracticeEvent last =
        session.boat_is_right() ? PracticeEvent(HandedOver{true}) : PracticeEvent(GaveUp{});
    if (session.phase() != Session::Phase::ended) (void)session.take(last);
    return session;
}

const RankedCause* leading_not_tried(const Session& session, const Assessment& now) {
    for (const RankedCause& cause : now.ranking) {
        const Index remedy = at(session.knowledge().causes, cause.cause).remedy;
        if (cause.probability > 0 && !session.facts().tried.contains(remedy)) return &cause;
    }
    return nullptr;
}

// The program's next step. False: nothing more can be done.
bool take_expert_step(Session& session, const Assessment& now, bool minds_cautions) {
    const Knowledge& knowledge = session.knowledge();
    const PracticeEvent event = event_of_step(knowledge, now.next);
    if (now.next.kind == NextStep::Kind::remedy && now.next.cause != none) {
        for (const RankedCause& cause : now.ranking) {
            if (cause.cause != now.next.cause) continue;
            (void)session.take(Named{at(knowledge.causes, cause.cause).id, cause.probability});
        }
    }
    if (minds_cautions) heed(session, event);
    return session.take(event).ok();
}

// Fits the remedy of what leads the ranking. False: there is none left.
bool take_first_choice(Session& session, const Assessment& now) {
    const RankedCause* first = leading_not_tried(session, now);
    if (first == nullptr) return false;
    const Cause& cause = at(session.knowledge().causes, first->cause);
    (void)session.take(Named{cause.id, 1});
    return session.take(Remedied{at(session.knowledge().remedies, cause.remedy).id}).ok();
}

}  // namespace

Session expert_on(const PreparedKnowledge& prepared, const std::shared_ptr<const PracticeBoat>& boat) {
    Session session = begin(prepared, boat);
    while (session.phase() == Session::Phase::working && session.work().size() < most_work) {
        const Assessment now = assess(prepared, session.facts(), Detail{false, false});
        if (!take_expert_step(session, now, true)) break;
    }
    return finish(std::move(session));
}

Session learner_on(const PreparedKnowledge& prepared, const std::shared_ptr<const PracticeBoat>& boat,
                   double care, std::uint64_t seed) {
    const Knowledge& knowledge = prepared.knowledge();
    Chance chance(seed, "learner");
    std::vector<Index> findings;
    for (std::size_t f = 0; f < knowledge.findings.size(); ++f) {
        if (boat->makes_sense[f]) findings.push_back(static_cast<Index>(f));
    }
    chance.shuffle(findings);
    Session session = begin(prepared, boat);
    while (session.phase() == Session::Phase::working && session.work().size() < most_of_learner) {
        const Assessment now = assess(prepared, session.facts(), Detail{false, false});
        const double drawn = chance.share();
        const bool minds = chance.share() < (1 + care) / 2;
        if (drawn < care) {
            if (!take_expert_step(session, now, minds)) break;
        } else if (drawn < care + (1 - care) * share_of_questions && !findings.empty()) {
            (void)session.take(Asked{at(knowledge.findings, findings.back()).id});  // may be known already
            findings.pop_back();
        } else if (!take_first_choice(session, now)) {
            break;
        }
    }
    return finish(std::move(session));
}

Session first_choice_on(const PreparedKnowledge& prepared, const std::shared_ptr<const PracticeBoat>& boat) {
    Session session = begin(prepared, boat);
    while (session.phase() == Session::Phase::working && session.work().size() < most_remedies) {
        const Assessment now = assess(prepared, session.facts(), Detail{false, false});
        if (!take_first_choice(session, now)) break;
    }
    return finish(std::move(session));
}

Session guesser_on(const PreparedKnowledge& prepared, const std::shared_ptr<const PracticeBoat>& boat,
                   std::uint64_t seed) {
    const Knowledge& knowledge = prepared.knowledge();
    Chance chance(seed, "guesser");
    std::vector<Index> findings;
    std::vector<Index> causes;
    for (std::size_t f = 0; f < knowledge.findings.size(); ++f) {
        if (boat->makes_sense[f]) findings.push_back(static_cast<Index>(f));
    }
    for (std::size_t c = 0; c < knowledge.causes.size(); ++c) causes.push_back(static_cast<Index>(c));
    chance.shuffle(findings);
    chance.shuffle(causes);
    Session session = begin(prepared, boat);
    while (session.phase() == Session::Phase::working && session.work().size() < guesses) {
        const bool fits = session.work().size() % (questions_each + 1) == questions_each;
        if (!fits && !findings.empty()) {
            if (!session.take(Asked{at(knowledge.findings, findings.back()).id})) break;
            findings.pop_back();
            continue;
        }
        if (causes.empty()) break;
        const Cause& cause = at(knowledge.causes, causes.back());
        causes.pop_back();
        (void)session.take(Named{cause.id, 0.5});
        if (!session.take(Remedied{at(knowledge.remedies, cause.remedy).id})) break;
    }
    return finish(std::move(session));
}

}  // namespace hardover::study::practice
