// Hand-in files of a class: the text as it is; its lines as the records of a hand-in that is chained and
// signed rightly by somebody who does not mean well; and one that was made rightly and then changed in a
// byte.
#include <nlohmann/json.hpp>
#include <sstream>

#include "app/classroom/canonical.hpp"
#include "app/classroom/hand_in.hpp"
#include "app/classroom/seal.hpp"
#include "fuzz/target.hpp"

using namespace hardover;
using namespace hardover::classroom;
using namespace hardover_fuzz;

namespace {

const std::string name = "S1_A07.hardover-hand-in";

const KeyPair& key() {
    static const KeyPair pair = key_pair_of(Secret(std::string(seed_size, 'k')));
    return pair;
}

std::vector<std::string> lines_of(const std::string& text) {
    std::istringstream in(text);
    std::vector<std::string> lines;
    for (std::string line; std::getline(in, line);) lines.push_back(line);
    return lines;
}

void demand_refused(const Error& error) {
    demand_worded(error);
    demand(error.where.rfind(name, 0) == 0, "a refusal that does not name the file: " + error.text());
    demand(!error.cure.empty(), "a refusal without what to do: " + error.text());
}

// A hand-in of any lines, with a chain and a signature that fit.
std::string signed_by_somebody(const std::vector<std::string>& lines) {
    const std::string number(32, '0');
    const nlohmann::json head = {{"hardover_hand_in", 1}, {"set", "S1"},
                                 {"sitting", number},     {"seat", "A07"},
                                 {"attempt", number},     {"key", to_hex(key().public_key)},
                                 {"count", lines.size()}};
    std::string text = canonical(head) + "\n";
    Bytes last = chain_start();
    for (const std::string& line : lines) {
        text += line + "\n";
        last = chain_next(record_domain, last, line);
    }
    const Bytes message = hand_in_message(hand_in_domain, last, static_cast<std::uint32_t>(lines.size()));
    const nlohmann::json end = {{"last", to_hex(last)},
                                {"signature", to_hex(sign(message, key().secret_key))}};
    return text + canonical(end) + "\n";
}

// Whether it was taken.
bool try_hand_in(const std::string& text) {
    const Result<HandIn> read = read_hand_in(text, name);
    if (!read) {
        demand_refused(read.error());
        return false;
    }
    demand(!read.value().records.empty(), "a hand-in without records");
    return true;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string text = text_of(data, size);
    try_hand_in(text);
    std::string made = signed_by_somebody(lines_of(text));
    if (!try_hand_in(made)) return 0;
    const std::size_t at = (size * 7919 + (size == 0 ? 0 : data[size / 2])) % made.size();
    made[at] = static_cast<char>(made[at] ^ 1);
    demand(!try_hand_in(made), "a changed hand-in was taken; byte " + std::to_string(at) + " of: " + made);
    return 0;
}
