#include "rules/reasoning/leading.hpp"

namespace hardover {

Leading leading(const DiagnosisCase& diagnosis, const FaultCase& given) {
    Leading now;
    const Posterior p = posterior(diagnosis.network(), given);
    now.all.assign(p.marginal.size(), 0.0);
    if (!p.possible) return now;
    now.log_evidence = p.log_evidence;
    for (std::size_t i = 0; i < p.marginal.size(); ++i) {
        if (!diagnosis.cured() && diagnosis.put_right()[i]) continue;
        now.all[i] = p.marginal[i];
        if (p.marginal[i] <= now.probability) continue;
        now.first = static_cast<Index>(i);
        now.probability = p.marginal[i];
    }
    return now;
}

Leading leading(const PreparedKnowledge& prepared, const Facts& facts) {
    Situation situation(prepared, facts);
    const Fired fired = fire(prepared.knowledge(), situation);
    const DiagnosisCase diagnosis(prepared.knowledge(), facts, fired, situation);
    return leading(diagnosis, diagnosis.with_all());
}

}  // namespace hardover
