#include "app/swap.h"
#include "app/version.h"
#include "files/references.h"
#include "files/report/equivalents_page.h"

namespace voltwright::app {

namespace {

/// The records whose figures the page shows; a described battery has none of its own.
std::vector<std::string> records_of(const SwapResponse& r) {
  std::vector<std::string> records;
  const auto add = [&](const advise::Compared& c) {
    if (!c.bank.battery->id.empty()) records.push_back("batteries/" + c.bank.battery->id + ".json");
    records.push_back("chemistries/" + c.bank.chemistry->id + ".json");
  };
  add(r.incumbent);
  for (const SwapRow& row : r.rows) add(row.compared);
  return records;
}

files::report::EquivalentsInput input_of(const SwapResponse& r) {
  files::report::EquivalentsInput input;
  input.question = &r.question;
  input.target = r.target;
  input.incumbent = {r.on_hand.name, &r.incumbent, {}};
  for (const SwapRow& row : r.rows) input.rows.push_back({row.name, &row.compared, row.changes});
  input.left_out = r.left_out;
  input.assumed = r.on_hand.assumed;
  input.cautions = r.cautions;
  input.catalogue_mark = r.catalogue.mark;
  input.engine_version = kVersion;
  return input;
}

}  // namespace

std::string swap_html(const SwapResponse& response) {
  files::report::EquivalentsInput input = input_of(response);
  input.works = files::works_named_by_records(records_of(response));
  return files::report::equivalents_page(input);
}

std::string swap_svg(const SwapResponse& response) {
  return files::report::equivalents_slide(input_of(response));
}

}  // namespace voltwright::app
