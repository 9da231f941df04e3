#!/usr/bin/env bash
# Kills measuring, comparing, transferring and capturing commands at random moments and looks at what is left: earlier
# results as they were, nothing half under a final name, and the next run goes through.
# Usage: test.sh [KILLS [SEED]]: 8 kills by default, spread over the four commands; 120 take some eight minutes.
set -euo pipefail

here=$(cd -P -- "$(dirname -- "${BASH_SOURCE[0]}")" && pwd)
root=$(dirname -- "$(dirname -- "$here")")
scratch=$(mktemp -d "${TMPDIR:-/tmp}/offtape-kill.XXXXXX")
trial=

# shellcheck disable=SC2317  # called by the trap
clean_up() {
  if [ -n "$trial" ] && kill -TERM "$trial" 2>/dev/null; then
    wait "$trial" || true
  fi
  "$root/.ci/sound/loopback.sh" stop "$scratch/loop" || true
  rm -rf -- "$scratch"
}
trap clean_up EXIT
trap 'exit 143' TERM INT HUP

has() {
  local tool
  for tool in "$@"; do
    command -v "$tool" >/dev/null || return
  done
}

with=()
if has pulseaudio pactl && compgen -G '/usr/lib/*/alsa-lib/libasound_module_pcm_pulse.so' >/dev/null; then
  "$root/.ci/sound/loopback.sh" start "$scratch/loop"
  export PULSE_SERVER=unix:$scratch/loop/socket ALSA_CONFIG_PATH=$scratch/alsa.conf
  "$root/.ci/sound/alsa.sh" loop loop.monitor >"$ALSA_CONFIG_PATH"
  with=(sound)
else
  echo "skipped: transfer and capture, since there is no sound server or ALSA has no way to it"
fi
"$root/offtape" prepare --short --quiet --out "$scratch/short"
export HOME=$scratch XDG_RUNTIME_DIR=$scratch
node "$here/material.mjs" "$scratch/short" "$scratch/material"
node "$here/trial.mjs" "$root/offtape" "$scratch/material" "${1:-8}" "${2:-1}" "${with[@]}" &
trial=$!
code=0
wait "$trial" || code=$?
trial=
exit "$code"
