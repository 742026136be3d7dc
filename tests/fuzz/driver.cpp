// Drives a fuzz target where libFuzzer is not at hand: `fuzz_NAME CORPUS [COUNT [SEED]]` gives it every file
// of the corpus, then COUNT changed copies of them, the same ones for the same seed. The input at fault is
// left in fault-NAME.
#include <algorithm>
#include <csignal>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>
#include <random>
#include <string>
#include <vector>

#include "fuzz/target.hpp"

namespace {

using Random = std::mt19937_64;

// The input at work, for the last words of a program that dies in it.
std::string at_work;
std::string left_in;

void leave_input(int signal) {
    // The program is lost in any case; writing the file is worth the try.
    std::ofstream(left_in, std::ios::binary) << at_work;
    std::cerr << "the input at fault is in " << left_in << std::endl;
    std::signal(signal, SIG_DFL);
    std::raise(signal);
}

void run(const std::string& input) {
    at_work = input;
    LLVMFuzzerTestOneInput(reinterpret_cast<const std::uint8_t*>(at_work.data()), at_work.size());
}

std::vector<std::string> read_corpus(const std::string& folder) {
    std::vector<std::filesystem::path> paths;
    std::error_code failed;
    for (const auto& entry : std::filesystem::directory_iterator(folder, failed))
        paths.push_back(entry.path());
    std::sort(paths.begin(), paths.end());
    std::vector<std::string> inputs;
    for (const std::filesystem::path& path : paths) {
        std::ifstream file(path, std::ios::binary);
        inputs.emplace_back(std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>());
    }
    return inputs;
}

// Takes out, doubles or puts in a piece, which may come from another input, or turns a byte.
std::string changed(std::string input, const std::string& other, Random& random) {
    const auto below = [&](std::size_t n) { return n == 0 ? 0 : static_cast<std::size_t>(random() % n); };
    const std::size_t at = below(input.size());
    const std::size_t length = 1 + below(16);
    switch (random() % 4) {
        case 0:
            return input.erase(at, length);
        case 1:
            return input.insert(at, input.substr(at, length));
        case 2:
            return input.insert(at, other.substr(below(other.size()), length));
        default:
            if (!input.empty()) input[at] = static_cast<char>(random());
            return input;
    }
}

}  // namespace

int main(int argc, char** argv) {
    const std::vector<std::string> corpus = argc < 2 ? std::vector<std::string>() : read_corpus(argv[1]);
    if (corpus.empty()) {
        std::cerr << argv[0] << " CORPUS [COUNT [SEED]]: a folder with at least one input\n";
        return 2;
    }
    const long count = argc > 2 ? std::atol(argv[2]) : 2000;
    Random random(argc > 3 ? std::strtoull(argv[3], nullptr, 10) : 1);
    left_in = "fault-" + std::filesystem::path(argv[0]).filename().string();
    for (const int signal : {SIGSEGV, SIGABRT, SIGFPE, SIGILL, SIGBUS}) std::signal(signal, leave_input);
    for (const std::string& input : corpus) run(input);
    run("");
    for (long tried = 0; tried < count; ++tried) {
        std::string input = corpus[random() % corpus.size()];
        for (std::size_t changes = 1 + random() % 3; changes > 0; --changes) {
            input = changed(input, corpus[random() % corpus.size()], random);
        }
        run(input);
    }
    std::cout << corpus.size() << " inputs of the corpus and " << count << " changed ones\n";
    return 0;
}
