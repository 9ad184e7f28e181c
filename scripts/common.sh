# SPDX-License-Identifier: MIT
# What the scripts share; each reads this file after it has gone to the top folder of the project.

NINJA_STATUS='[%f/%t] '
export NINJA_STATUS

# step TEXT: a heading, so that a reader of much output finds the way.
step() {
    printf '\n== %s\n' "$1"
}

# folder_of PRESET: where the preset builds.
folder_of() {
    if [ "$1" = release ]; then echo build; else echo "build/$1"; fi
}

# configured PRESET: whether its build folder is ready, and not one that came along when the project was copied.
configured() {
    folder=$(folder_of "$1")
    [ -f "$folder/build.ninja" ] || return 1
    home=$(sed -n 's/^CMAKE_HOME_DIRECTORY:INTERNAL=//p' "$folder/CMakeCache.txt")
    # shellcheck disable=SC3013  # dash and every other sh of Debian knows -ef
    [ "$home" -ef . ]
}

# configure PRESET OPTION...: prepares its build folder, anew where what is there does not fit.
configure() {
    preset=$1
    shift
    if ! configured "$preset" && [ -f "$(folder_of "$preset")/CMakeCache.txt" ]; then
        set -- --fresh "$@"
    fi
    if command -v ccache >/dev/null; then
        set -- -DCMAKE_CXX_COMPILER_LAUNCHER=ccache "$@"
    fi
    if ! output=$(cmake --preset "$preset" "$@" 2>&1); then
        printf '%s\n' "$output" >&2
        return 1
    fi
}

# build PRESET OPTION...: compiles on every processor.
build() {
    preset=$1
    shift
    cmake --build "$(folder_of "$preset")" --parallel "$(nproc)" "$@"
}
