# The sanitized build (OVERWATER_TOGETHER) compiles about eight files as one: headers are read and their templates instantiated
# once for all of them, which takes a third of the time. What the page is made of is compiled file by file, so that a header that
# was forgotten is noticed there, and a name that hides another.
#
# A file's name alone says with which others it goes: a file that comes or leaves does not make others meet.
option(OVERWATER_TOGETHER "Compile several files as one" OFF)

# overwater_together(TARGET HEAPS APART FILES...): as so many; the files named are compiled by themselves, because what they
# have in their unnamed namespace is called as something of another file is.
function(overwater_together target heaps)
    cmake_parse_arguments(PARSE_ARGV 2 arg "" "" "APART")
    if(NOT OVERWATER_TOGETHER)
        return()
    endif()
    get_target_property(sources ${target} SOURCES)
    list(FILTER sources INCLUDE REGEX "\\.cpp$")
    foreach(source IN LISTS sources)
        file(RELATIVE_PATH name "${CMAKE_CURRENT_SOURCE_DIR}" "${source}")
        if(name IN_LIST arg_APART)
            continue()
        endif()
        string(MD5 hash "${name}")
        string(SUBSTRING "${hash}" 0 6 hash)
        math(EXPR group "0x${hash} % ${heaps}")
        set_source_files_properties("${source}" PROPERTIES UNITY_GROUP "${group}")
    endforeach()
    set_target_properties(${target} PROPERTIES UNITY_BUILD ON UNITY_BUILD_MODE GROUP)
endfunction()
