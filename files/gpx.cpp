#include "files/gpx.h"

#include <fmt/format.h>

#include <algorithm>
#include <pugixml.hpp>
#include <utility>

#include "files/gpx_words.h"
#include "files/text_problem.h"

namespace voltwright::files {
namespace {

constexpr std::size_t kLargest = std::size_t{64} << 20U;
constexpr std::size_t kMostProblems = 25;
constexpr std::size_t kMostShown = 40;
constexpr double kLowest_m = -450.0;
constexpr double kHighest_m = 6000.0;

using Segment = std::vector<TrackPoint>;

std::string_view local_name(const pugi::xml_node& node) {
  const std::string_view name = node.name();
  const std::size_t colon = name.find(':');
  return colon == std::string_view::npos ? name : name.substr(colon + 1);
}

std::string shortened(std::string_view text) {
  return std::string(text.substr(0, kMostShown)) + (text.size() > kMostShown ? "…" : "");
}

class Reading {
 public:
  Reading(std::string_view text, const std::string& name) : text_(text), name_(name) {}

  base::Result<Track> read() {
    if (is_fit_to_parse()) {
      pugi::xml_document document;
      if (parse(document)) collect(document);
    }
    if (problems_.empty()) put_in_order();
    if (further_ > 0) {
      note(0, {.what = fmt::format("{} further problems are not shown.", further_),
               .field = "",
               .given = "",
               .limit = "",
               .remedy = "Mend those above first."});
    }
    if (!problems_.empty()) return std::move(problems_);
    return std::move(track_);
  }

 private:
  void note(int line, const ProblemWords& words) {
    problems_.push_back(text_problem(name_, line, line > 0 ? 1 : 0, words));
  }

  /// As note(), but only up to a number that a person can read.
  void problem(int line, const ProblemWords& words) {
    if (problems_.size() < kMostProblems) {
      note(line, words);
    } else {
      ++further_;
    }
  }

  bool is_fit_to_parse() {
    if (text_.size() > kLargest) {
      problem(0, {.what = "The track file is too large.",
                  .field = "",
                  .given = fmt::format("{} bytes", text_.size()),
                  .limit = "64 MiB",
                  .remedy = "Thin it to one point a minute, or split it by date."});
      return false;
    }
    if (text_.starts_with("\xFE\xFF") || text_.starts_with("\xFF\xFE") ||
        text_.find('\0') != std::string_view::npos) {
      problem(1, {.what = "The file is not text in UTF-8.",
                  .field = "",
                  .given = "",
                  .limit = "UTF-8",
                  .remedy = "Export the track again, or save the file as UTF-8."});
      return false;
    }
    for (std::size_t i = 0; i < text_.size(); ++i) {
      if (text_[i] == '\n') line_ends_.push_back(i);
    }
    return true;
  }

  int line_of(std::ptrdiff_t offset) const {
    if (offset < 0) return 0;
    const auto at = std::lower_bound(line_ends_.begin(), line_ends_.end(), static_cast<std::size_t>(offset));
    return static_cast<int>(at - line_ends_.begin()) + 1;
  }
  int line_of(const pugi::xml_node& node) const { return line_of(node.offset_debug()); }

  bool parse(pugi::xml_document& document) {
    constexpr unsigned kFlags = pugi::parse_escapes | pugi::parse_cdata | pugi::parse_doctype;
    const pugi::xml_parse_result parsed =
        document.load_buffer(text_.data(), text_.size(), kFlags, pugi::encoding_utf8);
    const bool has_doctype = std::any_of(document.begin(), document.end(), [](const pugi::xml_node& node) {
      return node.type() == pugi::node_doctype;
    });
    if (has_doctype || parsed.status == pugi::status_bad_doctype) {
      problem(0, {.what = "The file holds a DOCTYPE, which a GPX file never needs.",
                  .field = "",
                  .given = "",
                  .limit = "no DOCTYPE: it could name entities that swell or reach other files",
                  .remedy = "Remove it, or export the track again."});
      return false;
    }
    if (!parsed) {
      problem(line_of(parsed.offset), {.what = "This is not well-formed XML.",
                                       .field = "",
                                       .given = parsed.description(),
                                       .limit = "",
                                       .remedy = "Is the file complete? Export it again."});
      return false;
    }
    return true;
  }

  void collect(const pugi::xml_document& document) {
    const pugi::xml_node root = document.document_element();
    if (local_name(root) != "gpx") {
      problem(line_of(root), {.what = "This is not a GPX file.",
                              .field = "",
                              .given = fmt::format("<{}>", shortened(root.name())),
                              .limit = "<gpx>",
                              .remedy = "Export the track as GPX."});
      return;
    }
    bool has_route = false;
    bool has_point = false;
    for (const pugi::xml_node& track : root.children()) {
      has_route = has_route || local_name(track) == "rte";
      if (local_name(track) != "trk") continue;
      for (const pugi::xml_node& part : track.children()) {
        if (local_name(part) != "trkseg") continue;
        Segment segment;
        for (const pugi::xml_node& point : part.children()) {
          if (local_name(point) != "trkpt") continue;
          has_point = true;
          add_point(point, segment);
        }
        if (!segment.empty()) segments_.push_back(std::move(segment));
      }
    }
    if (!has_point) {
      problem(line_of(root), {.what = has_route ? "The file holds a planned route, but no recorded track."
                                                : "The file holds no track.",
                              .field = "",
                              .given = "",
                              .limit = "points <trkpt> in <trk> and <trkseg>",
                              .remedy = "Export the recorded track."});
      return;
    }
    warn_of_left_out();
  }

  std::optional<double> degrees(const pugi::xml_node& point, const char* key, double most, int line) {
    const pugi::xml_attribute given = point.attribute(key);
    const std::optional<double> value = decimal_of_text(given.value());
    if (given && value && *value >= -most && *value <= most) return *value + 0.0;
    problem(line, {.what = !given  ? "The point lacks a coordinate."
                           : value ? "The coordinate is out of range."
                                   : "The coordinate is not a number.",
                   .field = key,
                   .given = shortened(given.value()),
                   .limit = fmt::format("{:.0f} to {:.0f} degrees", -most, most),
                   .remedy = "Mend or remove the point."});
    return std::nullopt;
  }

  /// False, with a problem, if the time cannot be read.
  bool read_time(const pugi::xml_node& time, TrackPoint& point) {
    const std::optional<std::int64_t> utc_s = utc_of_text(time.child_value());
    if (utc_s) {
      point.utc_s = *utc_s;
      return true;
    }
    problem(line_of(time), {.what = "The time of a point cannot be read.",
                            .field = "time",
                            .given = shortened(time.child_value()),
                            .limit = "2026-05-01T08:30:00Z, years 1970 to 2100",
                            .remedy = "Mend or remove the point."});
    return false;
  }

  void read_height(const pugi::xml_node& node, TrackPoint& point) {
    const std::optional<double> height = decimal_of_text(node.child_value());
    if (height && *height >= kLowest_m && *height <= kHighest_m) {
      point.elevation_m = height;
    } else if (bad_heights_++ == 0) {
      first_bad_height_ = line_of(node);
    }
  }

  /// Time and height of a point; false if its time cannot be read.
  bool read_children(const pugi::xml_node& node, TrackPoint& point, bool& has_time) {
    for (const pugi::xml_node& child : node.children()) {
      const std::string_view name = local_name(child);
      if (name == "time" && !has_time) {
        has_time = true;
        if (!read_time(child, point)) return false;
      } else if (name == "ele") {
        read_height(child, point);
      }
    }
    return true;
  }

  void add_point(const pugi::xml_node& node, Segment& segment) {
    TrackPoint point;
    point.line = line_of(node);
    const std::optional<double> latitude = degrees(node, "lat", 90.0, point.line);
    const std::optional<double> longitude = degrees(node, "lon", 180.0, point.line);
    bool has_time = false;
    if (!read_children(node, point, has_time)) return;
    if (!has_time) {
      if (without_time_++ == 0) first_without_time_ = point.line;
      return;
    }
    if (!latitude || !longitude) return;
    point.latitude_deg = *latitude;
    point.longitude_deg = *longitude;
    add_in_order(point, segment);
  }

  void add_in_order(const TrackPoint& point, Segment& segment) {
    if (segment.empty() || point.utc_s > segment.back().utc_s) {
      segment.push_back(point);
    } else if (point.utc_s < segment.back().utc_s) {
      problem(point.line, {.what = "Time runs backwards within the segment.",
                           .field = "time",
                           .given = fmt::format("{} s before the point of line {}",
                                                segment.back().utc_s - point.utc_s, segment.back().line),
                           .limit = "not earlier than the point before",
                           .remedy = "Put the points in order of time, or begin a new <trkseg>."});
    }
  }

  void warn(int line, std::string what, std::string remedy) {
    track_.warnings.push_back(text_warning(
        name_, line, line > 0 ? 1 : 0,
        {.what = std::move(what), .field = "", .given = "", .limit = "", .remedy = std::move(remedy)}));
  }

  void warn_of_left_out() {
    if (without_time_ > 0) {
      warn(first_without_time_, fmt::format("{} points without a time were left out.", without_time_),
           "Record or export the track with times.");
    }
    if (bad_heights_ > 0) {
      warn(first_bad_height_,
           fmt::format("{} heights that are no numbers or outside {:.0f} to {:.0f} m were left out.",
                       bad_heights_, kLowest_m, kHighest_m),
           "The height is taken from the other points.");
    }
  }

  void put_in_order() {
    std::stable_sort(segments_.begin(), segments_.end(),
                     [](const Segment& a, const Segment& b) { return a.front().utc_s < b.front().utc_s; });
    for (const Segment& segment : segments_) {
      std::vector<TrackPoint>& points = track_.points;
      if (!points.empty() && segment.front().utc_s < points.back().utc_s) {
        problem(segment.front().line,
                {.what = "Two segments of the track overlap in time.",
                 .field = "time",
                 .given = fmt::format("the other one ends in line {}, {} s after this one begins",
                                      points.back().line, points.back().utc_s - segment.front().utc_s),
                 .limit = "one place at a time",
                 .remedy = "Keep the track of one device."});
        continue;
      }
      const bool is_repeated = !points.empty() && segment.front().utc_s == points.back().utc_s;
      points.insert(points.end(), segment.begin() + (is_repeated ? 1 : 0), segment.end());
    }
    if (!problems_.empty() || track_.points.size() >= 2) return;
    const bool lacks_time = without_time_ > 0;
    problem(lacks_time ? first_without_time_ : track_.points.front().line,
            {.what = lacks_time ? "The points of the track carry no times."
                                : "The track holds a single point in time.",
             .field = "time",
             .given = fmt::format("{} points with a time", track_.points.size()),
             .limit = "at least two points with different times",
             .remedy = lacks_time ? "Export the recorded track with times, not a drawn one."
                                  : "Export the whole track, or write the leg by hand."});
  }

  std::string_view text_;
  const std::string& name_;
  std::vector<std::size_t> line_ends_;
  std::vector<Segment> segments_;
  std::size_t without_time_ = 0;
  std::size_t bad_heights_ = 0;
  std::size_t further_ = 0;
  int first_without_time_ = 0;
  int first_bad_height_ = 0;
  Track track_;
  base::Problems problems_;
};

}  // namespace

base::Result<Track> read_gpx(std::string_view text, const std::string& name) {
  return Reading(text, name).read();
}

}  // namespace voltwright::files
