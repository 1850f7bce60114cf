#!/bin/sh
# The example cart, worked out and drawn: sh scripts/demo.sh BIN FOLDER
set -eu
run="$1/curbwright"
folder=$2

echo "== Copying the example cart to $folder/cart.toml"
rm -rf "$folder"
"$run" new "$folder" --like flatbread >/dev/null

# The answers as data first: Python leaves with 1 when it crashes too, and only a whole answer counts as one.
status=0
"$run" check "$folder/cart.toml" --json >"$folder/check.json" || status=$?
if [ "$status" -gt 1 ] || ! "$1/python" -m json.tool "$folder/check.json" >/dev/null 2>&1; then
  echo "The check did not come to an end (exit code $status): a fault of the program, not of the cart." >&2
  exit 3
fi

echo "== curbwright check $folder/cart.toml"
echo
"$run" check "$folder/cart.toml" || [ $? -eq "$status" ]
echo
if [ "$status" -eq 1 ]; then
  echo "== Exit code 1: something in the example fails. That is the check's answer, not an error."
fi

echo "== curbwright draw $folder/cart.toml -o $folder/drawings"
"$run" draw "$folder/cart.toml" -o "$folder/drawings"
echo
echo "== Done. The same answers as data: $folder/check.json. Drawings: $folder/drawings"
echo "   Your own cart:  $run new my-cart && $run check my-cart/cart.toml"
