#pragma once
#include "engine/advise/search.h"

namespace voltwright::app {

/// Runs work on all processors, or on `threads` of them if that is above 0. The order in which items are
/// taken does not reach the results.
advise::Executor on_threads(unsigned threads = 0);

}  // namespace voltwright::app
