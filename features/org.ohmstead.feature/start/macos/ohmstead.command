#!/bin/sh
# For a double click in the Finder: opens the workbench.
exec "$(dirname -- "$0")/ohmstead" "$@"
