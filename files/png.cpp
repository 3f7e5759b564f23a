#include "files/png.h"

#include <dlfcn.h>

#include <algorithm>

namespace voltwright::files {

namespace {

// The few functions that are called, as the C headers of cairo 1.16 and librsvg 2.46 declare them.
struct CairoSurface;
struct Cairo;
struct RsvgHandle;
struct RsvgRectangle {
  double x, y, width, height;
};
using CairoWrite = int (*)(void* closure, const unsigned char* data, unsigned int length);

constexpr int kCairoArgb32 = 0;
constexpr int kCairoSuccess = 0;
constexpr int kLargest = 8192;

/// A shared library that stays loaded to the end of the program: it keeps state of its own.
class Library {
 public:
  explicit Library(const char* name) : handle_(dlopen(name, RTLD_NOW | RTLD_LOCAL)) {}

  template <class Function>
  bool find(const char* name, Function& function) const {
    if (handle_ == nullptr) return false;
    // POSIX gives functions as void*.
    function = reinterpret_cast<Function>(dlsym(handle_, name));  // NOLINT(*-reinterpret-cast)
    return function != nullptr;
  }

 private:
  void* handle_;
};

struct Painter {
  Library cairo{"libcairo.so.2"};
  Library rsvg{"librsvg-2.so.2"};
  Library gobject{"libgobject-2.0.so.0"};
  CairoSurface* (*surface_create)(int, int, int) = nullptr;
  void (*surface_destroy)(CairoSurface*) = nullptr;
  int (*surface_status)(CairoSurface*) = nullptr;
  int (*surface_write)(CairoSurface*, CairoWrite, void*) = nullptr;
  Cairo* (*create)(CairoSurface*) = nullptr;
  void (*destroy)(Cairo*) = nullptr;
  RsvgHandle* (*handle_from_data)(const unsigned char*, std::size_t, void**) = nullptr;
  int (*render)(RsvgHandle*, Cairo*, const RsvgRectangle*, void**) = nullptr;
  void (*unref)(void*) = nullptr;
  bool complete = false;

  Painter() {
    complete = cairo.find("cairo_image_surface_create", surface_create) &&
               cairo.find("cairo_surface_destroy", surface_destroy) &&
               cairo.find("cairo_surface_status", surface_status) &&
               cairo.find("cairo_surface_write_to_png_stream", surface_write) &&
               cairo.find("cairo_create", create) && cairo.find("cairo_destroy", destroy) &&
               rsvg.find("rsvg_handle_new_from_data", handle_from_data) &&
               rsvg.find("rsvg_handle_render_document", render) && gobject.find("g_object_unref", unref);
  }
};

int append(void* closure, const unsigned char* data, unsigned int length) {
  auto& bytes = *static_cast<std::string*>(closure);
  for (const unsigned char* at = data; at != data + length; ++at) bytes += static_cast<char>(*at);
  return kCairoSuccess;
}

base::Problem problem_of(const char* what, const char* remedy) {
  base::Problem problem;
  problem.field = "--png";
  problem.what = what;
  problem.remedy = remedy;
  return problem;
}

/// Draws the picture; false if anything failed on the way.
bool paint(const Painter& painter, RsvgHandle* handle, int width_px, int height_px, std::string& bytes) {
  CairoSurface* surface = painter.surface_create(kCairoArgb32, width_px, height_px);
  Cairo* cairo = painter.create(surface);
  const RsvgRectangle whole{0.0, 0.0, static_cast<double>(width_px), static_cast<double>(height_px)};
  const bool drawn =
      painter.surface_status(surface) == kCairoSuccess && painter.render(handle, cairo, &whole, nullptr) != 0;
  painter.destroy(cairo);
  const bool written = drawn && painter.surface_write(surface, append, &bytes) == kCairoSuccess;
  painter.surface_destroy(surface);
  return written;
}

}  // namespace

base::Result<std::string> png_of_svg(std::string_view svg, int width_px, int height_px) {
  static const Painter kPainter;
  if (!kPainter.complete) {
    return problem_of("The library that draws PNG is not on this system.",
                      "Install librsvg (Debian: librsvg2-2), or take the SVG, which needs nothing.");
  }
  if (std::min(width_px, height_px) < 1 || std::max(width_px, height_px) > kLargest) {
    return problem_of("This size cannot be drawn.", "Choose 1 to 8192 dots each way.");
  }
  const std::string text(svg);
  RsvgHandle* handle = kPainter.handle_from_data(reinterpret_cast<const unsigned char*>(text.data()),
                                                 text.size(), nullptr);  // NOLINT(*-reinterpret-cast)
  if (handle == nullptr) return problem_of("The picture is no SVG.", "Check the text of the picture.");
  std::string bytes;
  const bool painted = paint(kPainter, handle, width_px, height_px, bytes);
  kPainter.unref(handle);
  if (!painted) return problem_of("The picture could not be drawn as PNG.", "Take the SVG instead.");
  return bytes;
}

}  // namespace voltwright::files
