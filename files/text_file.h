#pragma once
// Whole files in and out.
#include <string>
#include <string_view>

#include "engine/base/result.h"

namespace voltwright::files {

/// Reads a file of at most 256 MiB.
base::Result<std::string> read_text(const std::string& path);

/// Writes a file by way of a temporary one beside it, so that it is either whole or not there. Creates
/// missing folders. Returns the problem if it could not be done, nothing left behind.
base::Problems write_text(const std::string& path, std::string_view text);

}  // namespace voltwright::files
