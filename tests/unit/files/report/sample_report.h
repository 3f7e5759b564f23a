#pragma once
// An invented plan and answer with everything the report shows: many banks, shortfalls, frost, text to
// escape.
#include <memory>

#include "files/report/report.h"

namespace voltwright::files {

struct SampleReport {
  std::vector<cell::Chemistry> chemistries;
  std::vector<bank::Battery> batteries;
  advise::Plan plan;
  advise::Recommendation answer;
  advise::LifeCost costs;
  ReportInput input;
};

/// `days` of journey; the largest iron-phosphate bank holds unless `nothing_holds`.
std::unique_ptr<SampleReport> sample_report(int days, bool nothing_holds = false);

}  // namespace voltwright::files
