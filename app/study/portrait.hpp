// How each cause looks by itself, and what the reasoning says to given signs: what makes a wrong choice
// plausible and keeps it from being right too. The only place of this box that calls the reasoning.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "app/study/authored.hpp"
#include "rules/model/facts.hpp"
#include "rules/model/knowledge.hpp"
#include "rules/reasoning/assessment.hpp"
#include "rules/reasoning/prepared_knowledge.hpp"

namespace hardover::study {

class Portraits {
  public:
    // The knowledge must outlive it. Items written by hand are read from its folder; faulty ones are left
    // out.
    explicit Portraits(const Knowledge& knowledge);

    const Knowledge& knowledge() const { return knowledge_; }
    // For `believe` and `steps_by_minutes`, prepared once.
    const PreparedKnowledge& prepared() const { return prepared_; }

    const std::vector<AuthoredItem>& authored() const { return authored_; }

    // How often a boat with this cause alone gives each reading of a finding with readings; adds to 1.
    std::vector<double> readings(Index cause, Index finding) const;

    // The same of a boat with none of the causes that show the finding.
    std::vector<double> readings_without(Index finding) const;

    // The findings a cause shows, in knowledge order.
    const std::vector<Shows>& shown(Index cause) const;
    bool is_shown(Index cause, Index finding) const;

    // Comebacks of this cause per 1000, over all histories by their shares.
    double odds(Index cause) const { return odds_[static_cast<std::size_t>(cause)]; }
    Index likeliest_history(Index cause) const;

    // Chance that a boat with this cause alone brings the complaint.
    double complains(Index cause, Index complaint) const;
    // Complaints that at least one in five of its boats brings, likeliest first.
    std::vector<Index> complaints_of(Index cause) const;

    // Causes that bring one of this cause's complaints, the more frequent first, without itself.
    std::vector<Index> rivals(Index cause) const;

    // Rig and history on which the cause is possible and most of what it shows makes sense; sizes are left
    // unknown. Empty when there is none.
    std::optional<Facts> boat_for(Index cause) const;
    bool makes_sense(const Facts& facts, Index finding) const;
    bool is_possible(const Facts& facts, Index cause) const;

    // Cautions that at least three in ten of the checks and remedies carry whose steps share a word with
    // these: such a caution may belong to this work too, whether the knowledge lists it or not.
    std::vector<Index> often_carried(const std::vector<std::string>& steps) const;

  private:
    struct Works {
        int count = 0;
        std::map<Index, int> cautions;
    };
    void count_words(const std::vector<std::string>& steps, const std::vector<Index>& cautions);

    const Knowledge& knowledge_;
    PreparedKnowledge prepared_;
    std::vector<AuthoredItem> authored_;
    std::vector<double> odds_;
    std::map<std::string, Works> works_;  // by the beginning of a word
};

// Probability of each cause, and of something not listed, with these facts.
struct Belief {
    std::vector<double> causes;  // by cause
    double not_listed = 0;
};
Belief believe(const PreparedKnowledge& prepared, const Facts& facts);

// The next step and the next best ones, the fewest expected minutes first. A step that a rule puts first may
// stand further down.
std::vector<NextStep> steps_by_minutes(const PreparedKnowledge& prepared, const Facts& facts);

}  // namespace hardover::study
