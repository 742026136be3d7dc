// Knowledge made ready for reasoning: whatever does not depend on a job, worked out once. Knows no facts.
#pragma once

#include <memory>
#include <mutex>
#include <set>
#include <string>
#include <unordered_map>
#include <vector>

#include "rules/model/knowledge.hpp"
#include "rules/reasoning/fault_network.hpp"

namespace hardover {

// What a name of the language stands for.
struct KnownName {
    enum class Kind { nothing, rig, history, complaint, finding, result, fact };
    Kind kind = Kind::nothing;
    Index index = none;        // rig field, finding, or worksheet
    int result = -1;           // of the worksheet
    std::vector<Index> rules;  // fact: those that derive it
};

// A condition with its names found: places in PreparedKnowledge::names(), in the order of
// Expression::names().
struct PreparedCondition {
    const Expression* condition = nullptr;
    std::vector<int> names;
    int text = -1;         // of PreparedKnowledge::texts(): equal conditions have the same
    bool by_fact = false;  // names a fact, which may hang on itself
    Truth when_nothing_known = Truth::unknown;  // what it is while none of its names is known
    // A name without which it is not yes, of a finding where there is one: few are answered. -1: none.
    int needed = -1;
};

// A handle to what was prepared: cheap to copy, never changes, may be used by several threads at once. The
// knowledge must outlive all handles and must not change meanwhile. Where knowledge is used only once, it may
// be given instead and is prepared for that call.
class PreparedKnowledge {
  public:
    PreparedKnowledge(const Knowledge& knowledge);  // not explicit: see above

    const Knowledge& knowledge() const { return *all_->knowledge; }

    const std::vector<KnownName>& names() const { return all_->names; }
    int finding_name(Index finding) const { return all_->first_finding + finding; }
    int rig_name(Index field) const { return all_->first_rig_field + field; }
    int place_of(const std::string& name) const;  // -1: there is no such name

    // How many different conditions there are: many causes and findings are possible on the same rigs.
    std::size_t texts() const { return all_->text_of.size(); }

    const PreparedCondition& rule_when(Index rule) const { return all_->rule_when[at(rule)]; }
    // Those with a fact to derive.
    const std::vector<Index>& deriving_rules() const { return all_->deriving_rules; }
    const PreparedCondition& cause_possible_when(Index cause) const {
        return all_->cause_possible_when[at(cause)];
    }
    const PreparedCondition& cause_proved_when(Index cause) const {
        return all_->cause_proved_when[at(cause)];
    }
    const PreparedCondition& finding_possible_when(Index finding) const {
        return all_->finding_possible_when[at(finding)];
    }
    const PreparedCondition& deferral_when(Index deferral) const { return all_->deferral_when[at(deferral)]; }
    const PreparedCondition& need_possible_when(Index need) const {
        return all_->need_possible_when[at(need)];
    }
    const PreparedCondition& need_takes_when(Index need) const { return all_->need_takes_when[at(need)]; }

    // The findings that a cause's proved_when names, in that order.
    const std::vector<Index>& proving_findings(Index cause) const {
        return all_->proving_findings[at(cause)];
    }
    // What complaints say of a finding: complaint and reading.
    const std::vector<std::pair<Index, int>>& told_by_complaints(Index finding) const {
        return all_->told_by_complaints[at(finding)];
    }

    // Every cause on every finding, as on a boat that nothing was done to: a finding of the network for each
    // of the knowledge. What is not on the list looks as causes with these complaints do on average. Made
    // when first asked for and kept, unless there are several complaints.
    std::shared_ptr<const FaultNetwork> network(const std::set<Index>& complaints = {}) const;

  private:
    struct All {
        const Knowledge* knowledge = nullptr;
        std::vector<KnownName> names;
        std::unordered_map<std::string, int> place_of;
        std::unordered_map<std::string, int> text_of;
        int first_finding = 0;
        int first_rig_field = 0;
        std::vector<PreparedCondition> rule_when;
        std::vector<Index> deriving_rules;
        std::vector<PreparedCondition> cause_possible_when;
        std::vector<PreparedCondition> cause_proved_when;
        std::vector<PreparedCondition> finding_possible_when;
        std::vector<PreparedCondition> deferral_when;
        std::vector<PreparedCondition> need_possible_when;
        std::vector<PreparedCondition> need_takes_when;
        std::vector<std::vector<Index>> proving_findings;
        std::vector<std::vector<std::pair<Index, int>>> told_by_complaints;
        struct Network {
            std::once_flag made;
            std::shared_ptr<const FaultNetwork> network;
        };
        std::unique_ptr<Network[]> networks;  // per complaint, and last the one without

        void find_names();
        void add_name(const std::string& name, KnownName known);
        void find_conditions();
        PreparedCondition prepared(const Expression& condition);
        int most_telling(const PreparedCondition& condition) const;
        void find_told();
    };
    static std::size_t at(Index index) { return static_cast<std::size_t>(index); }

    std::shared_ptr<const All> all_;
};

}  // namespace hardover
