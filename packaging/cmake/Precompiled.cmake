# Headers of others that nearly every file reads, read once: more than half of a first build is
# spent in them. sumpwright_precompile(target owner) lets a target take an owner's. A source still
# includes what it uses: clang-tidy, which gets no precompiled headers, would not find it otherwise.
option(SUMPWRIGHT_PCH "Precompile headers of the standard library, Qt and GoogleTest" ON)

set(SUMPWRIGHT_STD_HEADERS <algorithm> <array> <charconv> <cmath> <cstdint> <functional> <limits>
  <map> <memory> <numbers> <optional> <set> <span> <string> <string_view> <utility> <variant> <vector>)

# sumpwright_precompiled(owner HEADERS <a> ... [LINKS targets ...])
function(sumpwright_precompiled owner)
  cmake_parse_arguments(ARG "" "" "HEADERS;LINKS" ${ARGN})
  if(NOT SUMPWRIGHT_PCH)
    return()
  endif()
  set(source "${PROJECT_BINARY_DIR}/${owner}.cpp")
  file(CONFIGURE OUTPUT "${source}" CONTENT "// owns precompiled headers\n")
  add_library(${owner} STATIC "${source}")
  target_link_libraries(${owner} PRIVATE sumpwright_warnings ${ARG_LINKS})
  target_precompile_headers(${owner} PRIVATE ${ARG_HEADERS})
endfunction()

function(sumpwright_precompile target owner)
  if(TARGET ${owner})
    target_precompile_headers(${target} REUSE_FROM ${owner})
  endif()
endfunction()
