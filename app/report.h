#pragma once
#include <string>

#include "app/advise.h"

namespace voltwright::app {

/// The answer as one self-contained HTML page.
std::string report(const AdviseResponse& response);

}  // namespace voltwright::app
