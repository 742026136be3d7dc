// Collects the entries of all files, then runs the readers of the single kinds in order.
#include "rules/reading/reading.hpp"

#include <algorithm>
#include <atomic>
#include <cstdint>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <system_error>
#include <thread>

#include "rules/reading/draft.hpp"
#include "rules/reading/elsewhere.hpp"
#include "rules/reading/letters.hpp"
#include "rules/result/nearest.hpp"

namespace hardover {
namespace {

using namespace reading_detail;

std::optional<EntryKind> kind_of(const std::string& word) {
    const auto& names = kind_names();
    const auto found = std::find(names.begin(), names.end(), word);
    if (found == names.end()) return std::nullopt;
    return static_cast<EntryKind>(found - names.begin());
}

void add_raw(Draft& draft, EntryKind kind, RawEntry raw) {
    auto& list = draft.raw[static_cast<std::size_t>(kind)];
    auto& index = draft.index[static_cast<std::size_t>(kind)];
    const auto [first, is_new] = index.emplace(raw.id, static_cast<Index>(list.size()));
    if (!is_new) {
        const Place& before = list[first->second].place;
        draft.faults.push_back({raw.place, name_of(kind) + " '" + raw.id + "' is given twice",
                                "the first is at " + before.file + ":" + std::to_string(before.line)});
    }
    list.push_back(std::move(raw));
}

// An entry of which only kind and id are known.
void add_doubtful(Draft& draft, const std::string& kind_name, const std::string& id, const Place& place) {
    const auto kind = kind_of(kind_name);
    if (!kind || !is_id(id) || draft.index[static_cast<std::size_t>(*kind)].count(id) > 0) return;
    add_raw(draft, *kind, {id, nullptr, place});
    draft.doubtful.insert(id);
}

// An entry whose kind is misspelt: taken for what it is nearest to, so that only its kind is reported and not
// everything that refers to it.
void collect_misspelt(Draft& draft, const YamlNode& node) {
    const YamlNode& key = node.keys[0];
    const YamlNode& id = node.items[0];
    const std::string near = nearest_spelling(key.text, kind_names());
    add_fault(draft.faults, key, "unknown kind of entry '" + key.text + "'",
              near.empty() ? "an entry begins with its kind and id, as '- finding: wheel_feel'"
                           : "did you mean '" + near + "'?");
    const bool is_clear = !near.empty() && id.is(YamlNode::Kind::text) && is_id(id.text);
    if (is_clear) add_doubtful(draft, near, id.text, node.place());
}

void collect_entry(Draft& draft, const YamlNode& node) {
    if (!node.is(YamlNode::Kind::map) || node.keys.empty() || !node.keys[0].is(YamlNode::Kind::text)) {
        add_fault(draft.faults, node, "expected an entry",
                  "begin it with its kind and id, as '- finding: wheel_feel'");
        return;
    }
    const YamlNode& key = node.keys[0];
    const auto kind = kind_of(key.text);
    if (!kind) {
        collect_misspelt(draft, node);
        return;
    }
    const bool needs_word = *kind == EntryKind::finding || *kind == EntryKind::worksheet ||
                            *kind == EntryKind::history || *kind == EntryKind::complaint ||
                            *kind == EntryKind::rig_field;
    const YamlNode& id = node.items[0];
    if (id.is(YamlNode::Kind::nothing)) {
        add_fault(draft.faults, key, "'" + key.text + "' has no id");
        return;
    }
    if (needs_word) {
        check_word(draft, id, name_of(*kind));
    } else if (!id.is(YamlNode::Kind::text) || !is_id(id.text)) {
        add_fault(draft.faults, id, name_of(*kind) + " '" + id.text + "' is not written as an id",
                  "small letters, digits and underscores, such as wheel_feel");
    }
    add_raw(draft, *kind, {id.text, &node, node.place()});
}

template <typename E>
void make_entries(const Draft& draft, EntryKind kind, std::vector<E>& entries) {
    entries.resize(draft.entries(kind).size());
    for (std::size_t i = 0; i < entries.size(); ++i) {
        entries[i].id = draft.entries(kind)[i].id;
        entries[i].place = draft.entries(kind)[i].place;
    }
}

void make_all_entries(Draft& draft) {
    Knowledge& k = draft.knowledge;
    make_entries(draft, EntryKind::source, k.sources);
    make_entries(draft, EntryKind::setting, k.setting_entries);
    make_entries(draft, EntryKind::history, k.histories);
    make_entries(draft, EntryKind::need, k.needs);
    make_entries(draft, EntryKind::part, k.parts);
    make_entries(draft, EntryKind::rig_field, k.rig_fields);
    make_entries(draft, EntryKind::complaint, k.complaints);
    make_entries(draft, EntryKind::same_words, k.same_words);
    make_entries(draft, EntryKind::finding, k.findings);
    make_entries(draft, EntryKind::check, k.checks);
    make_entries(draft, EntryKind::cause, k.causes);
    make_entries(draft, EntryKind::same_cure, k.same_cures);
    make_entries(draft, EntryKind::remedy, k.remedies);
    make_entries(draft, EntryKind::rule, k.rules);
    make_entries(draft, EntryKind::caution, k.cautions);
    make_entries(draft, EntryKind::deferral, k.deferrals);
    make_entries(draft, EntryKind::stop, k.stops);
    make_entries(draft, EntryKind::worksheet, k.worksheets);
}

// FNV-1a, 64 bit (Fowler, Noll and Vo), over the names without folders and the texts.
std::string fingerprint_of(const std::vector<KnowledgeFile>& files) {
    std::uint64_t hash = 0xcbf29ce484222325;
    const auto take = [&](std::string_view text) {
        for (const char c : text) hash = (hash ^ static_cast<unsigned char>(c)) * 0x100000001b3;
        hash *= 0x100000001b3;  // a zero byte, so that names and texts cannot run into each other
    };
    for (const KnowledgeFile& file : files) {
        take(file.name.substr(file.name.find_last_of('/') + 1));
        take(file.text);
    }
    std::string text(16, '0');
    for (int i = 15; i >= 0; --i, hash >>= 4) text[i] = "0123456789abcdef"[hash & 15];
    return text;
}

void require_some(Draft& draft, EntryKind kind, const KnowledgeFile& first) {
    if (!draft.entries(kind).empty()) return;
    const Place start{first.name, 1, 1};
    draft.faults.push_back({start, "there is no " + name_of(kind) + " in any file", ""});
}

void run_readers(Draft& draft) {
    read_scales_and_settings(draft);
    read_basic_entries(draft);
    read_rig_fields(draft);
    read_worksheet_names(draft);
    read_findings(draft);
    read_complaints(draft);
    read_same_words(draft);
    read_checks(draft);
    read_remedies(draft);
    read_causes(draft);
    read_same_cures(draft);
    read_rules(draft);
    read_pending_conditions(draft);
    read_worksheet_formulas(draft);
    check_origins(draft);
    check_proofs(draft);
    put_rules_in_layers(draft);
    refuse_worksheet_circles(draft);
}

// Parsing YAML takes most of the time of reading, and files are independent: they are shared out over the
// processors, the largest first. The result does not depend on how.
std::vector<EntriesRead> parse_files(const std::vector<KnowledgeFile>& files, std::vector<Fault>& faults) {
    std::vector<EntriesRead> read(files.size());
    std::vector<std::vector<Fault>> found(files.size());
    std::vector<std::size_t> order(files.size());
    for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return files[a].text.size() > files[b].text.size();
    });
    std::atomic<std::size_t> next{0};
    const auto work = [&] {
        for (std::size_t n = next++; n < order.size(); n = next++) {
            read[order[n]] = read_entries(files[order[n]], found[order[n]]);
        }
    };
    std::vector<std::thread> helpers;
    const std::size_t processors = std::max(1U, std::thread::hardware_concurrency());
    try {
        while (helpers.size() + 1 < std::min(processors, files.size())) helpers.emplace_back(work);
    } catch (const std::system_error&) {
        // no more threads to be had: those there are do the work
    }
    work();
    for (std::thread& helper : helpers) helper.join();
    for (const std::vector<Fault>& of_file : found)
        faults.insert(faults.end(), of_file.begin(), of_file.end());
    return read;
}

constexpr std::uintmax_t most_of_a_file = 16 << 20;  // bytes; the largest shipped file has less than 1 MB

// All *.yaml of a folder, sorted by name.
Result<std::vector<KnowledgeFile>> files_of(const std::string& folder) {
    namespace fs = std::filesystem;
    std::error_code error;
    std::vector<std::string> paths;
    fs::directory_iterator entry(folder, error);
    for (; !error && entry != fs::directory_iterator(); entry.increment(error)) {
        if (entry->path().extension() == ".yaml") paths.push_back(entry->path().generic_string());
    }
    if (error) {
        return Error{Error::Kind::not_found, "the knowledge folder cannot be read: " + error.message(),
                     folder, ""};
    }
    if (paths.empty()) {
        return Error{Error::Kind::not_found, "the knowledge folder holds no *.yaml file", folder,
                     "give the folder that holds them"};
    }
    std::sort(paths.begin(), paths.end());
    std::vector<KnowledgeFile> files;
    for (const std::string& path : paths) {
        // A pipe would be waited for, a device read for ever.
        if (!fs::is_regular_file(path, error)) {
            return Error{Error::Kind::bad_input, "this is no plain file", path, "put a knowledge file there"};
        }
        if (fs::file_size(path, error) > most_of_a_file) {
            return Error{Error::Kind::bad_input, "a knowledge file has at most 16 MB", path,
                         "check that it is one, or make it several"};
        }
        std::ifstream file(path, std::ios::binary);
        std::ostringstream text;
        if (file.peek() != std::ifstream::traits_type::eof()) text << file.rdbuf();
        if (!file.is_open() || file.bad())
            return Error{Error::Kind::not_found, "the file cannot be read", path, ""};
        files.push_back({path, text.str()});
    }
    return files;
}

KnowledgeRead refused(const std::string& file, std::string what, std::string cure) {
    return {std::nullopt, {Fault{{file, 0, 0}, std::move(what), std::move(cure)}}};
}

}  // namespace

std::string Fault::text() const {
    std::string where = place.file;
    if (place.line > 0) where += ":" + std::to_string(place.line) + ":" + std::to_string(place.column);
    return Error{Error::Kind::bad_knowledge, (warning ? "warning: " : "") + what, where, cure}.text();
}

KnowledgeRead read_knowledge(const std::vector<KnowledgeFile>& files, const Functions& functions) {
    if (files.empty()) return refused("", "there are no knowledge files", "");
    std::vector<KnowledgeFile> sorted = files;
    std::stable_sort(sorted.begin(), sorted.end(),
                     [](const KnowledgeFile& a, const KnowledgeFile& b) { return a.name < b.name; });

    Draft draft(functions);
    const std::string fingerprint = fingerprint_of(sorted);
    std::erase_if(sorted, [](const KnowledgeFile& file) { return is_read_elsewhere(file.name); });
    if (sorted.empty()) return refused("", "there are no knowledge files", "");
    const std::vector<EntriesRead> read = parse_files(sorted, draft.faults);
    for (std::size_t i = 0; i < read.size(); ++i) {
        for (const YamlNode& node : read[i].entries) collect_entry(draft, node);
        for (const BrokenEntry& broken : read[i].broken) {
            add_doubtful(draft, broken.kind, broken.id, {sorted[i].name, 1, 1});
        }
    }
    make_all_entries(draft);
    if (draft.faults.empty()) {
        require_some(draft, EntryKind::history, sorted.front());
        require_some(draft, EntryKind::finding, sorted.front());
        require_some(draft, EntryKind::cause, sorted.front());
    }
    run_readers(draft);

    KnowledgeRead result;
    result.faults = std::move(draft.faults);
    put_in_order(result.faults);
    const bool usable = std::all_of(result.faults.begin(), result.faults.end(),
                                    [](const Fault& fault) { return fault.warning; });
    if (usable) {
        draft.knowledge.fingerprint = fingerprint;
        result.knowledge = std::move(draft.knowledge);
    }
    return result;
}

bool is_read_elsewhere(const std::string& file) {
    return std::filesystem::path(file).filename().string().rfind("quiz_", 0) == 0;
}

Result<std::vector<KnowledgeFile>> files_read_elsewhere(const std::string& folder) {
    Result<std::vector<KnowledgeFile>> files = files_of(folder);
    if (!files) return files.error();
    std::erase_if(files.value(), [](const KnowledgeFile& file) { return !is_read_elsewhere(file.name); });
    return files;
}

KnowledgeRead read_knowledge_folder(const std::string& folder, const Functions& functions) {
    const Result<std::vector<KnowledgeFile>> files = files_of(folder);
    if (!files) return refused(files.error().where, files.error().what, files.error().cure);
    KnowledgeRead read = read_knowledge(files.value(), functions);
    if (read.knowledge) read.knowledge->folder = folder;
    return read;
}

std::string fingerprint_of_folder(const std::string& folder) {
    const Result<std::vector<KnowledgeFile>> files = files_of(folder);
    return files ? fingerprint_of(files.value()) : "";
}

}  // namespace hardover
