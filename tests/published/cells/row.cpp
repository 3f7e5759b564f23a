#include "tests/published/cells/row.h"

#include <cmath>
#include <cstdlib>
#include <limits>
#include <nlohmann/json.hpp>
#include <ostream>

#include "files/json_reader.h"
#include "tests/published/cells/quantities.h"

namespace voltwright::published {

namespace {

constexpr double kAnything = std::numeric_limits<double>::max();

base::Problem mistake(const std::string& id, const std::string& what) {
  base::Problem problem;
  problem.what = what;
  problem.field = id;
  return problem;
}

Row read_row(const nlohmann::json& object, const std::string& file, base::Problems& problems) {
  static const std::set<std::string> kKeys = {"id",        "quantity", "inputs", "expected",
                                              "tolerance", "relative", "source", "note"};
  files::JsonReader reader(object, file, problems);
  Row row;
  row.id = reader.text("id");
  row.quantity = reader.text("quantity");
  row.expected = reader.number("expected", -kAnything, kAnything);
  row.tolerance = reader.number("tolerance", 0.0, kAnything);
  row.relative = reader.has("relative") && reader.flag("relative");
  row.source = reader.text("source");
  if (reader.has("note")) row.note = reader.text("note");
  if (!object.is_object()) return row;
  for (const auto& [key, value] : object.items()) {
    if (kKeys.count(key) == 0) problems.push_back(mistake(row.id, "The key '" + key + "' is not known."));
  }
  const auto inputs = object.find("inputs");
  if (inputs == object.end() || !inputs->is_object()) {
    problems.push_back(mistake(row.id, "The inputs are missing."));
    return row;
  }
  for (const auto& [key, value] : inputs->items()) {
    if (value.is_number()) {
      row.inputs.put(key, value.get<double>());
    } else if (value.is_string()) {
      row.inputs.put(key, value.get<std::string>());
    } else {
      problems.push_back(mistake(row.id, "The input '" + key + "' is neither a number nor a text."));
    }
  }
  return row;
}

}  // namespace

const Inputs::Value* Inputs::find(const std::string& name) {
  asked_.insert(name);
  const auto found = values_.find(name);
  return found == values_.end() ? nullptr : &found->second;
}

double Inputs::number(const std::string& name) {
  const Value* value = find(name);
  if (value != nullptr && std::holds_alternative<double>(*value)) return std::get<double>(*value);
  mistakes_ += "needs the number '" + name + "'; ";
  return 1.0;  // as good as any: the row fails, and nothing divides by it or counts to it
}

double Inputs::number_or(const std::string& name, double otherwise) {
  return values_.count(name) == 0 ? otherwise : number(name);
}

std::string Inputs::text(const std::string& name) {
  const Value* value = find(name);
  if (value != nullptr && std::holds_alternative<std::string>(*value)) return std::get<std::string>(*value);
  mistakes_ += "needs the text '" + name + "'; ";
  return {};
}

std::string Inputs::mistakes() const {
  std::string all = mistakes_;
  for (const auto& [name, value] : values_) {
    if (asked_.count(name) == 0) all += "does not take '" + name + "'; ";
  }
  return all;
}

int Row::check() const { return std::atoi(id.c_str()); }

void PrintTo(const Row& row, std::ostream* out) { *out << row.id << ' ' << row.quantity; }

base::Result<Checks> read_checks(std::string_view text, const std::string& file) {
  base::Problems problems;
  const auto document = files::parse_json(text, file, problems);
  if (!document) return problems;
  Checks checks;
  const auto list = [&](const char* key, auto read) {
    const auto found = document->find(key);
    if (found == document->end() || !found->is_array()) {
      problems.push_back(mistake(key, "The list is missing."));
      return;
    }
    for (const auto& object : *found) read(object);
  };
  list("rows", [&](const auto& object) { checks.rows.push_back(read_row(object, file, problems)); });
  const auto left_out = [&](const auto& object) {
    files::JsonReader reader(object, file, problems);
    return LeftOut{reader.whole("check", 1, kChecks), reader.text("reason")};
  };
  list("left_out", [&](const auto& object) { checks.left_out.push_back(left_out(object)); });
  list("partly_left_out", [&](const auto& object) { checks.partly_left_out.push_back(left_out(object)); });
  if (!problems.empty()) return problems;
  return checks;
}

base::Result<double> evaluate(const Row& row) {
  const auto& all = quantities();
  const auto found = all.find(row.quantity);
  if (found == all.end()) return mistake(row.id, "Nothing gives the quantity '" + row.quantity + "'.");
  Inputs inputs = row.inputs;
  const double value = found->second(inputs);
  const std::string mistakes = inputs.mistakes();
  if (!mistakes.empty()) return mistake(row.id, row.quantity + " " + mistakes);
  return value;
}

double allowance(const Row& row) {
  return row.relative ? row.tolerance * std::fabs(row.expected) : row.tolerance;
}

}  // namespace voltwright::published
