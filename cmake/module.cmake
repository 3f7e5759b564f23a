# vw_module(NAME engine/sky DEPENDS engine/base engine/units LIBRARIES fmt::fmt SOURCES a.cpp HEADERS a.h)
# makes the library target vw_engine_sky. The source and header lists are explicit on purpose.
# Every header is also compiled alone, so that none leans on what its includer happened to include; not again
# under the sanitizers, where that says nothing new.
function(vw_module)
  cmake_parse_arguments(M "" "NAME" "DEPENDS;LIBRARIES;SOURCES;HEADERS" ${ARGN})
  string(REPLACE "/" "_" target vw_${M_NAME})
  set(stubs "")
  if(VW_SANITIZE)
    set(M_HEADERS "")
  endif()
  foreach(header IN LISTS M_HEADERS)
    string(REPLACE "/" "_" flat ${header})
    set(stub ${CMAKE_CURRENT_BINARY_DIR}/alone/${flat}.cpp)
    file(CONFIGURE OUTPUT ${stub} CONTENT "#include \"${M_NAME}/${header}\"\n" @ONLY)
    list(APPEND stubs ${stub})
  endforeach()
  add_library(${target} STATIC ${M_SOURCES} ${stubs})
  target_include_directories(${target} PUBLIC ${PROJECT_SOURCE_DIR})
  target_link_libraries(${target} PRIVATE vw_flags)
  foreach(dependency IN LISTS M_DEPENDS)
    string(REPLACE "/" "_" dependency_target vw_${dependency})
    target_link_libraries(${target} PUBLIC ${dependency_target})
  endforeach()
  target_link_libraries(${target} PUBLIC ${M_LIBRARIES})
endfunction()

# What nearly every test includes is compiled once for all of them.
function(vw_test_headers)
  add_library(vw_test_headers OBJECT ${PROJECT_SOURCE_DIR}/tests/headers.cpp)
  target_link_libraries(vw_test_headers PRIVATE vw_flags GTest::gtest)
  target_compile_options(vw_test_headers PRIVATE ${vw_test_options})
  target_precompile_headers(vw_test_headers PRIVATE <gtest/gtest.h> <algorithm> <array> <cmath> <filesystem>
    <fstream> <map> <optional> <span> <sstream> <string> <string_view> <variant> <vector>)
endfunction()

# Tests are compiled with little optimisation: their time goes into the compiler, not into the checks. With it GCC 12
# reports writes beyond the end of a string that is a sum of strings, which are none.
set(vw_test_options -O1 -Wno-array-bounds -Wno-stringop-overflow)

# vw_test(NAME unit_sky LABEL unit DEPENDS engine/sky SOURCES sun_test.cpp)
# makes one test program; every case in it becomes one CTest entry that carries the label.
function(vw_test)
  cmake_parse_arguments(T "" "NAME;LABEL" "DEPENDS;LIBRARIES;SOURCES" ${ARGN})
  add_executable(${T_NAME} ${T_SOURCES})
  target_link_libraries(${T_NAME} PRIVATE vw_flags GTest::gtest GTest::gtest_main ${T_LIBRARIES})
  target_include_directories(${T_NAME} PRIVATE ${PROJECT_SOURCE_DIR})
  target_compile_options(${T_NAME} PRIVATE ${vw_test_options})
  target_precompile_headers(${T_NAME} REUSE_FROM vw_test_headers)
  target_compile_definitions(${T_NAME} PRIVATE VW_SOURCE_DIR="${PROJECT_SOURCE_DIR}")
  foreach(dependency IN LISTS T_DEPENDS)
    string(REPLACE "/" "_" dependency_target vw_${dependency})
    target_link_libraries(${T_NAME} PRIVATE ${dependency_target})
  endforeach()
  gtest_discover_tests(${T_NAME} DISCOVERY_TIMEOUT 60 PROPERTIES LABELS ${T_LABEL}
    ENVIRONMENT LSAN_OPTIONS=print_suppressions=0:suppressions=${PROJECT_SOURCE_DIR}/tests/leaks.suppressions)
endfunction()
