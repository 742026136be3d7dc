// Set files of a class, rosters and single records: the text as it is, and as a set that somebody signed. In
// an input
// @KEY@ stands for that somebody's public key: a signature only says that nothing changed since, not that the
// signer meant well.
#include <nlohmann/json.hpp>

#include "app/classroom/canonical.hpp"
#include "app/classroom/record.hpp"
#include "app/classroom/roster.hpp"
#include "app/classroom/seal.hpp"
#include "app/classroom/set.hpp"
#include "fuzz/target.hpp"

using namespace hardover;
using namespace hardover::classroom;
using namespace hardover_fuzz;

namespace {

const std::string name = "S1.hardover-set";

const KeyPair& key() {
    static const KeyPair pair = key_pair_of(Secret(std::string(seed_size, 'k')));
    return pair;
}

// A file that is meant for the program alone is refused by its name, with what to do.
void demand_refused(const Error& error) {
    demand_worded(error);
    demand(error.where == name, "a refusal that does not name the file: " + error.text());
    demand(!error.cure.empty(), "a refusal without what to do: " + error.text());
}

std::string with_key(std::string text) {
    const std::string key_text = to_hex(key().public_key);
    for (std::size_t at = 0; (at = text.find("@KEY@", at)) != std::string::npos; at += key_text.size()) {
        text.replace(at, 5, key_text);
    }
    return text;
}

void try_set(const std::string& text) {
    const Result<ClassSet> set = read_set_file(text, name);
    if (!set) return demand_refused(set.error());
    demand(look_over(set.value()).ok(), "a set that was read and cannot be");
    for (const Task& task : set.value().tasks) demand(!task_text(task).empty(), "a task without words");
    const std::string written = set_file(set.value(), key().secret_key);
    const Result<ClassSet> again = read_set_file(written, name);
    demand(again.ok(), "a set that was written and is refused: " + written);
}

void try_record(const std::string& line) {
    const Result<Record> record = read_record(line);
    if (!record) return demand_worded(record.error());
    const Record& read = record.value();
    if (std::holds_alternative<std::monostate>(read.content)) return;
    const Record made = make_record(read.of, read.sequence, read.at, read.content);
    demand(read_record(made.line).ok(), "a record that was written and is refused: " + made.line);
}

void try_roster(const std::string& text) {
    static const std::string file = "roster.csv";
    Roster roster;
    const Result<std::size_t> taken = import_roster(roster, text, file);
    if (!taken) return demand_located(taken.error(), file, text);
    demand(roster.seats().size() <= taken.value(), "more seats than rows");
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string text = with_key(text_of(data, size));
    try_set(text);
    try_record(text);
    try_roster(text);
    const std::string line = text.substr(0, text.find('\n'));
    const std::string signature = to_hex(sign(set_domain + line, key().secret_key));
    try_set(line + "\n" + canonical({{"signature", signature}}) + "\n");
    return 0;
}
