# sumpwright_library(core_plan SOURCES a.cpp ... [DEPENDS targets ...] [PRIVATE_DEPENDS targets ...])
# One static library per folder of core/ and app/. Headers are included from the source root's
# core/ and app/ folders: #include "plan/Plan.h". SUMPWRIGHT_PCH_OWNER names whose precompiled
# headers it takes.
include(Precompiled)
set(SUMPWRIGHT_PCH_OWNER pch_std)
sumpwright_precompiled(pch_std HEADERS ${SUMPWRIGHT_STD_HEADERS})

function(sumpwright_library name)
  cmake_parse_arguments(ARG "" "" "SOURCES;DEPENDS;PRIVATE_DEPENDS" ${ARGN})
  add_library(${name} STATIC ${ARG_SOURCES})
  target_include_directories(${name} PUBLIC "${PROJECT_SOURCE_DIR}/core" "${PROJECT_SOURCE_DIR}/app")
  target_link_libraries(${name} PUBLIC ${ARG_DEPENDS} PRIVATE sumpwright_warnings ${ARG_PRIVATE_DEPENDS})
  sumpwright_precompile(${name} ${SUMPWRIGHT_PCH_OWNER})
endfunction()
