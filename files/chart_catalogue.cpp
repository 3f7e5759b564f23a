#include "files/chart_catalogue.h"

#include <algorithm>
#include <map>

#include "files/catalogue_records.h"
#include "files/json_reader.h"

namespace voltwright::files {

namespace {

base::Problem problem_of(std::string file, std::string field, std::string what, std::string remedy) {
  base::Problem problem;
  problem.where.file = std::move(file);
  problem.field = std::move(field);
  problem.what = std::move(what);
  problem.remedy = std::move(remedy);
  return problem;
}

/// Reads the branches of an object, `left` steps deep at most.
std::vector<chart::Branch> read_branches(const nlohmann::json& object, std::size_t left,
                                         const std::string& file, base::Problems& problems) {
  std::vector<chart::Branch> branches;
  const auto list = object.find("branches");
  if (list == object.end()) return branches;
  if (!list->is_array() || left == 0) {
    problems.push_back(problem_of(
        file, "branches", left == 0 ? "The tree is deeper than its steps." : "Branches must be a list.",
        "Name a step for each depth, and write [...]."));
    return branches;
  }
  for (const auto& item : *list) {
    if (!item.is_object()) {
      problems.push_back(problem_of(file, "branches", "A branch must be an object.", "Write {...}."));
      continue;
    }
    JsonReader reader(item, file, problems);
    chart::Branch branch;
    branch.name = reader.text("name");
    if (reader.has("note")) branch.note = reader.text("note");
    if (reader.has("chemistry")) branch.chemistry = reader.text("chemistry");
    branch.branches = read_branches(item, left - 1, file, problems);
    branches.push_back(std::move(branch));
  }
  return branches;
}

void list_chemistries(const std::vector<chart::Branch>& branches, std::vector<std::string>& ids) {
  for (const chart::Branch& branch : branches) {
    if (!branch.chemistry.empty()) ids.push_back(branch.chemistry);
    list_chemistries(branch.branches, ids);
  }
}

void check_tree(const ChartCatalogue& catalogue, base::Problems& problems) {
  std::vector<std::string> ids;
  list_chemistries(catalogue.tree.branches, ids);
  std::map<std::string, int> count;
  for (const std::string& id : ids) ++count[id];
  for (const chart::Kind& kind : catalogue.kinds) {
    const int times = count[kind.id];
    count.erase(kind.id);
    if (times == 1) continue;
    problems.push_back(problem_of("chemistries/" + kind.id + ".json", "id",
                                  "The family tree names this chemistry " + std::to_string(times) + " times.",
                                  "Name it once in tree/."));
  }
  for (const auto& [id, times] : count) {
    problems.push_back(
        problem_of("tree/", id, "The family tree names a chemistry that has no record.", "Mend the id."));
  }
}

/// Relatives stand together.
void sort_as_in_tree(ChartCatalogue& catalogue) {
  std::vector<std::string> ids;
  list_chemistries(catalogue.tree.branches, ids);
  const auto place = [&](const chart::Kind& kind) { return std::find(ids.begin(), ids.end(), kind.id); };
  std::sort(catalogue.kinds.begin(), catalogue.kinds.end(),
            [&](const chart::Kind& a, const chart::Kind& b) { return place(a) < place(b); });
}

template <class Read, class Take>
void take(const EmbeddedFile& file, std::string_view folder, Read read, Take keep, base::Problems& problems) {
  if (!file.name.starts_with(folder) || !file.name.ends_with(".json")) return;
  auto result = read(file.bytes, std::string(file.name));
  if (result) {
    keep(std::move(result).value());
  } else {
    problems.insert(problems.end(), result.problems().begin(), result.problems().end());
  }
}

}  // namespace

base::Result<chart::Weighting> read_use(std::string_view text, const std::string& name) {
  base::Problems problems;
  const auto value = parse_json(text, name, problems);
  if (!value) return problems;
  JsonReader record(*value, name, problems);
  chart::Weighting use;
  record.whole("format", kCatalogueFormat, kCatalogueFormat);
  use.id = record.text("id");
  use.name = record.text("name");
  JsonReader weights = record.object("weights");
  use.why = weights.text("assumption");
  for (const chart::Matter matter : chart::kMatters) {
    const std::string key = std::string(chart::name_of(matter)) + "_weight";
    if (!weights.has(key.c_str())) continue;
    use.weights.push_back({matter, weights.number(key.c_str(), 0.0, chart::kGreatestWeight)});
  }
  const bool counts = std::any_of(use.weights.begin(), use.weights.end(),
                                  [](const chart::Weight& w) { return w.weight > 0.0; });
  if (!counts) record.report("weights", "Nothing counts in this use.", "", "", "Give a weight above 0.");
  if (base::has_error(problems)) return problems;
  return use;
}

base::Result<chart::FamilyTree> read_family_tree(std::string_view text, const std::string& name) {
  base::Problems problems;
  const auto value = parse_json(text, name, problems);
  if (!value) return problems;
  JsonReader record(*value, name, problems);
  chart::FamilyTree tree;
  record.whole("format", kCatalogueFormat, kCatalogueFormat);
  tree.name = record.text("name");
  const auto steps = value->find("steps");
  if (steps != value->end() && steps->is_array()) {
    for (const auto& step : *steps) {
      if (step.is_string()) tree.steps.push_back(step.get<std::string>());
    }
  }
  if (tree.steps.empty())
    record.report("steps", "The tree names no steps.", "", "", "Write a list of texts.");
  if (value->is_object()) tree.branches = read_branches(*value, tree.steps.size(), name, problems);
  if (base::has_error(problems)) return problems;
  return tree;
}

base::Result<ChartCatalogue> read_chart_files(std::span<const EmbeddedFile> files) {
  ChartCatalogue catalogue;
  base::Problems problems;
  for (const EmbeddedFile& file : files) {
    take(
        file, "chemistries/", read_kind,
        [&](chart::Kind kind) { catalogue.kinds.push_back(std::move(kind)); }, problems);
    take(
        file, "uses/", read_use, [&](chart::Weighting use) { catalogue.uses.push_back(std::move(use)); },
        problems);
    take(
        file, "tree/", read_family_tree, [&](chart::FamilyTree tree) { catalogue.tree = std::move(tree); },
        problems);
  }
  const auto by_id = [](const auto& a, const auto& b) { return a.id < b.id; };
  std::sort(catalogue.kinds.begin(), catalogue.kinds.end(), by_id);
  std::sort(catalogue.uses.begin(), catalogue.uses.end(), by_id);
  if (problems.empty()) check_tree(catalogue, problems);
  if (base::has_error(problems)) return problems;
  sort_as_in_tree(catalogue);
  return catalogue;
}

base::Result<ChartCatalogue> read_chart_catalogue() { return read_chart_files(embedded_catalogue()); }

}  // namespace voltwright::files
