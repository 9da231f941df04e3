#!/usr/bin/env bash
# Prints the ALSA settings by which Java and PortAudio reach the sound server of $PULSE_SERVER and nothing of the
# user's. Usage: alsa.sh SINK SOURCE. PortAudio lists only what has a hint.
set -euo pipefail

cat <<ALSA
pcm.!default {
  type asym
  playback.pcm { type pulse server "$PULSE_SERVER" device "$1" }
  capture.pcm { type pulse server "$PULSE_SERVER" device "$2" }
  hint { show on description "loopback" }
}
ctl.!default { type pulse server "$PULSE_SERVER" }
ALSA
