# The house in CMake: every folder is one static library that links only what it may include.

find_program(CCACHE ccache)
if(CCACHE AND NOT CMAKE_CXX_COMPILER_LAUNCHER)
  set(CMAKE_CXX_COMPILER_LAUNCHER ${CCACHE})
endif()

add_library(fettle_settings INTERFACE)
target_include_directories(fettle_settings INTERFACE ${CMAKE_SOURCE_DIR})
target_compile_options(fettle_settings INTERFACE
  -Wall -Wextra -Wpedantic -Wconversion -Wshadow -Werror)
if(CMAKE_CXX_COMPILER_ID STREQUAL "GNU" AND CMAKE_CXX_COMPILER_VERSION VERSION_LESS 13)
  # False alarms of GCC 12 on "text" + std::string when optimising (GCC bugs 105329, 105651).
  target_compile_options(fettle_settings INTERFACE -Wno-restrict -Wno-stringop-overflow)
endif()
if(CMAKE_CXX_COMPILER_ID STREQUAL "Clang")
  target_compile_options(fettle_settings INTERFACE -Wno-unused-command-line-argument)
endif()
if(FETTLE_SANITIZE)
  target_compile_options(fettle_settings INTERFACE
    -fsanitize=${FETTLE_SANITIZE} -fno-sanitize-recover=all -fno-omit-frame-pointer
    # AddressSanitizer stops at these as well; to ask at every access doubles the time of a build.
    -fno-sanitize=null,alignment,object-size)
  if(CMAKE_CXX_COMPILER_ID STREQUAL "GNU")
    # With sanitizers GCC takes optionals for uninitialised (its manual warns of it under -fsanitize).
    target_compile_options(fettle_settings INTERFACE -Wno-maybe-uninitialized)
  endif()
  target_link_options(fettle_settings INTERFACE -fsanitize=${FETTLE_SANITIZE})
endif()

# fettle_library(NAME [QT] [EXCEPT folder] LINK targets...): the sources of the current folder and the folders in
# it, but for a folder that is a target of its own, as one target; QT for widgets.
# Globbing is on purpose: adding a step adds files and touches no build list.
function(fettle_library name)
  cmake_parse_arguments(ARG "QT" "EXCEPT" "LINK" ${ARGN})
  file(GLOB sources CONFIGURE_DEPENDS *.cpp *.h */*.cpp */*.h)
  if(ARG_EXCEPT)
    list(FILTER sources EXCLUDE REGEX "/${ARG_EXCEPT}/[^/]+$")
  endif()
  if(NOT sources)  # a folder that is still empty passes on what it links
    add_library(fettle_${name} INTERFACE)
    target_link_libraries(fettle_${name} INTERFACE fettle_settings ${ARG_LINK})
    return()
  endif()
  add_library(fettle_${name} STATIC ${sources})
  set_target_properties(fettle_${name} PROPERTIES LINKER_LANGUAGE CXX)
  target_link_libraries(fettle_${name} PUBLIC fettle_settings ${ARG_LINK})
  target_precompile_headers(fettle_${name} PRIVATE
    ${CMAKE_SOURCE_DIR}/cmake/precompiled_$<IF:$<BOOL:${ARG_QT}>,ui,core>.h)
  if(ARG_QT)
    set_target_properties(fettle_${name} PROPERTIES AUTOMOC ON)
    # Widgets wait for people; less optimisation builds sooner.
    target_compile_options(fettle_${name} PRIVATE $<IF:$<CONFIG:Debug>,-O0,-O1>)
  endif()
endfunction()
