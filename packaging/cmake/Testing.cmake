# sumpwright_test(name SOURCES a.cpp ... [DEPENDS targets ...] [OWN_MAIN] [LABELS labels ...]
#                 [TIMEOUT seconds])
# One GoogleTest program; each TEST in it becomes a test of ctest, named folder.Suite.Test. Headers
# of tests/ are included from its root: #include "support/Seed.h". Runs without a display.
# SUMPWRIGHT_SOURCE_DIR, SUMPWRIGHT_SAMPLES_DIR and SUMPWRIGHT_TESTS_DIR are string macros.
# OWN_MAIN: one of the SOURCES defines main() (GUI tests, which need a QApplication).
include(GoogleTest)
find_package(GTest 1.12 REQUIRED)
sumpwright_precompiled(pch_gtest
  HEADERS ${SUMPWRIGHT_STD_HEADERS} <gmock/gmock.h> <gtest/gtest.h>
  LINKS GTest::gmock GTest::gtest_main)

function(sumpwright_test name)
  cmake_parse_arguments(ARG "OWN_MAIN" "TIMEOUT" "SOURCES;DEPENDS;LABELS" ${ARGN})
  add_executable(${name} ${ARG_SOURCES})
  target_include_directories(${name} PRIVATE "${PROJECT_SOURCE_DIR}/tests" "${PROJECT_SOURCE_DIR}/core"
                                             "${PROJECT_SOURCE_DIR}/app")
  target_compile_definitions(${name} PRIVATE
    SUMPWRIGHT_SOURCE_DIR="${PROJECT_SOURCE_DIR}"
    SUMPWRIGHT_SAMPLES_DIR="${PROJECT_SOURCE_DIR}/samples"
    SUMPWRIGHT_TESTS_DIR="${PROJECT_SOURCE_DIR}/tests")
  target_link_libraries(${name} PRIVATE sumpwright_warnings ${ARG_DEPENDS} GTest::gmock
    $<IF:$<BOOL:${ARG_OWN_MAIN}>,GTest::gtest,GTest::gtest_main>)
  target_compile_options(${name} PRIVATE -fPIC)  # as libraries are: Qt's tests must be, and share
  # The same in GoogleTest's messages as in sums of strings (Compiler.cmake).
  target_compile_options(${name} PRIVATE $<$<CXX_COMPILER_ID:GNU>:-Wno-array-bounds>)
  if(SUMPWRIGHT_SANITIZE)  # GCC's manual: sanitizers make this warning see what is not there
    target_compile_options(${name} PRIVATE -Wno-maybe-uninitialized)
  endif()
  sumpwright_precompile(${name} pch_gtest)
  if(NOT ARG_TIMEOUT)
    set(ARG_TIMEOUT 300)
  endif()
  gtest_discover_tests(${name}
    TEST_PREFIX "${name}."
    DISCOVERY_MODE PRE_TEST
    DISCOVERY_TIMEOUT 60
    PROPERTIES
      TIMEOUT ${ARG_TIMEOUT}
      ENVIRONMENT "QT_QPA_PLATFORM=offscreen;ASAN_OPTIONS=detect_leaks=1;LSAN_OPTIONS=suppressions=${PROJECT_SOURCE_DIR}/tests/support/leaks.txt;UBSAN_OPTIONS=print_stacktrace=1:halt_on_error=1"
      LABELS "${ARG_LABELS}")
endfunction()
