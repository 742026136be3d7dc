#include "bench/enlarged.hpp"

#include <string>

namespace hardover_bench {

using namespace hardover;

namespace {

// The entries of one copy: where each of the originals went.
struct Places {
    std::vector<Index> findings;
    std::vector<Index> checks;
    std::vector<Index> remedies;

    static Index of(const std::vector<Index>& places, Index index) {
        return index == none ? none : places[static_cast<std::size_t>(index)];
    }
};

template <typename E>
Index add_renamed(std::vector<E>& entries, E entry, const std::string& suffix) {
    entry.id += suffix;
    entries.push_back(std::move(entry));
    return static_cast<Index>(entries.size()) - 1;
}

std::vector<bool> told_by_complaints(const Knowledge& knowledge) {
    std::vector<bool> told(knowledge.findings.size(), false);
    for (const Complaint& complaint : knowledge.complaints) {
        for (const auto& says : complaint.says) told[static_cast<std::size_t>(says.first)] = true;
    }
    return told;
}

Places add_copy(const Knowledge& original, const std::string& suffix, Knowledge& larger) {
    Places places;
    for (const Check& check : original.checks) {
        const Index copy = add_renamed(larger.checks, check, suffix);
        larger.checks.back().gets.clear();
        places.checks.push_back(copy);
    }
    const std::vector<bool> shared = told_by_complaints(original);
    for (std::size_t f = 0; f < original.findings.size(); ++f) {
        if (shared[f]) {
            places.findings.push_back(static_cast<Index>(f));
            continue;
        }
        Finding copy = original.findings[f];
        copy.from.reset();
        copy.check = Places::of(places.checks, copy.check);
        const Index check = copy.check;
        places.findings.push_back(add_renamed(larger.findings, std::move(copy), suffix));
        if (check != none) {
            larger.checks[static_cast<std::size_t>(check)].gets.push_back(places.findings.back());
        }
    }
    for (const Remedy& remedy : original.remedies) {
        places.remedies.push_back(add_renamed(larger.remedies, remedy, suffix));
    }
    return places;
}

}  // namespace

Knowledge enlarged(const Knowledge& knowledge, int copies) {
    Knowledge larger = knowledge;
    for (int copy = 2; copy <= copies; ++copy) {
        const std::string suffix = "_" + std::to_string(copy);
        const Places places = add_copy(knowledge, suffix, larger);
        for (Cause cause : knowledge.causes) {
            for (Shows& shows : cause.shows) shows.finding = Places::of(places.findings, shows.finding);
            cause.proof = Places::of(places.checks, cause.proof);
            cause.proved_when = Expression();
            cause.remedy = Places::of(places.remedies, cause.remedy);
            add_renamed(larger.causes, std::move(cause), suffix);
        }
    }
    for (Cause& cause : larger.causes) {
        for (double& odds : cause.odds) odds /= copies;
    }
    return larger;
}

}  // namespace hardover_bench
