// The roster of a class: codes that can be typed, tables read with the place of each fault.
#include "app/classroom/roster.hpp"

#include <catch2/catch.hpp>

#include "app/classroom/csv.hpp"
#include "support.hpp"

using namespace hardover;
using namespace hardover::classroom;

namespace {

std::string import_fault(const std::string& table) {
    Roster roster;
    const auto read = import_roster(roster, table, "class.csv");
    CHECK(roster.seats().empty());
    return read.ok() ? "taken" : read.error().text();
}

}  // namespace

TEST_CASE("Seats are kept by code, and a code in small letters is the same seat") {
    Roster roster;
    REQUIRE_OK(roster.add({"B02", "", ""}));
    REQUIRE_OK(roster.add({"A07", " Invented Name ", "Port"}));
    CHECK(roster.seats()[0].code == "A07");
    CHECK(roster.find("a07")->name == "Invented Name");
    CHECK(roster.add({"a07", "", ""}).error().text() == "there is a seat 'a07' already (take another code)");
    REQUIRE_OK(roster.rename("a07", ""));
    REQUIRE_OK(roster.move_to_group("A07", "Starboard"));
    CHECK(roster.find("A07")->name.empty());
    CHECK(roster.find("A07")->group == "Starboard");
    REQUIRE_OK(roster.remove("b02"));
    CHECK(roster.seats().size() == 1);
    CHECK(roster.remove("A08").error().cure == "did you mean 'A07'?");
}

TEST_CASE("A code that is empty, long or odd is refused, and so is an endless name") {
    Roster roster;
    for (const char* code : {"", "A 07", "A07/x", "ABCDEFGHIJKLMNOPQ", "\xc3\x84"}) {
        CHECK_FALSE(roster.add({code, "", ""}).ok());
    }
    CHECK_FALSE(roster.add({"A01", std::string(81, 'x'), ""}).ok());
    CHECK_FALSE(roster.add({"A01", "two\nlines", ""}).ok());
    CHECK(roster.seats().empty());
}

TEST_CASE("A table with quotes, commas, umlauts and either line end becomes a roster") {
    Roster roster;
    REQUIRE_OK(roster.add({"A01", "Earlier", "Port"}));
    const auto count = import_roster(roster,
                                     "\xEF\xBB\xBFName,Seat,Group\r\n\"Invented, \"\"Skip\"\"\",A01,\r\n\n"
                                     "J\xc3\xb6rg (invented),A02,Port\n",
                                     "class.csv");
    REQUIRE_OK(count);
    CHECK(count.value() == 2);
    REQUIRE(roster.seats().size() == 2);
    CHECK(roster.find("A01")->name == "Invented, \"Skip\"");
    CHECK(roster.find("A01")->group.empty());
    CHECK(roster.find("A02")->name == "J\xc3\xb6rg (invented)");
}

TEST_CASE("Each fault of a table is told at its line and column, and nothing of the table is taken") {
    CHECK(import_fault("") == "class.csv: the table is empty (a first row with: seat,name,group)");
    CHECK(import_fault("name\nx\n").substr(0, 40) == "class.csv:1:1: there is no column 'seat'");
    CHECK(import_fault("seat,phone\nA1,1\n").substr(0, 42) == "class.csv:1:6: there is no column 'phone' ");
    CHECK(import_fault("seat,seat\n").substr(0, 48) == "class.csv:1:6: the column 'seat' stands there tw");
    CHECK(import_fault("seat,name\nA1,x\nA 2,y\n").substr(0, 37) == "class.csv:3:1: 'A 2' is no code of a ");
    CHECK(import_fault("name,seat\nx,A1\ny,a1\n").substr(0, 40) ==
          "class.csv:3:3: there is a seat 'a1' alre");
    CHECK(import_fault("seat,name\nA1,x,y\n").substr(0, 39) == "class.csv:2:6: this row has more fields");
    CHECK(import_fault("seat,name\nA1,\"x\n").substr(0, 39) == "class.csv:2:4: this quote is never clos");
    CHECK(import_fault("seat,name\nA1,\"x\"y\n").substr(0, 40) == "class.csv:2:7: after the closing quote a");
    CHECK(import_fault("seat,name\nA1,x\"y\n").substr(0, 40) == "class.csv:2:5: a quote stands inside a f");
    CHECK(import_fault("seat,name\nA1,\xff\n").substr(0, 34) == "class.csv:2:4: this is no UTF-8 te");
}
