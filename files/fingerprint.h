#pragma once
// A hash that is the same on every machine: marks of plans and of the catalogue, and keys of place names.
#include <fmt/format.h>

#include <cstdint>
#include <string>
#include <string_view>

namespace voltwright::files {

/// 64-bit FNV-1a (Fowler, Noll and Vo; offset basis and prime of the published parameters).
class Fingerprint {
 public:
  Fingerprint& add(std::string_view bytes) {
    for (const char byte : bytes) {
      hash_ ^= static_cast<unsigned char>(byte);
      hash_ *= 0x100000001b3ULL;
    }
    return *this;
  }
  std::uint64_t value() const { return hash_; }
  /// First eight of the sixteen hexadecimal digits.
  std::string mark() const { return fmt::format("{:016x}", hash_).substr(0, 8); }

 private:
  std::uint64_t hash_ = 0xcbf29ce484222325ULL;
};

}  // namespace voltwright::files
