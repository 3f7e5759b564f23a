// vw_check_catalogue [root]: checks every file of catalogue/ and the citations of docs/, prints each problem
// as "file: field: what. remedy" and ends with 1 if there is one.
#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <sstream>
#include <vector>

#include "files/ageing_record.h"
#include "files/catalogue_read.h"
#include "files/chart_catalogue.h"
#include "files/cost_facts.h"
#include "tools/catalogue_rules.h"

namespace {

namespace fs = std::filesystem;
using namespace voltwright;  // NOLINT(google-build-using-namespace): a program of one file

std::string text_of(const fs::path& path) {
  std::ifstream in(path, std::ios::binary);
  std::ostringstream text;
  text << in.rdbuf();
  return std::move(text).str();
}

std::vector<fs::path> files_under(const fs::path& folder) {
  std::vector<fs::path> found;
  if (!fs::is_directory(folder)) return found;
  for (const auto& entry : fs::recursive_directory_iterator(folder)) {
    if (entry.is_regular_file()) found.push_back(entry.path());
  }
  std::sort(found.begin(), found.end());
  return found;
}

struct Loaded {
  std::string name;  // relative to catalogue/
  std::string text;
};

void add(base::Problems& all, const base::Problems& more) { all.insert(all.end(), more.begin(), more.end()); }

base::Problems check(const fs::path& root, std::size_t& records) {
  base::Problems problems;
  const fs::path catalogue = root / "catalogue";
  const std::string bibliography = "catalogue/references.bib";
  const std::set<std::string> known = tools::bib_keys(text_of(root / bibliography), bibliography, problems);
  std::map<std::string, std::string> cited;
  std::map<std::string, std::string> ids;
  std::vector<Loaded> loaded;
  for (const fs::path& path : files_under(catalogue)) {
    const std::string name = fs::relative(path, catalogue).generic_string();
    const std::string text = text_of(path);
    if (path.extension() == ".bib") continue;
    for (const std::string& key : tools::cited_in_catalogue(text)) cited.emplace(key, "catalogue/" + name);
    if (path.extension() != ".json" || name.starts_with("schema/")) continue;
    ++records;
    const std::string stem = path.stem().string();
    add(problems, tools::check_record(text, "catalogue/" + name, stem));
    const auto [first, fresh] = ids.emplace(stem, name);
    if (!fresh) {
      base::Problem problem;
      problem.what = "The id is taken by " + first->second + ".";
      problem.where.file = "catalogue/" + name;
      problem.field = "id";
      problem.remedy = "Rename one of the two.";
      problems.push_back(std::move(problem));
    }
    loaded.push_back({name, text});
  }
  for (const fs::path& path : files_under(root / "docs")) {
    if (path.extension() != ".md") continue;
    const std::string name = fs::relative(path, root).generic_string();
    for (const std::string& key : tools::cited_in_page(text_of(path), known)) cited.emplace(key, name);
  }
  add(problems, tools::check_citations(known, cited, bibliography));
  std::vector<files::EmbeddedFile> embedded;
  embedded.reserve(loaded.size());
  for (const Loaded& file : loaded) embedded.push_back({file.name, file.text});
  if (const auto read = files::read_catalogue_files(embedded); !read) add(problems, read.problems());
  if (const auto read = files::read_ageing_files(embedded); !read) add(problems, read.problems());
  if (const auto read = files::read_chart_files(embedded); !read) add(problems, read.problems());
  if (const auto read = files::read_cost_files(embedded); !read) add(problems, read.problems());
  return problems;
}

}  // namespace

int main(int argc, char** argv) {
  try {
    std::size_t records = 0;
    const base::Problems problems = check(argc > 1 ? argv[1] : ".", records);
    for (const auto& problem : problems) std::cout << base::to_text(problem) << '\n';
    if (!problems.empty()) {
      std::cout << problems.size() << (problems.size() == 1 ? " problem" : " problems")
                << " in the catalogue\n";
      return 1;
    }
    if (records == 0) {
      std::cout << "catalogue/: no record was found. Give the root of the tree as the first word.\n";
      return 1;
    }
    std::cout << records << " records are in order\n";
    return 0;
  } catch (const std::exception& error) {
    std::cerr << "vw_check_catalogue: " << error.what() << '\n';
    return 1;
  }
}
