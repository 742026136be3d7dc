#include "app/study/askable_kept.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "app/records/whole_file.hpp"

namespace hardover::study {

namespace {

// What the answer hangs on; empty where the program cannot be read, so that nothing is kept.
std::string hangs_on(const Knowledge& knowledge, std::uint64_t seed) {
    // Another program may make other items of the same knowledge.
    static const Result<std::string> program = sha256_of_file("/proc/self/exe");
    if (!program) return "";
    std::string all = fmt::format("{} {} {}", program.value(), knowledge.fingerprint, seed);
    // Odds that a shop has learned are not in the files.
    for (const Cause& cause : knowledge.causes) {
        for (const double odds : cause.odds) all += fmt::format(" {}", odds);
    }
    return sha256_of(all);
}

// Three lines: what it hangs on, a 1 or 0 for each stem of list_stems(), and the hash of the two.
std::string text_of(const std::string& key, const std::string& marks) {
    const std::string both = key + "\n" + marks + "\n";
    return both + sha256_of(both) + "\n";
}

std::string marks_in(const std::string& file, const std::string& key, std::size_t stems) {
    const Result<std::string> text = read_whole_file(file);
    if (!text || text.value().size() < key.size() + 1 + stems) return "";
    const std::string marks = text.value().substr(key.size() + 1, stems);
    return text.value() == text_of(key, marks) ? marks : "";
}

}  // namespace

std::vector<Stem> askable_kept(const Portraits& portraits, std::uint64_t seed, const std::string& file) {
    const std::string key = hangs_on(portraits.knowledge(), seed);
    if (key.empty()) return *askable_stems(portraits, seed);  // nobody tells it to stop
    const std::vector<Stem> stems = list_stems(portraits);
    const std::string marks = marks_in(file, key, stems.size());
    if (!marks.empty()) {
        std::vector<Stem> askable;
        for (std::size_t i = 0; i < stems.size(); ++i) {
            if (marks[i] == '1') askable.push_back(stems[i]);
        }
        return askable;
    }
    std::vector<Stem> askable = *askable_stems(portraits, seed);
    std::set<std::string> ids;
    for (const Stem& stem : askable) ids.insert(stem.id);
    std::string found;
    for (const Stem& stem : stems) found += ids.contains(stem.id) ? '1' : '0';
    // Not written, it is found out again the next time.
    static_cast<void>(write_whole_file(file, text_of(key, found)));
    return askable;
}

}  // namespace hardover::study
