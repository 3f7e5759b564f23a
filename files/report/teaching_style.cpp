#include "files/report/parts.h"

namespace voltwright::files::report {

namespace {

// What the pages of claims, equivalents and chemistries have beyond the report.
constexpr std::string_view kStyle = R"css(
.sheet.broad{max-width:1240px}
h3{font-size:14.5px;line-height:1.35;font-weight:600;margin:14px 0 2px}
a{color:var(--violet)}a.src{font-size:11px;text-decoration:none;white-space:nowrap;margin-left:3px}
ol.sources{padding-left:2.2em;font-size:13px;line-height:1.45}ol.sources li{padding:3px 0}
figure.slide{margin:4px 0 0}figure.slide svg{border:1px solid var(--rule)}
.pan:focus-visible{outline:2px solid var(--violet);outline-offset:2px}
.why small.working,.wide-text small.working{margin-top:2px}
tr.now td{background:var(--wash);border-bottom:1.5px solid var(--ink)}
tr.now td:first-child{font-weight:600;border-left:4px solid var(--ink);padding-left:10px}tr.now small{font-weight:400}
table.fair td.r{white-space:nowrap}table.fair td:first-child{min-width:150px}
svg.kind{display:inline-block;width:20px;height:20px;margin-right:6px;vertical-align:-5px}
svg.kind .mark{fill:var(--sheet);stroke:var(--ink);stroke-width:2;stroke-linejoin:round}
table.claims td:nth-child(1){width:19%}table.claims td:nth-child(2){width:300px}table.claims td:nth-child(3){width:124px}
table.changes td:nth-child(1){width:92px}table.asked td:nth-child(1){width:30%}table.asked td:nth-child(2){width:124px}
details+details{border-top:0;margin-top:0}table.changes td:nth-child(2){width:120px}
svg.scale{width:290px}svg.scale text{font-size:11px}
.forbidden{stroke:var(--madder);stroke-width:1}
.flag{fill:none;stroke:var(--ink);stroke-width:2}.flag.full{fill:var(--ink)}
.flag.ask{stroke:var(--pencil);fill:var(--sheet)}.flag.bad{stroke:var(--madder);fill:var(--madder)}
.worked{fill:var(--sheet);stroke:var(--ink);stroke-width:1.6}
.word{white-space:nowrap;font-weight:600}.word.ask{color:var(--pencil)}.word.bad{color:var(--madder)}
svg.sign{display:inline-block;width:22px;height:12px;margin-right:5px;vertical-align:-1px;fill:none;
stroke:currentColor;stroke-width:2.4}
ul.tree,ul.tree ul{padding-left:0;line-height:1.35}ul.tree ul{padding-left:18px;border-left:1px solid var(--rule);margin-left:4px}
ul.tree li{border:0;padding:2px 0}ul.tree small{color:var(--ink2);font-size:12px}ul.tree b{font-weight:600}
table.figures{font-size:13px}table.figures td:first-child{white-space:nowrap;font-weight:500}
table.figures small{display:block;color:var(--ink2);font-size:12px}
table.figures .soft{font-style:italic}table.places td:nth-child(2){white-space:nowrap}
ul.works{font-size:12px;line-height:1.4}.two,ul.tree{columns:2;column-gap:36px}.two>li{break-inside:avoid}
@media screen and (max-width:760px){
.sheet.broad{max-width:none}
figure.slide .pan{overflow-x:auto;border:1px solid var(--rule)}figure.slide svg{width:1180px;border:0}
.two,ul.tree{columns:1}
table.fair,table.fair tbody,table.claims,table.claims tbody,table.changes,table.changes tbody,table.figures,
table.figures tbody{display:block}
table.fair thead,table.claims thead,table.changes thead,table.figures thead{display:none}
table.fair tr,table.figures tr{display:grid;grid-template-columns:1fr 1fr;gap:6px 12px;padding:10px 0;
border-bottom:1px solid var(--rule)}
table.fair td,table.figures td{display:block;border:0;padding:0;text-align:left;white-space:normal}
table.fair td:first-child,table.figures td:first-child,table.fair td.all{grid-column:1/-1}
table.fair td[data-l]:before,table.figures td[data-l]:before{content:attr(data-l);display:block;font-size:12px;
color:var(--ink2)}
table.fair tr.now{background:var(--wash);border-left:4px solid var(--ink);border-bottom:1.5px solid var(--ink);
padding-left:10px}table.fair tr.now td{background:none;border:0;padding-left:0}
table.claims tr,table.changes tr{display:block;padding:10px 0;border-bottom:1px solid var(--rule)}
table.claims td,table.claims td:nth-child(n),table.changes td,table.changes td:nth-child(n){display:block;border:0;
padding:2px 0;width:auto}
table.changes td:nth-child(-n+2){display:inline-block;margin-right:12px}
svg.scale{width:100%;max-width:340px}}
@media print{
@page slide{size:A4 landscape;margin:14mm}
.slide-head,section.slide{page:slide}section.slide{break-inside:avoid;padding-top:0}figure.slide{break-inside:avoid}
figure.slide svg{max-height:150mm;border:0}.slide-head+section.slide svg{max-height:122mm}figure.slide figcaption{display:none}
.sub,.say{break-inside:avoid}h3{font-size:9.5pt;break-after:avoid}ol.sources{font-size:8pt}a{color:var(--ink);text-decoration:none}a.src{font-size:7.5pt}
table.figures{font-size:8pt}table.figures small{font-size:7.5pt}svg.scale{width:175pt}svg.scale text{font-size:13px}ul.works{font-size:7.5pt}
table.claims td:nth-child(2){width:178pt;padding-right:3pt}table.claims td:nth-child(3){width:82pt}
table.changes td:nth-child(1){width:62pt}table.asked td:nth-child(1){width:30%}table.changes td:nth-child(2){width:74pt}
ol.sources li,ul.tree ul ul ul li{break-inside:avoid}ul.tree small{font-size:7.5pt}
tr.now td{background:none}}
)css";

}  // namespace

std::string_view teaching_style() { return kStyle; }

}  // namespace voltwright::files::report
