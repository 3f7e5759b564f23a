#pragma once
// What is often said of house batteries and is not so, each with the number that puts it right. The handbook
// pages are written from this list (tools/write_myths) and a page on the web can show it as it stands.
#include <string>
#include <vector>

#include "engine/base/result.h"
#include "files/catalogue.h"

namespace voltwright::app {

enum class MythVerdict {
  kWrong,     // does not hold
  kHalfTrue,  // holds under conditions that are left out
  kMuddled,   // mixes up quantities
};

/// "wrong", "half true" or "muddled".
const char* name_of(MythVerdict verdict);

/// Where a figure of the entry is from.
struct MythSource {
  std::string key;   // of the bibliography, catalogue/references.bib; empty if none
  std::string note;  // what was taken from it; or "common practice, no source", "(from memory)"
};

/// One entry. Texts are plain, without markup, and hold the computed figures.
struct Myth {
  int number = 0;      // 1 to 30, the order of the handbook
  std::string id;      // file name of the page without ending
  std::string family;  // heading it stands under
  std::string title;   // what it is about
  std::string claim;   // as it is said
  MythVerdict verdict = MythVerdict::kWrong;
  std::string answer;                // one sentence with the number
  double value = 0.0;                // the number
  std::string unit;                  // of the number
  int decimals = 0;                  // with which it is shown
  std::vector<std::string> working;  // steps
  std::string nearly_true;           // when the claim comes close
  std::string caution;               // empty where nothing can be hurt
  std::vector<MythSource> sources;
};

/// All entries in their order, computed with the records of `catalogue`. A problem for each record that an
/// entry needs and the catalogue does not have.
base::Result<std::vector<Myth>> myths(const files::Catalogue& catalogue);

}  // namespace voltwright::app
