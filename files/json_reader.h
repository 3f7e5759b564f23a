#pragma once
// Reads fields of a JSON object and notes every problem with its path, instead of stopping at the first.
#include <nlohmann/json.hpp>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>

#include "engine/base/problem.h"
#include "engine/cell/chemistry.h"
#include "engine/units/ranged.h"

namespace voltwright::files {

/// Parses a JSON text. A syntax error or a key that stands twice in one object is a problem with line and
/// column; the value is then empty.
std::optional<nlohmann::json> parse_json(std::string_view text, const std::string& file,
                                         base::Problems& problems);

/// One object of a JSON file. Every getter notes a problem and returns a harmless value if the field is
/// missing, of the wrong kind or outside its limits; a missing sub-object is noted once and not for each of
/// its fields. The object and the problem list must outlive the reader.
class JsonReader {
 public:
  JsonReader(const nlohmann::json& object, std::string file, base::Problems& problems);

  bool has(const char* key) const;
  std::string text(const char* key);
  bool flag(const char* key);
  /// A finite number within [least, greatest].
  double number(const char* key, double least, double greatest);
  /// A whole number within [least, greatest].
  int whole(const char* key, int least, int greatest);
  /// {"min", "typical", "max"} with least <= min <= typical <= max <= greatest.
  units::Ranged range(const char* key, double least, double greatest);
  /// [[x, y], ...] with at least two points, x rising within [x_least, x_greatest] and y within
  /// [y_least, y_greatest].
  cell::Curve curve(const char* key, double x_least, double x_greatest, double y_least, double y_greatest);
  /// A sub-object that must be there.
  JsonReader object(const char* key);

  /// One of a list of words.
  template <class Value, std::size_t Count>
  Value choice(const char* key, const std::pair<std::string_view, Value> (&words)[Count]) {
    const std::string word = text(key);
    std::string allowed;
    for (const auto& [name, value] : words) {
      if (name == word) return value;
      allowed += (allowed.empty() ? "" : ", ") + std::string(name);
    }
    if (!word.empty())
      report(key, "This word is not known here.", '"' + word + '"', allowed, "Use one of them.");
    return words[0].second;
  }

  /// Notes a problem with the field `key` of this object.
  void report(const char* key, std::string what, std::string given, std::string limit, std::string remedy);

 private:
  JsonReader(const nlohmann::json* object, std::string file, std::string path, base::Problems& problems);
  const nlohmann::json* find(const char* key, const char* kind);
  bool within(const char* key, double value, double least, double greatest);

  const nlohmann::json* object_;  // null: missing, and that has been reported
  std::string file_;
  std::string path_;
  base::Problems& problems_;
};

}  // namespace voltwright::files
