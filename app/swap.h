#pragma once
// What equals a battery that someone has, and what else must change when it takes its place.
#include <string>
#include <vector>

#include "app/runtime.h"
#include "engine/advise/change.h"

namespace voltwright::app {

struct SwapRequest {
  BatteryRequest battery;
  LoadRequest load;       // `depth` is that of the incumbent; an empty load is the capacity in 20 h
  std::string new_depth;  // of the equivalents, as LoadRequest::depth
  std::string by;         // "energy" (default), "mass", "room", "price", "life", "current"
  std::string tray;       // room there is: "330 x 175 x 220 mm" or a volume
  int most_in_parallel = 4;
  bool all = false;  // every equivalent, not only the first of each chemistry
};

/// One equivalent with what else must change.
struct SwapRow {
  advise::Compared compared;
  std::string name;
  std::vector<advise::Change> changes;
};

struct SwapResponse {
  files::Catalogue catalogue;  // the rows point into it
  BatteryOnHand on_hand;
  advise::SwapQuestion question;
  advise::Compared incumbent;
  double target = 0.0;
  std::vector<SwapRow> rows;
  std::vector<advise::LeftOut> left_out;
  std::vector<std::string> cautions;
};

/// Every problem of the request at once.
base::Result<std::shared_ptr<const SwapResponse>> swap_battery(const SwapRequest& request);

/// Format: docs/formats/answer.md.
std::string to_json(const SwapResponse& response);
/// The table, incumbent first; columns in docs/formats/answer.md.
std::string to_csv(const SwapResponse& response);
/// Table, picture, working and changes as one self-contained HTML page.
std::string swap_html(const SwapResponse& response);
/// The picture for a slide, 16 to 9.
std::string swap_svg(const SwapResponse& response);

}  // namespace voltwright::app
