#include "files/minutes_csv.h"

#include <fmt/format.h>

#include <iterator>

#include "files/utc_text.h"

namespace voltwright::files {

std::string minutes_csv(const season::Trace& trace, const std::vector<float>& outside_C) {
  std::string text =
      "utc,state_of_charge,bank_C,outside_C,bus_V,bank_A,loads_W,solar_W,engine_W,mains_W,unmet_W\n";
  text.reserve(text.size() + trace.charge.size() * 90);
  for (std::size_t i = 0; i < trace.charge.size(); ++i) {
    fmt::format_to(std::back_inserter(text),
                   "{},{:.5f},{:.2f},{:.2f},{:.3f},{:.2f},{:.1f},{:.1f},{:.1f},{:.1f},{:.1f}\n",
                   utc_text(trace.start_utc_s + 60 * static_cast<std::int64_t>(i)), trace.charge[i],
                   trace.bank_C[i], i < outside_C.size() ? outside_C[i] : 0.0F, trace.bus_V[i],
                   trace.bank_A[i], trace.load_W[i], trace.solar_W[i], trace.engine_W[i], trace.mains_W[i],
                   trace.unmet_W[i]);
  }
  return text;
}

}  // namespace voltwright::files
