#pragma once
// Files packed into the program at build time.
#include <span>
#include <string_view>

namespace voltwright::files {

struct EmbeddedFile {
  std::string_view name;  // relative to the catalogue folder, e.g. "chemistries/lfp.json"
  std::string_view bytes;
};

/// Everything under catalogue/ and the place list.
std::span<const EmbeddedFile> embedded_catalogue();

}  // namespace voltwright::files
