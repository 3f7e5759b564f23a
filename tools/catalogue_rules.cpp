#include "tools/catalogue_rules.h"

#include <algorithm>
#include <array>
#include <nlohmann/json.hpp>
#include <regex>
#include <vector>

#include "files/json_reader.h"

namespace voltwright::tools {
namespace {

using nlohmann::json;

// A key may end in one of these; "_by_<what>" after it names the first number of a curve's points.
constexpr std::array kUnits = {
    "_mV",         "_V",         "_A",           "_Ah",        "_Wh",         "_W",         "_C",
    "_K",          "_h",         "_s",           "_min",       "_kg",         "_L",         "_ohm",
    "_ohm_Ah",     "_mV_per_K",  "_V_per_K",     "_W_per_K",   "_per_V",      "_per_K",     "_per_h",
    "_per_day",    "_per_month", "_A_per_Ah",    "_J_per_kgK", "_kJ_per_mol", "_Wh_per_kg", "_Wh_per_L",
    "_Wh_per_day", "_USD",       "_USD_per_kWh", "_years",     "_year",       "_mm",        "_n"};

// Ratios, shares, counts and calendar years have no unit; each is listed on purpose.
constexpr std::array kWithoutUnit = {"available_fraction",
                                     "cop_at_25C",
                                     "capacity_share",
                                     "cells_in_series",
                                     "coulombic_efficiency",
                                     "cycles",
                                     "depth",
                                     "depth_exponent",
                                     "end_of_life_share",
                                     "format",
                                     "full_over_rated",
                                     "max_in_series",
                                     "ohmic_factor",
                                     "relative_tolerance",
                                     "relaxing_factor",
                                     "round_trip_efficiency",
                                     "settling_share",
                                     "slow_factor",
                                     "soc_gain",
                                     "soc_pole",
                                     "steady_fraction",
                                     "surge_factor",
                                     "usable_depth",
                                     "year"};

// What a matter counts for a use: "energy_weight".
constexpr std::string_view kWeight = "_weight";

// Units and ratios of ageing laws; the coefficients have the unit that the equation on their page gives them.
constexpr std::array kOfAgeing = {"_days",   "_percent",     "_per_s",        "_per_root_s",  "_per_root_h",
                                  "_per_Ah", "_per_root_Ah", "_per_root_day", "_coefficient", "_exponent",
                                  "_share",  "_depth",       "soc",           "full_cycles"};

constexpr std::array kOrigins = {"source", "derived_from", "assumption"};

// Says where the figures of the record come from and holds none itself.
constexpr std::string_view kEvidence = "evidence";

bool is_point(const json& value) {
  return value.is_array() && value.size() == 2 && value[0].is_number() && value[1].is_number();
}

bool is_range(const json& value) {
  return value.is_object() && value.contains("min") && value.contains("typical") && value.contains("max");
}

bool is_curve(const json& value) {
  return value.is_array() && !value.empty() && std::all_of(value.begin(), value.end(), is_point);
}

bool holds_numbers(const json& value) { return value.is_number() || is_range(value) || is_curve(value); }

bool has_unit(std::string key) {
  if (const auto by = key.find("_by_"); by != std::string::npos) key.resize(by);
  const auto ends = [&](std::string_view unit) { return key.ends_with(unit); };
  return key.ends_with(kWeight) || std::any_of(kUnits.begin(), kUnits.end(), ends) ||
         std::any_of(kOfAgeing.begin(), kOfAgeing.end(), ends) ||
         std::find(kWithoutUnit.begin(), kWithoutUnit.end(), key) != kWithoutUnit.end();
}

class RecordCheck {
 public:
  explicit RecordCheck(std::string file) : file_(std::move(file)) {}

  void object(const json& value, const std::string& path, bool is_record) {
    bool numbers = false;
    for (const auto& [key, member] : value.items()) {
      std::string field = path;
      if (!field.empty()) field += '.';
      field += key;
      if (holds_numbers(member)) {
        if (!(is_record && key == "format")) numbers = true;
        number(member, key, field);
      } else if (member.is_object() && !(is_record && key == kEvidence)) {
        object(member, field, false);
      } else if (member.is_array()) {
        list(member, field);
      }
    }
    if (numbers) origin(value, path);
  }

  base::Problems take() { return std::move(problems_); }

  void report(std::string field, std::string what, std::string remedy) {
    base::Problem problem;
    problem.what = std::move(what);
    problem.where.file = file_;
    problem.field = std::move(field);
    problem.remedy = std::move(remedy);
    problems_.push_back(std::move(problem));
  }

 private:
  void list(const json& value, const std::string& field) {
    for (std::size_t i = 0; i < value.size(); ++i) {
      const std::string item = field + "[" + std::to_string(i) + "]";
      if (value[i].is_object()) object(value[i], item, false);
      if (value[i].is_number() || value[i].is_array()) {
        report(item, "A list of numbers is neither a range nor a curve.",
               "Write {min, typical, max} or points.");
      }
    }
  }

  void number(const json& value, const std::string& key, const std::string& field) {
    if (!has_unit(key)) {
      report(field, "This numeric key has no unit.",
             "End it in a unit such as _V, or add it to the ratios in tools/catalogue_rules.cpp.");
    }
    if (is_range(value)) {
      const json& least = value["min"];
      const json& typical = value["typical"];
      const json& most = value["max"];
      if (!least.is_number() || !typical.is_number() || !most.is_number() || value.size() != 3) {
        report(field, "A range must hold three numbers and nothing else.", "Write min, typical and max.");
      } else if (!(least.get<double>() <= typical.get<double>() &&
                   typical.get<double>() <= most.get<double>())) {
        report(field, "The range is out of order.", "Put min, typical and max in order.");
      }
    }
    if (is_curve(value)) {
      for (std::size_t i = 1; i < value.size(); ++i) {
        if (value[i][0].get<double>() > value[i - 1][0].get<double>()) continue;
        report(field, "The first numbers of the points must rise.",
               "Sort the points and drop repeated ones.");
        break;
      }
    }
  }

  void origin(const json& value, const std::string& path) {
    std::vector<const char*> found;
    for (const char* name : kOrigins) {
      if (value.contains(name)) found.push_back(name);
    }
    if (found.size() != 1) {
      report(path,
             found.empty() ? "These numbers do not say where they come from."
                           : "These numbers say twice where they come from.",
             "Give exactly one of source, derived_from and assumption.");
      return;
    }
    const std::string field = path + "." + found[0];
    const json& said = value[found[0]];
    const bool is_source = std::string_view(found[0]) == "source";
    if (said.is_string()) {
      line(said.get<std::string>(), field, is_source);
    } else if (is_source && said.is_array() && !said.empty()) {
      for (const json& item : said) line(item.is_string() ? item.get<std::string>() : "", field, is_source);
    } else {
      report(field, "This must be a text.", "Write it in quotes; only source may be a list of texts.");
    }
  }

  void line(const std::string& text, const std::string& field, bool is_source) {
    if (text.find_first_not_of(" .") == std::string::npos) {
      report(field, "This text is empty.", "Say where the numbers come from.");
      return;
    }
    static constexpr std::array kNamed = {"bib:", "common practice, no source", "(from memory)",
                                          "assumption"};
    const auto names = [&](const char* word) { return text.find(word) != std::string::npos; };
    if (is_source && std::none_of(kNamed.begin(), kNamed.end(), names)) {
      report(field, "This source names no key of the bibliography.",
             "Write bib:key, or 'common practice, no source', or '(from memory)', or 'assumption'.");
    }
  }

  std::string file_;
  base::Problems problems_;
};

std::set<std::string> matches(std::string_view text, const std::regex& pattern) {
  std::set<std::string> found;
  const std::string copy(text);
  for (std::sregex_iterator it(copy.begin(), copy.end(), pattern), end; it != end; ++it)
    found.insert((*it)[1]);
  return found;
}

}  // namespace

base::Problems check_record(std::string_view text, const std::string& file, const std::string& stem) {
  base::Problems problems;
  const auto value = files::parse_json(text, file, problems);
  if (!value) return problems;
  RecordCheck check(file);
  if (!value->is_object()) {
    check.report("", "The file must hold one JSON object.", "Start the file with {.");
    return check.take();
  }
  const auto id = value->find("id");
  if (id == value->end() || !id->is_string() || id->get<std::string>() != stem) {
    check.report("id", "The id must be the file name, \"" + stem + "\".", "Rename one of the two.");
  }
  check.object(*value, "", true);
  return check.take();
}

std::set<std::string> bib_keys(std::string_view text, const std::string& file, base::Problems& problems) {
  std::set<std::string> keys;
  static const std::regex kEntry(R"(@[A-Za-z]+\{\s*([A-Za-z0-9_:.-]+)\s*,)");
  const std::string copy(text);
  for (std::sregex_iterator it(copy.begin(), copy.end(), kEntry), end; it != end; ++it) {
    if (keys.insert((*it)[1]).second) continue;
    base::Problem problem;
    problem.what = "This key stands twice.";
    problem.where.file = file;
    problem.field = (*it)[1];
    problem.remedy = "Rename or remove one entry.";
    problems.push_back(std::move(problem));
  }
  return keys;
}

std::set<std::string> cited_in_catalogue(std::string_view text) {
  static const std::regex kCitation("bib:([A-Za-z0-9_]+)");
  return matches(text, kCitation);
}

std::set<std::string> cited_in_page(std::string_view text, const std::set<std::string>& known) {
  static const std::regex kBrackets(R"(\[([A-Za-z][A-Za-z0-9_,; ]*)\](?!\())");
  static const std::regex kWord("([A-Za-z0-9_]+)");
  static const std::regex kYear("[A-Za-z_]+(19|20)[0-9][0-9][a-z]?");
  std::set<std::string> found;
  for (const std::string& inside : matches(text, kBrackets)) {
    for (const std::string& word : matches(inside, kWord)) {
      if (known.contains(word) || std::regex_match(word, kYear)) found.insert(word);
    }
  }
  return found;
}

base::Problems check_citations(const std::set<std::string>& known,
                               const std::map<std::string, std::string>& cited,
                               const std::string& bibliography) {
  base::Problems problems;
  const auto add = [&](const std::string& file, const std::string& key, const char* what,
                       const char* remedy) {
    base::Problem problem;
    problem.what = what;
    problem.where.file = file;
    problem.field = key;
    problem.remedy = remedy;
    problems.push_back(std::move(problem));
  };
  for (const auto& [key, file] : cited) {
    if (!known.contains(key)) {
      add(file, key, "The bibliography has no such key.", "Add an entry to references.bib or mend the key.");
    }
  }
  for (const std::string& key : known) {
    if (!cited.contains(key)) add(bibliography, key, "Nothing cites this entry.", "Cite it or remove it.");
  }
  return problems;
}

}  // namespace voltwright::tools
