#!/bin/sh
# Starts Barm so that groups can come in from the network.
cd "$(dirname "$0")" || exit 1
./barm serve --lan --browser
ended=$?
# Whoever opened this with a double click must be able to read what went wrong.
if [ "$ended" -ne 0 ] && [ -t 0 ]; then
  printf 'Press Enter to close. '
  read -r _
fi
exit "$ended"
