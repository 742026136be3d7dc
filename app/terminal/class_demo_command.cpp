// `hardover class demo OUT`: an invented class of 20 with files as a real one has, merged and told in
// figures; and what becomes of the same files once more, in another order, and of one that was changed.
#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <ostream>

#include "app/classroom/demo.hpp"
#include "app/records/whole_file.hpp"
#include "app/terminal/class_commands.hpp"

namespace hardover {

namespace {

using namespace classroom;

constexpr const char* collected_at = "2026-11-17T08:00:00Z";

Result<std::string> make_folder(const std::string& folder) {
    std::error_code failed;
    if (std::filesystem::exists(folder, failed)) {
        return Error{Error::Kind::bad_input, "there is something of that name already", folder,
                     "name a folder that is not there"};
    }
    if (auto there = folder_above(folder); !there) return there.error();
    std::filesystem::create_directories(folder + "/hand-ins", failed);
    if (!failed) return folder;
    return Error{Error::Kind::storage, "the folder cannot be made: " + failed.message(), folder,
                 "name one that can be written"};
}

Result<void> write_files(const DemoClass& demo, const std::string& folder) {
    if (auto written = write_whole_file(folder + "/roster.csv", demo.roster_csv); !written) return written;
    const std::string passphrase = std::string(demo_passphrase) + "\n";
    if (auto written = write_whole_file(folder + "/passphrase.txt", passphrase); !written) return written;
    for (const NamedText& set : demo.sets) {
        if (auto written = write_whole_file(folder + "/" + set.name, set.text); !written) return written;
    }
    for (const NamedText& file : demo.hand_ins) {
        if (auto written = write_whole_file(folder + "/hand-ins/" + file.name, file.text); !written) {
            return written;
        }
    }
    return {};
}

// One digit of the last record changed.
NamedText changed(const NamedText& file) {
    NamedText copy{"changed_" + file.name, file.text};
    const std::size_t at = copy.text.rfind("\"seq\":") + 6;
    copy.text[at] = copy.text[at] == '1' ? '2' : '1';
    return copy;
}

int count_fresh(const MergeReport& report) {
    int fresh = 0;
    for (const MergedFile& file : report.files) fresh += file.fresh;
    return fresh;
}

Result<void> merge_and_tell(std::ostream& out, ClassStore& store, const DemoClass& demo,
                            const ClassKeys& keys) {
    const auto first = merge_hand_ins(store, demo.of, keys, demo.hand_ins, collected_at);
    if (!first) return first.error();
    say_wrapped(out, fmt::format("Merged {} hand-ins: {} records, all new.", first.value().files.size(),
                                 count_fresh(first.value())));
    for (const std::string& set : first.value().missing) say_wrapped(out, "Not handed in, " + set);
    std::vector<NamedText> again(demo.hand_ins.rbegin(), demo.hand_ins.rend());
    const auto second = merge_hand_ins(store, demo.of, keys, again, collected_at);
    if (!second) return second.error();
    say_wrapped(out, fmt::format("Merged once more in the other order: {} records are new.",
                                 count_fresh(second.value())));
    const auto tampered =
        merge_hand_ins(store, demo.of, keys, {changed(demo.hand_ins.front())}, collected_at);
    if (!tampered) return tampered.error();
    say_wrapped(out, "One digit changed in a copy of one of them:");
    say_wrapped(out, "  " + merge_text(tampered.value()).front(), 2);
    const auto faults = check_collected(store, demo.of);
    if (!faults) return faults.error();
    say_wrapped(out, fmt::format("Everything collected, checked again: {} faults.", faults.value().size()));
    return {};
}

}  // namespace

int run_class_demo(Context& context, const ClassRequest& request) {
    const Result<Knowledge> knowledge = load_knowledge(context);
    if (!knowledge) return refuse(context, knowledge.error());
    const Result<std::string> folder = make_folder(request.folder);
    if (!folder) return refuse(context, folder.error());
    Result<Store> opened = Store::open(folder.value() + "/records.db");
    if (!opened) return refuse(context, opened.error());
    ClassStore store(opened.value());
    const study::Portraits portraits(knowledge.value());
    const auto demo = make_demo(store, portraits, request.seed);
    if (!demo) return refuse(context, demo.error());
    if (const auto written = write_files(demo.value(), folder.value()); !written) {
        return refuse(context, written.error());
    }
    const auto keys = open_class(demo.value().of, demo_passphrase);
    if (!keys) return refuse(context, keys.error());
    std::ostream& out = context.streams.out;
    say_wrapped(out,
                "An invented class: seats, names, answers and days are made up by a program from a seed. "
                "No person is in it, and it measures nobody.");
    say_wrapped(out, "Files in " + folder.value() +
                         ": roster.csv, the sets, hand-ins/, records.db, and "
                         "passphrase.txt.");
    if (const auto told = merge_and_tell(out, store, demo.value(), keys.value()); !told) {
        return refuse(context, told.error());
    }
    out << "\n";
    const auto printed =
        print_figures(context, store, demo.value().of, portraits, &keys.value(), false, request.json);
    return printed ? 0 : refuse(context, printed.error());
}

}  // namespace hardover
