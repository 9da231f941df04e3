#!/usr/bin/env bash
# Plays the short programme through a sound server and measures what comes back: a path that changes no sample has to
# read as one without faults. Usage: test.sh; the scratch folder is removed at the end.
set -euo pipefail

here=$(cd -P -- "$(dirname -- "${BASH_SOURCE[0]}")" && pwd)
root=$(dirname -- "$(dirname -- "$here")")
scratch=$(mktemp -d "${TMPDIR:-/tmp}/offtape-sound.XXXXXX")
recorder=
passed=0
failed=0

# shellcheck disable=SC2317  # called by the trap
clean_up() {
  [ -z "$recorder" ] || kill "$recorder" 2>/dev/null || true
  "$here/loopback.sh" stop "$scratch/loop" || true
  rm -rf -- "$scratch"
}
trap clean_up EXIT
trap 'exit 143' TERM INT HUP

check() {
  local name=$1
  shift
  if "$@"; then
    passed=$((passed + 1))
  else
    failed=$((failed + 1))
    echo "not ok: $name"
  fi
}

# Records the monitor into $1 while the programme is played, for at most $2 seconds. The recorder has to be running
# first, and to go on for longer than the server's buffers.
play_and_record() {
  parec --device=loop.monitor --rate=48000 --format=s24le --channels=2 --file-format=wav "$1" &
  recorder=$!
  for _ in $(seq 100); do
    [ "$(stat -c %s "$1" 2>/dev/null || echo 0)" -le 20000 ] || break
    sleep 0.1
  done
  timeout "$2" paplay --device=loop "$scratch/programme/programme.wav" || [ $? -eq 124 ]
  sleep 1
  kill -TERM "$recorder"
  wait "$recorder" || true
  recorder=
}

measure() {
  "$root/offtape" measure "$scratch/$1.wav" --programme "$scratch/programme" --mode reference-tape \
    --out "$scratch/$1" --quiet
}

nothing_is_found_in_silence() {
  local code=0
  measure mute 2>"$scratch/message" || code=$?
  [ "$code" -eq 3 ] && [ -s "$scratch/message" ] && [ ! -e "$scratch/mute" ] && return
  echo "    exit code $code: $(cat "$scratch/message")"
  return 1
}

"$root/offtape" prepare --short --quiet --out "$scratch/programme"
"$here/loopback.sh" start "$scratch/loop"
export PULSE_SERVER=unix:$scratch/loop/socket HOME=$scratch XDG_RUNTIME_DIR=$scratch

play_and_record "$scratch/exact.wav" 120
check "an exact path is measured" measure exact
check "an exact path reads as exact" \
  node "$here/exact.mjs" "$scratch/exact/results.json" "$scratch/exact.wav" "$scratch/programme/programme.wav"

pactl set-sink-volume loop -6dB
play_and_record "$scratch/lower.wav" 120
check "a path 6 dB down is measured" measure lower
check "a path 6 dB down reads as exact but for its level" \
  node "$here/exact.mjs" "$scratch/lower/results.json"

pactl set-sink-mute loop 1
play_and_record "$scratch/mute.wav" 8
check "silence is refused" nothing_is_found_in_silence

echo "sound: $passed passed, $failed failed"
[ "$failed" -eq 0 ]
