# What others wrote: header-only packages of the system, and Dear ImGui.
#
# A header-only package is linked into a folder of the build tree of its own: including the whole system include folder
# would put native headers in front of Emscripten's.
function(overwater_header_only name header)
    find_path(OVERWATER_${name}_INCLUDE "${header}"
        PATHS /usr/include /usr/local/include /opt/homebrew/include
        NO_CMAKE_FIND_ROOT_PATH NO_CACHE)
    if(NOT OVERWATER_${name}_INCLUDE)
        message(FATAL_ERROR "The header ${header} is missing. `tools/need tests` installs it.")
    endif()
    get_filename_component(folder "${header}" DIRECTORY)
    set(place "${PROJECT_BINARY_DIR}/third_party/${name}")
    file(MAKE_DIRECTORY "${place}")
    file(CREATE_LINK "${OVERWATER_${name}_INCLUDE}/${folder}" "${place}/${folder}" SYMBOLIC)
    add_library(third_party_${name} INTERFACE)
    target_include_directories(third_party_${name} SYSTEM INTERFACE "${place}")
endfunction()

overwater_header_only(json nlohmann/json.hpp)
target_compile_definitions(third_party_json INTERFACE JSON_NOEXCEPTION)
if(OVERWATER_TESTS)
    overwater_header_only(doctest doctest/doctest.h)
    target_compile_definitions(third_party_doctest INTERFACE DOCTEST_CONFIG_NO_POSIX_SIGNALS)
endif()

if(OVERWATER_WEB)
    set(imgui "${PROJECT_BINARY_DIR}/third_party/imgui")
    execute_process(COMMAND "${PROJECT_SOURCE_DIR}/tools/imgui" "${imgui}" RESULT_VARIABLE imgui_missing)
    if(imgui_missing)
        message(FATAL_ERROR "Dear ImGui is missing; what to do stands above.")
    endif()
    add_library(overwater_imgui STATIC "${imgui}/imgui.cpp" "${imgui}/imgui_draw.cpp")
    target_include_directories(overwater_imgui SYSTEM PUBLIC "${imgui}")
    target_compile_definitions(overwater_imgui PUBLIC
        IMGUI_DISABLE_OBSOLETE_FUNCTIONS IMGUI_DISABLE_FILE_FUNCTIONS IMGUI_DISABLE_DEMO_WINDOWS
        IMGUI_DISABLE_DEBUG_TOOLS IMGUI_DISABLE_DEFAULT_FONT)
    # Told to use FreeType, Dear ImGui compiles without stb_truetype and asks for a loader of fonts by this header; ours is
    # web/draw/outline_loader.cpp.
    file(CONFIGURE OUTPUT "${PROJECT_BINARY_DIR}/third_party/font_loader/misc/freetype/imgui_freetype.h" CONTENT
        "#pragma once\nnamespace ImGuiFreeType { const ImFontLoader* GetFontLoader(); }\n")
    target_include_directories(overwater_imgui SYSTEM PUBLIC "${PROJECT_BINARY_DIR}/third_party/font_loader")
    target_compile_definitions(overwater_imgui PUBLIC IMGUI_ENABLE_FREETYPE)
    target_compile_options(overwater_imgui PRIVATE -w -fno-exceptions)
    if(OVERWATER_SANITIZE)
        # Not ours to check for undefined behaviour, and it draws every frame of every test.
        target_compile_options(overwater_imgui PRIVATE -O1 -fno-sanitize=undefined)
    endif()
    if(EMSCRIPTEN)
        # The page has none of Dear ImGui's widgets and tables, no settings file for sscanf to read and nobody to
        # print to: web/browser/imgui_absent.cpp takes their place. That is 24 kB less to load (brotli).
        target_compile_definitions(overwater_imgui PRIVATE sscanf=overwater_scan fprintf=overwater_report)
    else()
        target_sources(overwater_imgui PRIVATE "${imgui}/imgui_tables.cpp" "${imgui}/imgui_widgets.cpp")
    endif()
endif()
