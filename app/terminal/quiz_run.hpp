// A quiz in the terminal: prints an item, reads an answer, has it kept, says what it came to, again. Works
// the same through a pipe. Decides nothing: app/study says what is asked and what an answer is worth.
#pragma once

#include <functional>
#include <string>

#include "app/study/quiz_in_hand.hpp"
#include "app/terminal/context.hpp"
#include "app/terminal/dialogue.hpp"

namespace hardover {

class QuizRun : Dialogue {
  public:
    // Writes an answer and the seconds spent on it, before anything is said about it.
    using Keep = std::function<Result<void>(const study::QuizInHand::Answer&, double seconds)>;

    // `tells_marks`: say after each answer what it came to, and at the end.
    QuizRun(Context& context, const Knowledge& knowledge, study::QuizInHand quiz, Keep keep,
            bool tells_marks = true);

    // Until the quiz is answered, the learner leaves or the input ends; false for the last two. Error: an
    // answer could not be kept. `opening` goes before how to answer.
    Result<bool> run(const std::string& opening);

    const study::QuizInHand& quiz() const { return quiz_; }

  private:
    void print_item();
    Result<bool> ask();
    Result<void> take(const study::QuizInHand::Answer& answer, double seconds);

    const Knowledge& knowledge_;
    study::QuizInHand quiz_;
    Keep keep_;
    bool tells_marks_;
};

}  // namespace hardover
