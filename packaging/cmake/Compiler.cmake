# Language level and the one INTERFACE target that carries warnings and instruments.
set(CMAKE_CXX_STANDARD 20)
set(CMAKE_CXX_STANDARD_REQUIRED ON)
set(CMAKE_CXX_EXTENSIONS OFF)
set(CMAKE_EXPORT_COMPILE_COMMANDS ON)
set(CMAKE_POSITION_INDEPENDENT_CODE ON)  # Qt asks for it; one way for all lets them share headers
if(NOT CMAKE_BUILD_TYPE AND NOT CMAKE_CONFIGURATION_TYPES)
  set(CMAKE_BUILD_TYPE RelWithDebInfo CACHE STRING "" FORCE)
endif()

set(CMAKE_CXX_FLAGS_RELEASE "-O2 -DNDEBUG")  # -O3 compiles half as long again and measures no faster

option(SUMPWRIGHT_WERROR "Treat warnings as errors" OFF)
option(SUMPWRIGHT_COVERAGE "Count the lines that tests reach" OFF)
set(SUMPWRIGHT_SANITIZE "" CACHE STRING "Sanitizers, such as address,undefined; empty: none")

add_library(sumpwright_warnings INTERFACE)
# A field left out of braces takes its default: that is what the default is for.
target_compile_options(sumpwright_warnings INTERFACE -Wall -Wextra -Wpedantic -Wshadow
  -Wconversion -Wsign-conversion -Wold-style-cast -Wnon-virtual-dtor -Woverloaded-virtual
  -Wno-missing-field-initializers
  # GCC 12 sees overlaps and overflows in sums of strings where there are none (GCC bug 105651, from
  # memory).
  $<$<CXX_COMPILER_ID:GNU>:-Wno-restrict$<SEMICOLON>-Wno-stringop-overflow>
  $<$<BOOL:${SUMPWRIGHT_WERROR}>:-Werror>)

# These change every object, so they are set for the whole build.
if(SUMPWRIGHT_SANITIZE)
  add_compile_options(-fsanitize=${SUMPWRIGHT_SANITIZE} -fno-omit-frame-pointer
    -fno-sanitize-recover=all)
  add_link_options(-fsanitize=${SUMPWRIGHT_SANITIZE})
endif()
if(SUMPWRIGHT_COVERAGE)
  add_compile_options(--coverage -O0)
  add_link_options(--coverage)
endif()

# Results must not depend on whether the compiler fuses a multiplication and an addition.
add_compile_options(-ffp-contract=off)
