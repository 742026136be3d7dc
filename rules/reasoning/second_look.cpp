#include "rules/reasoning/second_look.hpp"

#include <algorithm>
#include <map>

namespace hardover {

namespace {

struct Sign {
    int stage = 0;
    int reading = -1;
};

class SecondLooks {
  public:
    SecondLooks(const Knowledge& knowledge, const Facts& facts, const Effort& effort,
                const DiagnosisCase& diagnosis)
        : knowledge_(knowledge), facts_(facts), effort_(effort) {
        for (const EvidenceItem& item : diagnosis.items()) {
            if (item.kind != Weight::Kind::finding || item.earlier) continue;
            latest_[item.index] = {item.stage, item.reading};
        }
    }

    // A bad reading from before a remedy that helped, which what it put right can give.
    bool may_have_gone(Index finding) const {
        const auto sign = latest_.find(finding);
        if (sign == latest_.end()) return false;
        const int stage = sign->second.stage;
        const int reading = sign->second.reading;
        const Finding& f = knowledge_.findings[static_cast<std::size_t>(finding)];
        if (!effort_.missing_for(finding).empty()) return false;
        if (f.from || reading < 0 || static_cast<std::size_t>(reading) + 1 >= f.readings.size()) return false;
        return std::any_of(facts_.tried.begin(), facts_.tried.end(), [&](const auto& tried) {
            return tried.second == Outcome::better && tried_as(facts_, tried.first) > stage &&
                   took_away(tried.first, finding, reading);
        });
    }

  private:
    bool took_away(Index remedy, Index finding, int reading) const {
        for (std::size_t i = 0; i < knowledge_.causes.size(); ++i) {
            if (!puts_right(knowledge_, remedy, static_cast<Index>(i))) continue;
            for (const Shows& shows : knowledge_.causes[i].shows) {
                if (shows.finding == finding && shows.how_often[static_cast<std::size_t>(reading)] > 0)
                    return true;
            }
        }
        return false;
    }

    const Knowledge& knowledge_;
    const Facts& facts_;
    const Effort& effort_;
    std::map<Index, Sign> latest_;
};

}  // namespace

std::optional<SecondLook> second_look(const PreparedKnowledge& prepared, const Facts& facts,
                                      const Effort& effort, const DiagnosisCase& diagnosis,
                                      const Ranking& ranking) {
    const bool helped = std::any_of(facts.tried.begin(), facts.tried.end(),
                                    [](const auto& tried) { return tried.second == Outcome::better; });
    if (!helped) return std::nullopt;
    const Knowledge& knowledge = prepared.knowledge();
    const SecondLooks looks(knowledge, facts, effort, diagnosis);
    for (const Index complaint : facts.complaints) {
        if (complaint < 0 || static_cast<std::size_t>(complaint) >= knowledge.complaints.size()) continue;
        for (const auto& says : knowledge.complaints[static_cast<std::size_t>(complaint)].says) {
            if (looks.may_have_gone(says.first)) return SecondLook{says.first, none};
        }
    }
    for (const RankedCause& cause : ranking.causes) {
        if (!cause.proved || cause.put_right || cause.probability < worth_a_second_look) continue;
        for (const Index finding : prepared.proving_findings(cause.cause)) {
            if (looks.may_have_gone(finding)) return SecondLook{finding, cause.cause};
        }
    }
    return std::nullopt;
}

}  // namespace hardover
