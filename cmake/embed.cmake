# vw_embed(TARGET vw_data NAMESPACE voltwright::files ROOT dir FILES a b)
# packs files into the program: embedded_files() returns {name, bytes} of each, name relative to ROOT.
function(vw_embed)
  cmake_parse_arguments(E "" "TARGET;ROOT;FUNCTION" "FILES;EXTRA" ${ARGN})
  set(assembly "    .section .rodata\n")
  set(externs "")
  set(rows "")
  set(index 0)
  set(paths "")
  foreach(file IN LISTS E_FILES)
    file(RELATIVE_PATH name ${E_ROOT} ${file})
    list(APPEND pairs "${name}|${file}")
  endforeach()
  foreach(pair IN LISTS E_EXTRA)
    list(APPEND pairs "${pair}")
  endforeach()
  foreach(pair IN LISTS pairs)
    string(REPLACE "|" ";" parts "${pair}")
    list(GET parts 0 name)
    list(GET parts 1 path)
    list(APPEND paths ${path})
    set(symbol ${E_TARGET}_${index})
    string(APPEND assembly "    .global ${symbol}\n    .global ${symbol}_end\n    .balign 8\n${symbol}:\n    .incbin \"${path}\"\n${symbol}_end:\n    .byte 0\n")
    string(APPEND externs "extern const char ${symbol}[];\nextern const char ${symbol}_end[];\n")
    string(APPEND rows "      {\"${name}\", std::string_view(${symbol}, static_cast<std::size_t>(${symbol}_end - ${symbol}))},\n")
    math(EXPR index "${index}+1")
  endforeach()
  string(APPEND assembly "    .section .note.GNU-stack,\"\",@progbits\n")
  set(dir ${CMAKE_CURRENT_BINARY_DIR}/${E_TARGET})
  file(CONFIGURE OUTPUT ${dir}/data.S CONTENT "${assembly}" @ONLY)
  file(CONFIGURE OUTPUT ${dir}/table.cpp CONTENT
"#include \"files/embedded.h\"
#include <cstddef>
extern \"C\" {
${externs}}
namespace voltwright::files {
std::span<const EmbeddedFile> ${E_FUNCTION}() {
  static const EmbeddedFile kFiles[] = {
${rows}  };
  return kFiles;
}
}
" @ONLY)
  set_source_files_properties(${dir}/data.S PROPERTIES OBJECT_DEPENDS "${paths}")
  add_library(${E_TARGET} STATIC ${dir}/data.S ${dir}/table.cpp)
  target_include_directories(${E_TARGET} PRIVATE ${PROJECT_SOURCE_DIR})
  target_link_libraries(${E_TARGET} PRIVATE vw_flags)
endfunction()
