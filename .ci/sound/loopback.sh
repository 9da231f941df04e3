#!/usr/bin/env bash
# A sound path without a sound card: a PulseAudio daemon of our own with one null sink, whose monitor gives back
# exactly what is played into it.
#   loopback.sh start FOLDER [CHANNELS]   starts the daemon; FOLDER is empty or new, and holds all that it writes;
#                                         the sink has two channels, or 4, 6 or 8
#   loopback.sh stop FOLDER               stops it
# Clients reach it with PULSE_SERVER=unix:FOLDER/socket. It needs neither D-Bus nor a configuration of the user's.
set -euo pipefail

usage() {
  echo "usage: loopback.sh start FOLDER [2|4|6|8], or stop FOLDER" >&2
  exit 2
}

# The process number in the file, if that process is still the daemon started here.
daemon() {
  local pid
  pid=$(cat "$folder/pid" 2>/dev/null) || return 1
  tr '\0' ' ' 2>/dev/null <"/proc/$pid/cmdline" | grep -qF -- "$folder/modules" && printf '%s\n' "$pid"
}

# Channels are matched by name, not by number, so they have those that ALSA gives them, in its order.
channel_map() {
  local names=(front-left front-right rear-left rear-right front-center lfe side-left side-right)
  local IFS=,
  printf '%s\n' "${names[*]:0:channels}"
}

# norewinds: otherwise the sink renders the start of each stream again after its monitor has handed silence out.
write_modules() {
  cat >"$folder/modules" <<MODULES
.fail
load-module module-native-protocol-unix socket=$folder/socket auth-anonymous=1 auth-cookie-enabled=0
load-module module-null-sink sink_name=loop rate=44100 format=s32le channels=$channels channel_map=$(channel_map) norewinds=1
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

[ $# -eq 2 ] || { [ $# -eq 3 ] && [ "$1" = start ]; } || usage
folder=$2
channels=${3:-2}
case $channels in 2 | 4 | 6 | 8) ;; *) usage ;; esac
case $1 in
  start) start ;;
  stop) stop ;;
  *) usage ;;
esac
