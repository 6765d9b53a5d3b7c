# fettle_step_texts(TARGET): compiles resources/steps/*.md into a target, as :/steps/<key>.md. A new step text
# is taken in without touching a list.
function(fettle_step_texts target)
  file(GLOB texts CONFIGURE_DEPENDS ${CMAKE_SOURCE_DIR}/resources/steps/*.md)
  set(entries "")
  foreach(text ${texts})
    get_filename_component(name ${text} NAME)
    string(APPEND entries "    <file alias=\"${name}\">${text}</file>\n")
  endforeach()
  set(list ${CMAKE_CURRENT_BINARY_DIR}/steps.qrc)
  file(CONFIGURE OUTPUT ${list} CONTENT "<RCC>\n  <qresource prefix=\"/steps\">\n${entries}  </qresource>\n</RCC>\n")
  target_sources(${target} PRIVATE ${list})
  set_target_properties(${target} PROPERTIES AUTORCC ON)
endfunction()

# fettle_embed_text(TARGET FILE NAME): makes a header NAME.h that holds the text of FILE as the constant
# fettle::NAME, for the sources of TARGET. Core reads its tables from there: it opens no file and links no Qt.
function(fettle_embed_text target file name)
  set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS ${file})
  file(READ ${file} text)
  set(folder ${CMAKE_CURRENT_BINARY_DIR}/embedded)
  file(CONFIGURE OUTPUT ${folder}/${name}.h CONTENT "#pragma once
#include <string_view>

namespace fettle {
// Made from a file in resources/tables by fettle_embed_text.
inline constexpr std::string_view @name@ = R\"table(@text@)table\";
}  // namespace fettle
" @ONLY)
  target_include_directories(${target} PRIVATE ${folder})
endfunction()
