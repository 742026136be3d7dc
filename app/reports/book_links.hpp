// Where each entry stands in the knowledge book, and what refers to it. Inner part of app/reports.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "rules/model/knowledge.hpp"

namespace hardover::book {

// The kinds by their word in the files, and the page each stands on.
inline const char* page_of(const std::string& kind) {
    if (kind == "complaint") return "complaints.html";
    if (kind == "finding") return "findings.html";
    if (kind == "check") return "checks.html";
    if (kind == "cause" || kind == "same_cure") return "causes.html";
    if (kind == "remedy") return "remedies.html";
    if (kind == "rule") return "rules.html";
    if (kind == "worksheet") return "worksheets.html";
    if (kind == "caution" || kind == "deferral" || kind == "stop") return "cautions.html";
    if (kind == "source") return "sources.html";
    return "rig.html";  // rig_field, history, need, part, setting
}

std::string address(const std::string& kind, const Entry& entry);
std::string link(const std::string& kind, const Entry& entry);

// A condition or formula with every name in it that is an entry's linked to it.
std::string condition(const Knowledge& knowledge, const Expression& expression);

// Who refers to an entry: links, in the order of the knowledge.
class Backward {
  public:
    explicit Backward(const Knowledge& knowledge);

    // "finding", index -> links with a word before them, such as "shown by".
    const std::vector<std::string>& to(const std::string& kind, const std::string& relation,
                                       Index index) const;

  private:
    void add(const std::string& kind, const std::string& relation, Index index, const std::string& html);
    void add_causes(const Knowledge& knowledge);
    void add_work(const Knowledge& knowledge);
    void add_rules(const Knowledge& knowledge);
    void add_sources(const Knowledge& knowledge);

    std::map<std::string, std::map<Index, std::vector<std::string>>>
        links_;  // "finding shown_by" -> index -> links
};

}  // namespace hardover::book
