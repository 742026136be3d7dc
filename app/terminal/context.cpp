#include "app/terminal/context.hpp"

#include "app/jobs/learning.hpp"
#include "app/jobs/shop.hpp"
#include "app/records/way_back.hpp"
#include "app/records/whole_file.hpp"
#include "app/rig/functions.hpp"
#include "app/terminal/places.hpp"

namespace hardover {

int refuse(Context& context, const Error& error) {
    const Result<std::string> path = records_path(context);
    const Error told = path ? with_way_back(error, path.value()) : error;
    context.streams.err << "hardover: " << told.text() << "\n";
    return 1;
}

Result<std::string> knowledge_folder(const Context& context) {
    if (!context.knowledge_folder.empty()) return context.knowledge_folder;
    return shipped_knowledge_folder();
}

Result<Knowledge> load_knowledge(Context& context) {
    const Result<std::string> folder = knowledge_folder(context);
    if (!folder) return folder.error();
    KnowledgeRead read = read_knowledge_folder(folder.value(), rig::rig_functions());
    if (read.knowledge.has_value()) return std::move(*read.knowledge);
    int faults = 0;
    for (const Fault& fault : read.faults) {
        if (fault.warning) continue;
        context.streams.err << fault.text() << "\n";
        ++faults;
    }
    return Error{
        Error::Kind::bad_knowledge,
        "the knowledge cannot be used: " + std::to_string(faults) + (faults == 1 ? " fault" : " faults"),
        folder.value(), "put right what is listed above"};
}

Result<Knowledge> load_knowledge(Context& context, const Store& store) {
    const Result<Knowledge> shipped = load_knowledge(context);
    if (!shipped) return shipped.error();
    return learned_knowledge(shipped.value(), store);
}

Result<std::string> records_path(const Context& context) {
    if (!context.records_file.empty()) return context.records_file;
    const Result<std::string> folder = user_data_folder();
    if (!folder) return folder.error();
    return folder.value() + "/records.db";
}

Result<void> records_named_well(const Context& context) {
    const std::string& file = context.records_file;
    if (file.empty()) return {};
    if (file.back() == '/') {
        return Error{Error::Kind::bad_input, "this is a folder, not a records file", file,
                     "name a file in it"};
    }
    const Result<void> there = folder_above(file);
    if (there) return {};
    Error error = there.error();
    error.what = "the folder of the records file is not there";
    return error;
}

Result<Store> open_records(const Context& context) {
    const Result<std::string> path = records_path(context);
    if (!path) return path.error();
    if (const Result<void> lost = not_lost(path.value()); !lost) return lost.error();
    return Store::open(path.value());
}

Result<Store> open_records_on_file(const Context& context) {
    const Result<std::string> path = records_path(context);
    if (!path) return path.error();
    if (const Result<void> there = records_there(path.value()); !there) return there.error();
    return Store::open(path.value());
}

UnitSystem units_in_use(const Context& context) {
    const Result<Store> store = open_records_on_file(context);
    if (!store) return UnitSystem::us;
    const Result<ShopSettings> shop = read_shop(store.value());
    return shop ? shop.value().ways.units : UnitSystem::us;
}

Result<std::string> read_file(const std::string& path) {
    return read_whole_file(path);
}

}  // namespace hardover
