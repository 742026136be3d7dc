// Files of the knowledge: read and looked over, or refused with every fault at its place in the file. A file
// that begins with the line "# joins the garden pump" is read together with that small base.
#include "fuzz/garden_pump.hpp"
#include "fuzz/target.hpp"

using namespace hardover;
using namespace hardover_fuzz;

namespace {

const std::string name = "changed.yaml";

void demand_fault(const Fault& fault, const std::string& text) {
    demand(fault.what.size() >= 8, "a fault that says nothing: " + fault.text());
    if (fault.place.file != name) return;  // of the base that it joins
    demand_inside(fault.place.line, fault.place.column, text, fault.text());
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string text = text_of(data, size);
    static const std::vector<KnowledgeFile> base = garden_pump_files();
    std::vector<KnowledgeFile> files;
    if (text.rfind("# joins the garden pump\n", 0) == 0) files = base;
    files.push_back({name, text});
    const KnowledgeRead read = read_knowledge(files, Functions());
    bool refused = false;
    for (const Fault& fault : read.faults) {
        demand(!fault.place.file.empty(), "a fault without a file: " + fault.text());
        demand_fault(fault, text);
        refused = refused || !fault.warning;
    }
    demand(refused != read.knowledge.has_value(), "neither read nor refused");
    if (!read.knowledge) return 0;
    for (const Fault& doubt : check_sense(*read.knowledge)) demand_fault(doubt, text);
    scope_of(*read.knowledge);
    return 0;
}
