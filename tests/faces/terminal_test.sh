#!/bin/sh
# terminal_test.sh PROGRAM: the promises of the terminal face: exit codes, where text goes, and that a failed run
# leaves what was there. Sentences are not compared.
set -u
program=$1
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
cd "$folder" || exit 1
bad=0

complain() { echo "FAILED: $1"; bad=1; }

# run CODE ARGUMENT...: output in out and err; the exit code must be CODE, and the run must end.
run() {
  want=$1
  shift
  timeout 30 "$program" "$@" >out 2>err
  got=$?
  [ $got -eq "$want" ] || complain "voltwright $*: exit code $got, not $want: $(head -n 2 err)"
}
silent() { [ ! -s out ] || complain "$1: standard output is not empty"; }

cat >good.toml <<'PLAN'
format = 1
name = "Two days"
seasons = 4
[cables.main]
one_way = "1 m"
area = "35 mm2"
[[load]]
name = "Box"
power = "20 W"
always = true
[[leg]]
place = "Oslo, NO"
from = 2026-06-01
days = 2
shore = "22:00-06:00"
[mains]
output_limit = "20 A"
[candidates]
batteries = ["lfp-12v-100ah", "agm-12v-98ah"]
max_parallel = 1
PLAN
sed 's/"20 W"/"20 Ah"/' good.toml >bad.toml
mkdir place
printf '\000\377\376\001PK\003\004' >junk.toml
echo kept >kept.csv
echo kept >before

run 0 --help
for command in advise simulate legs catalogue chart vet runtime sky swap myths life; do
  run 0 "$command" --help
  grep -q -- "--help" out || complain "$command --help lists no options"
done
run 0 --version
grep -qE '[0-9]+\.[0-9]+' out || complain "--version names no version"

run 2
run 2 advise
run 2 advise good.toml --no-such-option
run 2 catalogue nonsense
for plan in missing.toml place junk.toml bad.toml; do
  run 2 advise "$plan" --csv kept.csv --report kept.csv
  silent "advise $plan"
  grep -q "$plan" err || complain "advise $plan: the problem does not name the file"
  run 2 simulate "$plan" --bank lfp-12v-100ah --csv kept.csv
  silent "simulate $plan"
  cmp -s kept.csv before || complain "$plan: a failed run changed an existing file"
done
run 2 advise bad.toml
grep -qE '^bad\.toml:9:[1-9][0-9]*: ' err || complain "the problem of bad.toml does not stand at line 9: $(cat err)"
run 2 simulate good.toml --bank lfp-12v-100aj
silent "a wrong bank"
grep -q '"lfp-12v-100ah"' err || complain "a misspelt bank does not bring the near one"
run 2 simulate good.toml --bank lfp-12v-100ah:zz

run 0 catalogue batteries
grep -q lfp-12v-100ah out || complain "the catalogue lists no lfp-12v-100ah"

run 0 catalogue cells
grep -q lfp-prismatic-100ah out || complain "the catalogue lists no lfp-prismatic-100ah"
run 0 catalogue compose --help
grep -q -- "--case-mass" out || complain "compose --help lists no --case-mass"
run 2 catalogue compose
run 2 catalogue compose lfp-prismatic-100ah
run 2 catalogue compose lfp-prismatic-100ai --series 4
silent "a wrong cell"
grep -q '"lfp-prismatic-100ah"' err || complain "a misspelt cell does not bring the near one"
run 2 catalogue compose lfp-prismatic-100ah --series 0
run 2 catalogue compose lfp-prismatic-100ah --series 4 --case-mass "1.5 V"
grep -q -- "--case-mass" err || complain "a wrong mass does not name its option"
run 2 catalogue compose lfp-prismatic-100ah --series 4 --wall "-1 mm"
run 2 catalogue compose lfp-prismatic-100ah --series x --json
run 0 catalogue compose lfp-prismatic-100ah --series 4 --parallel 2 --case-mass "1.5 kg"
grep -qE '^Mass +18\.6 +kg .*case 1\.5' out || complain "compose does not take the mass of the case: $(grep Mass out)"
grep -qE '^Nominal +12\.8 +V' out || complain "compose gives no nominal voltage"
run 0 catalogue compose lfp-prismatic-100ah --series 4 --json
grep -q '"id": "lfp-prismatic-100ah-4s1p"' out || complain "compose --json brings no record"
run 0 catalogue compose lfp-prismatic-100ah --series 1 --json
grep -q '"record": null' out || complain "one cell brings a record, though no house system runs on it"
run 2 catalogue compose nothing --series 4 --json
grep -q '"problems"' out || complain "compose --json does not print its problems as JSON"

run 0 chart
grep -q 'Weights: energy 1,' out || complain "chart does not show its weighting"
run 0 chart --year 2016 --since 2013 --for cold --svg slide.svg --png slide.png
grep -q "as of 2016" out || complain "chart --year is not followed"
head -c 300 slide.svg | grep -q '<svg xmlns=' || complain "the picture is no SVG"
head -c 4 slide.png | grep -q PNG || complain "the picture is no PNG"
run 0 chart --csv -
head -n 1 out | grep -q '^chemistry,name,quantity,level,year,' || complain "the figures have no header row"
run 0 chart --tree
grep -q '= LFP' out || complain "the family tree names no iron-phosphate"
run 2 chart --year x
run 2 chart --year 1492
run 2 chart --year 2020 --since 2021
run 2 chart --weigh enrgy=1
grep -q '"energy"' err || complain "a misspelt matter does not bring the near one"
run 2 chart --for nothing --json
grep -q '"problems"' out || complain "chart --json does not print its problems as JSON"
run 2 chart --json --csv -
run 1 chart --svg before/below.svg
run 0 sky "Oslo, NO" --years 2
grep -q 'WMO 01492' out || complain "sky does not name its station: $(head -n 3 out)"
grep -q '^Year: ' out || complain "sky gives no sum of the year"
run 0 sky --lat 59.9 --lon 10.75 --years 2 --json
grep -q '"panel_Wh_day"' out || complain "sky --json brings no yield"
run 0 sky Oslo --years 2 --csv -
[ "$(wc -l <out)" -eq 13 ] || complain "sky --csv does not write twelve months under a header"
run 2 sky
run 2 sky Oslooo
silent "a wrong place"
run 2 sky --lat 59.9
grep -q -- "--lon" err || complain "half a position does not name the other half"
run 2 sky Oslo --mounting nailed --years 0
[ "$(wc -l <err)" -ge 2 ] || complain "sky does not report all problems at once"
run 2 sky Oslo --json --csv -
cat >sheet.toml <<'SHEET'
format = 1
name = "Leaflet"
chemistry = "lfp"
capacity = "100 Ah"
voltage = "12.8 V"
energy = "2000 Wh"
mass = "11 kg"
SHEET
sed 's/"100 Ah"/"100 A"/' sheet.toml >wrong_sheet.toml
run 0 vet sheet.toml
grep -qE '^contradiction +Energy 2,000' out || complain "vet does not see that 2000 Wh contradict 100 Ah: $(head -n 6 out)"
run 0 vet sheet.toml --sources
grep -q 'Source: ' out || complain "vet --sources names no source"
run 0 vet sheet.toml --json
grep -q '"id": "consistent.energy"' out || complain "vet --json brings no finding"
run 0 vet sheet.toml --csv -
head -n 1 out | grep -q '^sheet,id,severity,claim,number,unit,least,most,working,source,say' || complain "the findings have no header row"
grep -q '^"Leaflet",consistent.energy,contradiction,' out || complain "the findings as CSV miss the energy"
run 2 vet sheet.toml --json --csv -
run 2 vet
run 0 myths
grep -q '^30  ' out || complain "myths does not list thirty entries"
run 0 myths 20
grep -q '^Working' out || complain "myths 20 shows no working"
run 0 myths --json
[ "$(grep -c '"nearly_true"' out)" -eq 30 ] || complain "myths --json does not bring thirty entries"
run 2 myths 31
grep -q '1 to 30' err || complain "myths 31 does not say which numbers there are"
run 2 vet missing.toml
run 0 vet --claim chemistry=lfp --claim "capacity=100 Ah" --claim "voltage=12.8 V" --claim "energy=2000 Wh"
grep -qE '^contradiction +Energy 2,000' out || complain "vet --claim does not see that 2000 Wh contradict 100 Ah"
run 2 vet sheet.toml --claim chemistry=lfp
run 2 vet --claim chemistry=lpf
grep -q -- '--claim:1:' err || complain "vet --claim does not say which claim is wrong: $(cat err)"
run 2 vet wrong_sheet.toml --csv kept.csv
silent "vet of a wrong sheet"
cmp -s kept.csv before || complain "vet of a wrong sheet changed an existing file"
grep -qE '^wrong_sheet\.toml:4:[1-9][0-9]*: ' err || complain "the problem of the sheet does not stand at line 4: $(cat err)"
run 1 vet sheet.toml --csv before/below.csv
printf 'name,chemistry,capacity,voltage\nOne,lfp,100 Ah,12.8 V\nTwo,agm,100 Ah,12 V\n' >sheets.csv
run 0 vet sheets.csv --json
[ "$(grep -c '"doubted"' out)" -eq 2 ] || complain "a table of two sheets does not bring two answers"
run 0 vet sheet.toml --html claims.html --svg claims.svg --png claims.png
grep -q 'contradiction' claims.html || complain "the page of claims shows no contradiction"
head -c 300 claims.svg | grep -q '<svg xmlns=' || complain "the slide of claims is no SVG"
head -c 4 claims.png | grep -q PNG || complain "the slide of claims is no PNG"
run 0 vet sheet.toml --html -
head -n 1 out | grep -qi '<!doctype html' || complain "vet --html - is not the page alone"
run 2 vet sheet.toml --html - --csv -
echo kept >kept.html
run 2 vet sheets.csv --html kept.html --svg kept.html
grep -q -- "--only" err || complain "a slide of two sheets does not say how to choose one"
cmp -s kept.html before || complain "a slide that cannot be made leaves other outputs behind"
run 0 vet sheets.csv --only Two --svg two.svg
grep -q '>Two<' two.svg || complain "vet --only does not choose the sheet"
run 2 vet sheets.csv --only Too
grep -q '"Two"' err || complain "a misspelt sheet does not bring the near one"
run 2 runtime
run 2 runtime "60 W"
run 2 runtime "60 Wh" lfp-12v-100ah
silent "a load in watt-hours"
run 2 runtime "60 W" lfp-12v-100aj
grep -q '"lfp-12v-100ah"' err || complain "a misspelt battery does not bring the near one"
run 2 runtime "5 A" agm
grep -q -- "--capacity" err || complain "a kind without ampere-hours does not ask for them"
run 2 runtime "5 A" lfp-12v-100ah --efficiency "90 %"
run 0 runtime "60 W" lfp-12v-100ah
grep -qE '^Time +[0-9.]+ +h' out || complain "runtime gives no time"
run 0 runtime "60 W" lfp-12v-100ah --json
grep -q '"naive_h"' out || complain "runtime --json has no naive_h"

run 2 life
run 2 life good.toml --map lfp
run 2 life --map lpf
grep -q '"lfp"' err || complain "a misspelt chemistry does not bring the near one"
run 2 life --map lfp --svg map.svg
run 0 life --map agm
grep -q 'What makes it last' out || complain "life --map does not say what makes it last"
run 0 life --map lfp --csv -
head -n 1 out | grep -q '^part,temperature_C,depth,' || complain "the life map has no header row"
run 2 life good.toml --bank lfp-12v-100aj
grep -q '"lfp-12v-100ah"' err || complain "life with a misspelt battery does not bring the near one"
run 0 life good.toml --bank lfp-12v-100ah --json
grep -q '"what_makes_it_last"' out || complain "life --json does not say what makes it last"
run 0 life good.toml --bank agm-12v-98ah --csv life.csv --html life.html --svg life.svg
grep -q '80 %' out || complain "life does not tell when 80 % is reached"
head -n 1 life.csv | grep -q '^law,leads,counted,years,capacity_share,plan_carried' || complain "life --csv has no header row"
head -n 1 life.html | grep -qi '<!doctype html' || complain "life --html is no page"
head -c 300 life.svg | grep -q '<svg xmlns=' || complain "life --svg is no SVG"
run 0 life good.toml
grep -q 'recommended\|nearest' out || complain "life without a bank does not say which one it took"

run 2 swap
run 2 swap agm-12v-98ah --by weight
run 2 swap agm-12v-98ah --json --csv -
run 2 swap agm-12v-98ah --tray "3 x 4 mm"
grep -q -- "--tray" err || complain "a wrong tray does not name its option"
run 0 swap agm-12v-98ah --load "60 W"
grep -q '(now)' out || complain "swap does not show the incumbent"
run 0 swap agm-12v-98ah --load "60 W" --csv -
head -n 1 out | grep -q '^role,name,chemistry,' || complain "swap --csv has no header row"
sed -n 2p out | grep -q '^incumbent,' || complain "swap --csv does not begin with the incumbent"
[ "$(awk -F, '{ print NF }' out | sort -u | wc -l)" -eq 1 ] || complain "rows of swap --csv differ in length"
run 0 swap agm --capacity "110 Ah" --age "5 years" --by mass --json
grep -q '"changes"' out || complain "swap --json tells no changes"
run 1 swap agm-12v-98ah --csv before/below.csv
run 0 swap agm-12v-98ah --load "60 W" --html swap.html --svg swap.svg --png swap.png
grep -q 'fitted now' swap.html || complain "the page of equivalents does not name what is fitted now"
head -c 300 swap.svg | grep -q '<svg xmlns=' || complain "the slide of equivalents is no SVG"
head -c 4 swap.png | grep -q PNG || complain "the slide of equivalents is no PNG"
run 1 swap agm-12v-98ah --html before/below.html
run 0 chart --since 2016 --html chart.html
for page in claims.html swap.html chart.html life.html; do
  head -n 1 "$page" | grep -qi '<!doctype html' || complain "$page is not a page"
  ! grep -qiE '<script|(src|href) *= *"?(https?:)?//|@import|url\( *"?(https?:)?//' "$page" ||
    complain "$page runs or loads something"
done

run 0 simulate good.toml --bank lfp-12v-100ah --csv minutes.csv
[ "$(wc -l <minutes.csv)" -eq 2881 ] || complain "two days are not 2880 minutes and a header"
head -n 1 minutes.csv | grep -q '^utc,state_of_charge,' || complain "the minutes have no header row"
run 0 advise good.toml --csv -
head -n 1 out | grep -q '^bank,name,chemistry,verdict,' || complain "the ranking has no header row"
[ "$(wc -l <out)" -eq 3 ] || complain "the ranking does not hold a row for each of two banks"

# A path below a regular file cannot be made, whoever runs this.
run 1 advise good.toml --csv before/below.csv
cmp -s kept.csv before || complain "an output below a file changed that file"
[ -z "$(find . -name '*.part*')" ] || complain "a failed output leaves a part behind"

run 0 advise good.toml --report page.html
head -c 200 page.html | grep -qi '<!doctype html' || complain "the report is not a page"
! grep -qiE '(src|href) *= *"?(https?:)?//|@import|url\( *"?(https?:)?//' page.html ||
  complain "the report loads something from elsewhere"

# A reader that goes away ends the program by SIGPIPE (141) at most, never by another signal.
{ timeout 30 "$program" simulate good.toml --bank lfp-12v-100ah --csv - 2>/dev/null; echo $? >code; } | head -n 1 >/dev/null
code=$(cat code)
[ "$code" -le 2 ] || [ "$code" -eq 141 ] || complain "a closed pipe ends the program with $code"
exit $bad
