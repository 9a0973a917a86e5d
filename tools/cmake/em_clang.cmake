# em++ is a Python program that puts its own options before those given and calls clang. For a small file its start takes longer than
# to compile: a second of a processor, hundreds of times. So it is asked once what it calls, and that is called.
#
# overwater_em_clang(OPTIONS...): objects of this folder and those below are compiled so. OPTIONS are those of ours on which
# em++'s own depend. Where em++ says something else than expected, it compiles them itself as before.
function(overwater_em_clang)
    set(probe "${PROJECT_BINARY_DIR}/probe.cpp")
    file(WRITE "${probe}" "int probe() { return 0; }\n")
    execute_process(COMMAND "${CMAKE_CXX_COMPILER}" ${ARGN} -v -c "${probe}" -o "${probe}.o"
        OUTPUT_QUIET ERROR_VARIABLE said RESULT_VARIABLE failed)
    list(JOIN ARGN " " ours)
    if(failed OR NOT said MATCHES "^ *(\"?[^\"\n ]*clang[^\n ]*) (-target [^\n]*) ${ours} -v -c ")
        message(STATUS "em++ compiles by itself: it does not say what it calls")
        return()
    endif()
    set(CMAKE_CXX_COMPILE_OBJECT
        "${CMAKE_MATCH_1} ${CMAKE_MATCH_2} <DEFINES> <INCLUDES> <FLAGS> -o <OBJECT> -c <SOURCE>" PARENT_SCOPE)
endfunction()
