#!/bin/sh
# SPDX-License-Identifier: MIT
# Writes the papers of the bench of two routes, and a case for a committee, as pages: sh make_papers.sh PROGRAM FOLDER
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
"$program" term examples/course.json --replace 5=routes/4-bromoacetanilide/A1.json --case \
    --output "$folder/committee-case.html"
