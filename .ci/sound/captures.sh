#!/usr/bin/env bash
# Captures the short programme COUNT times (20 unless given) through a loopback of its own and prints the figures.
# Usage: captures.sh [COUNT [more words for capture]]. Takes a minute and a quarter each.
set -euo pipefail

here=$(cd -P -- "$(dirname -- "${BASH_SOURCE[0]}")" && pwd)
root=$(dirname -- "$(dirname -- "$here")")
scratch=$(mktemp -d "${TMPDIR:-/tmp}/offtape-captures.XXXXXX")

# shellcheck disable=SC2317  # called by the trap
clean_up() {
  "$here/loopback.sh" stop "$scratch/loop" || true
  rm -rf -- "$scratch"
}
trap clean_up EXIT
trap 'exit 143' TERM INT HUP

"$root/offtape" prepare --short --quiet --out "$scratch/programme"
"$here/loopback.sh" start "$scratch/loop"
export PULSE_SERVER=unix:$scratch/loop/socket HOME=$scratch XDG_RUNTIME_DIR=$scratch ALSA_CONFIG_PATH=$scratch/alsa.conf
"$here/alsa.sh" loop loop.monitor >"$ALSA_CONFIG_PATH"
node "$here/captures.mjs" "$root/offtape" "$scratch/programme" "$scratch" "${1:-20}" "${@:2}"
