#!/usr/bin/env bash
# A day for three buildings: take in, work out, ask, accept one finding, print what each of them needs.
# Usage: day.sh FOLDER-WITH-WORKBOOKS FOLDER-FOR-THE-PAGES
set -euo pipefail
in=$1 out=$2
mkdir -p "$out"
export HWSCHED_PROJECT=$out/day.hwsched

hwsched project new -q --name "A day" --bare-unit in
hwsched parts import -q "$in/catalogue.xlsx"
# What was refused goes back to the surveyor, cell by cell; the rest is taken in (status 1: not all of it).
{ hwsched survey import "$in/survey.xlsx" --accept good-rows --json || [ $? = 1 ]; } |
    jq -r '.problems[] | [.file, .sheet, .cell, .read, .message] | @csv' >"$out/refused.csv"
hwsched power import -q "$in/power.xlsx"

# One finding that somebody answers for, at the first opening that has it, in the same step as the fit.
hwsched opening fit -q
rule=known-before-order
mark=$(hwsched findings list findings --json | jq -r --arg rule "$rule" 'first(.result.rows[] | select(.rule == $rule)).mark')
jq -nc --arg rule "$rule" --arg mark "$mark" '
    {verb: "findings waive", rule: $rule, mark: $mark, person: "A. Marsh", reason: "measured on Friday"},
    {verb: "opening fit"}' | hwsched project batch -q -

# Each building gets its pages when none of its openings is in error; the others get the list of what to cure.
hwsched survey list buildings --json | jq -r '[.result.rows[].building] | unique | .[]' | while IFS= read -r building; do
    status=0
    hwsched findings check --building "$building" --fail-on error --json >"$out/check.json" || status=$?
    case $status in
        0) hwsched release print -q pick-list --building "$building" -o "$out/$building" ;;
        1 | 5) jq -r '(.result.findings[] | select(.severity == "error" and (.waived | not)) | [.mark, .rule, .message]),
            (.result.supply_findings[] | select(.severity == "error" and (.waived | not)) | [.supply, .rule, .message]),
            (.result.not_judged[] | [.mark, "not judged", .why]),
            (.result.supplies_not_judged[] | [.supply, "not judged", .reasons[0].message]) | @csv' "$out/check.json" >"$out/$building.csv" ;;
        *) jq -r '.problems[].message' "$out/check.json" >&2; exit "$status" ;;
    esac
done
# What the warehouse has to have, all places together, and how many steps the day took.
hwsched release list pick-lines --json |
    jq '[.result.rows | group_by(.part)[] | {part: .[0].part, quantity: (map(.quantity) | add)}]' >"$out/to-pick.json"
hwsched project list change-sets --json | jq '.result.row_count'
