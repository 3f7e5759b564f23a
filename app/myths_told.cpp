#include "app/myths_told.h"

#include <algorithm>
#include <utility>

#include "app/json.h"
#include "app/json_parts.h"
#include "app/version.h"

namespace voltwright::app {

namespace {

using Json = nlohmann::ordered_json;

base::Problem no_such_number(int number, std::size_t count) {
  base::Problem problem;
  problem.field = "NUMBER";
  problem.what = "No entry has this number.";
  problem.given = std::to_string(number);
  problem.limit = "1 to " + std::to_string(count);
  problem.remedy = "Leave the number out to see the list.";
  return problem;
}

Json sources_json(const std::vector<MythSource>& sources) {
  Json json = Json::array();
  for (const MythSource& source : sources) json.push_back({{"work", source.key}, {"note", source.note}});
  return json;
}

}  // namespace

base::Result<MythsResponse> tell_myths(const MythsRequest& request) {
  const auto catalogue = files::read_catalogue();
  if (!catalogue) return catalogue.problems();
  auto all = myths(catalogue.value());
  if (!all) return all.problems();
  MythsResponse response;
  response.catalogue_mark = catalogue.value().mark;
  for (Myth& myth : all.value()) {
    if (!request.number || myth.number == *request.number) response.myths.push_back(std::move(myth));
  }
  if (response.myths.empty()) return no_such_number(request.number.value_or(0), all.value().size());
  return response;
}

std::string to_json(const MythsResponse& response) {
  Json json;
  json["stamp"] = {
      {"format", kAnswerFormat}, {"engine", kVersion}, {"catalogue_mark", response.catalogue_mark}};
  Json list = Json::array();
  for (const Myth& myth : response.myths) {
    list.push_back({{"number", myth.number},
                    {"id", myth.id},
                    {"family", myth.family},
                    {"title", myth.title},
                    {"claim", myth.claim},
                    {"verdict", name_of(myth.verdict)},
                    {"answer", myth.answer},
                    {"value", myth.value},
                    {"unit", myth.unit},
                    {"decimals", myth.decimals},
                    {"working", myth.working},
                    {"nearly_true", myth.nearly_true},
                    {"caution", myth.caution},
                    {"sources", sources_json(myth.sources)}});
  }
  json["myths"] = list;
  return json_text(json);
}

}  // namespace voltwright::app
