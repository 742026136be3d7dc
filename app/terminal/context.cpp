#include "app/terminal/context.hpp"

#include <filesystem>

#include "app/jobs/learning.hpp"
#include "app/jobs/shop.hpp"
#include "app/records/whole_file.hpp"
#include "app/rig/functions.hpp"
#include "app/terminal/places.hpp"

namespace hardover {

int refuse(Context& context, const Error& error) {
    context.streams.err << "hardover: " << error.text() << "\n";
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

Result<Store> open_records(const Context& context) {
    const Result<std::string> path = records_path(context);
    if (!path) return path.error();
    return Store::open(path.value());
}

UnitSystem units_in_use(const Context& context) {
    const Result<std::string> path = records_path(context);
    std::error_code failed;
    if (!path || !std::filesystem::exists(path.value(), failed)) return UnitSystem::us;
    const Result<Store> store = Store::open(path.value());
    if (!store) return UnitSystem::us;
    const Result<ShopSettings> shop = read_shop(store.value());
    return shop ? shop.value().ways.units : UnitSystem::us;
}

Result<std::string> read_file(const std::string& path) {
    return read_whole_file(path);
}

}  // namespace hardover
