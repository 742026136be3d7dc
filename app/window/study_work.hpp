// What long work on quizzes and practice boats needs on its thread: how it hears that it is not wanted, and
// the portraits of the causes, made there when nobody has made them yet.
#pragma once

#include <memory>

#include "app/jobs/watched.hpp"
#include "app/study/portrait.hpp"
#include "app/window/background.hpp"

namespace hardover::window {

inline Watched watched_by(Background::Watch& watch) {
    return [&watch](std::size_t done, std::size_t of) { return watch.go_on(done, of); };
}

inline std::shared_ptr<const study::Portraits> made_if_needed(
    const std::shared_ptr<const study::Portraits>& portraits, const PreparedKnowledge& prepared) {
    return portraits ? portraits : std::make_shared<const study::Portraits>(prepared.knowledge());
}

}  // namespace hardover::window
