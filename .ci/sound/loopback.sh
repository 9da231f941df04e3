#!/usr/bin/env bash
# A sound path without a sound card: a PulseAudio daemon of our own with one null sink, whose monitor gives back
# exactly what is played into it.
#   loopback.sh start FOLDER   starts the daemon; FOLDER is empty or new, and holds all that it writes
#   loopback.sh stop FOLDER    stops it
# Clients reach it with PULSE_SERVER=unix:FOLDER/socket. It needs neither D-Bus nor a configuration of the user's.
set -euo pipefail

usage() {
  echo "usage: loopback.sh start|stop FOLDER" >&2
  exit 2
}

# The process number in the file, if that process is still the daemon started here.
daemon() {
  local pid
  pid=$(cat "$folder/pid" 2>/dev/null) || return 1
  tr '\0' ' ' <"/proc/$pid/cmdline" 2>/dev/null | grep -qF -- "$folder/modules" && printf '%s\n' "$pid"
}

# norewinds: otherwise the sink renders the start of each stream again after its monitor has handed silence out.
write_modules() {
  cat >"$folder/modules" <<MODULES
.fail
load-module module-native-protocol-unix socket=$folder/socket auth-anonymous=1 auth-cookie-enabled=0
load-module module-null-sink sink_name=loop rate=44100 format=s32le channels=2 channel_map=front-left,front-right norewinds=1
set-default-sink loop
set-default-source loop.monitor
MODULES
}

# With avoid-resampling the idle sink takes on each client's rate, but 44100 only if it was loaded so.
write_settings() {
  cat >"$folder/settings" <<SETTINGS
exit-idle-time = -1
flat-volumes = no
enable-remixing = no
enable-deferred-volume = no
avoid-resampling = yes
default-sample-rate = 44100
alternate-sample-rate = 48000
SETTINGS
}

start() {
  mkdir -p "$folder"
  chmod 700 "$folder"
  write_modules
  write_settings
  env -u DISPLAY -u PULSE_SERVER HOME="$folder" XDG_RUNTIME_DIR="$folder" XDG_CONFIG_HOME="$folder" \
    PULSE_RUNTIME_PATH="$folder/run" PULSE_STATE_PATH="$folder/state" PULSE_CONFIG="$folder/settings" \
    DBUS_SESSION_BUS_ADDRESS=unix:path=/nonexistent \
    pulseaudio -n -F "$folder/modules" --daemonize=no --use-pid-file=no --disallow-exit=yes --exit-idle-time=-1 \
    --log-level=notice --log-target=stderr </dev/null >"$folder/log" 2>&1 &
  echo $! >"$folder/pid"
  for _ in $(seq 100); do
    if PULSE_SERVER=unix:$folder/socket pactl list short sources 2>/dev/null | grep -q 'loop\.monitor'; then
      return
    fi
    sleep 0.1
  done
  stop
  echo "The loopback did not start within 10 s:" >&2
  tail -n 5 "$folder/log" >&2
  exit 1
}

stop() {
  local pid
  pid=$(daemon) || return 0
  kill -TERM "$pid"
  for _ in $(seq 50); do
    daemon >/dev/null || return 0
    sleep 0.1
  done
  kill -KILL "$pid"
}

[ $# -eq 2 ] || usage
folder=$2
case $1 in
  start) start ;;
  stop) stop ;;
  *) usage ;;
esac
