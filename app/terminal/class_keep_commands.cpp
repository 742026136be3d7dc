// `hardover class recovery-sheet` and `class clear-out`: what an instructor does once, and once a year.
#include <fmt/format.h>

#include <filesystem>

#include "app/classroom/archive.hpp"
#include "app/jobs/job.hpp"
#include "app/records/whole_file.hpp"
#include "app/reports/recovery_sheet_pdf.hpp"
#include "app/terminal/class_commands.hpp"
#include "app/terminal/passphrase.hpp"

namespace hardover {

using namespace classroom;

namespace {

std::string today() {
    return utc_now().substr(0, 10);
}

std::string hand_ins_text(int count) {
    return fmt::format("{} hand-in{}", count, count == 1 ? "" : "s");
}

}  // namespace

int run_class_recovery_sheet(Context& context, const ClassRequest& request) {
    Result<ClassOnFile> on_file = open_class_on_file(context, request);
    if (!on_file) return refuse(context, on_file.error());
    const StoredClass& of = on_file.value().of;
    const Result<PdfWish> wish = pdf_wish(context, request);
    if (!wish) return refuse(context, wish.error());
    Result<std::string> passphrase =
        read_passphrase(context, request.passphrase_file, "Passphrase of '" + of.name + "': ");
    if (!passphrase) return refuse(context, passphrase.error());
    Result<Recovery> drawn = draw_recovery(of, passphrase.value());
    wipe(passphrase.value());
    if (!drawn) return refuse(context, drawn.error());
    const auto page =
        recovery_sheet_pdf({of.name, of.public_key, drawn.value().words, today()}, wish.value());
    wipe(drawn.value().words);
    if (!page) return refuse(context, page.error());
    // The sheet first: words that are kept and on no sheet would make the earlier sheet useless for nothing.
    if (const auto written = write_whole_file(request.file, page.value()); !written) {
        return refuse(context, written.error());
    }
    ClassStore store(on_file.value().store);
    if (const auto kept = keep_recovery(store, of, drawn.value()); !kept) {
        std::error_code failed;
        std::filesystem::remove(request.file, failed);
        return refuse(context, kept.error());
    }
    say_wrapped(context.streams.out,
                "The recovery sheet is written to " + request.file +
                    ". Print it, lock it away, and delete the file. Sheets written before "
                    "open the class no more; copies of the records made before still open "
                    "with them.");
    return 0;
}

int run_class_clear_out(Context& context, const ClassRequest& request) {
    Result<ClassOnFile> on_file = open_class_on_file(context, request);
    if (!on_file) return refuse(context, on_file.error());
    ClassStore store(on_file.value().store);
    const auto old = old_sets(store, on_file.value().of, today(), request.months);
    if (!old) return refuse(context, old.error());
    if (old.value().empty()) {
        say_wrapped(context.streams.out,
                    fmt::format("No set was last used more than {} months ago.", request.months));
        return 0;
    }
    for (const OldSet& set : old.value()) {
        if (request.yes) {
            if (const auto gone = store.forget_set(set.set.sitting); !gone)
                return refuse(context, gone.error());
        }
        context.streams.out << fmt::format("{:<8} last used {}, {}{}\n", set.set.id, set.last_used,
                                           hand_ins_text(set.hand_ins), request.yes ? ": deleted" : "");
    }
    say_wrapped(context.streams.out,
                request.yes
                    ? "Sets, hand-ins and marks are off this PC. Backups and sticks may still hold them: "
                      "delete those too."
                    : "To delete them with all their hand-ins for good: hardover class clear-out --yes");
    return 0;
}

}  // namespace hardover
