#pragma once
#include <cstdint>
#include <string_view>

namespace voltwright::files {

enum class WeatherFormat : std::uint8_t {
  kEpw,
  kTmy3,
  kTmy2,
  kPvgisCsv,
  kPvgisJson,
  kPower,
  kPlainCsv,
  kUnknown
};

/// Tells the format of a weather file from its first lines; the name of the file is not looked at.
WeatherFormat weather_format(std::string_view text);

}  // namespace voltwright::files
