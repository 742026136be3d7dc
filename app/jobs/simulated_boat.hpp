// A boat whose faults are known, and a technician who does on it what the program says: for trying the
// knowledge out. Decides nothing that the reasoning decides, and may not know how a boat was thought up.
#pragma once

#include <functional>
#include <set>
#include <vector>

#include "rules/model/facts.hpp"
#include "rules/model/knowledge.hpp"
#include "rules/reasoning/assessment.hpp"
#include "rules/reasoning/fault_network.hpp"

namespace hardover {

// One boat that came back: what the customer and the data plate tell, and what is truly wrong.
struct SimulatedBoat {
    Facts told;                     // rig, history, complaints
    std::vector<Index> faults;      // causes, ascending
    bool unlisted = false;          // something not on the list is wrong as well, or alone
    std::vector<bool> makes_sense;  // per finding: on this rig

    virtual ~SimulatedBoat() = default;

    // The reading a finding shows with the faults that are left (`gone`: per fault).
    virtual int reading(Index finding, const std::vector<bool>& gone) const = 0;
};

// Findings that ask more about a complaint and cannot read sound while the boat has it: a wheel that locks,
// locks one way or both. They make sense with that complaint only, and every cause that shows them shows them
// always.
std::vector<Index> details_of(const Knowledge& knowledge, Index complaint);

// A boat that shows what was drawn for it by chance, always the same.
struct DrawnBoat : SimulatedBoat {
    // What each fault in turn, then stray chance, then the unlisted (if present) would show: per finding.
    std::vector<std::vector<int>> shown_by;

    // Draws shown_by anew for the faults. `uniform` gives numbers from 0 up to 1.
    void draw_readings(const FaultNetwork& network, const std::function<double()>& uniform);

    // Draws anew the details of the complaint it has that came out sound.
    void agree_with(const Knowledge& knowledge, const FaultNetwork& network, Index complaint,
                    const std::function<double()>& uniform);

    int reading(Index finding, const std::vector<bool>& gone) const override;

  private:
    // The row of shown_by for what the complaint says: of the first fault that shows it, else of one that can
    // (a gauge may show it instead), else of stray chance.
    std::size_t shown_from(const FaultNetwork& network, const Complaint& complaint) const;
};

// An index drawn with these shares, which add to 1.
int draw_index(const std::vector<double>& shares, const std::function<double()>& uniform);

// One finding as the technician answered it.
struct GivenAnswer {
    Index finding = none;
    int reading = -1;  // -1: a plain measurement, which shows in the finding its worksheet gives
};

// A finding with readings that a worksheet gives from this plain measurement, among others.
bool worked_out_from(const Knowledge& knowledge, const Finding& result, Index measured);

// Keeps what has been told, and the minutes: each finding takes its own, each check its setting up once.
// Knowledge and boat must outlive it.
class Technician {
  public:
    Technician(const Knowledge& knowledge, const SimulatedBoat& boat);

    const Facts& facts() const { return facts_; }
    double minutes() const { return minutes_; }
    int questions() const { return questions_; }

    // Does what a step asks for; gives what was answered, in that order.
    std::vector<GivenAnswer> answer(const NextStep& step);

    // True when it was the remedy of a fault that was still there.
    bool apply(Index remedy, double minutes);

    void call_for_help() { minutes_ += knowledge_.settings.call_for_help; }

  private:
    // The plain measurements of a worksheet are answered by the reading its result gives.
    void answer(Index finding, std::vector<GivenAnswer>& given);
    void spend(const Finding& finding);

    const Knowledge& knowledge_;
    const SimulatedBoat& boat_;
    Facts facts_;
    std::vector<bool> gone_;
    std::set<Index> set_up_;
    double minutes_ = 0;
    int questions_ = 0;
};

// Straight to each fault: its proof, when that takes less than the remedy, and the remedy.
double minutes_of_know_all(const Knowledge& knowledge, const SimulatedBoat& boat);

// "Not on this list" is more probable than any cause, or nothing on the list is worth trying.
bool says_not_listed(const Assessment& now);

}  // namespace hardover
