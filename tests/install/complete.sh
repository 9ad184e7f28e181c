# SPDX-License-Identifier: MIT
# What bash offers after "routeweigh com": bash complete.sh COMPLETION
source "$1"
COMP_WORDS=(routeweigh com)
COMP_CWORD=1
_routeweigh
echo "${COMPREPLY[@]}"
