// Inputs to the shipped worksheets: the first line of an input names the worksheet, each line after it is
// what was typed for one of its inputs. Whatever is typed, a sheet is worked out to numbers, or says why not.
#include <cmath>

#include "app/rig/functions.hpp"
#include "fuzz/target.hpp"
#include "rules/reading/reading.hpp"
#include "rules/reasoning/worksheets.hpp"

using namespace hardover;
using namespace hardover_fuzz;

namespace {

Knowledge shipped() {
    KnowledgeRead read = read_knowledge_folder(HARDOVER_SOURCE_DIR "/knowledge", rig::rig_functions());
    demand(read.knowledge.has_value(), "the shipped knowledge cannot be read");
    return *std::move(read.knowledge);
}

// The next line of the text from `at` on.
std::string next_line(const std::string& text, std::size_t& at) {
    const std::size_t end = std::min(text.find('\n', at), text.size());
    const std::string line = text.substr(std::min(at, text.size()), end - std::min(at, end));
    at = std::min(end + 1, text.size());
    return line;
}

// A name that is none stands for one all the same, so that a changed letter does not end the matter.
Index sheet_named(const Knowledge& knowledge, const std::string& name) {
    const Index found = find(knowledge.worksheets, name);
    if (found != none) return found;
    return static_cast<Index>(name.size() % knowledge.worksheets.size());
}

void demand_numbers(const WorkedSheet& worked, const Worksheet& sheet) {
    for (const Value& result : worked.results) {
        const Quantity* quantity = std::get_if<Quantity>(&result);
        demand(quantity == nullptr || (std::isfinite(quantity->value) && std::isfinite(quantity->spread)),
               "a result of " + sheet.id + " that is no number");
    }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    static const Knowledge knowledge = shipped();
    const std::string text = text_of(data, size);
    std::size_t at = 0;
    const Index index = sheet_named(knowledge, next_line(text, at));
    const Worksheet& sheet = knowledge.worksheets[index];
    std::vector<Value> values;
    for (const WorksheetInput& input : sheet.inputs) {
        const Result<Value> value = read_input_value(input, next_line(text, at));
        if (!value) demand_worded(value.error());
        values.push_back(value ? value.value() : Value(Unknown{}));
    }
    demand_numbers(work_out(knowledge, index, values), sheet);
    return 0;
}
