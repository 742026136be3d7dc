// Feeds odd inputs, as texts like those typed at the terminal, to every worksheet until the time is up. Each
// must give a result without a number that is none, or one clear message. The same seed feeds the same
// inputs.
#include <unistd.h>

#include <chrono>
#include <csignal>
#include <cstdlib>
#include <cstring>
#include <iostream>
#include <nlohmann/json.hpp>
#include <random>
#include <regex>
#include <sstream>

#include "app/terminal/context.hpp"

using namespace hardover;

namespace {

using Random = std::mt19937_64;

// The case at work, for the last words of a program that dies in it.
char case_at_work[4096];

void tell_case(int signal) {
    const char* words = "worksheet_fuzz: died in: ";
    if (write(2, words, std::strlen(words)) < 0 || write(2, case_at_work, std::strlen(case_at_work)) < 0 ||
        write(2, "\n", 1) < 0) {
        std::_Exit(2);
    }
    std::signal(signal, SIG_DFL);
    std::raise(signal);
}

template <typename Items>
const auto& any_of(const Items& items, Random& random) {
    return items[std::uniform_int_distribution<std::size_t>(0, std::size(items) - 1)(random)];
}

bool happens(double chance, Random& random) {
    return std::uniform_real_distribution<double>(0, 1)(random) < chance;
}

constexpr const char* odd_numbers[] = {"0",
                                       "-0",
                                       "-1",
                                       "1e-300",
                                       "1e300",
                                       "1e308",
                                       "-1e308",
                                       "1e309",
                                       "1e-320",
                                       "4.9e-324",
                                       "nan",
                                       "inf",
                                       "-inf",
                                       "NaN",
                                       "infinity",
                                       "1/0",
                                       "0/0",
                                       "1/3",
                                       "17 3/4",
                                       "-17 3/4",
                                       "3/4",
                                       "1e",
                                       "1e+",
                                       "0x10",
                                       "1,5",
                                       "1.2.3",
                                       "+-3",
                                       "--3",
                                       "1e400",
                                       "99999999999999999999999",
                                       "0.0000000000000000001",
                                       "½",
                                       "17¾",
                                       "１２",
                                       "1 000",
                                       ".",
                                       "",
                                       " "};
constexpr const char* odd_units[] = {"",         "in",        "ft",
                                     "mm",       "m",         "psi",
                                     "bar",      "Pa",        "lbf",
                                     "N",        "lbf*ft",    "N·m",
                                     "deg",      "turn",      "turns",
                                     "in^3",     "in^3/turn", "mL",
                                     "gal",      "floz",      "gal/min",
                                     "drop/min", "s",         "min",
                                     "h",        "rpm",       "kn",
                                     "F",        "C",         "K",
                                     "%",        "count",     "cSt",
                                     "kg/m^3",   "ft^2",      "in^2",
                                     "furlong",  "in^",       "in^-999999999",
                                     "in/in",    "///",       "\"",
                                     "″",        "'",         "\xff\xfe"};
constexpr const char* odd_spreads[] = {"",       " ± 0",     " ± 1/16",  " ± -1", " ± 1e300",
                                       " ± nan", " +/- 5 %", " ± 2 in",  " ±",    " ± ±",
                                       " to 9",  " to",      " ± 1e-300"};
constexpr const char* odd_texts[] = {"abc",         "yes",     "single rod", "=",
                                     "==",          "a=b",     "\n",         "\t",
                                     "\\",          "%s%n",    "{}",         "{0}",
                                     "null",        "true",    "ram_bore",   "rig.ram_bore",
                                     "1 in + 2 in", "(1)",     "\xc3\x28",   "\xf0\x9f\x9a\xa4",
                                     "DROP TABLE",  "unknown", "can't tell"};

std::string any_number(const WorksheetInput& input, Random& random) {
    if (happens(0.5, random)) return any_of(odd_numbers, random);
    std::ostringstream number;
    std::uniform_real_distribution<double> share(-1, 1);
    double value = input.example ? input.example->value / input.unit.factor : 1;
    if (happens(0.7, random)) value *= std::pow(10, 12 * std::pow(share(random), 3));
    if (happens(0.1, random)) value = -value;
    number.precision(17);
    number << value;
    return number.str();
}

std::string any_text(const WorksheetInput& input, Random& random) {
    if (happens(0.05, random)) return any_of(odd_texts, random);
    if (!input.choices.empty() && happens(0.8, random)) return any_of(input.choices, random).id;
    const std::string own = input.unit.name;
    std::string text = any_number(input, random) + " ";
    text += happens(0.8, random) ? own : any_of(odd_units, random);
    if (happens(0.3, random)) text += any_of(odd_spreads, random);
    // A byte out of place.
    if (!text.empty() && happens(0.05, random))
        text[std::uniform_int_distribution<std::size_t>(0, text.size() - 1)(random)] =
            static_cast<char>(std::uniform_int_distribution<int>(0, 255)(random));
    if (happens(0.002, random)) text.append(100000, '9');
    return text;
}

// Most inputs as in the example, so that odd ones come through to the formulas; some left out, some twice.
std::vector<std::string> any_inputs(const Worksheet& sheet, Random& random) {
    const double oddness = std::uniform_real_distribution<double>(0, 0.6)(random);
    std::vector<std::string> words;
    for (const WorksheetInput& input : sheet.inputs) {
        if (happens(0.02, random)) continue;
        std::string text = input.example_choice;
        if (input.example) text = show(*input.example, input.unit);
        if (happens(oddness, random)) text = any_text(input, random);
        words.push_back(input.id + "=" + text);
        if (happens(0.01, random)) words.push_back(input.id + "=" + any_text(input, random));
    }
    if (happens(0.01, random)) words.push_back(any_of(odd_texts, random));
    return words;
}

// Something that is shown as a number and is none, standing by itself.
bool shows_no_number(const std::string& text) {
    static const std::regex none("(^|[^A-Za-z])(nan|inf|infinity)([^A-Za-z]|$)", std::regex::icase);
    return std::regex_search(text, none);
}

struct Tally {
    long results = 0, messages = 0, wrong = 0;
};

std::string what_is_wrong(int code, const std::string& out, const std::string& err, bool json) {
    if (code == 0) {
        if (!err.empty()) return "a result and a message";
        if (out.empty()) return "neither result nor message";
        if (shows_no_number(out)) return "a number that is none";
        if (json && nlohmann::json::parse(out, nullptr, false).is_discarded())
            return "JSON that cannot be read";
        return "";
    }
    if (!out.empty()) return "a message and a result";
    if (err.rfind("hardover: ", 0) != 0 || err.size() < 20) return "no clear message";
    if (err.find("hardover: ", 1) != std::string::npos) return "more than one message";
    return "";
}

void try_once(const Knowledge& knowledge, const Worksheet& sheet, Random& random, Tally& tally) {
    const std::vector<std::string> inputs = any_inputs(sheet, random);
    const bool json = happens(0.3, random);
    std::string shown = sheet.id;
    for (const std::string& word : inputs) shown += " '" + word.substr(0, 200) + "'";
    std::strncpy(case_at_work, shown.c_str(), sizeof case_at_work - 1);
    std::istringstream in;
    std::ostringstream out, err;
    Context context{{in, out, err}, "", ""};
    const int code = run_worksheet(context, knowledge, sheet.id, inputs, json);
    ++(code == 0 ? tally.results : tally.messages);
    const std::string wrong = what_is_wrong(code, out.str(), err.str(), json);
    if (wrong.empty()) return;
    ++tally.wrong;
    if (tally.wrong > 20) return;
    std::cerr << "worksheet_fuzz: " << wrong << " from: " << shown << "\n"
              << (out.str() + err.str()).substr(0, 2000) << "\n";
}

}  // namespace

// worksheet_fuzz KNOWLEDGE_FOLDER rounds|seconds NUMBER [SEED]: an input to each worksheet a round. The same
// rounds and seed give the same inputs.
int main(int argc, char** argv) {
    const std::string unit = argc > 3 ? argv[2] : "";
    if (unit != "rounds" && unit != "seconds") {
        std::cerr << "worksheet_fuzz KNOWLEDGE_FOLDER rounds|seconds NUMBER [SEED]\n";
        return 2;
    }
    const double most = std::atof(argv[3]);
    Random random(argc > 4 ? std::strtoull(argv[4], nullptr, 10) : 1);
    for (const int signal : {SIGSEGV, SIGABRT, SIGFPE, SIGILL, SIGBUS}) std::signal(signal, tell_case);
    std::istringstream in;
    Context context{{in, std::cout, std::cerr}, argv[1], ""};
    const Result<Knowledge> knowledge = load_knowledge(context);
    if (!knowledge) return refuse(context, knowledge.error());
    Tally tally;
    const auto start = std::chrono::steady_clock::now();
    const auto done = [&](long rounds) {
        const std::chrono::duration<double> time = std::chrono::steady_clock::now() - start;
        return (unit == "rounds" ? static_cast<double>(rounds) : time.count()) >= most;
    };
    for (long rounds = 0; !done(rounds); ++rounds)
        for (const Worksheet& sheet : knowledge.value().worksheets)
            try_once(knowledge.value(), sheet, random, tally);
    std::cout << tally.results + tally.messages << " inputs to " << knowledge.value().worksheets.size()
              << " worksheets: " << tally.results << " results, " << tally.messages << " messages, "
              << tally.wrong << " wrong\n";
    return tally.wrong == 0 && tally.results > 0 && tally.messages > 0 ? 0 : 1;
}
