#!/usr/bin/env bash
# Builds the image for this platform, unpacks it and runs it in a root folder that holds a shell, the C library and what
# else the Java machine itself is linked with: no Java, no fonts. The demo has to give there what it gives in the
# checkout. Usage: .ci/dist/test.sh [DEMO], where DEMO is what "./offtape demo" wrote; without it the demo is run.
# Needs root or user namespaces; installs nothing. Manual pages are checked where mandoc or man is installed.
set -euo pipefail

cd -P -- "$(dirname -- "${BASH_SOURCE[0]}")/../.."
export LC_ALL=C.UTF-8
work=$(mktemp -d "${TMPDIR:-/tmp}/offtape-dist.XXXXXX")
trap 'rm -rf -- "$work"' EXIT
trap 'exit 143' TERM INT HUP
passed=0
failed=0
largest=90000000

# Whether what is said holds: the command behind the words ends well.
tell() {
  local words=$1
  shift
  if "$@" >"$work/said" 2>&1; then
    passed=$((passed + 1))
    echo "ok: $words"
  else
    failed=$((failed + 1))
    echo "not ok: $words"
    tail -n 20 "$work/said" | sed 's/^/    /'
  fi
}

# A command line in the bare root, in the folder /place with a space in its name, with nothing of our environment.
inside() {
  local options=(--mount --pid --fork)
  [ "$(id -u)" -eq 0 ] || options+=(--user --map-root-user)
  # Java finds its own libraries by /proc.
  # shellcheck disable=SC2016  # the inner shell's own words
  unshare "${options[@]}" sh -c 'mount -t proc proc "$1/proc" && exec chroot "$1" /bin/env -i PATH=/bin /bin/sh -c "cd \"/my place\" && $2"' \
    sh "$root" "$1"
}

# A program and what it is linked with, at the same place in the bare root; $2 is where it goes.
bring() {
  mkdir -p -- "$root${2%/*}"
  cp -L -- "$1" "$root$2"
  linked "$1"
}

linked() {
  local file
  ldd "$@" | awk '$2 == "=>" && $3 ~ /^\// { print $3 } $1 ~ /^\// && $2 ~ /^\(0x/ { print $1 }' |
    grep -vF -- "$root/" | sort -u >"$work/linked"
  while read -r file; do
    mkdir -p -- "$root${file%/*}"
    cp -L -- "$file" "$root$file"
  done <"$work/linked"
}

# The same but for moments, and for the digests in the lists of files that hang on them.
same_outputs() {
  diff <(plain "$1") <(plain "$2")
}

plain() {
  (
    cd -- "$1"
    find . -type f ! -name .offtape-manifest.json | sort | while read -r file; do
      case $file in
        *.html | */results.json)
          printf '%s ' "$file"
          sed -E -e 's/"madeAt" : "[^"]*"//' -e 's/[0-9]+ [A-Z][a-z]+ 20[0-9]{2}, [0-9]{2}:[0-9]{2} UTC//g' -- "$file" | cksum
          ;;
        *) cksum -- "$file" ;;
      esac
    done
  )
}

# The first example of a command's help, its continued lines joined.
example() {
  inside "offtape $1 --help" | sed -n -e '/^Example: /{' -e ':more' -e '/\\$/{' -e N -e b\ more -e '}' \
    -e 's/\\\n *//g' -e 's/^Example: //p' -e q -e '}'
}

small_enough() {
  local bytes
  bytes=$(find "$image" -type f -printf '%s\n' | awk '{ sum += $1 } END { print sum }')
  echo "$bytes bytes"
  [ "$bytes" -lt "$largest" ]
}

# Whether the bare root holds no Java but the image's own.
alone() {
  ! find "$root" -path "$image" -prune -o -name '*java*' -print | grep .
}

says() {
  local wanted=$1
  shift
  "$@" 2>&1 | grep -F -- "$wanted"
}

# The exit code, and what is said with it.
ends_with() {
  local code=0 wanted=$1 words=$2
  shift 2
  "$@" >"$work/heard" 2>&1 || code=$?
  cat -- "$work/heard"
  [ "$code" -eq "$wanted" ] && grep -qF -- "$words" "$work/heard"
}

completes() {
  bash -c 'source "$1"; COMP_WORDS=(offtape mea); COMP_CWORD=1; _complete_offtape; [ "${COMPREPLY[*]}" = measure ]' \
    bash "$image/share/bash-completion/completions/offtape"
}

manual() {
  if command -v mandoc >/dev/null; then
    mandoc -Tlint -Wwarning "$image"/share/man/man1/*.1
  elif command -v man >/dev/null; then
    for page in "$image"/share/man/man1/*.1; do
      [ -z "$(man --warnings -E UTF-8 -l "$page" 2>&1 >/dev/null)" ] || return 1
    done
  else
    echo "neither mandoc nor man is here"
  fi
}

# Milliseconds of a start, the middle one of nine.
start() {
  local begun
  for _ in 1 2 3 4 5 6 7 8 9; do
    begun=$(date +%s%N)
    "$@" >/dev/null
    echo $((($(date +%s%N) - begun) / 1000000))
  done | sort -n | sed -n 5p
}

mvn -B -q -Pdist verify -DskipTests -Djacoco.skip=true -Dspotless.check.skip=true -Dcyclonedx.skip=true
packed=$(ls lab-cli/target/dist/*.tar.gz)
root=$work/root
mkdir -p -- "$root/my place" "$root/proc" "$root/tmp" "$root/opt/a folder"
tar -xzf "$packed" -C "$root/opt/a folder"
name=$(basename -- "$packed" .tar.gz)
image="$root/opt/a folder/$name"
for program in sh env readlink; do
  bring "$(command -v "$program")" "/bin/$program"
done
linked "$image/runtime/bin/java" "$image"/runtime/lib/server/libjvm.so \
  "$image"/runtime/lib/lib{jli,java,jimage,zip,net,nio,verify}.so
ln -s "../opt/a folder/$name/bin/offtape" "$root/bin/offtape"
version=$(./offtape --version)

tell "unpacked it takes less than $largest bytes" small_enough
tell "there is no Java beside it" alone
tell "it starts by a link, from a folder with a space" says "$version" inside "offtape --version"
tell "it starts by its own path" says "$version" inside "'/opt/a folder/$name/bin/offtape' --version"
tell "further options of Java count" says "Max. Heap Size: 300.00M" \
  inside "OFFTAPE_JAVA_OPTS='-Xmx300m -XshowSettings:vm' offtape --version"
tell "the archive of classes is used where it was unpacked" \
  inside "OFFTAPE_JAVA_OPTS=-Xshare:on offtape --version"
tell "a wrong word ends with 2" ends_with 2 "There is no command" inside "offtape nonsense"
tell "where there is no sound this is said" says "No sound device was found" inside "offtape devices"

demo=${1:-}
if [ -z "$demo" ]; then
  demo=$work/demo
  ./offtape demo --quiet --out "$demo" >/dev/null
fi
tell "the demo runs" inside "offtape demo --quiet --out demo"
tell "the demo gives what it gives in the checkout" same_outputs "$demo" "$root/my place/demo"

(
  cd -- "$root/my place"
  ln -s demo/programme programme
  ln -s demo/before before
  ln -s demo/after after
  ln -s demo/before session
  ln -s demo/before-return.wav tone.wav
  ln -s demo/before-machine.json machine.json
)
for command in speed compare faults correct completion; do
  line=$(example "$command")
  tell "the example works: $line" inside "$line"
done

tell "bash completes" completes
tell "the manual has no warnings" manual
tell "licences are there" test -s "$image/LICENSE" -a -s "$image/THIRD-PARTY.txt" -a -s "$image/runtime/legal/java.base/LICENSE"

echo "start of --version: image $(start "$image/bin/offtape" --version) ms, checkout $(start ./offtape --version) ms"
echo "dist: $passed passed, $failed failed"
[ "$failed" -eq 0 ]
