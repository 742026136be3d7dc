#include "app/jobs/search.hpp"

#include <algorithm>
#include <sstream>

#include "app/jobs/word_match.hpp"
#include "app/jobs/wording.hpp"

namespace hardover {

std::string kind_name(const std::string& kind) {
    if (kind == "rig_field") return "Field of the rig";
    if (kind == "same_cure") return "Same cure";
    if (kind == "same_words") return "Same words";
    std::string name = kind;
    if (!name.empty()) name[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(name[0])));
    return name;
}

std::string complaint_names(const Knowledge& knowledge, const std::string& ids) {
    std::istringstream parts(ids);
    std::string id, names;
    while (std::getline(parts, id, ',')) {
        id.erase(0, id.find_first_not_of(' '));
        if (id.empty()) continue;
        const Index at = find(knowledge.complaints, id);
        if (!names.empty()) names += " · ";
        names += at == none ? id : knowledge.complaints[static_cast<std::size_t>(at)].name;
    }
    return names;
}

template <typename E>
void SearchIndex::add(const std::string& kind, const E& entry, const std::string& under, double weight) {
    const std::size_t at = entries_.size();
    const std::string title = entry.name.empty() ? under : entry.name;
    entries_.push_back({{kind, entry.id}, kind_name(kind), title, entry.name.empty() ? "" : under, 0});
    index_.add(at, title, 1.6 * weight, true);
    std::string id = entry.id;
    std::replace(id.begin(), id.end(), '_', ' ');
    index_.add(at, id, 1.2 * weight);
    index_.add(at, under, 0.6 * weight);
}

SearchIndex::SearchIndex(const Knowledge& knowledge)
    : index_(WordRoots(knowledge.same_words)), fingerprint_(knowledge.fingerprint) {
    for (const Complaint& each : knowledge.complaints) {
        add("complaint", each, "", 1.25);
        for (const std::string& words : each.words) index_.add(entries_.size() - 1, words, 1.25, true);
    }
    for (const Finding& each : knowledge.findings) {
        add("finding", each, each.ask);
        for (const Reading& reading : each.readings) index_.add(entries_.size() - 1, reading.text, 0.6);
    }
    for (const Cause& each : knowledge.causes) add("cause", each, each.about);
    for (const Check& each : knowledge.checks) {
        add("check", each, each.why);
        for (const std::string& step : each.steps) index_.add(entries_.size() - 1, step, 0.3);
    }
    for (const Remedy& each : knowledge.remedies)
        add("remedy", each, each.steps.empty() ? "" : each.steps.front());
    for (const Rule& each : knowledge.rules) add("rule", each, each.why, 0.8);
    for (const Worksheet& each : knowledge.worksheets) {
        add("worksheet", each, each.about);
        for (const WorksheetInput& input : each.inputs) index_.add(entries_.size() - 1, input.name, 0.6);
    }
    for (const Caution& each : knowledge.cautions) add("caution", each, each.hurts);
    for (const Deferral& each : knowledge.deferrals) add("deferral", each, each.text);
    for (const Stop& each : knowledge.stops) add("stop", each, each.text);
    for (const Source& each : knowledge.sources) add("source", each, each.where, 0.8);
    for (const RigField& each : knowledge.rig_fields) add("rig_field", each, each.ask, 0.8);
}

std::vector<SearchHit> SearchIndex::find(const std::string& words, const std::vector<std::string>& kinds,
                                         std::size_t most, bool typing) const {
    const auto matches = index_.find(words, typing);
    std::vector<SearchHit> hits;
    for (std::size_t i = 0; i < matches.size(); ++i) {
        if (matches[i].score <= 0) continue;
        SearchHit hit = entries_[i];
        if (!kinds.empty() && std::find(kinds.begin(), kinds.end(), hit.to.kind) == kinds.end()) continue;
        hit.score = matches[i].score;
        if (hit.to.kind == "complaint" && !matches[i].phrase.empty() && matches[i].phrase != hit.title)
            hit.under = "As customers say: " + jobs_detail::quoted(matches[i].phrase);
        hits.push_back(std::move(hit));
    }
    std::stable_sort(hits.begin(), hits.end(),
                     [](const SearchHit& a, const SearchHit& b) { return a.score > b.score; });
    // What has only a word in common by chance is not worth a row.
    const double least = hits.empty() ? 0 : hits.front().score * 0.25;
    std::erase_if(hits, [least](const SearchHit& hit) { return hit.score < least; });
    if (hits.size() > most) hits.resize(most);
    return hits;
}

std::vector<SearchHit> search(const SearchIndex& index, const Knowledge& knowledge,
                              const std::vector<JobRow>& jobs, const std::string& words, std::size_t most) {
    std::vector<SearchHit> hits;
    if (words.find_first_not_of(" \t") == std::string::npos) return hits;
    // A job is named by its boat or number: every word has to be in it.
    std::size_t jobs_found = 0;
    for (const JobRow& job : jobs) {
        if (jobs_found == 5) break;
        const std::string title = "Job " + std::to_string(job.number) + " · " + job.summary.boat;
        const std::string complaints = complaint_names(knowledge, job.summary.complaint);
        if (!has_all_words(title + " " + complaints + " " + job.summary.state, words)) continue;
        const bool by_name = has_all_words(title, words);
        const std::string state = job.summary.state == "handed back" ? "Handed back" : "In hand";
        SearchHit hit{{"job", std::to_string(job.number)},
                      "Job",
                      title,
                      state + (complaints.empty() ? "" : ". " + complaints),
                      by_name ? 10.0 : 0.5};
        hits.push_back(std::move(hit));
        ++jobs_found;
    }
    // A job has been asked for by all its words: it is not crowded out.
    const auto known =
        index.find(words, {"complaint", "cause", "check", "worksheet"}, most - std::min(most, jobs_found));
    hits.insert(hits.end(), known.begin(), known.end());
    std::stable_sort(hits.begin(), hits.end(),
                     [](const SearchHit& a, const SearchHit& b) { return a.score > b.score; });
    if (hits.size() > most) hits.resize(most);
    return hits;
}

}  // namespace hardover
