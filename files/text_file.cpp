#include "files/text_file.h"

#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <filesystem>
#include <memory>
#include <system_error>

namespace voltwright::files {

namespace {

constexpr std::uintmax_t kLargest = 256U << 20U;

base::Problem trouble(const std::string& path, const std::string& what, const std::string& cause,
                      const std::string& remedy) {
  base::Problem problem;
  problem.where.file = path;
  problem.what = what + (cause.empty() ? "." : ": " + cause + ".");
  problem.remedy = remedy;
  return problem;
}

struct Close {
  void operator()(std::FILE* file) const {
    if (file != nullptr) (void)std::fclose(file);
  }
};
using File = std::unique_ptr<std::FILE, Close>;

}  // namespace

base::Result<std::string> read_text(const std::string& path) {
  std::error_code error;
  if (std::filesystem::is_directory(path, error)) {
    return trouble(path, "This is a folder", "", "Give the file inside it.");
  }
  const File file(std::fopen(path.c_str(), "rb"));
  if (!file)
    return trouble(path, "The file cannot be opened", std::strerror(errno), "Check the name and the rights.");
  const std::uintmax_t size = std::filesystem::file_size(path, error);
  if (!error && size > kLargest) {
    return trouble(path, "The file is larger than 256 MiB", "", "A plan or weather file is far smaller.");
  }
  std::string text;
  char buffer[65536];
  std::size_t got = 0;
  while ((got = std::fread(buffer, 1, sizeof buffer, file.get())) > 0) {
    text.append(buffer, got);
    if (text.size() > kLargest) {
      return trouble(path, "The file is larger than 256 MiB", "", "A plan or weather file is far smaller.");
    }
  }
  if (std::ferror(file.get()) != 0) return trouble(path, "The file cannot be read", std::strerror(errno), "");
  return text;
}

base::Problems write_text(const std::string& path, std::string_view text) {
  std::error_code error;
  const std::filesystem::path target(path);
  if (target.has_parent_path()) std::filesystem::create_directories(target.parent_path(), error);
  if (error) return {trouble(path, "The folder cannot be made", error.message(), "Choose another place.")};
  const std::string beside = path + ".part" + std::to_string(getpid());
  File file(std::fopen(beside.c_str(), "wb"));
  if (!file) {
    return {trouble(path, "The file cannot be written", std::strerror(errno), "Choose another place.")};
  }
  bool good = std::fwrite(text.data(), 1, text.size(), file.get()) == text.size();
  good = std::fflush(file.get()) == 0 && good;
  const int cause = errno;
  good = std::fclose(file.release()) == 0 && good;
  if (good) std::filesystem::rename(beside, target, error);
  if (!good || error) {
    std::error_code ignored;
    std::filesystem::remove(beside, ignored);
    return {trouble(path, "The file cannot be written", error ? error.message() : std::strerror(cause),
                    "Make room or choose another place.")};
  }
  return {};
}

}  // namespace voltwright::files
