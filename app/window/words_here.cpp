#include "app/window/words_here.hpp"

#include <string_view>

namespace hardover::window {

namespace {

struct Way {
    std::string_view command;
    std::string_view here;
};

// A longer command stands before the one it begins with.
constexpr Way ways[] = {
    {"hardover records mend --as-it-reads", "“Let it count as it reads” in Settings"},
    {"hardover records mend", "“Look through them” in Settings, then “Mend them”"},
    {"hardover records restore", "“Restore” in Settings"},
    {"hardover records list-backups", "the list of backups in Settings"},
    {"hardover records backup", "“Backup now” in Settings"},
    {"hardover practice list", "“How I am doing” in Study"},
    {"hardover class hand-in", "“Hand in” under Class, My sets"},
    {"hardover class taken", "Class, My sets"},
    {"hardover class new NAME", "“Make the class” under Class, Roster"},
    {"hardover class check", "“Look over all that was collected” under Class, Hand-ins"},
    {"hardover job list --boat PART-OF-IT", "“Find among all jobs” on the Bench"},
};

}  // namespace

std::string words_here(const std::string& text) {
    std::string said = text;
    for (const Way& way : ways) {
        for (std::size_t at = said.find(way.command); at != std::string::npos;
             at = said.find(way.command, at + way.here.size()))
            said.replace(at, way.command.size(), way.here);
    }
    return said;
}

}  // namespace hardover::window
