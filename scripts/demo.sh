#!/bin/sh
# The example cart, worked out and drawn: sh scripts/demo.sh BIN FOLDER
set -eu
run="$1/curbwright"
folder=$2

echo "== Copying the example cart to $folder/cart.toml"
rm -rf "$folder"
"$run" new "$folder" --like flatbread >/dev/null

echo "== curbwright check $folder/cart.toml"
echo
status=0
"$run" check "$folder/cart.toml" || status=$?
echo
json=0
"$run" check "$folder/cart.toml" --json >"$folder/check.json" || json=$?

# A crash of Python also leaves with 1; only a whole answer counts as one.
if [ "$status" -gt 1 ] || [ "$json" -ne "$status" ] ||
  ! "$1/python" -c 'import json, sys; json.load(open(sys.argv[1], encoding="utf-8"))' "$folder/check.json"; then
  echo "The check did not come to an end (exit codes $status and $json): this is a fault of the program." >&2
  exit 3
fi
if [ "$status" -eq 1 ]; then
  echo "== Exit code 1: something in the example fails. That is the check's answer, not an error."
fi

echo "== curbwright draw $folder/cart.toml -o $folder/drawings"
"$run" draw "$folder/cart.toml" -o "$folder/drawings"
echo
echo "== Done. The same answers as data: $folder/check.json. Drawings: $folder/drawings"
echo "   Your own cart:  $run new my-cart && $run check my-cart/cart.toml"
