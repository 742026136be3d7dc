#include "bench/larger_base.hpp"

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <set>
#include <sstream>

namespace hardover_bench {

using hardover::KnowledgeFile;

namespace {

const std::set<std::string> copied_kinds = {"complaint", "finding", "check", "cause",
                                            "same_cure", "remedy",  "rule"};

std::string text_of(const std::filesystem::path& path) {
    std::ifstream file(path, std::ios::binary);
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

bool in_id(char c) {
    return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '_';
}

struct Entry {
    std::string kind;
    std::string id;
    std::string text;
};

// The file cut before each "- kind: id" at the start of a line.
std::vector<Entry> entries_of(const std::string& text) {
    std::vector<Entry> entries;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t end = std::min(text.find('\n', at), text.size() - 1) + 1;
        const std::string line = text.substr(at, end - at);
        if (line.rfind("- ", 0) == 0) {
            const std::size_t colon = line.find(':');
            std::size_t stop = std::min(line.find_first_not_of(' ', colon + 1), line.size());
            const std::size_t start = stop;
            while (stop < line.size() && in_id(line[stop])) ++stop;
            entries.push_back({line.substr(2, colon - 2), line.substr(start, stop - start), ""});
        }
        if (!entries.empty()) entries.back().text += line;
        at = end;
    }
    return entries;
}

// Not a function, and not a part of a longer name such as that of a worksheet's result.
bool stands_alone(const std::string& text, std::size_t start, std::size_t end) {
    const bool in_longer_name = (start > 0 && text[start - 1] == '.') ||
                                (end + 1 < text.size() && text[end] == '.' && in_id(text[end + 1]));
    return !in_longer_name && (end == text.size() || text[end] != '(');
}

// Whether the line that `at` is in names something that is not copied.
bool names_others(const std::string& text, std::size_t at) {
    const std::size_t start = text.rfind('\n', at) + 1;  // npos + 1 is 0
    const std::string line = text.substr(start, text.find('\n', at) - start);
    for (const char* key : {"worksheets: ", "run: ", "gauge: ", "part: ", "cautions: ", "caution: ",
                            "defer: ", "stop: ", "needs: "}) {
        if (line.find(key) != std::string::npos) return true;
    }
    return false;
}

std::string with_other_ids(const std::string& text, const std::set<std::string>& ids,
                           const std::string& ending) {
    std::string changed;
    for (std::size_t at = 0; at < text.size();) {
        std::size_t end = at;
        while (end < text.size() && in_id(text[end])) ++end;
        if (end == at) {
            changed += text[at++];
            continue;
        }
        const std::string word = text.substr(at, end - at);
        changed += ids.count(word) > 0 && stands_alone(text, at, end) && !names_others(text, at)
                       ? word + ending
                       : word;
        at = end;
    }
    return changed;
}

}  // namespace

std::vector<KnowledgeFile> files_of(const std::string& folder) {
    std::vector<KnowledgeFile> files;
    for (const auto& entry : std::filesystem::directory_iterator(folder)) {
        if (entry.path().extension() != ".yaml") continue;
        files.push_back({entry.path().generic_string(), text_of(entry.path())});
    }
    if (files.empty()) {
        std::cerr << folder << " holds no knowledge\n";
        std::exit(1);
    }
    std::sort(files.begin(), files.end(), [](const auto& a, const auto& b) { return a.name < b.name; });
    return files;
}

std::vector<KnowledgeFile> enlarged(const std::vector<KnowledgeFile>& files, int times) {
    std::set<std::string> ids;
    for (const KnowledgeFile& file : files) {
        for (const Entry& entry : entries_of(file.text)) {
            if (copied_kinds.count(entry.kind) > 0) ids.insert(entry.id);
        }
    }
    std::vector<KnowledgeFile> all = files;
    for (int n = 2; n <= times; ++n) {
        const std::string ending = "_copy" + std::to_string(n);
        for (const KnowledgeFile& file : files) {
            std::string text;
            for (const Entry& entry : entries_of(file.text)) {
                if (copied_kinds.count(entry.kind) == 0) continue;
                text += with_other_ids(entry.text, ids, ending);
            }
            if (!text.empty())
                all.push_back({file.name.substr(0, file.name.size() - 5) + ending + ".yaml", text});
        }
    }
    return all;
}

}  // namespace hardover_bench
