#!/usr/bin/env bash
# Plays the short programme through a sound server and measures what comes back: a path that changes no sample has to
# read as one without faults. Usage: test.sh; the scratch folder is removed at the end.
set -euo pipefail

# Where the computer has no sound server, nothing can be tried; .ci/run installs one, so there nothing is skipped.
for tool in pulseaudio pactl parec pacat paplay node; do
  if ! command -v "$tool" >/dev/null; then
    echo "skipped: all checks with sound, since $tool is not installed"
    exit 0
  fi
done
if ! compgen -G '/usr/lib/*/alsa-lib/libasound_module_pcm_pulse.so' >/dev/null; then
  echo "skipped: all checks with sound, since ALSA has no way to the sound server (libasound2-plugins)"
  exit 0
fi

here=$(cd -P -- "$(dirname -- "${BASH_SOURCE[0]}")" && pwd)
root=$(dirname -- "$(dirname -- "$here")")
scratch=$(mktemp -d "${TMPDIR:-/tmp}/offtape-sound.XXXXXX")
recorder=
other=
server=
machine=()
passed=0
failed=0

# shellcheck disable=SC2317  # called by the trap
clean_up() {
  [ -z "$other" ] || kill "$other" 2>/dev/null || true
  [ -z "$recorder" ] || kill "$recorder" 2>/dev/null || true
  stop_machine
  "$here/loopback.sh" stop "$scratch/loop" || true
  "$here/loopback.sh" stop "$scratch/wide" || true
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

capture() {
  "$root/offtape" capture --programme "$scratch/programme" --no-settings "$@"
}

# A computer that is busy with other things may be late; that is no fault as long as the command says so, and a
# capture that said so is made again.
undisturbed_capture() {
  for _ in 1 2 3; do
    capture --force "$@" 2>"$scratch/message" || break
    grep -q '^Mind: about' "$scratch/message" || return 0
  done
  sed 's/^/    /' "$scratch/message"
  return 1
}

devices_are_listed() {
  "$root/offtape" devices --json | node -e '
    const { devices } = JSON.parse(require("fs").readFileSync(0, "utf8"));
    const opens = (side) => side && side.sampleRatesHz.includes(48000) && side.bits.includes(24);
    process.exit(devices.some((d) => opens(d.playback) && opens(d.capture)) ? 0 : 1);'
}

# A path that changes nothing: level and balance as sent, and a delay that only the computer makes. A sink that hands
# its sound out in blocks may give it back in the very block that is recorded next, so 0 is possible.
a_line_up_reads_an_exact_path() {
  lined_up 0.005
}

# Where somebody else holds the path at another rate, the server converts to it and back, which costs little.
a_path_at_another_rate_is_read() {
  local result=0
  parec --device=loop.monitor --rate=44100 --format=s24le --channels=2 --raw >/dev/null &
  recorder=$!
  sleep 1
  lined_up 0.02 || result=1
  kill -TERM "$recorder"
  wait "$recorder" || true
  recorder=
  return "$result"
}

# Levels and balance within $1 dB.
lined_up() {
  "$root/offtape" lineup --plain --json --seconds 3 --no-settings 2>"$scratch/message" | node -e '
    const answer = JSON.parse(require("fs").readFileSync(0, "utf8"));
    const exact = (x) => Math.abs(x) < Number(process.argv[1]);
    process.exit(answer.returns.length === 2 && answer.returns.every((r) => exact(r.levelDb) && !r.clipped)
      && exact(answer.rightLessLeftDb) && answer.delayMs !== null && answer.delayMs >= 0 && answer.delayMs < 2000 ? 0 : 1);' "$1" && return
  sed 's/^/    /' "$scratch/message"
  return 1
}

# Runs a capture into $1.wav by the layer $2, does $3 … to its process after some seconds, and leaves its exit code in
# $code.
broken_off() {
  local name=$1 layer=$2 pid
  shift 2
  code=0
  # not the function: its process would be a shell, and killing that leaves the capture playing
  "$root/offtape" capture --programme "$scratch/programme" --no-settings --layer "$layer" --out "$scratch/$name.wav" \
    2>"$scratch/message" &
  pid=$!
  sleep 8
  "$@" "$pid"
  wait "$pid" || code=$?
}

# At least $2 seconds of 48 kHz, 24 bit, stereo are in the incomplete recording $1, by its own header.
holds_seconds() {
  node -e '
    const bytes = require("fs").readFileSync(process.argv[1]);
    const at = bytes.indexOf("data");
    process.exit(bytes.readUInt32LE(at + 4) >= Number(process.argv[2]) * 48000 * 6 ? 0 : 1);' \
    "$scratch/$1.incomplete.wav" "$2"
}

# A shell makes what it runs in the background deaf to Ctrl-C, so node starts this one, by the layer $1.
interrupted_keeps_what_was_recorded() {
  local file=$scratch/interrupted-$1.wav
  code=0
  node -e '
    const [command, ...words] = process.argv.slice(1);
    const child = require("child_process").spawn(command, words, { stdio: ["ignore", "ignore", "inherit"] });
    setTimeout(() => child.kill("SIGINT"), 8000);
    child.on("exit", (code) => process.exit(code ?? 1));' \
    "$root/offtape" capture --programme "$scratch/programme" --no-settings --layer "$1" --out "$file" \
    2>"$scratch/message" || code=$?
  [ "$code" -eq 130 ] && [ ! -e "$file" ] && holds_seconds "interrupted-$1" 3 && return
  echo "    exit code $code: $(cat "$scratch/message")"
  return 1
}

# No file may grow beyond 4 MB: to the command that is a disk that takes no more.
a_full_disk_keeps_what_was_recorded() {
  code=0
  (
    ulimit -f 4096
    exec "$root/offtape" capture --programme "$scratch/programme" --no-settings --out "$scratch/full.wav" 2>"$scratch/message"
  ) || code=$?
  [ "$code" -eq 2 ] && grep -q 'full.incomplete.wav' "$scratch/message" && [ ! -e "$scratch/full.wav" ] \
    && holds_seconds full 10 && return
  echo "    exit code $code: $(cat "$scratch/message")"
  return 1
}

killed_keeps_what_was_recorded() {
  broken_off killed java kill -KILL
  [ "$code" -eq 137 ] && [ ! -e "$scratch/killed.wav" ] && holds_seconds killed 3
}

# Two stems go through the loopback and come back as they were: a part of the programme as a stereo stem, and one
# channel of it at another rate as a mono stem. A session that says no more than a level is enough for that.
stems_come_back() {
  node "$here/stems.mjs" make "$scratch/stems" "$scratch/programme/programme.wav"
  for _ in 1 2 3; do
    "$root/offtape" transfer --session "$scratch/stems/session" --out "$scratch/taped" --no-settings --tail 1 \
      "$scratch/stems/pair.wav" "$scratch/stems/single.wav" 2>"$scratch/message" && break
  done
  node "$here/stems.mjs" compare "$scratch/stems" "$scratch/taped" && return
  sed 's/^/    /' "$scratch/message"
  return 1
}

# The machine bends and hisses, so stems of little drive come back nearly as they were: 12 dB under -18 dBFS, a cube of
# 0.615 leaves -67 dB and the noise -47 dB.
stems_come_back_off_tape() {
  for _ in 1 2 3; do
    "$root/offtape" transfer --session "$scratch/stems/session" --out "$scratch/off-tape" --no-settings --tail 1 --drive -12 \
      "$scratch/stems/pair.wav" 2>"$scratch/message" && break
  done
  node "$here/stems.mjs" null "$scratch/stems" "$scratch/off-tape" -40 && return
  sed 's/^/    /' "$scratch/message"
  return 1
}

# K3 of 0.244 % at a peak of 0.1259, by the cube of machine.mjs.
the_machine_is_lined_up() {
  "$root/offtape" lineup --plain --json --seconds 3 --no-settings 2>"$scratch/message" >"$scratch/lined-up.json"
  node -e '
    const answer = JSON.parse(require("fs").readFileSync(process.argv[1], "utf8"));
    const near = (x, wanted, allowed) => Math.abs(x - wanted) < allowed;
    process.exit(near(answer.rightLessLeftDb, -0.4, 0.02) && answer.delayMs > 157
      && answer.returns.every((r) => near(r.k3Percent, 0.244, 0.01)) ? 0 : 1);' "$scratch/lined-up.json" && return
  cat "$scratch/lined-up.json" "$scratch/message"
  return 1
}

end_server() {
  "$here/loopback.sh" stop "$server"
}

a_lost_device_is_told() {
  broken_off "lost-$1" "$1" end_server
  [ "$code" -eq 4 ] && [ -s "$scratch/message" ] && holds_seconds "lost-$1" 3 && return
  echo "    exit code $code: $(cat "$scratch/message")"
  return 1
}

# Channels 5 and 6 of eight sound in the recording of all eight, and no other does.
only_five_and_six() {
  node -e '
    const bytes = require("fs").readFileSync(process.argv[1]);
    const peaks = new Array(8).fill(0);
    for (let at = 0; at + 24 <= bytes.length; at += 24) {
      peaks.forEach((peak, c) => { peaks[c] = Math.max(peak, Math.abs(bytes.readIntLE(at + 3 * c, 3))); });
    }
    const right = peaks.every((peak, c) => (peak > 0) === (c === 4 || c === 5));
    if (!right) console.log(`    peaks of the channels: ${peaks}`);
    process.exit(right ? 0 : 1);' "$1"
}

# Captures with channels 5 and 6 of eight by the layer $1; all eight are recorded beside it, and another program plays
# silence meanwhile.
another_pair() {
  local result=0 map=front-left,front-right,rear-left,rear-right,front-center,lfe,side-left,side-right
  pacat --device=loop --rate=48000 --format=s24le --channels=8 --raw --channel-map="$map" </dev/zero &
  other=$!
  parec --device=loop.monitor --rate=48000 --format=s24le --channels=8 --raw \
    --channel-map="$map" >"$scratch/all.raw" &
  recorder=$!
  undisturbed_capture --layer "$1" --output-channels 5,6 --input-channels 5,6 --out "$scratch/pair-$1.wav" \
    --mode loopback --measure "$scratch/pair-$1" || result=1
  kill -TERM "$recorder" "$other"
  wait "$recorder" "$other" || true
  recorder=
  other=
  [ "$result" -eq 0 ] || return 1
  node "$here/exact.mjs" "$scratch/pair-$1/results.json" "$scratch/pair-$1.wav" "$scratch/programme/programme.wav" || result=1
  only_five_and_six "$scratch/all.raw" || result=1
  return "$result"
}

# From now on what is played goes to the sink $1, and what is recorded comes from the source $2.
use_path() {
  "$here/alsa.sh" "$1" "$2" >"$scratch/alsa.conf"
}

# Puts a machine with three heads into the path: what is played into one sink comes back, later and as tape makes it,
# from another.
start_machine() {
  pactl load-module module-null-sink sink_name=tape rate=48000 format=s32le channels=2 \
    channel_map=front-left,front-right norewinds=1 >/dev/null
  local format=(--rate=48000 --format=float32le --channels=2 --raw --latency-msec=100)
  parec --device=loop.monitor "${format[@]}" >"$scratch/heads-in" &
  machine+=($!)
  node "$here/machine.mjs" <"$scratch/heads-in" >"$scratch/heads-out" &
  machine+=($!)
  pacat --device=tape "${format[@]}" <"$scratch/heads-out" &
  machine+=($!)
}

stop_machine() {
  [ "${#machine[@]}" -eq 0 ] || kill "${machine[@]}" 2>/dev/null || true
  machine=()
}

# The machine runs on this computer as well, and a gap in it is told by the programme.
measured_off_tape() {
  for _ in 1 2 3; do
    capture --force --out "$scratch/tape.wav" --mode off-tape 2>"$scratch/message" || break
    if ! grep -q '^Mind:' "$scratch/message"; then
      "$root/offtape" measure "$scratch/tape.wav" --programme "$scratch/programme" --mode off-tape --force \
        --out "$scratch/tape" --quiet && node "$here/offtape.mjs" "$scratch/tape/results.json"
      return
    fi
  done
  sed 's/^/    /' "$scratch/message"
  return 1
}

# Starts the server $1 with $2 channels; from now on it is the one that is used.
start_server() {
  server=$scratch/$1
  "$here/loopback.sh" start "$server" "$2"
  export PULSE_SERVER=unix:$server/socket
}

listed_by_portaudio() {
  "$root/offtape" devices --json | node -e '
    const { devices } = JSON.parse(require("fs").readFileSync(0, "utf8"));
    const opens = (side) => side?.sampleRatesHz.includes(48000) && side.channels >= 8;
    process.exit(devices.some((d) => d.layer === "portaudio" && opens(d.playback) && opens(d.capture)) ? 0 : 1);'
}

"$root/offtape" prepare --short --quiet --out "$scratch/programme"
start_server loop 2
export HOME=$scratch XDG_RUNTIME_DIR=$scratch

play_and_record "$scratch/exact.wav" 120
check "an exact path is measured" measure exact
check "an exact path reads as exact" \
  node "$here/exact.mjs" "$scratch/exact/results.json" "$scratch/exact.wav" "$scratch/programme/programme.wav"

export ALSA_CONFIG_PATH=$scratch/alsa.conf
use_path loop loop.monitor
check "devices are listed" devices_are_listed
check "a line-up reads an exact path" a_line_up_reads_an_exact_path
check "the programme is played, recorded and measured" \
  undisturbed_capture --out "$scratch/captured.wav" --mode loopback --measure "$scratch/captured"
check "not a sample is lost between player and recorder" \
  node "$here/exact.mjs" "$scratch/captured/results.json" "$scratch/captured.wav" "$scratch/programme/programme.wav"
check "stems come back to the bit" stems_come_back
check "a path at another rate is read" a_path_at_another_rate_is_read
check "a recording that fills the disk is kept" a_full_disk_keeps_what_was_recorded
check "an interrupted recording is kept" interrupted_keeps_what_was_recorded java
check "a killed recording is kept" killed_keeps_what_was_recorded

mkfifo "$scratch/heads-in" "$scratch/heads-out"
start_machine
use_path loop tape.monitor
check "a machine with three heads is measured" measured_off_tape
check "its levels are read live" the_machine_is_lined_up
check "stems come back off its tape" stems_come_back_off_tape
stop_machine
use_path loop loop.monitor

pactl set-sink-volume loop -6dB
play_and_record "$scratch/lower.wav" 120
check "a path 6 dB down is measured" measure lower
check "a path 6 dB down reads as exact but for its level" \
  node "$here/exact.mjs" "$scratch/lower/results.json"

pactl set-sink-mute loop 1
play_and_record "$scratch/mute.wav" 8
check "silence is refused" nothing_is_found_in_silence

check "a lost device is told" a_lost_device_is_told java

start_server wide 8
use_path loop loop.monitor
check "a pair other than the first is played and recorded" another_pair java
if compgen -G '/usr/lib/*/libportaudio.so.2' >/dev/null; then
  check "PortAudio's devices are listed" listed_by_portaudio
  check "PortAudio plays and records a pair other than the first" another_pair portaudio
  check "PortAudio's recording is kept when interrupted" interrupted_keeps_what_was_recorded portaudio
  check "PortAudio's lost device is told" a_lost_device_is_told portaudio
else
  echo "skipped: PortAudio, since its library is not installed (libportaudio2)"
fi

echo "sound: $passed passed, $failed failed"
[ "$failed" -eq 0 ]
