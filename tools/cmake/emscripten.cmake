# Toolchain file: finds the installed Emscripten by its compiler, and reads Emscripten's own toolchain file.
if(NOT EMSCRIPTEN_ROOT_PATH)
    find_program(OVERWATER_EMXX em++ HINTS "$ENV{EMSDK}/upstream/emscripten" "$ENV{EMSCRIPTEN}" REQUIRED)
    get_filename_component(overwater_emxx "${OVERWATER_EMXX}" REALPATH)
    get_filename_component(overwater_emxx_folder "${overwater_emxx}" DIRECTORY)
    set(EMSCRIPTEN_ROOT_PATH "${overwater_emxx_folder}")
endif()
include("${EMSCRIPTEN_ROOT_PATH}/cmake/Modules/Platform/Emscripten.cmake")

# Debian keeps the JavaScript parser that Emscripten's linker calls (acorn) in a folder that only Debian's own Node
# looks into. Any other Node has to be told.
set(overwater_node_path "/usr/share/nodejs")
if(DEFINED ENV{NODE_PATH} AND NOT "$ENV{NODE_PATH}" STREQUAL "")
    string(PREPEND overwater_node_path "$ENV{NODE_PATH}:")
endif()
set_property(GLOBAL PROPERTY RULE_LAUNCH_LINK "${CMAKE_COMMAND} -E env NODE_PATH=${overwater_node_path}")
