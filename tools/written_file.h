#pragma once
// Files that the tools write into the tree.
#include <filesystem>
#include <fstream>
#include <string>

namespace voltwright::tools {

/// Writes a text to a file in place of what it held, with the folders above it. False if it could not.
inline bool write_file(const std::filesystem::path& path, const std::string& text) {
  std::filesystem::create_directories(path.parent_path());
  std::ofstream out(path, std::ios::binary | std::ios::trunc);
  out << text;
  out.close();
  return static_cast<bool>(out);
}

}  // namespace voltwright::tools
