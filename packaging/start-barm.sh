#!/bin/sh
# Starts Barm in the browser of this computer.
cd "$(dirname "$0")" || exit 1
./barm
ended=$?
# Whoever opened this with a double click must be able to read what went wrong.
if [ "$ended" -ne 0 ] && [ -t 0 ]; then
  printf 'Press Enter to close. '
  read -r _
fi
exit "$ended"
