// A program that loses answers: it prints its prompt before they are written. Shows that the kills find that.
#include <sqlite3.h>

#include <iostream>
#include <string>

int main(int, char** words) {
    sqlite3* handle = nullptr;
    sqlite3_open(words[1], &handle);
    const auto run = [handle](const std::string& sql) {
        return sqlite3_exec(handle, sql.c_str(), nullptr, nullptr, nullptr) == SQLITE_OK;
    };
    run("CREATE TABLE IF NOT EXISTS answers (answer TEXT); PRAGMA user_version = 1; BEGIN");
    std::cout << "\n> " << std::flush;
    int answers = 0;
    for (std::string line; std::getline(std::cin, line);) {
        run("INSERT INTO answers VALUES ('" + line + "')");
        if (++answers % 3 == 0) run("COMMIT; BEGIN");
        std::cout << "\n> " << std::flush;
    }
    run("COMMIT");
    sqlite3_close(handle);
    return 0;
}
