// YAML files -> Knowledge, and case files -> Facts. The only place that knows YAML.
// Every fault of all files is reported in one run, each at file:line:column with the nearest right spelling.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "rules/language/language.hpp"
#include "rules/model/facts.hpp"
#include "rules/model/knowledge.hpp"

namespace hardover {

// One fault in a file. A warning does not keep the knowledge from being used.
struct Fault {
    Place place;
    std::string what;
    std::string cure;  // "did you mean ...", "expected ..."; may be empty
    bool warning = false;

    std::string text() const;  // "knowledge/causes_oil.yaml:14:12: unknown finding 'whell_feel' (did you mean
                               // 'wheel_feel'?)"
};

struct KnowledgeRead {
    std::optional<Knowledge> knowledge;  // empty when any fault is not a warning
    std::vector<Fault> faults;           // by file, line, column
};

// A file by name and text, so that tests and editors need no disk.
struct KnowledgeFile {
    std::string name;
    std::string text;
};

// Reads all *.yaml of a folder (not below it), sorted by name. Error faults for an unreadable or empty
// folder.
KnowledgeRead read_knowledge_folder(const std::string& folder, const Functions& functions);

// The fingerprint that the knowledge in this folder would have; "" when its files cannot be read.
std::string fingerprint_of_folder(const std::string& folder);

// Reads the given files together.
KnowledgeRead read_knowledge(const std::vector<KnowledgeFile>& files, const Functions& functions);

// Sense checks beyond form, on a base that has been read: causes that nothing or hardly anything tells apart
// and no 'same_cure' excuses (a fault when nothing does and their remedies differ), a 'same_cure' of causes
// that can be told apart (a fault), causes whose proof they do not show, findings nothing uses, checks that
// get nothing, remedies, cautions and stops that nothing carries, settings left to their defaults, questions,
// causes, rules and deferrals that come into play on no rig, texts too long or too hard to read. Warnings but
// for the two faults named, each at the entry's place. What reading already refuses (a cause without proof,
// remedy or source, a remedy without minutes or checks after it) is not looked for again.
std::vector<Fault> check_sense(const Knowledge& knowledge);

// A case file: rig, history, complaints, answers, and optionally story, tried, not_available, expect.
struct CaseExpectation {
    std::string first;  // id of the cause that must come first; may be empty
    std::vector<std::string> among_first_three;
};

struct Case {
    std::string story;
    Facts facts;
    CaseExpectation expect;
};

struct CaseRead {
    std::optional<Case> found;
    std::vector<Fault> faults;
};

CaseRead read_case(const KnowledgeFile& file, const Knowledge& knowledge);

// One answer as typed: a reading's id or text, a number with unit, or "can't tell" / "cannot_tell" / "?".
// Error: what was expected, with the readings or a sample quantity.
Result<Answer> read_answer(const Finding& finding, std::string_view text);

// A rig field's value as typed: a choice's id, or a quantity within the field's limits.
Result<RigValue> read_rig_value(const RigField& field, std::string_view text);

// A worksheet input's value as typed: a quantity in its unit, or the id or text of one of its choices.
Result<Value> read_input_value(const WorksheetInput& input, std::string_view text);

// The names expressions may use with this knowledge (rig.x, history, complaint, findings, worksheet.result,
// fact.x). Inside a worksheet (`inside` is its index) only its inputs and results, by their short names, so
// that it can be worked out by itself.
std::unique_ptr<Scope> scope_of(const Knowledge& knowledge, Index inside = none);

}  // namespace hardover
