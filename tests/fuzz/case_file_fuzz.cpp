// Case files about the garden pump: read, or refused with every fault at its place in the file. Also single
// answers, rig values and inputs as typed: the text itself is given to each.
#include "fuzz/garden_pump.hpp"
#include "fuzz/target.hpp"

using namespace hardover;
using namespace hardover_fuzz;

namespace {

const std::string name = "odd_case.yaml";

template <typename T>
void demand_read_or_worded(const Result<T>& read) {
    if (!read) demand_worded(read.error());
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    static const Knowledge pump = garden_pump();
    const std::string text = text_of(data, size);
    const CaseRead read = read_case({name, text}, pump);
    for (const Fault& fault : read.faults) {
        demand(fault.place.file == name, "a fault without its file: " + fault.text());
        demand(fault.what.size() >= 8, "a fault that says nothing: " + fault.text());
        demand_inside(fault.place.line, fault.place.column, text, fault.text());
    }
    demand(read.found.has_value() == read.faults.empty(), "neither read nor refused");
    for (const Finding& finding : pump.findings) demand_read_or_worded(read_answer(finding, text));
    for (const RigField& field : pump.rig_fields) demand_read_or_worded(read_rig_value(field, text));
    for (const Worksheet& sheet : pump.worksheets) {
        for (const WorksheetInput& input : sheet.inputs) demand_read_or_worded(read_input_value(input, text));
    }
    return 0;
}
