// From the start of the program to its first question, on the shipped knowledge and on bases several times as
// large: the YAML parser alone, reading as a whole, and the program run through a pipe.
#include <sys/resource.h>
#include <unistd.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <thread>

#include "app/rig/functions.hpp"
#include "bench/common.hpp"
#include "bench/larger_base.hpp"
#include "rules/reading/yaml_reader.hpp"

using namespace hardover;
using namespace hardover_bench;

namespace {

// Wall time and CPU time of this process and the programs it ran, medians in milliseconds. CPU time is not
// disturbed by other programs on the machine, but counts all threads.
struct Times {
    double wall = 0;
    double cpu = 0;
};

double cpu_milliseconds() {
    double sum = 0;
    for (const int who : {RUSAGE_SELF, RUSAGE_CHILDREN}) {
        rusage used{};
        getrusage(who, &used);
        for (const timeval& time : {used.ru_utime, used.ru_stime}) {
            sum += static_cast<double>(time.tv_sec) * 1e3 + static_cast<double>(time.tv_usec) * 1e-3;
        }
    }
    return sum;
}

template <typename Work>
Times timed(int runs, const Work& work) {
    std::vector<double> wall;
    std::vector<double> cpu;
    for (int n = 0; n < runs; ++n) {
        const double wall_before = wall_milliseconds();
        const double cpu_before = cpu_milliseconds();
        work();
        wall.push_back(wall_milliseconds() - wall_before);
        cpu.push_back(cpu_milliseconds() - cpu_before);
    }
    return {percentile(wall, 0.5), percentile(cpu, 0.5)};
}

// A folder of its own, removed at the end.
struct Folder {
    std::string path;
    Folder() {
        std::string name = (std::filesystem::temp_directory_path() / "hardover_startup_XXXXXX").string();
        path = mkdtemp(name.data()) == nullptr ? "" : name;
        if (path.empty()) {
            std::cerr << "no temporary folder can be made\n";
            std::exit(1);
        }
    }
    ~Folder() {
        std::error_code failed;
        std::filesystem::remove_all(path, failed);
    }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
};

void write_files(const std::vector<KnowledgeFile>& files, const std::string& folder) {
    for (const KnowledgeFile& file : files) {
        std::ofstream(folder + "/" + std::filesystem::path(file.name).filename().string()) << file.text;
    }
}

// The program asks for the complaint, is given the first, asks its first question and is left.
Times run_to_first_question(const std::vector<KnowledgeFile>& files, int runs) {
    const Folder folder;
    write_files(files, folder.path);
    const std::string command = "printf '1\\nq\\n' | " HARDOVER_PROGRAM " --knowledge " + folder.path +
                                " --records " + folder.path + "/records.db interview >" + folder.path +
                                "/out";
    return timed(runs, [&] {
        if (std::system(command.c_str()) == 0) return;
        std::cerr << "the interview did not run on this base\n";
        std::exit(1);
    });
}

std::vector<std::string> row_of(const std::vector<KnowledgeFile>& shipped, int times, int runs) {
    const std::vector<KnowledgeFile> files = enlarged(shipped, times);
    std::size_t bytes = 0;
    for (const KnowledgeFile& file : files) bytes += file.text.size();
    const Functions functions = rig::rig_functions();
    const Times parse = timed(runs, [&] {
        std::vector<Fault> faults;
        for (const KnowledgeFile& file : files) reading_detail::read_entries(file, faults);
    });
    std::size_t causes = 0;
    const Times read = timed(runs, [&] {
        const KnowledgeRead base = read_knowledge(files, functions);
        if (base.knowledge) causes = base.knowledge->causes.size();
    });
    const Times question = run_to_first_question(files, runs);
    return {"x " + std::to_string(times), std::to_string(causes),  std::to_string(bytes / 1024),
            fixed(parse.cpu, 0),          fixed(read.cpu, 0),      fixed(read.wall, 0),
            fixed(question.cpu, 0),       fixed(question.wall, 0), fixed(read.cpu / parse.cpu, 2)};
}

}  // namespace

// startup_bench [RUNS]
int main(int argc, char** argv) {
    const int runs = argument(argc, argv, 1, 9);
    const char* given = std::getenv("HARDOVER_KNOWLEDGE");
    const std::vector<KnowledgeFile> shipped =
        files_of(given != nullptr ? given : HARDOVER_SOURCE_DIR "/knowledge");
    std::vector<std::vector<std::string>> rows{{"base", "causes", "kB", "parser, CPU", "reading, CPU",
                                                "reading, wall", "first question, CPU",
                                                "first question, wall", "reading / parser"}};
    for (const int times : {1, 2, 3}) rows.push_back(row_of(shipped, times, runs));
    std::cout << "Start to first question: ms, medians of " << runs << " runs, "
              << std::thread::hardware_concurrency() << " processors\n\n";
    print_table(rows);
    std::cout << "Aim: first question under 200 ms of wall time on a machine that does nothing else.\n";
}
