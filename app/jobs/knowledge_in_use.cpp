#include "app/jobs/knowledge_in_use.hpp"

#include <fmt/format.h>

#include "app/jobs/learning.hpp"
#include "app/rig/functions.hpp"
#include "rules/reading/reading.hpp"

namespace hardover {

KnowledgeInUse::KnowledgeInUse(Knowledge knowledge)
    : knowledge_(std::move(knowledge)), prepared_(knowledge_), seen_(knowledge_.fingerprint) {}

bool KnowledgeInUse::changed_on_disk() const {
    return !knowledge_.folder.empty() && fingerprint_of_folder(knowledge_.folder) != seen_;
}

Result<void> KnowledgeInUse::reload(const Store& store) {
    if (knowledge_.folder.empty()) return {};
    seen_ = fingerprint_of_folder(knowledge_.folder);
    KnowledgeRead read = read_knowledge_folder(knowledge_.folder, rig::rig_functions());
    if (!read.knowledge) {
        int faults = 0;
        std::string text;
        for (const Fault& fault : read.faults) {
            if (fault.warning || ++faults > most_faults) continue;
            text += (text.empty() ? "" : "\n") + fault.text();
        }
        if (faults > most_faults) text += fmt::format("\nand {} more", faults - most_faults);
        return Error{Error::Kind::bad_knowledge, text, "", ""};
    }
    Result<Knowledge> learned = learned_knowledge(*read.knowledge, store);
    if (!learned) return learned.error();
    knowledge_ = std::move(learned.value());
    prepared_ = PreparedKnowledge(knowledge_);
    return {};
}

std::string KnowledgeInUse::told(const Result<void>& reloaded) const {
    if (!reloaded) {
        return "The changed knowledge cannot be used, so the knowledge as it was goes on being used.\n" +
               reloaded.error().text();
    }
    return fmt::format("The knowledge was read anew: {} findings, {} causes, {} checks.",
                       knowledge_.findings.size(), knowledge_.causes.size(), knowledge_.checks.size());
}

}  // namespace hardover
