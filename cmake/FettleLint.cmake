# `cmake --build DIR --target lint`: clang-tidy over the whole tree. `--target format`: clang-format in place.
find_program(RUN_CLANG_TIDY NAMES run-clang-tidy run-clang-tidy-14)
if(RUN_CLANG_TIDY)
  add_custom_target(lint
    COMMAND ${RUN_CLANG_TIDY} -quiet -p ${CMAKE_BINARY_DIR} -extra-arg=-Wno-unknown-warning-option
            "^(?!.*_autogen).*/(app|core|ui|tests)/"
    WORKING_DIRECTORY ${CMAKE_SOURCE_DIR} USES_TERMINAL)
endif()
find_program(CLANG_FORMAT NAMES clang-format clang-format-14)
if(CLANG_FORMAT)
  file(GLOB_RECURSE formatted CONFIGURE_DEPENDS
       ${CMAKE_SOURCE_DIR}/app/*.cpp ${CMAKE_SOURCE_DIR}/app/*.h
       ${CMAKE_SOURCE_DIR}/core/*.cpp ${CMAKE_SOURCE_DIR}/core/*.h
       ${CMAKE_SOURCE_DIR}/ui/*.cpp ${CMAKE_SOURCE_DIR}/ui/*.h
       ${CMAKE_SOURCE_DIR}/tests/*.cpp ${CMAKE_SOURCE_DIR}/tests/*.h)
  add_custom_target(format COMMAND ${CLANG_FORMAT} -i ${formatted} VERBATIM)
  add_custom_target(format-check COMMAND ${CLANG_FORMAT} --dry-run --Werror ${formatted} VERBATIM)
endif()
