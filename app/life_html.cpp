#include "app/life.h"
#include "app/version.h"
#include "files/references.h"
#include "files/report/life_page.h"

namespace voltwright::app {

namespace {

files::report::LifeInput input_of(const LifeResponse& r) {
  files::report::LifeInput input;
  input.plan = r.hand.plan.name;
  input.bank = r.candidate.name();
  input.sentence = r.sentence;
  input.at_80 = r.at_80;
  input.at_70 = r.at_70;
  input.plan_end = r.plan;
  input.life = &r.life;
  for (std::size_t i = 0; i < r.life.laws.size(); ++i) {
    const advise::LawLife& law = r.life.laws[i];
    input.rows.push_back({&law, basis_words(law.basis), reach_words(law.reach), r.over_measured[i]});
  }
  input.assumptions = r.assumptions;
  input.cautions = r.cautions;
  input.plan_mark = r.hand.plan_mark;
  input.catalogue_mark = r.hand.catalogue.mark;
  input.engine_version = kVersion;
  return input;
}

}  // namespace

std::string life_html(const LifeResponse& r) {
  files::report::LifeInput input = input_of(r);
  std::vector<std::string> named = {r.life.spread_source};
  for (const advise::LawLife& law : r.life.laws) named.push_back(law.source);
  input.works = files::works_named_in(named);
  return files::report::life_page(input);
}

std::string life_svg(const LifeResponse& r) { return files::report::life_slide(input_of(r)); }

}  // namespace voltwright::app
