#!/bin/sh
# Checks that control.cpp compiles and that every other file of this folder does not. Prints `N passed, N failed`.
# usage: tests/must_not_compile/run.sh [compiler]
here=$(cd "$(dirname "$0")" && pwd)
root=$(cd "$here/../.." && pwd)
compiler=${1:-${CXX:-clang++}}
passed=0
failed=0

compiles() { "$compiler" -std=c++20 -I"$root" -fsyntax-only "$1" 2>&1; }

if message=$(compiles "$here/control.cpp"); then
    passed=$((passed + 1))
else
    printf 'control.cpp must compile and does not:\n%s\n' "$message"
    printf '%d passed, %d failed\n' 0 1
    exit 1
fi

for file in "$here"/*.cpp; do
    name=$(basename "$file")
    [ "$name" = control.cpp ] && continue
    if message=$(compiles "$file"); then
        echo "$name compiles and must not"
        failed=$((failed + 1))
    elif ! printf '%s' "$message" | grep -q "$name:[0-9]*:.*error"; then
        printf '%s fails, but not in its own code:\n%s\n' "$name" "$message"
        failed=$((failed + 1))
    else
        passed=$((passed + 1))
    fi
done

printf '%d passed, %d failed\n' "$passed" "$failed"
[ "$failed" -eq 0 ]
