#!/bin/sh
# SPDX-License-Identifier: MIT
# Writes the papers of the bench of two routes, of a term, and cases for a committee, as pages: sh make_papers.sh PROGRAM FOLDER
set -eu
program=$1
folder=$2
mkdir -p "$folder"
for route in 4-bromoacetanilide/A3 5-5-diphenylhydantoin/D1a-D2c-D3a; do
    name=$(basename "$route")
    file=routes/$route.json
    "$program" bench-sheet "$file" --output "$folder/$name-sheet.html"
    "$program" bench-sheet "$file" --edition key --output "$folder/$name-key.html"
    "$program" questions "$file" --output "$folder/$name-questions.html"
    "$program" questions "$file" --key --output "$folder/$name-answers.html"
    "$program" talk-card "$file" --output "$folder/$name-card.html"
    "$program" stock "$file" --students 24 --output "$folder/$name-stock.html"
done
"$program" term examples/course.json --output "$folder/term.html"
"$program" costs routes/4-bromoacetanilide/A3.json --students 24 --prices examples/prices.json \
    --output "$folder/A3-costs.html"
"$program" waste routes/4-bromoacetanilide/A3.json --output "$folder/A3-waste.html"
"$program" results routes/4-bromoacetanilide/A3.json examples/class-results.csv --output "$folder/A3-results.html"
"$program" binder examples/course.json --into "$folder/binder" >"$folder/binder.txt"
cp "$folder/binder/index.html" "$folder/binder-index.html"
# Cases on one page: another route to the same product, another number of steps, another product.
for case in 5=4-bromoacetanilide/A1 5=4-bromoacetanilide/A4 10=adipic-acid/E1 10=adipic-acid/E2 \
    3=4-chloro-4-methoxychalcone/convergent 8=5-5-diphenylhydantoin/D1a-D2c-D3a; do
    "$program" term examples/course.json --replace "${case%%=*}=routes/${case#*=}.json" --case \
        --output "$folder/case-$(basename "$case").html"
done
