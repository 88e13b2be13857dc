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

passed=0 failed=0 skipped=0
output=$(mktemp)
trap 'rm -f "$output"' EXIT
count() { sed -n "s/^ *$1: \([0-9][0-9]*\)\$/\1/p" "$output" | tail -1; }
for project in tests/*.Tests; do
  name=$(basename "$project")
  printf '\n== %s\n' "$name"
  dotnet run --no-build --project "$project" -- --progress off --no-ansi 2>&1 | tee "$output"
  status=${PIPESTATUS[0]}
  passed=$((passed + $(count succeeded || true) + 0))
  skipped=$((skipped + $(count skipped || true) + 0))
  failures=$(count failed)
  # A run that broke off, or found no test at all, is a failure even where no test says so.
  if [ "$status" != 0 ] && [ "${failures:-0}" = 0 ]; then
    failures=1
    printf '%s ended with status %s\n' "$name" "$status"
  fi
  failed=$((failed + ${failures:-0}))
done

printf '\n%s passed, %s failed, %s skipped\n' "$passed" "$failed" "$skipped"
[ "$failed" = 0 ]
