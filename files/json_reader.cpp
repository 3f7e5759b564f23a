#include "files/json_reader.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <set>
#include <vector>

namespace voltwright::files {
namespace {

using nlohmann::json;

// Far more than any record needs; what is written with the parsed value may recurse.
constexpr int kDeepest = 64;

base::TextPlace place_of_byte(std::string_view text, std::size_t byte, const std::string& file) {
  base::TextPlace place{file, 1, 1};
  for (const char c : text.substr(0, std::min(byte, text.size()))) {
    if (c == '\n') {
      ++place.line;
      place.column = 1;
    } else {
      ++place.column;
    }
  }
  return place;
}

std::string shown(double value) {
  char buffer[40];
  std::snprintf(buffer, sizeof buffer, "%.10g", value);
  return buffer;
}

std::string shown(const json& value) {
  std::string text = value.dump(-1, ' ', false, json::error_handler_t::replace);
  constexpr std::size_t kLongest = 60;
  if (text.size() > kLongest) text.replace(kLongest, std::string::npos, "...");
  return text;
}

base::Problem problem_of(std::string what, base::TextPlace where, std::string remedy) {
  base::Problem problem;
  problem.what = std::move(what);
  problem.where = std::move(where);
  problem.remedy = std::move(remedy);
  return problem;
}

bool is_point(const json& value) {
  return value.is_array() && value.size() == 2 && value[0].is_number() && value[1].is_number();
}

}  // namespace

std::optional<json> parse_json(std::string_view text, const std::string& file, base::Problems& problems) {
  std::vector<std::set<std::string>> keys;
  std::vector<std::string> twice;
  bool too_deep = false;
  const auto watch = [&](int depth, json::parse_event_t event, json& value) {
    if (depth > kDeepest) {
      too_deep = true;
      return false;
    }
    if (event == json::parse_event_t::object_start) keys.emplace_back();
    if (event == json::parse_event_t::object_end && !keys.empty()) keys.pop_back();
    if (event == json::parse_event_t::key && !keys.empty()) {
      auto name = value.get<std::string>();
      if (!keys.back().insert(name).second) twice.push_back(std::move(name));
    }
    return true;
  };
  try {
    json value = json::parse(text.begin(), text.end(), watch);
    for (const std::string& name : twice) {
      base::Problem problem =
          problem_of("This key stands twice in one object.", {file, 0, 0}, "Remove one of the two.");
      problem.field = name;
      problems.push_back(std::move(problem));
    }
    if (too_deep) {
      problems.push_back(problem_of("Objects and lists are nested too deeply.", {file, 0, 0},
                                    "Keep to " + std::to_string(kDeepest) + " levels."));
    }
    if (too_deep || !twice.empty()) return std::nullopt;
    return value;
  } catch (const json::parse_error& error) {
    problems.push_back(problem_of("This is not valid JSON.",
                                  place_of_byte(text, error.byte > 0 ? error.byte - 1 : 0, file),
                                  "Check commas, quotes and brackets just before this place."));
    return std::nullopt;
  } catch (const json::out_of_range&) {
    problems.push_back(
        problem_of("A number is too large to be read.", {file, 0, 0}, "Keep numbers under 1e308."));
    return std::nullopt;
  }
}

JsonReader::JsonReader(const json& object, std::string file, base::Problems& problems)
    : JsonReader(&object, std::move(file), "", problems) {
  if (!object.is_object()) {
    base::Problem problem =
        problem_of("The file must hold one JSON object.", {file_, 0, 0}, "Start the file with {.");
    problem.given = shown(object);
    problems_.push_back(std::move(problem));
    object_ = nullptr;
  }
}

JsonReader::JsonReader(const json* object, std::string file, std::string path, base::Problems& problems)
    : object_(object), file_(std::move(file)), path_(std::move(path)), problems_(problems) {}

void JsonReader::report(const char* key, std::string what, std::string given, std::string limit,
                        std::string remedy) {
  base::Problem problem = problem_of(std::move(what), {file_, 0, 0}, std::move(remedy));
  problem.field = path_ + key;
  problem.given = std::move(given);
  problem.limit = std::move(limit);
  problems_.push_back(std::move(problem));
}

bool JsonReader::has(const char* key) const { return object_ != nullptr && object_->contains(key); }

const json* JsonReader::find(const char* key, const char* kind) {
  if (object_ == nullptr) return nullptr;
  const auto found = object_->find(key);
  if (found == object_->end()) {
    report(key, "This field is missing.", "", kind, "Add it.");
    return nullptr;
  }
  return &*found;
}

bool JsonReader::within(const char* key, double value, double least, double greatest) {
  if (std::isfinite(value) && value >= least && value <= greatest) return true;
  report(key, "This number is outside its limits.", shown(value), shown(least) + " to " + shown(greatest),
         "Check the unit and the decimal point.");
  return false;
}

std::string JsonReader::text(const char* key) {
  const json* value = find(key, "a text");
  if (value == nullptr) return {};
  if (value->is_string() && !value->get_ref<const std::string&>().empty()) return value->get<std::string>();
  report(key, "This must be a text that is not empty.", shown(*value), "", "Put it in quotes.");
  return {};
}

bool JsonReader::flag(const char* key) {
  const json* value = find(key, "true or false");
  if (value == nullptr) return false;
  if (value->is_boolean()) return value->get<bool>();
  report(key, "This must be true or false.", shown(*value), "true, false", "Write it without quotes.");
  return false;
}

double JsonReader::number(const char* key, double least, double greatest) {
  const json* value = find(key, "a number");
  if (value == nullptr) return 0.0;
  if (!value->is_number()) {
    report(key, "This must be a number.", shown(*value), "", "Write it without quotes and without the unit.");
    return 0.0;
  }
  const auto result = value->get<double>();
  return within(key, result, least, greatest) ? result : 0.0;
}

int JsonReader::whole(const char* key, int least, int greatest) {
  const double value = number(key, least, greatest);
  if (value == std::floor(value)) return static_cast<int>(value);
  report(key, "This must be a whole number.", shown(value), "", "Remove the decimals.");
  return 0;
}

units::Ranged JsonReader::range(const char* key, double least, double greatest) {
  JsonReader part = object(key);
  if (part.object_ == nullptr) return {};
  const std::size_t before = problems_.size();
  const units::Ranged result{part.number("min", least, greatest), part.number("typical", least, greatest),
                             part.number("max", least, greatest)};
  if (problems_.size() == before && !(result.min <= result.typical && result.typical <= result.max)) {
    report(key, "The range is out of order.",
           shown(result.min) + ", " + shown(result.typical) + ", " + shown(result.max),
           "min <= typical <= max", "Put the three in order.");
  }
  return result;
}

cell::Curve JsonReader::curve(const char* key, double x_least, double x_greatest, double y_least,
                              double y_greatest) {
  const json* value = find(key, "a list of [x, y] points");
  if (value == nullptr) return {};
  if (!value->is_array() || value->size() < 2 || !std::all_of(value->begin(), value->end(), is_point)) {
    report(key, "This must be a list of at least two [x, y] points.", shown(*value), "",
           "Write [[x, y], [x, y]].");
    return {};
  }
  cell::Curve result;
  for (const json& point : *value) {
    const cell::CurvePoint next{point[0].get<double>(), point[1].get<double>()};
    if (!within(key, next.x, x_least, x_greatest) || !within(key, next.y, y_least, y_greatest)) return {};
    if (!result.empty() && next.x <= result.back().x) {
      report(key, "The first numbers of the points must rise.",
             shown(result.back().x) + " then " + shown(next.x), "",
             "Sort the points and drop repeated ones.");
      return {};
    }
    result.push_back(next);
  }
  return result;
}

JsonReader JsonReader::object(const char* key) {
  const json* value = find(key, "an object");
  if (value != nullptr && !value->is_object()) {
    report(key, "This must be an object.", shown(*value), "", "Write { ... }.");
    value = nullptr;
  }
  return {value, file_, path_ + key + ".", problems_};
}

}  // namespace voltwright::files
