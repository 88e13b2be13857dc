#!/usr/bin/env bash
# Finds or installs what the tests need, builds once, runs every test project and ends with: N passed, N failed, N skipped
set -uo pipefail
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
. "$root/src/needs.sh"
cd "$root" || exit 1

need_dotnet
need_postgresql
need_chromium
dotnet build PressRun.sln --nologo -v quiet || fail "The build failed."
dotnet format whitespace . --folder --verify-no-changes || fail "Spaces or lines are not as .editorconfig says; this sets them: dotnet format whitespace . --folder"

results=$(mktemp -d)
trap 'rm -rf "$results"' EXIT
run() {
  local name
  name=$(basename "$1")
  dotnet run --no-build --project "$1" -- --progress off --no-ansi --results-directory "$results" --report-xunit-trx --report-xunit-trx-filename "$name.trx" 2>&1 | tee "$results/$name"
  echo "${PIPESTATUS[0]}" >"$results/$name.status"
}

# The app starts dozens of times and lives for seconds: what watches it so as to make it faster later costs more than it brings.
export DOTNET_TieredPGO=0
# Their databases lie in memory where there is enough of it: nothing of them outlives the run, and a slow disk would make up most of it.
memory=$(df --output=avail -k /dev/shm 2>/dev/null | tail -1)
[ "${memory:-0}" -ge $((6 * 1024 * 1024)) ] && [ -w /dev/shm ] && export TEST_DATABASES_IN=/dev/shm
# The browser's tests wait for pages most of their time; the others run beside them, one after another.
run tests/PressRun.Browser.Tests &
for project in tests/*.Tests; do
  [ "$project" = tests/PressRun.Browser.Tests ] || run "$project"
done
wait

passed=0 failed=0 skipped=0
for project in tests/*.Tests; do
  name=$(basename "$project")
  output=$results/$name
  count() { sed -n "s/^ *$1: \([0-9][0-9]*\)\$/\1/p" "$output" | tail -1; }
  passed=$((passed + $(count succeeded || true) + 0))
  skipped=$((skipped + $(count skipped || true) + 0))
  failures=$(count failed)
  # A run that broke off, or found no test at all, is a failure even where no test says so.
  status=$(cat "$output.status")
  if [ "$status" != 0 ] && [ "${failures:-0}" = 0 ]; then
    failures=1
    printf '%s ended with status %s\n' "$name" "$status"
  fi
  failed=$((failed + ${failures:-0}))
done

printf '\nWhat took longest, in minutes and seconds:\n'
grep -oh '<UnitTestResult [^>]*' "$results"/*.trx | sed -n 's/.*testName="\([^"]*\)".* duration="..:\([0-9]*:[0-9]*\).*/\2 \1/p' | sort -r | sed 12q
printf '\n%s passed, %s failed, %s skipped\n' "$passed" "$failed" "$skipped"
[ "$failed" = 0 ]
