#include "dialogues.hpp"

#include <fmt/format.h>

#include <nlohmann/json.hpp>
#include <stdexcept>

#include "records_seen.hpp"

namespace hardover_tests {

namespace {

// Length at the rim; each of 720 in turn is different, and its last digit is never a zero that would be left
// out.
std::string sponge(int n) {
    return fmt::format("{}.{}{}", n / 90 % 8 + 1, n / 9 % 10, n % 9 + 1);
}

// What is said is kept as it is between 2 and 98 in 100.
int sure(int n) {
    return 2 + n % 97;
}

std::string sure_on_record(int n) {
    return "\"sure\":" + nlohmann::json(sure(n) / 100.0).dump();
}

void add_learner(const std::string& records) {
    const Ran ran = run_program({"--records", records, "learner", "add", "A07"});
    if (ran.code != 0) throw std::runtime_error("no learner: " + ran.err);
}

}  // namespace

Dialogue interview_dialogue(const std::string& records) {
    Dialogue interview;
    interview.fault = "kill -9 during the interview";
    interview.records = records;
    interview.arguments = [records]() -> std::vector<std::string> {
        const auto last =
            see_records(records,
                        "SELECT number FROM jobs WHERE number = (SELECT max(number) FROM jobs) AND "
                        "(SELECT count(*) FROM events WHERE job = number) < 40");
        if (last.rows.empty()) return {"--records", records, "interview", "--boat", "Sanderling"};
        return {"--records", records, "interview", "--job", last.rows.front()};
    };
    interview.line = [](int n) {
        return n % 5 == 4 ? fmt::format("note answer number {}", n)
                          : "answer wheel_sponge " + sponge(n) + " in";
    };
    interview.trace = [](int n) {
        return n % 5 == 4 ? fmt::format("answer number {}\"", n) : "\"" + sponge(n) + " in";
    };
    interview.on_record =
        "SELECT body FROM events WHERE kind IN ('answered', 'noted') ORDER BY job, sequence";
    return interview;
}

Dialogue practice_dialogue(const std::string& records) {
    add_learner(records);
    Dialogue practice;
    practice.fault = "kill -9 during a practice boat";
    practice.records = records;
    practice.arguments = [records]() -> std::vector<std::string> {
        const auto last = see_records(
            records,
            "SELECT count(*) FROM study_events WHERE sequence > "
            "(SELECT coalesce(max(sequence), 1000000) FROM study_events WHERE kind = 'practice_begun') "
            "HAVING count(*) BETWEEN 1 AND 39");
        std::vector<std::string> words = {"--records", records, "practice", "--learner", "A07"};
        // Always one boat; the suspicion below may be had of any.
        if (last.rows.empty()) words.insert(words.end(), {"--new", "--seed", "5", "--level", "2"});
        return words;
    };
    practice.line = [](int n) { return fmt::format("suspect Reservoir low {}", sure(n)); };
    practice.trace = sure_on_record;
    practice.on_record = "SELECT body FROM study_events WHERE kind = 'practice_did' ORDER BY sequence";
    return practice;
}

Dialogue quiz_dialogue(const std::string& records) {
    add_learner(records);
    Dialogue quiz;
    quiz.fault = "kill -9 during a quiz";
    quiz.records = records;
    quiz.arguments = [records]() -> std::vector<std::string> {
        return {"--records", records, "quiz", "--learner", "A07", "--count", "20", "--seed", "3"};
    };
    quiz.line = [](int n) { return fmt::format("? @ {}", sure(n)); };
    quiz.trace = sure_on_record;
    quiz.on_record = "SELECT body FROM study_events WHERE kind = 'reviewed' ORDER BY sequence";
    return quiz;
}

}  // namespace hardover_tests
