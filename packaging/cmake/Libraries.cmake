# sumpwright_library(core_plan SOURCES a.cpp ... [DEPENDS targets ...] [PRIVATE_DEPENDS targets ...])
# One static library per folder of core/ and app/. Headers are included from the source root's
# core/ and app/ folders: #include "plan/Plan.h".
function(sumpwright_library name)
  cmake_parse_arguments(ARG "" "" "SOURCES;DEPENDS;PRIVATE_DEPENDS" ${ARGN})
  sumpwright_existing(sources ${ARG_SOURCES})
  add_library(${name} STATIC ${sources})
  target_include_directories(${name} PUBLIC "${PROJECT_SOURCE_DIR}/core" "${PROJECT_SOURCE_DIR}/app")
  target_link_libraries(${name} PUBLIC ${ARG_DEPENDS} PRIVATE sumpwright_warnings ${ARG_PRIVATE_DEPENDS})
endfunction()

# Those of the files that exist; an empty source where none does, so that a folder that has only
# headers yet still configures.
function(sumpwright_existing result)
  set(found)
  foreach(file ${ARGN})
    if(IS_ABSOLUTE "${file}" OR EXISTS "${CMAKE_CURRENT_SOURCE_DIR}/${file}")
      list(APPEND found "${file}")
    else()
      message(STATUS "not there yet: ${CMAKE_CURRENT_SOURCE_DIR}/${file}")
    endif()
  endforeach()
  if(NOT found)
    set(found "${CMAKE_BINARY_DIR}/empty.cpp")
    if(NOT EXISTS "${found}")
      file(WRITE "${found}" "// A folder without sources yet.\n")
    endif()
  endif()
  set(${result} ${found} PARENT_SCOPE)
endfunction()

# add_subdirectory() of those folders that have a CMakeLists.txt.
macro(sumpwright_folders)
  foreach(folder ${ARGN})
    if(EXISTS "${CMAKE_CURRENT_SOURCE_DIR}/${folder}/CMakeLists.txt")
      add_subdirectory(${folder})
    endif()
  endforeach()
endmacro()
