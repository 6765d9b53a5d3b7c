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
