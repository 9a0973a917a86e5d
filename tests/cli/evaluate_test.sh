#!/usr/bin/env bash
# The program `evaluate` as its users see it: what it prints, says and returns.
#
#   tests/cli/evaluate_test.sh [PROGRAM]     else OVERWATER_EVALUATE, else the native build
set -u
cd "$(dirname "$0")/../.." || exit 1
program=${1:-${OVERWATER_EVALUATE:-build/native/core/evaluate}}
demo=assets/demo/record_a.json
passed=0 failed=0
folder=$(mktemp -d) && trap 'rm -rf "$folder"' EXIT

check() { # name, command...
    local name=$1
    shift
    if "$@"; then passed=$((passed + 1)); else failed=$((failed + 1)) && echo "FAILED: $name"; fi
}
run() { # what stands on standard input, arguments -> out, err, code
    local input=$1
    shift
    printf '%s' "$input" | "$program" "$@" >"$folder/out" 2>"$folder/err"
    code=$?
}
# expect NAME PYTHON: an expression over `out` (the JSON printed), `lines` (one for each line), `err`, `code`.
expect() {
    check "$1" /usr/bin/python3 -B -c '
import json, sys
folder, code, expression = sys.argv[1], int(sys.argv[2]), sys.argv[3]
text, err = (open(f"{folder}/{name}", encoding="utf-8").read() for name in ("out", "err"))
def loaded(text):
    try: return json.loads(text)
    except ValueError: return None
out, lines = loaded(text), [loaded(line) for line in text.splitlines()]
def shown(output, run=0): return out["runs"][run]["outputs"][output]["value"]
sys.exit(0 if eval(f"({expression})") else 1)' "$folder" "$code" "$2"
}

# Record A: computed elsewhere, with the vapour pressure of IAPWS-IF97 and the density formula of the CIPM; to the
# digits printed there.
run "" $demo
expect "a record gives code 0 and says nothing" 'code == 0 and err == ""'
while read -r output digits value; do
    expect "record A: $output" "round(shown('$output'), $digits) == $value"
done <<'END'
gas_volume 2 43.20
absolute_temperature 2 294.55
water_vapour_pressure 5 2.54994
water_density 3 997.907
column_pressure 5 1.09605
dry_gas_pressure 4 95.9740
amount_of_metal 5 1.69512
amount_of_gas 5 1.69512
molar_volume_bench 4 25.4849
dry_gas_at_barometer 4 24.5521
gas_constant 5 8.30380
molar_volume_standard 4 22.6818
percent_error 3 -0.128
accepted_value 4 22.7110
volume_at_standard 2 38.45
amount_by_volume 4 1.6930
molar_mass_found 2 24.34
purity_found 2 99.87
END
expect "record A: the wrong way" \
    "round(out['runs'][0]['other_ways']['wrong_way']['molar_volume_standard']['value'], 3) == 6.038"
expect "record A: SI" "abs(out['runs'][0]['outputs']['percent_error']['si'] + 0.00128) < 5e-6"
expect "conventions stand in the outcome" "out['conventions']['standard'] == '0C_100kPa'"

sed 's/0C_100kPa/0C_1atm/' $demo >"$folder/atm.json"
run "" "$folder/atm.json"
expect "record A at 1 atm" "round(shown('molar_volume_standard'), 4) == 22.3852"

run "$(cat $demo)"
expect "standard input without a file" 'code == 0 and out["record"] == "Invented example"'
run "$(cat $demo)" -
expect "standard input by name" 'code == 0 and out["record"] == "Invented example"'
run "" --compact $demo
expect "one line" 'code == 0 and len(lines) == 1 and out["overwater"] == "outcome"'
run "" $demo "$folder/atm.json"
expect "several records, one a line" 'code == 0 and [l["overwater"] for l in lines] == ["outcome"] * 2'

head='{"overwater":"record","version":1'
run "$head}"
expect "an empty record waits" 'code == 0 and "scale_reading" in out["runs"][0]["outputs"]["gas_volume"]["for"]'
run "$head,\"shared\":{\"metal\":{\"text\":\"magnesium\"},\"mass_of_metal\":{\"text\":\"0\"}}}"
expect "an impossible output has its reason" \
    'code == 0 and out["runs"][0]["outputs"]["amount_of_metal"]["reason"]["key"] == "refusal.not_above_zero"
     and out["runs"][0]["checks"][0]["field"] == "mass_of_metal"'
run "$head,\"runs\":[{\"name\":\"a\"},{\"name\":\"b\"}]}"
expect "every run has its outcome" 'code == 0 and [r["name"] for r in out["runs"]] == ["a", "b"]'

# A bad record: code 2, the key on standard output, one sentence on standard error.
while IFS='|' read -r key input; do
    run "$input"
    expect "$key" "code == 2 and out['overwater'] == 'problem' and out['key'] == '$key'
        and err.startswith('evaluate: standard input: ') and err.count('\n') == 1 and len(err.split()) > 6
        and '{' not in err and err.rstrip().endswith('.')"
done <<END
import.not_json|$head
import.not_a_record|[1, 2]
import.wrong_type|$head,"name":5}
import.unknown_unit|$head,"shared":{"temperature":{"text":"21","unit":"mL"}}}
import.out_of_range|$head,"conventions":{"own_pascal":-1}}
import.too_many_runs|$head,"runs":[{},{},{},{},{},{},{}]}
import.too_deep|$(printf '[%.0s' {1..100})
END
run $'{"\xff":1}'
expect "import.not_utf8" 'code == 2 and out["key"] == "import.not_utf8" and err.count("\n") == 1'
head -c 3000000 /dev/zero | tr '\0' ' ' >"$folder/large.json"
run "" "$folder/large.json"
expect "import.too_large" 'code == 2 and out["key"] == "import.too_large"'
run "" "$folder/missing.json"
expect "a file that is not there" 'code == 2 and out["key"] == "import.cannot_open" and "missing.json" in err'
run "" "$folder"
expect "a folder" 'code == 2 and out["overwater"] == "problem"'
run "" "$folder/missing.json" $demo
expect "a bad file keeps back no other" 'code == 2 and [l["overwater"] for l in lines] == ["problem", "outcome"]'
run '{"overwater":"record","version":9,"name":"later"}'
expect "a newer record is evaluated, and said to be newer" 'code == 0 and out["record"] == "later" and "newer" in err'

run "" --help
expect "--help" 'code == 0 and err == ""' && check "--help says how" grep -q '^Usage: evaluate' "$folder/out"
run "" --nonsense
expect "an unknown option" 'code == 2 and "--nonsense" in err'
run "" -- --nonsense
expect "a file whose name begins with a dash" 'code == 2 and out["key"] == "import.cannot_open"'
"$program" $demo >/dev/full 2>/dev/null
check "a full disk is no success" [ $? = 2 ]

echo "$passed passed, $failed failed"
[ $failed = 0 ]
