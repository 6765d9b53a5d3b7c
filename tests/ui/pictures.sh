#!/bin/sh
# Takes pictures of every step from the real program, light and dark, 1280x800 and 1920x1080.
# usage: sh tests/ui/pictures.sh [FOLDER]     needs xvfb, imagemagick, and a built preset "release"
set -eu
top=$(cd "$(dirname "$0")/../.." && pwd)
out=${1:-$top/docs}
programs=$top/build/release/app
work=$(mktemp -d)
trap 'rm -rf "$work"; [ -z "${screen:-}" ] || kill "$screen" 2>/dev/null' EXIT
mkdir -p "$out"
export XDG_CONFIG_HOME="$work" QT_QPA_PLATFORM=xcb
"$programs/fettle-batch" import "$top/demo-sessions/wagtail/wagtail.json" "$work/demo.fettle" >/dev/null
for size in 1280x800 1920x1080; do
  : >"$work/display"
  Xvfb -displayfd 3 -screen 0 "${size}x24" 3>"$work/display" 2>/dev/null &
  screen=$!
  until [ -s "$work/display" ]; do kill -0 "$screen" || exit 1; sleep 0.1; done  # the screen is there when its number is
  DISPLAY=:$(cat "$work/display")
  export DISPLAY
  for look in light dark; do
    for step in $("$programs/fettle-batch" describe | grep -o '"step": *"[a-z-]*"' | cut -d'"' -f4); do
      "$programs/fettle" --look "$look" --step "$step" --size "$size" "$work/demo.fettle" &
      program=$!
      sleep "${FETTLE_PICTURE_WAIT:-3}"
      name=$step-$look
      [ "$size" = 1280x800 ] || name=$name-$size
      import -window root "$out/$name.png"
      kill "$program"
      wait "$program" 2>/dev/null || true
    done
  done
  kill "$screen"
  wait "$screen" 2>/dev/null || true
done
