// `hardover class new|list|passphrase|protects` and `class roster ...`: the class and who sits in it.
#include <fmt/format.h>

#include <nlohmann/json.hpp>
#include <ostream>

#include "app/classroom/merge.hpp"
#include "app/classroom/word_code.hpp"
#include "app/jobs/job.hpp"
#include "app/jobs/moment.hpp"
#include "app/terminal/class_commands.hpp"
#include "app/terminal/passphrase.hpp"
#include "app/terminal/words.hpp"

namespace hardover {

namespace {

using namespace classroom;
using nlohmann::ordered_json;

// A new passphrase, typed twice where it is typed.
Result<std::string> new_passphrase(Context& context, const std::string& file) {
    if (file.empty()) {
        say_wrapped(context.streams.err,
                    "The passphrase keeps the keys of the class. There is no way round a lost one but a "
                    "recovery sheet. Six words nobody would guess, for instance: " +
                        random_words(passphrase_words));
    }
    Result<std::string> first = read_passphrase(context, file, "New passphrase: ");
    if (!first || !file.empty()) return first;
    Result<std::string> again = read_passphrase(context, file, "Once more: ");
    if (!again) return again;
    const bool same = first.value() == again.value();
    wipe(again.value());
    if (same) return first;
    wipe(first.value());
    return Error{Error::Kind::bad_input, "the two differ", "", "try again"};
}

// Changes the roster of the class asked for, keeps it, and says `done`.
int change_roster(Context& context, const ClassRequest& request,
                  const std::function<Result<std::string>(Roster&)>& change) {
    Result<ClassOnFile> on_file = open_class_on_file(context, request);
    if (!on_file) return refuse(context, on_file.error());
    ClassStore store(on_file.value().store);
    Result<Roster> roster = roster_of(store, on_file.value().of);
    if (!roster) return refuse(context, roster.error());
    const Result<std::string> done = change(roster.value());
    if (!done) return refuse(context, done.error());
    const Result<void> kept = keep_roster(store, on_file.value().of, roster.value());
    if (!kept) return refuse(context, kept.error());
    say_wrapped(context.streams.out, done.value());
    return 0;
}

// "done", or the error.
Result<std::string> or_error(const Result<void>& result, const std::string& done) {
    if (!result) return result.error();
    return done;
}

}  // namespace

Result<ClassOnFile> open_class_on_file(Context& context, const ClassRequest& request) {
    Result<Store> store = open_records_on_file(context);
    if (!store) return store.error();
    Result<StoredClass> of = find_class(ClassStore(store.value()), request.class_name);
    if (!of) return of.error();
    return ClassOnFile{std::move(store).value(), std::move(of).value()};
}

Result<ClassKeys> ask_for_keys(Context& context, const StoredClass& of, const ClassRequest& request) {
    Result<std::string> passphrase =
        read_passphrase(context, request.passphrase_file, "Passphrase of '" + of.name + "': ");
    if (!passphrase) return passphrase.error();
    Result<ClassKeys> keys = open_class(of, passphrase.value());
    wipe(passphrase.value());
    return keys;
}

int run_class_new(Context& context, const ClassRequest& request) {
    Result<Store> opened = open_records(context);
    if (!opened) return refuse(context, opened.error());
    Result<std::string> passphrase = new_passphrase(context, request.passphrase_file);
    if (!passphrase) return refuse(context, passphrase.error());
    ClassStore store(opened.value());
    const auto made = make_class(store, request.name, passphrase.value(), utc_now());
    wipe(passphrase.value());
    if (!made) return refuse(context, made.error());
    say_wrapped(context.streams.out,
                "Class '" + made.value().name +
                    "' is made. Fill its roster: hardover class roster import FILE.csv, "
                    "or: hardover class roster add A01. For the day the passphrase is lost: "
                    "hardover class recovery-sheet OUT.pdf");
    return 0;
}

int run_class_list(Context& context, const ClassRequest& request) {
    Result<Store> opened = open_records_on_file(context);
    if (!opened) return refuse(context, opened.error());
    const ClassStore store(opened.value());
    const auto classes = store.classes();
    if (!classes) return refuse(context, classes.error());
    ordered_json list = ordered_json::array();
    for (const StoredClass& of : classes.value()) {
        const auto seats = store.seats(of.number);
        if (!seats) return refuse(context, seats.error());
        const auto sets = store.sets(of.number);
        if (!sets) return refuse(context, sets.error());
        if (request.json) {
            list.push_back({{"name", of.name},
                            {"made_at", of.made_at},
                            {"key", of.public_key},
                            {"seats", seats.value().size()},
                            {"sets", sets.value().size()}});
        } else {
            context.streams.out << fmt::format("{:<32} {} seats, {} sets, made {}\n", of.name,
                                               seats.value().size(), sets.value().size(),
                                               local_moment(of.made_at).substr(0, 10));
            const auto old = old_sets(store, of, utc_now().substr(0, 10));
            if (!old) return refuse(context, old.error());
            if (const auto count = old.value().size(); count > 0) {
                say_wrapped(context.streams.out,
                            fmt::format("  {} last used more than {} months ago: hardover class clear-out",
                                        count == 1 ? "One set" : fmt::format("{} sets", count), months_kept),
                            2);
            }
        }
    }
    if (request.json) context.streams.out << list.dump(2) << "\n";
    if (classes.value().empty() && !request.json) {
        say_wrapped(context.streams.out, "No class yet. Make one with: hardover class new NAME");
    }
    return 0;
}

int run_class_passphrase(Context& context, const ClassRequest& request) {
    Result<ClassOnFile> on_file = open_class_on_file(context, request);
    if (!on_file) return refuse(context, on_file.error());
    const std::string prompt = request.recovery ? "Words of the recovery sheet: " : "Passphrase so far: ";
    Result<std::string> old_one = read_passphrase(context, request.passphrase_file, prompt);
    if (!old_one) return refuse(context, old_one.error());
    if (!request.recovery) {  // said before a new one is typed twice
        if (const auto keys = open_class(on_file.value().of, old_one.value()); !keys) {
            return refuse(context, keys.error());
        }
    }
    Result<std::string> new_one = new_passphrase(context, request.new_passphrase_file);
    if (!new_one) return refuse(context, new_one.error());
    ClassStore store(on_file.value().store);
    const auto change = request.recovery ? recover_class : change_passphrase;
    const auto changed = change(store, on_file.value().of, old_one.value(), new_one.value(), std::nullopt);
    wipe(old_one.value());
    wipe(new_one.value());
    if (!changed) return refuse(context, changed.error());
    say_wrapped(context.streams.out,
                "The passphrase is changed. Copies of the records made before, such as "
                "backups, still open with the old one.");
    return 0;
}

int run_class_protects(Context& context, const ClassRequest& request) {
    const Protection& text = protection();
    std::ostream& out = context.streams.out;
    if (request.json) {
        out << ordered_json{{"does", text.does}, {"does_not", text.does_not}}.dump(2) << "\n";
        return 0;
    }
    out << "What the signatures protect against:\n";
    for (const std::string& line : text.does) say_wrapped(out, "  - " + line, 4);
    out << "What they do not protect against:\n";
    for (const std::string& line : text.does_not) say_wrapped(out, "  - " + line, 4);
    return 0;
}

int run_roster_list(Context& context, const ClassRequest& request) {
    Result<ClassOnFile> on_file = open_class_on_file(context, request);
    if (!on_file) return refuse(context, on_file.error());
    const Result<Roster> roster = roster_of(ClassStore(on_file.value().store), on_file.value().of);
    if (!roster) return refuse(context, roster.error());
    ordered_json list = ordered_json::array();
    for (const Seat& seat : roster.value().seats()) {
        if (request.json) {
            list.push_back({{"seat", seat.code}, {"name", seat.name}, {"group", seat.group}});
        } else {
            context.streams.out << fmt::format("{:<8} {:<32} {}\n", seat.code, seat.name, seat.group);
        }
    }
    if (request.json) context.streams.out << list.dump(2) << "\n";
    if (roster.value().seats().empty() && !request.json) {
        say_wrapped(context.streams.out, "The roster is empty. Add a seat: hardover class roster add A01");
    }
    return 0;
}

int run_roster_add(Context& context, const ClassRequest& request) {
    return change_roster(context, request, [&](Roster& roster) {
        return or_error(roster.add({request.seat, request.name, request.group}),
                        "Seat " + request.seat + " is added.");
    });
}

int run_roster_rename(Context& context, const ClassRequest& request) {
    return change_roster(context, request, [&](Roster& roster) {
        return or_error(roster.rename(request.seat, request.name),
                        request.name.empty() ? "Seat " + request.seat + " has no name now."
                                             : "Seat " + request.seat + " is now " + request.name + ".");
    });
}

int run_roster_group(Context& context, const ClassRequest& request) {
    return change_roster(context, request, [&](Roster& roster) {
        return or_error(roster.move_to_group(request.seat, request.group),
                        "Seat " + request.seat + " is now in group '" + request.group + "'.");
    });
}

int run_roster_remove(Context& context, const ClassRequest& request) {
    return change_roster(context, request, [&](Roster& roster) {
        return or_error(roster.remove(request.seat),
                        "Seat " + request.seat +
                            " and its name are off the roster. Results handed in under "
                            "the code stay.");
    });
}

int run_roster_import(Context& context, const ClassRequest& request) {
    const Result<std::string> text = read_file(request.file);
    if (!text) return refuse(context, text.error());
    return change_roster(context, request, [&](Roster& roster) -> Result<std::string> {
        const auto count = import_roster(roster, text.value(), request.file);
        if (!count) return count.error();
        return fmt::format("{} seats are in the table; the roster has {} now.", count.value(),
                           roster.seats().size());
    });
}

}  // namespace hardover
