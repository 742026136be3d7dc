#include "app/records/without_triggers.hpp"

namespace hardover::records_detail {

namespace {

Result<void> run(const Database& database, const std::vector<std::string>& statements) {
    for (const std::string& sql : statements) {
        if (auto done = database.run(sql.c_str()); !done.ok()) return done;
    }
    return {};
}

}  // namespace

Result<void> WithoutTriggers::begin(const Database& database) {
    Statement select(database, "SELECT name, sql FROM sqlite_master WHERE type = 'trigger'");
    std::vector<std::string> drops;
    int code = select.step();
    for (; code == SQLITE_ROW; code = select.step()) {
        drops.push_back("DROP TRIGGER " + select.text(0));
        again_.push_back(select.text(1));
    }
    if (code != SQLITE_DONE) return database.error(code);
    return run(database, drops);
}

Result<void> WithoutTriggers::end(const Database& database) const {
    return run(database, again_);
}

}  // namespace hardover::records_detail
