#!/usr/bin/env bash
# Measures one machine each night and tells whether it still keeps its limits: an example of Offtape in a script.
#
#   nightly-check.sh FOLDER [RECORDING]
#
# FOLDER holds the programme (offtape prepare --out FOLDER/programme) and receives a session a night and the history.
# Without RECORDING the programme is played and recorded now, so the machine must be threaded and recording, and
# loudspeakers and headphones be turned off. Settings: OFFTAPE (how Offtape is started), MODE (off-tape by default),
# LIMITS (studio-practice by default; a file of your own does as well).
#
# Ends with 0 if the machine keeps its limits, 1 if it does not, and otherwise with Offtape's own code: 2 wrong usage,
# 3 a recording that cannot be used, 4 trouble with a sound device. A line for cron, which mails what is printed:
#   30 5 * * 1-5  /home/studio/nightly-check.sh /home/studio/two-track
set -euo pipefail

offtape=${OFFTAPE:-offtape}
mode=${MODE:-off-tape}
limits=${LIMITS:-studio-practice}
folder=${1:?name the folder that holds the programme}
night=$(date -u +%Y-%m-%dT%H%M%SZ)
session=$folder/nights/$night
mkdir -p -- "$folder/nights"

recording=${2:-}
if [ -z "$recording" ]; then
  recording=$folder/nights/$night.wav
  "$offtape" capture --quiet --programme "$folder/programme" --mode "$mode" --out "$recording"
fi

# What is expected is told apart from what is not by the exit code: 1 is an answer, more is trouble.
code=0
"$offtape" measure "$recording" --programme "$folder/programme" --mode "$mode" --limits "$limits" --fail-on-limit \
  --quiet --json --out "$session" >"$folder/nights/$night.json" || code=$?
case $code in
  0) echo "$night: keeps its limits; $session/report.html" ;;
  1) echo "$night: no longer keeps its limits; $session/report.html" ;;
  *)
    rm -f -- "$folder/nights/$night.json"
    echo "$night: not measured, exit code $code" >&2
    exit "$code"
    ;;
esac

# Two nights or more make a history. Its page is written anew each time, which Offtape does with its own files.
sessions=("$folder"/nights/*/)
if [ "${#sessions[@]}" -gt 1 ]; then
  "$offtape" history --quiet "${sessions[@]}" --out "$folder/history" >/dev/null
fi
exit "$code"
