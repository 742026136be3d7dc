// How a practice boat is made: rigs, histories and faults are drawn until the customer has something to
// complain of.
#include <algorithm>
#include <cmath>
#include <set>

#include "app/jobs/rig_boat.hpp"
#include "app/rig/survey.hpp"
#include "app/study/chance.hpp"
#include "app/study/practice_boat.hpp"
#include "rules/reasoning/situation.hpp"

namespace hardover::study {

namespace {

constexpr int most_tries = 400;
constexpr double everyday_share = 0.5;  // of all comebacks, the most frequent causes first
constexpr double rare_share = 0.9;      // what comes after this share is rare
// Chances from memory: how hard a level is felt to be.
constexpr double two_everyday = 0.5;   // level 4: two everyday faults rather than a rare one
constexpr double three_faults = 0.25;  // level 5
constexpr double one_rare = 0.25;      // level 5
constexpr double misread_factor = 3;   // level 5, times the knowledge's share of wrong readings

template <typename E>
const E& at(const std::vector<E>& entries, Index index) {
    return entries[static_cast<std::size_t>(index)];
}

bool is_plain(const rig::Boat& boat) {
    return boat.drives == 1 && boat.helms == 1 && !boat.autopilot && boat.assist == rig::Boat::Assist::none;
}

bool is_complicated(const rig::Boat& boat) {
    return boat.drives == 2 || boat.helms == 2 || boat.autopilot;
}

double normal(Chance& chance) {
    const double radius = std::sqrt(-2 * std::log(1 - chance.share()));  // Box and Muller 1958
    return radius * std::cos(6.283185307179586 * chance.share());
}

std::vector<double> normals(Chance& chance, std::size_t count) {
    std::vector<double> drawn(count);
    for (double& number : drawn) number = normal(chance);
    return drawn;
}

// Causes that this boat can have, the most frequent first, with their odds.
struct Candidates {
    std::vector<Index> causes;
    std::vector<double> odds;

    // Only those from this share of all comebacks up to that one.
    Candidates between(double from, double to) const {
        double all = 0;
        for (const double o : odds) all += o;
        Candidates some;
        double before = 0;
        for (std::size_t i = 0; i < causes.size(); ++i) {
            if (before >= from * all && before < to * all) {
                some.causes.push_back(causes[i]);
                some.odds.push_back(odds[i]);
            }
            before += odds[i];
        }
        return some;
    }

    Index draw(Chance& chance) const {
        if (causes.empty()) return none;
        double all = 0;
        for (const double o : odds) all += o;
        double left = chance.share() * all;
        for (std::size_t i = 0; i + 1 < causes.size(); ++i) {
            left -= odds[i];
            if (left < 0) return causes[i];
        }
        return causes.back();
    }
};

}  // namespace

class BoatMaker {
  public:
    BoatMaker(const PreparedKnowledge& prepared, std::uint64_t seed, int level)
        : prepared_(prepared), knowledge_(prepared.knowledge()), chance_(seed, "practice"), level_(level) {
        boat_.seed = seed;
        boat_.level = level;
        boat_.knowledge_ = &knowledge_;
    }

    // False: this draw does not make a boat of the level.
    bool draw() { return draw_rig() && draw_faults() && draw_signs() && draw_complaint(); }

    PracticeBoat& boat() { return boat_; }

  private:
    bool draw_rig() {
        boat_.rig = rig::sample_boat(chance_.next());
        if (level_ == 1 && !is_plain(boat_.rig)) return false;
        if (level_ == most_level && !is_complicated(boat_.rig)) return false;
        boat_.told = facts_of_boat(knowledge_, boat_.rig);
        std::vector<double> shares;
        for (const History& history : knowledge_.histories) shares.push_back(history.share);
        boat_.told.history = draw_index(shares, [&] { return chance_.share(); });
        Situation situation(prepared_, boat_.told);
        boat_.makes_sense.clear();
        for (std::size_t f = 0; f < knowledge_.findings.size(); ++f) {
            const PreparedCondition& condition = prepared_.finding_possible_when(static_cast<Index>(f));
            boat_.makes_sense.push_back(situation.holds(condition) != Truth::no);
        }
        find_candidates(situation);
        return true;
    }

    void find_candidates(Situation& situation) {
        std::vector<std::pair<double, Index>> found;
        for (std::size_t c = 0; c < knowledge_.causes.size(); ++c) {
            const auto cause = static_cast<Index>(c);
            const double odds = knowledge_.causes[c].odds[static_cast<std::size_t>(boat_.told.history)];
            const bool possible = situation.holds(prepared_.cause_possible_when(cause)) != Truth::no;
            if (possible && odds > 0) found.emplace_back(odds, cause);
        }
        std::stable_sort(found.begin(), found.end(),
                         [](const auto& a, const auto& b) { return a.first > b.first; });
        all_ = {};
        for (const auto& [odds, cause] : found) {
            all_.causes.push_back(cause);
            all_.odds.push_back(odds);
        }
    }

    bool draw_faults() {
        std::vector<Index> drawn;
        switch (level_) {
            case 1:
            case 2:
                drawn = {everyday().draw(chance_)};
                break;
            case 3:
                drawn = {all_.draw(chance_)};
                break;
            case 4:
                if (chance_.share() < two_everyday) {
                    drawn = {everyday().draw(chance_), everyday().draw(chance_)};
                } else {
                    drawn = {rare().draw(chance_)};
                }
                break;
            default:
                if (chance_.share() < one_rare) {
                    drawn = {rare().draw(chance_)};
                } else {
                    drawn = {all_.draw(chance_), all_.draw(chance_)};
                    if (chance_.share() < three_faults) drawn.push_back(all_.draw(chance_));
                }
        }
        std::sort(drawn.begin(), drawn.end());
        boat_.faults = drawn;
        return drawn.front() != none && fit_together(drawn);
    }

    Candidates everyday() const { return all_.between(0, everyday_share); }
    Candidates rare() const { return all_.between(rare_share, 1); }

    // Each has its own remedy, and no two change the same size of the numeric boat.
    bool fit_together(const std::vector<Index>& faults) const {
        std::set<Index> remedies;
        std::set<std::string> parameters;
        for (const Index fault : faults) {
            const Cause& cause = at(knowledge_.causes, fault);
            if (!remedies.insert(cause.remedy).second) return false;
            std::set<std::string> own;
            for (const ModelChange& change : cause.on_the_rig) own.insert(change.parameter);
            for (const std::string& parameter : own) {
                if (!parameters.insert(parameter).second) return false;
            }
        }
        return true;
    }

    bool draw_signs() {
        static_cast<SimulatedBoat&>(boat_.by_odds_) = boat_;
        boat_.by_odds_.draw_readings(*prepared_.network(), [&] { return chance_.share(); });
        draw_misreadings();
        return survey_all() && (leave_to_gauges(), true);
    }

    void draw_misreadings() {
        const double share = level_ < 4    ? 0
                             : level_ == 4 ? knowledge_.settings.misreading
                                           : misread_factor * knowledge_.settings.misreading;
        boat_.misread_.assign(knowledge_.findings.size(), -1);
        for (std::size_t f = 0; f < knowledge_.findings.size(); ++f) {
            const std::size_t readings = knowledge_.findings[f].readings.size();
            const bool wrong = chance_.share() < share;
            const std::size_t instead = chance_.below(std::max<std::size_t>(1, readings));
            if (wrong && knowledge_.findings[f].check != none && readings > 0) {
                boat_.misread_[f] = static_cast<int>(instead);
            }
        }
        if (level_ >= 3) return;
        std::vector<int>& stray = boat_.by_odds_.shown_by[boat_.faults.size()];
        for (std::size_t f = 0; f < stray.size(); ++f) stray[f] = sound(f);
    }

    int sound(std::size_t finding) const {
        return static_cast<int>(knowledge_.findings[finding].readings.size()) - 1;
    }

    // Every set of faults that may be left; false when one does not settle.
    bool survey_all() {
        const std::size_t count = boat_.faults.size();
        std::vector<std::vector<double>> sizes;
        for (const Index fault : boat_.faults) {
            sizes.push_back(normals(chance_, at(knowledge_.causes, fault).on_the_rig.size()));
        }
        const std::vector<double> noise = normals(chance_, knowledge_.findings.size());
        boat_.gauges_.clear();
        boat_.on_the_rig_.assign(std::size_t{1} << count, {});
        for (std::size_t subset = 0; subset < boat_.on_the_rig_.size(); ++subset) {
            std::vector<bool> gone(count);
            for (std::size_t n = 0; n < count; ++n) {
                gone[n] = (subset >> n & 1) == 0;
                if (gone[n]) continue;
                if (!add_faults_of_cause(at(knowledge_.causes, boat_.faults[n]), sizes[n],
                                         boat_.on_the_rig_[subset])) {
                    return false;
                }
            }
            if (!survey(gone, boat_.on_the_rig_[subset], noise)) return false;
        }
        return true;
    }

    bool survey(const std::vector<bool>& gone, const rig::Faults& faults, const std::vector<double>& noise) {
        const Result<rig::Readings> readings = rig::survey(boat_.rig, faults);
        if (!readings) return false;
        Facts facts = boat_.told;
        facts.answers = answers_of_gauges(knowledge_, readings.value(), noise);
        Situation situation(prepared_, facts);
        PracticeBoat::Gauged gauged = facts.answers;
        for (std::size_t f = 0; f < knowledge_.findings.size(); ++f) {
            if (!knowledge_.findings[f].from) continue;
            const std::optional<Answer>& worked = situation.answer_to(static_cast<Index>(f));
            if (worked && std::holds_alternative<Quantity>(worked->given)) {
                gauged[static_cast<Index>(f)] = *worked;
            }
        }
        boat_.gauges_[gone] = std::move(gauged);
        return true;
    }

    // What the gauges tell of a fault is not drawn as well, unless the cause says that table and numeric boat
    // differ there.
    void leave_to_gauges() {
        const PracticeBoat::Gauged& all = boat_.gauges_.at(std::vector<bool>(boat_.faults.size(), false));
        for (std::size_t n = 0; n < boat_.faults.size(); ++n) {
            const Cause& cause = at(knowledge_.causes, boat_.faults[n]);
            if (cause.on_the_rig.empty()) continue;
            for (const auto& told : all) {
                const Index finding = told.first;
                const auto f = static_cast<std::size_t>(finding);
                const Finding& entry = knowledge_.findings[f];
                const bool differs = std::any_of(cause.differs.begin(), cause.differs.end(),
                                                 [&](const Differs& d) { return d.finding == finding; });
                int& shown = boat_.by_odds_.shown_by[n][f];
                const bool felt = !entry.unit && shown >= 0 &&
                                  static_cast<std::size_t>(shown) < entry.felt.size() &&
                                  entry.felt[static_cast<std::size_t>(shown)].has_value();
                if (!differs && (entry.unit || felt)) shown = sound(f);
            }
        }
    }

    // One of the complaints that fit what shows, those that say more being likelier.
    bool draw_complaint() {
        const std::vector<bool> none_gone(boat_.faults.size(), false);
        std::vector<Index> fitting;
        for (std::size_t c = 0; c < knowledge_.complaints.size(); ++c) {
            const Complaint& complaint = knowledge_.complaints[c];
            const bool fits =
                std::all_of(complaint.says.begin(), complaint.says.end(), [&](const auto& says) {
                    return boat_.makes_sense[static_cast<std::size_t>(says.first)] &&
                           boat_.reading(says.first, none_gone) == says.second;
                });
            if (fits) fitting.insert(fitting.end(), complaint.says.size(), static_cast<Index>(c));
        }
        if (fitting.empty()) return false;
        boat_.complaint = fitting[chance_.below(fitting.size())];
        const Complaint& complaint = at(knowledge_.complaints, boat_.complaint);
        boat_.told.complaints = {boat_.complaint};
        boat_.words =
            complaint.words.empty() ? complaint.name : complaint.words[chance_.below(complaint.words.size())];
        boat_.by_odds_.agree_with(knowledge_, *prepared_.network(), boat_.complaint,
                                  [&] { return chance_.share(); });
        return true;
    }

    const PreparedKnowledge& prepared_;
    const Knowledge& knowledge_;
    Chance chance_;
    int level_;
    Candidates all_;
    PracticeBoat boat_;
};

Result<std::shared_ptr<const PracticeBoat>> make_practice_boat(const PreparedKnowledge& prepared,
                                                               std::uint64_t seed, int level) {
    if (level < least_level || level > most_level) {
        return Error{Error::Kind::bad_input, "there is no level " + std::to_string(level), "",
                     "levels go from 1, the easiest, to 5"};
    }
    BoatMaker maker(prepared, seed, level);
    for (int attempt = 0; attempt < most_tries; ++attempt) {
        if (maker.draw()) return std::make_shared<const PracticeBoat>(std::move(maker.boat()));
    }
    return Error{Error::Kind::unsupported,
                 "no boat of level " + std::to_string(level) + " comes out of this knowledge with seed " +
                     std::to_string(seed),
                 prepared.knowledge().folder, "take another seed or an easier level"};
}

}  // namespace hardover::study
