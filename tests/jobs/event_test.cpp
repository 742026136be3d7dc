// Events to JSON and back: nothing is lost, and a body that does not fit gives an error, never an exception.
#include "app/jobs/event.hpp"

#include <random>

#include "support.hpp"

using namespace hardover;

namespace {

// Texts of all letters that may turn up: quotes, line ends, umlauts, an emoji, a zero byte.
class RandomEvents {
  public:
    Event next() {
        switch (number(0, 11)) {
            case 0:
                return Opened{text(), text(), text()};
            case 1:
                return RigSet{text(), text()};
            case 2:
                return HistorySet{text()};
            case 3: {
                ComplaintsSet complaints;
                for (int i = number(0, 4); i > 0; --i) complaints.complaints.push_back(text());
                return complaints;
            }
            case 4:
                return Answered{text(), text()};
            case 5:
                return TakenBack{text()};
            case 6:
                return NeedMarked{text(), number(0, 1) == 1};
            case 7:
                return Tried{text(), text()};
            case 8:
                return Noted{text()};
            case 9:
                return handed_back();
            case 10:
                return Reopened{};
            default:
                return Undone{number(1, 1'000'000'000)};
        }
    }

  private:
    Event handed_back() {
        HandedBack back{text(), number(0, 1) == 1, text()};
        for (int i = number(0, 3); i > 0; --i) {
            back.further.push_back({text(), number(0, 1) == 1});
            if (!named_twice(back).empty()) back.further.pop_back();
        }
        return back;
    }
    int number(int least, int most) { return std::uniform_int_distribution<int>(least, most)(random_); }
    std::string text() {
        static const std::vector<std::string> pieces = {"a",
                                                        "Z",
                                                        "7",
                                                        " ",
                                                        "\"",
                                                        "\\",
                                                        "\n",
                                                        "\t",
                                                        "{",
                                                        "}",
                                                        "é",
                                                        "±",
                                                        "½",
                                                        "🚤",
                                                        "'",
                                                        "/",
                                                        std::string(1, '\0'),
                                                        "\x7f"};
        std::string text;
        for (int i = number(0, 12); i > 0; --i)
            text += pieces[number(0, static_cast<int>(pieces.size()) - 1)];
        return text;
    }
    std::mt19937 random_{7};
};

std::string error_of(const std::string& kind, const std::string& body) {
    const auto event = from_stored({1, "", kind, body});
    REQUIRE_FALSE(event.ok());
    return event.error().text();
}

}  // namespace

TEST_CASE("Every event comes back from its stored form as it was") {
    RandomEvents events;
    for (int i = 0; i < 2000; ++i) {
        const Event event = events.next();
        const StoredEvent stored = to_stored(event);
        const auto again = from_stored(stored);
        REQUIRE_OK(again);
        CHECK(again.value().index() == event.index());
        CHECK(plain_text(again.value()) == plain_text(event));
        CHECK(to_stored(again.value()).body == stored.body);
    }
}

TEST_CASE("The stored form of events stays as it is, for the files of today") {
    const StoredEvent stored = to_stored(Answered{"wheel_feel", "springy"});
    CHECK(stored.kind == "answered");
    CHECK(stored.body == R"({"answer":"springy","finding":"wheel_feel"})");
    CHECK(to_stored(HandedBack{"air_in_oil", true, "bled twice"}).body ==
          R"({"cause":"air_in_oil","confirmed":true,"note":"bled twice"})");
    CHECK(to_stored(HandedBack{"air_in_oil", true, "", {}, {{"hose_chafed", false}}}).body ==
          R"({"cause":"air_in_oil","confirmed":true,"further":[{"cause":"hose_chafed","confirmed":false}],)"
          R"("note":""})");
    CHECK(to_stored(Undone{4}).body == R"({"sequence":4})");
    CHECK(to_stored(Reopened{}).body == "{}");
}

TEST_CASE("A hand-back of before there could be several causes reads as one with a single cause") {
    const auto event =
        from_stored({1, "", "handed_back", R"({"cause":"air_in_oil","confirmed":true,"note":"bled twice"})"});
    REQUIRE_OK(event);
    const HandedBack& back = std::get<HandedBack>(event.value());
    CHECK(back.further.empty());
    CHECK(causes_of(back) == std::vector<RecordedCause>{{"air_in_oil", true}});
}

TEST_CASE("Further causes of a hand-back that are written wrong, or twice, are refused in words") {
    const auto refused = [](const std::string& further) {
        return error_of("handed_back",
                        R"({"cause":"air_in_oil","confirmed":true,"note":"","further":)" + further + "}");
    };
    for (const std::string further :
         {"7", "{}", R"(["hose_chafed"])", R"([{"cause":"hose_chafed"}])",
          R"([{"cause":3,"confirmed":true}])", R"([{"cause":"hose_chafed","confirmed":"yes"}])", "null"}) {
        INFO(further);
        CHECK(refused(further) ==
              "the event 'handed_back' has a 'further' that is not a list of objects, each with a text "
              "'cause' and 'confirmed' true or false");
    }
    CHECK(refused(R"([{"cause":"air_in_oil","confirmed":false}])") ==
          "the event 'handed_back' names the cause 'air_in_oil' twice");
}

TEST_CASE("Fields a newer program added are let be") {
    const auto event = from_stored(
        {1, "", "answered", R"({"finding":"wheel_feel","answer":"firm","photo":[1,{"a":null}]})"});
    REQUIRE_OK(event);
    CHECK(std::get<Answered>(event.value()).answer == "firm");
}

TEST_CASE("A body that does not fit its kind is refused in words") {
    CHECK(error_of("answered", R"({"finding":"wheel_feel"})") == "the event 'answered' lacks 'answer'");
    CHECK(error_of("answered", R"({"finding":3,"answer":"firm"})") ==
          "the event 'answered' has a 'finding' that is not a text");
    CHECK(error_of("need_marked", R"({"need":"x","available":"yes"})") ==
          "the event 'need_marked' has a 'available' that is not true or false");
    CHECK(error_of("complaints_set", R"({"complaints":["a",1]})") ==
          "the event 'complaints_set' has a 'complaints' that is not a list of texts");
    for (const std::string number : {"0", "-3", "1.5", "\"1\"", "1e300", "99999999999999999999", "null"}) {
        CHECK(error_of("undone", "{\"sequence\":" + number + "}") ==
              "the event 'undone' has a 'sequence' that is not a whole number from 1");
    }
    for (const std::string body : {"", "{", "[]", "null", "7", "\xff\xfe", "{\"finding\":\"\xff\"}"}) {
        CHECK(error_of("answered", body) == "the event 'answered' has a body that cannot be read");
    }
}

TEST_CASE("An event of an unknown kind is told from a damaged one") {
    const auto event = from_stored({1, "", "photographed", "{}"});
    REQUIRE_FALSE(event.ok());
    CHECK(event.error().kind == Error::Kind::unsupported);
    CHECK(event.error().what == "unknown kind of event 'photographed'");
}

TEST_CASE("A note that is no UTF-8 is kept with the wrong letters replaced") {
    const auto event = from_stored(to_stored(Noted{"caf\xe9 by the slip"}));
    REQUIRE_OK(event);
    CHECK(std::get<Noted>(event.value()).text == "caf\xEF\xBF\xBD by the slip");
}

TEST_CASE("The plain line of an event names what happened") {
    CHECK(plain_text(Answered{"wheel_feel", "springy"}) == "answered wheel_feel: springy");
    CHECK(plain_text(RigSet{"rams", ""}) == "rig rams: unknown");
    CHECK(plain_text(ComplaintsSet{{"wander", "hard_one_way"}}) == "complaints: wander, hard_one_way");
    CHECK(plain_text(HandedBack{"not_listed", false, ""}) == "handed back: not_listed, not confirmed");
    CHECK(plain_text(HandedBack{"air_in_oil", true, "bled", {}, {{"hose_chafed", false}}}) ==
          "handed back: air_in_oil, confirmed; hose_chafed, not confirmed, \"bled\"");
}
