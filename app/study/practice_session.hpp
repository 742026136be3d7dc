// One practice boat being worked on: events are applied one after another, and the same events on the same
// boat give the same state. Tells what was done and what it took; marks are worked out elsewhere.
#pragma once

#include <memory>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "app/study/practice_boat.hpp"
#include "app/study/practice_cost.hpp"
#include "app/study/practice_event.hpp"
#include "rules/model/facts.hpp"
#include "rules/reasoning/prepared_knowledge.hpp"

namespace hardover::study::practice {

// One piece of work that took time.
struct Work {
    enum class Kind { ask, remedy, call_for_help };
    Kind kind = Kind::ask;
    Index index = none;     // finding or remedy
    Index proof_of = none;  // ask: the cause it was to prove
    std::vector<BoatAnswer> answers;
    std::optional<Outcome> outcome;  // of a remedy
    bool was_present = false;        // of a remedy: it cured a fault that was there
    double minutes = 0;
    Facts before;
    Facts after;
    std::vector<Index> cautions;  // that belong before it
    std::vector<Index> missed;    // of them, not named
    bool skipped = false;         // went on without a word about them
    bool again = false;           // ask: asked before, with no remedy between
    std::size_t event = 0;        // index of the event
    std::set<Index> set_up;       // checks, before it
};

// What the apprentice thought was wrong.
struct Statement {
    Index cause = none;
    double sure = 0;
    bool named = false;     // for good
    bool right = false;     // it was there, and still is
    std::size_t after = 0;  // pieces of work done before
};

struct HintTaken {
    int level = 1;
    std::size_t after = 0;
};

class Session {
  public:
    Session(PreparedKnowledge prepared, std::shared_ptr<const PracticeBoat> boat, Begun begun);

    // Applies one event. Error bad_input or not_found: it cannot be done now, in words for the apprentice;
    // nothing has changed then.
    Result<void> take(const PracticeEvent& event);

    enum class Phase { working, cured, ended };
    Phase phase() const { return phase_; }
    // Handed over or given up: only then may anything be told that rests on what is wrong.
    bool over() const { return phase_ == Phase::ended; }
    bool gave_up() const { return gave_up_; }
    bool checked_after() const { return checked_after_; }
    bool boat_is_right() const { return right_; }

    const PreparedKnowledge& prepared() const { return prepared_; }
    const Knowledge& knowledge() const { return prepared_.knowledge(); }
    const PracticeBoat& boat() const { return *boat_; }
    const std::shared_ptr<const PracticeBoat>& boat_shared() const { return boat_; }
    const Begun& begun() const { return begun_; }
    const Facts& facts() const { return facts_; }
    double minutes() const { return minutes_; }
    const std::vector<PracticeEvent>& events() const { return events_; }
    const std::vector<Work>& work() const { return work_; }
    const std::vector<Statement>& statements() const { return statements_; }
    const std::vector<HintTaken>& hints() const { return hints_; }
    const std::vector<std::string>& reflections() const { return reflections_; }

    // What a step would take from here: minutes, and the cautions that belong before it. 0 and nothing for
    // events that take no time.
    double minutes_of(const PracticeEvent& event) const;
    struct Caution {
        std::string work;  // id for Precautions
        std::vector<Index> cautions;
    };
    // Those of the checks that have to be set up, or of the remedy. Empty: none, or already spoken of.
    std::vector<Caution> cautions_before(const PracticeEvent& event) const;

    // Findings that a cause's proof would answer. Error when nothing proves it, or it is all answered.
    Result<std::vector<Index>> proof_findings(Index cause) const;
    // proved_when of the cause with what is known now.
    Truth proof_of(Index cause) const;
    bool makes_sense(Index finding) const { return boat_->makes_sense[static_cast<std::size_t>(finding)]; }

  private:
    Result<void> ask(const Asked& event, Index proof_of);
    Result<void> prove(const Proved& event);
    Result<void> remedy(const Remedied& event);
    Result<void> state(const std::string& cause, double sure, bool named);
    Result<void> hand_over(const HandedOver& event);
    void do_finding(Index finding, Index proof_of);
    Ground ground(const std::set<Index>& set_up) const {
        return {knowledge(), boat_->makes_sense, facts_, set_up};
    }
    void add_cautions(Index finding, std::vector<Caution>& found) const;
    std::vector<Index> findings_of(const PracticeEvent& event) const;
    Result<void> call_for_help();
    void take_cautions(const std::string& id, const std::vector<Index>& cautions, Work& work);
    Result<Index> finding_named(const std::string& id) const;
    Result<Index> cause_named(const std::string& id) const;

    PreparedKnowledge prepared_;
    std::shared_ptr<const PracticeBoat> boat_;
    Begun begun_;
    Facts facts_;
    std::vector<bool> gone_;
    std::set<Index> set_up_;  // checks
    double minutes_ = 0;
    Phase phase_ = Phase::working;
    bool gave_up_ = false;
    bool right_ = false;
    bool checked_after_ = false;
    std::vector<PracticeEvent> events_;
    std::vector<Work> work_;
    std::vector<Statement> statements_;
    std::vector<HintTaken> hints_;
    std::vector<std::string> reflections_;
    std::map<std::string, Precautions> spoken_of_;  // by work, not yet done
};

// The session that these events make. Errors: those of take(), with the number of the event.
Result<Session> replay(PreparedKnowledge prepared, std::shared_ptr<const PracticeBoat> boat,
                       const Begun& begun, const std::vector<PracticeEvent>& events);

}  // namespace hardover::study::practice
