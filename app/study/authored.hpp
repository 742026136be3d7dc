// Quiz items written by hand, for what cannot be made from the knowledge: judgement. They stand in
// quiz_*.yaml beside the other files and name complaints, parts and sources of it. Knows no learner.
#pragma once

#include <string>
#include <vector>

#include "app/study/item.hpp"
#include "rules/model/knowledge.hpp"
#include "rules/reading/reading.hpp"

namespace hardover::study {

struct AuthoredItem : Entry {
    Form form = Form::method;
    std::vector<Index> complaints;
    Index part = none;
    std::string ask;
    std::vector<Option> options;  // the right one first
    std::string reason;
};

struct AuthoredRead {
    std::vector<AuthoredItem> items;  // those without a fault
    std::vector<Fault> faults;        // in order; warnings for texts that are hard to read
};

AuthoredRead read_authored(const std::vector<KnowledgeFile>& files, const Knowledge& knowledge);

// From the folder that the knowledge was read from; nothing where it has none.
AuthoredRead read_authored(const Knowledge& knowledge);

}  // namespace hardover::study
