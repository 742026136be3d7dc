// Work beside the window that has the records to itself: what has to wait for it, and where it is shown. What
// waits is refused at once, so that nothing hangs and nothing is written into records that are being changed.
// Knows no drawing library.
#pragma once

#include "app/window/app_state.hpp"
#include "app/window/beside_records.hpp"

namespace hardover::window {

// None: the records can be written.
const WorkShown* work_that_holds(const AppState& state);

// The place whose page tells how far work on the records has come.
Place shown_at(const WorkShown& work);

// It would write to the records, or change under the work what it uses.
bool has_to_wait(const Action& action);

// Refuses the action when it has to wait, and keeps in the state that it did.
bool held_up(AppState& state, const Action& action);

}  // namespace hardover::window
