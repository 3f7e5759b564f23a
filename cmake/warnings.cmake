# One place for compiler flags. Numbers must not depend on the processor, so contraction to fused
# multiply-add is off, and NaN checks must keep their meaning, so fast-math is never used.
add_library(vw_flags INTERFACE)
target_compile_options(vw_flags INTERFACE
  -Wall -Wextra -Wpedantic -Werror -Wshadow -Wconversion -Wsign-conversion -Wold-style-cast
  -Wnon-virtual-dtor -Woverloaded-virtual -Wnull-dereference -Wduplicated-cond
  # GCC 12 reports a false overlap for "text" + std::string (GCC bug 105329), and false uses of uninitialised
  # strings where a temporary aggregate is returned through std::variant.
  -Wno-restrict -Wno-maybe-uninitialized
  -ffp-contract=off -fno-math-errno -fno-trapping-math)
if(VW_SANITIZE)
  # GCC's flow analysis reports false null dereferences inside instrumented library code.
  target_compile_options(vw_flags INTERFACE -Wno-null-dereference -Wno-maybe-uninitialized
    -fsanitize=address,undefined -fno-sanitize-recover=all -fno-omit-frame-pointer -O1 -g1)
  target_link_options(vw_flags INTERFACE -fsanitize=address,undefined)
endif()

find_program(VW_CCACHE ccache)
if(VW_CCACHE)
  # Without the sloppiness ccache does not keep what was compiled with precompiled headers.
  set(CMAKE_CXX_COMPILER_LAUNCHER ${CMAKE_COMMAND} -E env CCACHE_SLOPPINESS=pch_defines,time_macros ${VW_CCACHE})
endif()
find_program(VW_MOLD mold)
if(VW_MOLD)
  add_link_options(-fuse-ld=mold)
endif()
