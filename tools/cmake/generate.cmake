# Sources written by small Python programs at build time. They are for the system's Python, which has the modules that
# `tools/need` installs; a Python from elsewhere on the path may not.
if(EXISTS /usr/bin/python3)
    set(OVERWATER_PYTHON /usr/bin/python3 CACHE FILEPATH "Python with fontTools")
else()
    find_program(OVERWATER_PYTHON python3 REQUIRED)
endif()

set(overwater_generated "${PROJECT_BINARY_DIR}/include/generated")
file(MAKE_DIRECTORY "${overwater_generated}")

# overwater_generate(NAME outputs... FROM program ARGUMENTS ... DEPENDS ...): `outputs` are names below generated/.
function(overwater_generate)
    cmake_parse_arguments(PARSE_ARGV 0 arg "" "FROM;COMMENT" "OUTPUTS;ARGUMENTS;DEPENDS")
    list(TRANSFORM arg_OUTPUTS PREPEND "${overwater_generated}/")
    add_custom_command(OUTPUT ${arg_OUTPUTS}
        COMMAND "${OVERWATER_PYTHON}" -B "${arg_FROM}" ${arg_ARGUMENTS}
        DEPENDS "${arg_FROM}" ${arg_DEPENDS}
        COMMENT "${arg_COMMENT}" VERBATIM)
endfunction()
