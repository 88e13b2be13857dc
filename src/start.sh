#!/usr/bin/env bash
# Starts PressRun with a database of its own and the sample press, and prints its address. docs/operating.md has the settings.
set -euo pipefail
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
. "$root/src/needs.sh"

need_dotnet
[ -n "${ConnectionStrings__PressRun:-}${ConnectionStrings__PressRun_FILE:-}" ] || need_postgresql
export PressRun__Sample="${PressRun__Sample:-true}"

# Single-user mode where only this machine reaches the address; elsewhere people sign in.
only_this_machine() {
  local address
  for address in $(tr ';' ' ' <<<"${ASPNETCORE_URLS:-}"); do
    [[ $address =~ ^https?://(127\.[0-9.]+|localhost|\[::1\])(:[0-9]+)?/?$ ]] || return 1
  done
}
[ -n "${PressRun__SignIn:-}" ] || ! only_this_machine || export PressRun__SignIn=off

say "Building ..."
app=$root/artifacts/app
(cd "$root" && dotnet publish src/PressRun.Web -c Release -o "$app" --nologo -v quiet) >&2 || fail "The build failed."
exec dotnet "$app/PressRun.Web.dll" "$@"
