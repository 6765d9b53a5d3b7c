# fettle_resources(TARGET): compiles into a target the step texts as :/steps/<key>.md, the icon as
# :/icons/fettle.svg, and translations as :/translations/fettle_<language>.qm. New files are taken in without
# touching a list. Who shows them calls Q_INIT_RESOURCE(fettle).
function(fettle_resources target)
  set(entries "<qresource prefix=\"/icons\"><file alias=\"fettle.svg\">${CMAKE_SOURCE_DIR}/resources/icons/fettle.svg</file></qresource>\n")
  file(GLOB texts CONFIGURE_DEPENDS ${CMAKE_SOURCE_DIR}/resources/steps/*.md)
  fettle_resource_files(steps ${texts})
  find_package(Qt6 6.4 QUIET COMPONENTS LinguistTools)
  file(GLOB translations CONFIGURE_DEPENDS ${CMAKE_SOURCE_DIR}/resources/translations/fettle_*.ts)
  if(Qt6LinguistTools_FOUND AND translations)
    qt6_add_translation(compiled ${translations})
    target_sources(${target} PRIVATE ${compiled})
    fettle_resource_files(translations ${compiled})
  endif()
  set(list ${CMAKE_CURRENT_BINARY_DIR}/fettle.qrc)
  file(CONFIGURE OUTPUT ${list} CONTENT "<RCC>\n${entries}</RCC>\n")
  target_sources(${target} PRIVATE ${list})
  set_target_properties(${target} PROPERTIES AUTORCC ON)
endfunction()

# Appends files under a prefix to the caller's `entries`.
macro(fettle_resource_files prefix)
  foreach(file ${ARGN})
    get_filename_component(name ${file} NAME)
    string(APPEND entries "<qresource prefix=\"/${prefix}\"><file alias=\"${name}\">${file}</file></qresource>\n")
  endforeach()
endmacro()

# `cmake --build --preset edit --target words`: writes every text of the program to fettle.ts in the build folder,
# from which a translation begins as resources/translations/fettle_<language>.ts, and takes them into the
# translations that are there.
find_program(LUPDATE NAMES lupdate lupdate6 HINTS /usr/lib/qt6/bin)
if(LUPDATE)
  file(GLOB fettle_translations CONFIGURE_DEPENDS ${CMAKE_SOURCE_DIR}/resources/translations/fettle_*.ts)
  add_custom_target(words
    COMMAND ${LUPDATE} -silent -no-obsolete -locations none ${CMAKE_SOURCE_DIR}/core ${CMAKE_SOURCE_DIR}/ui
            ${CMAKE_SOURCE_DIR}/app -ts ${CMAKE_BINARY_DIR}/fettle.ts ${fettle_translations} VERBATIM)
endif()

install(FILES ${CMAKE_SOURCE_DIR}/resources/schema/history.schema.json DESTINATION ${CMAKE_INSTALL_DATADIR}/fettle)
if(FETTLE_GUI)
  install(FILES ${CMAKE_SOURCE_DIR}/resources/desktop/fettle.desktop DESTINATION ${CMAKE_INSTALL_DATADIR}/applications)
  install(FILES ${CMAKE_SOURCE_DIR}/resources/desktop/fettle-mime.xml DESTINATION ${CMAKE_INSTALL_DATADIR}/mime/packages)
  install(FILES ${CMAKE_SOURCE_DIR}/resources/icons/fettle.svg
          DESTINATION ${CMAKE_INSTALL_DATADIR}/icons/hicolor/scalable/apps)
endif()

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
