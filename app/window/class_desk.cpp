// The class in hand: its keys and its roster.
#include "app/window/class_desk.hpp"

#include <filesystem>

#include "app/records/whole_file.hpp"

namespace hardover::window {

using namespace classroom;

namespace {

Result<std::string> text_of(const std::string& path) {
    Result<std::string> text = read_whole_file(path);
    if (text || text.error().kind != Error::Kind::not_found) return text;
    return Error{Error::Kind::not_found, "this file cannot be read", path,
                 "give the whole path of a file, such as /media/stick/roster.csv"};
}

}  // namespace

ClassDesk::ClassDesk(const PreparedKnowledge& prepared, Store& store, std::function<std::string()> now)
    : prepared_(prepared), store_(store), classes_(store_), now_(std::move(now)) {}

void ClassDesk::show() {
    page_.told = {};
    page_.topics = study::topics(prepared_.knowledge());
    read_class();
}

void ClassDesk::use(const PreparedKnowledge& prepared) {
    prepared_ = prepared;
    beside_.drop();
    portraits_.reset();
    page_.figures.reset();
    show();
}

void ClassDesk::carry_out(const ClassAction& action) {
    page_.told = {};
    std::visit([this](const auto& what) { apply(what); }, action);
}

void ClassDesk::refused(const std::string& at, const Error& error) {
    page_.told = {at, error.text(), Told::Kind::trouble, "", ""};
}

void ClassDesk::done(const std::string& at, const std::string& text, const std::string& folder,
                     const std::string& file) {
    page_.told = {at, text, Told::Kind::done, folder, file};
}

std::string ClassDesk::folder() const {
    return (std::filesystem::path(store_.path()).parent_path() / "class").string();
}

Result<void> ClassDesk::write_file(const std::string& name, const std::string& text,
                                   std::string& path) const {
    path = (std::filesystem::path(folder()) / name).string();
    std::error_code failed;
    std::filesystem::create_directories(folder(), failed);
    return write_whole_file(path, text);
}

std::optional<std::string> ClassDesk::write(const std::string& at, const std::string& name,
                                            const std::string& text) {
    std::string path;
    const Result<void> written = write_file(name, text, path);
    if (written) return path;
    refused(at, written.error());
    return std::nullopt;
}

void ClassDesk::read_class() {
    const auto all = classes_.classes();
    if (!all) return refused("class", all.error());
    const std::string name = class_ ? class_->name : "";
    class_.reset();
    page_.classes.clear();
    for (const StoredClass& one : all.value()) {
        page_.classes.push_back(one.name);
        if (one.name == name || !class_) class_ = one;
    }
    page_.name = class_ ? class_->name : "";
    page_.keys_open = keys_ != nullptr;
    const auto taken = taken_sets(classes_);
    if (!taken) return refused("take", taken.error());
    page_.taken = taken.value();
    page_.seats.clear();
    if (!class_) return;
    const auto roster = roster_of(classes_, *class_);
    if (!roster) return refused("roster", roster.error());
    page_.seats = roster.value().seats();
    read_sets();
}

void ClassDesk::apply(const ShowClassTab& show_tab) {
    view.tab = show_tab.tab;
    read_class();
}

void ClassDesk::apply(const MakeClass& make) {
    if (make.passphrase != make.again) {
        return refused("class", {Error::Kind::bad_input, "the two passphrases are not the same", "",
                                 "type the same words in both fields"});
    }
    work({"class", "Making the class and its keys", false},
         [this, name = make.name, typed = std::make_shared<const Secret>(make.passphrase), at = now_(),
          cost = cost_](const Beside& beside) -> Background::Outcome {
             std::string passphrase(typed->bytes());
             const auto made = make_class(beside.classes, name, passphrase, at, cost);
             if (!made) return refusal("class", made.error());
             auto opened = open_class(made.value(), passphrase);
             wipe(passphrase);
             if (!opened) return refusal("class", opened.error());
             const auto keys = std::make_shared<ClassKeys>(std::move(opened).value());
             return [this, made = made.value(), keys] {
                 class_ = made;
                 wipe(view.again);
                 view.name.clear();
                 take_keys(std::move(*keys));
             };
         });
}

void ClassDesk::take_keys(ClassKeys keys) {
    wipe(view.passphrase);
    keys_ = std::make_shared<const ClassKeys>(std::move(keys));
    read_class();
}

void ClassDesk::apply(const OpenKeys& open) {
    if (!class_) return;
    wipe(view.passphrase);
    work({"keys", "Trying the passphrase", false},
         [this, of = *class_, typed = std::make_shared<const Secret>(open.passphrase)](const Beside&) {
             std::string passphrase(typed->bytes());
             auto opened = open_class(of, passphrase);
             wipe(passphrase);
             if (!opened) return refusal("keys", opened.error());
             const auto keys = std::make_shared<ClassKeys>(std::move(opened).value());
             return Background::Outcome([this, keys] { take_keys(std::move(*keys)); });
         });
}

void ClassDesk::apply(const ShutKeys&) {
    keys_.reset();
    read_class();
}

void ClassDesk::apply(const ChooseClass& choose) {
    const auto found = find_class(classes_, choose.name);
    if (!found) return refused("class", found.error());
    if (!class_ || class_->number != found.value().number) {
        beside_.drop();
        keys_.reset();
        tasks_.clear();
        page_ = {};
    }
    class_ = found.value();
    show();
}

bool ClassDesk::change_roster(const std::string& at, const std::function<Result<void>(Roster&)>& change) {
    if (!class_) return false;
    auto roster = roster_of(classes_, *class_);
    if (!roster) {
        refused(at, roster.error());
        return false;
    }
    Result<void> kept = change(roster.value());
    if (kept) kept = keep_roster(classes_, *class_, roster.value());
    if (!kept) {
        refused(at, kept.error());
        return false;
    }
    read_class();
    return true;
}

void ClassDesk::apply(const AddSeat& add) {
    const Seat seat{add.code, add.name, add.group};
    if (!change_roster("seat", [&](Roster& roster) { return roster.add(seat); })) return;
    view.seat.clear();
    view.seat_name.clear();
}

void ClassDesk::apply(const ChangeSeat& change) {
    const bool changed = change_roster("seat", [&](Roster& roster) {
        Result<void> renamed = roster.rename(change.code, change.name);
        return renamed ? roster.move_to_group(change.code, change.group) : renamed;
    });
    if (!changed) return;
    view.changing.clear();
    view.seat.clear();
    view.seat_name.clear();
}

void ClassDesk::apply(const RemoveSeat& remove) {
    if (change_roster("seat", [&](Roster& roster) { return roster.remove(remove.code); }))
        view.changing.clear();
}

void ClassDesk::apply(const ImportRoster& import) {
    const auto text = text_of(import.path);
    if (!text) return refused("import", text.error());
    std::size_t count = 0;
    const bool taken = change_roster("import", [&](Roster& roster) -> Result<void> {
        const auto imported = import_roster(roster, text.value(), import.path);
        if (!imported) return imported.error();
        count = imported.value();
        return {};
    });
    if (taken) done("import", std::to_string(count) + " seats are taken over from the table.");
}

}  // namespace hardover::window
