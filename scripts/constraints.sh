#!/bin/sh
# Write constraints.txt: the newest version of everything the project and its tests need, as pip chooses today.
# Run it with the oldest Python the project supports, so that every newer one finds these versions too.
# Only versions that come ready built are chosen: a clean machine has no compiler.
set -eu
cd "$(dirname "$0")/.."
python=${1:-python3}
place=$(mktemp -d)
trap 'rm -rf "$place"' EXIT
echo "== Installing the newest of everything into a venv of its own (a few minutes)"
"$python" -m venv "$place/venv"
pip="$place/venv/bin/python -m pip --disable-pip-version-check"
# A copy is installed, so that nothing is built inside the tree.
cp -R pyproject.toml README.md LICENSE src "$place"
$pip install --quiet --quiet hatchling editables
$pip install --quiet --quiet --only-binary :all: --no-build-isolation "$place[test]"
{
  echo "# Exact versions of everything the project and its tests need; written by: make constraints"
  echo "# Resolved with $("$python" --version) on $(uname -s)."
  $pip freeze --exclude curbwright --exclude pip --exclude setuptools
} >"$place/constraints.txt"
if grep -n '[@/:]' "$place/constraints.txt" | grep -v ':#'; then
  echo "The lines above name a place, not a version; constraints.txt is left as it was." >&2
  exit 1
fi
mv "$place/constraints.txt" constraints.txt
echo "== constraints.txt: $(grep -c == constraints.txt) versions"
