#include "files/report/parts.h"

namespace voltwright::files::report {

namespace {

// Ink is computed, grey italic (pencil) is assumed, red (madder) is a limit or a shortfall past it.
constexpr std::string_view kStyle = R"css(
:root{--desk:#E7EBE6;--sheet:#FCFDFB;--wash:#F1F4F0;--ink:#18242B;--ink2:#48565D;--pencil:#626D72;--rule:#C6CEC8;
--edge:#7C8A86;--grid:#DCE6DF;--grid5:#C3D2C8;--violet:#5A3A8C;--madder:#A12A22;--slate:#2B5B68;--slate2:#8FB3B9;
--slate3:#D3E1E2;
--sans:-apple-system,"Segoe UI",Roboto,"Noto Sans","Helvetica Neue","Liberation Sans",Arial,sans-serif;
--serif:Charter,"Bitstream Charter","Iowan Old Style",Cambria,"Noto Serif","Liberation Serif",serif}
@media screen and (prefers-color-scheme:dark){:root:not([data-theme=light]){--desk:#0E1417;--sheet:#151D21;
--wash:#1C262B;--ink:#E8ECE8;--ink2:#B0BABA;--pencil:#9AA6A9;--rule:#35424A;--edge:#73828A;--grid:#232F35;
--grid5:#2F3E45;--violet:#C5ABF2;--madder:#FF9C8E;--slate:#86BECB;--slate2:#3F6670;--slate3:#24363C;
color-scheme:dark}}
@media screen{:root[data-theme=dark]{--desk:#0E1417;--sheet:#151D21;--wash:#1C262B;--ink:#E8ECE8;--ink2:#B0BABA;
--pencil:#9AA6A9;--rule:#35424A;--edge:#73828A;--grid:#232F35;--grid5:#2F3E45;--violet:#C5ABF2;--madder:#FF9C8E;
--slate:#86BECB;--slate2:#3F6670;--slate3:#24363C;color-scheme:dark}}
*{box-sizing:border-box;margin:0}
body{background:var(--desk);color:var(--ink);font:400 15px/1.5 var(--sans);
font-variant-numeric:tabular-nums lining-nums;-webkit-text-size-adjust:100%;overflow-wrap:break-word}
.sheet{background:var(--sheet);max-width:1040px;margin:0 auto;padding:32px 48px 28px;
border-left:1px solid var(--rule);border-right:1px solid var(--rule)}
h1,h2,.say,.strip b{font-family:var(--serif)}
h1{font-size:27px;line-height:1.2;font-weight:600}
h2{font-size:18px;line-height:1.3;font-weight:600;margin-bottom:4px}
.head{display:flex;flex-wrap:wrap;justify-content:space-between;align-items:end;gap:4px 24px;
border-bottom:3px double var(--ink);padding-bottom:10px;color:var(--ink2);font-size:14px;line-height:1.4}
.head h1{color:var(--ink)}
.say{font-size:25px;line-height:1.34;margin:24px 0 20px;max-width:34em}.say b{font-weight:600}
.sub{font-size:13px;line-height:1.45;color:var(--ink2);margin-bottom:10px;max-width:58em}
.sub.strong{color:var(--ink);font-size:15px}.note{font-size:13.5px}
.nb{white-space:nowrap}
.strip{display:grid;grid-template-columns:repeat(4,1fr);border-top:1.5px solid var(--ink);
border-bottom:1px solid var(--ink)}
.strip div{padding:8px 12px 10px;font-size:12.5px;line-height:1.4;color:var(--ink2)}
.strip div:first-child{padding-left:0}.strip div+div{border-left:1px solid var(--rule)}
.strip b{display:block;font-size:25px;line-height:1.25;font-weight:400;color:var(--ink)}
.strip span{display:block}.strip .nb{display:inline}
em.over,span.over{font-style:normal;font-weight:600;color:var(--madder)}
em.pencil,span.pencil{font-style:italic;color:var(--pencil)}
section{padding-top:28px}
table{border-collapse:collapse;width:100%;font-size:13.5px}
th{font-weight:400;font-size:12.5px;line-height:1.3;color:var(--ink2);text-align:left;vertical-align:bottom;
padding:4px 12px 5px 0;border-bottom:1.5px solid var(--ink)}
td{padding:7px 12px 7px 0;border-bottom:1px solid var(--rule);vertical-align:top;line-height:1.35}
th:last-child,td:last-child{padding-right:0}
.r{text-align:right}
td small,.block small{display:block;font-size:12px;color:var(--ink2)}
.rank td[data-l]{white-space:nowrap}.rank .name{width:21%}.rank .why{width:25%}.rank td.r small{white-space:nowrap}
th.chance,td.chance{width:168px}td.chance svg{margin-top:1px}
tr.best td{background:var(--wash);border-bottom:1.5px solid var(--ink)}
tr.best td.name{font-weight:600;border-left:4px solid var(--ink);padding-left:10px}
tr.best td.name small{font-weight:400}
tr.had td{border-top:1.5px solid var(--ink)}
.needs td:first-child{font-weight:500;width:19%}.needs td:nth-child(2){width:23%}
table.cost{margin:8px 0 12px}table.cost th{width:22%}table.cost th:first-child{width:auto}
table.ledger{margin-top:12px;max-width:620px}table.ledger td:nth-child(2),table.ledger th:nth-child(2){padding-right:32px}table+.sub{margin-top:8px}
tr.sum td{font-weight:600;border-top:1.5px solid var(--ink)}
.verdict{white-space:nowrap;font-weight:600}.verdict.short{color:var(--madder)}
.verdict.unknown{color:var(--pencil)}
svg{display:block;width:100%;height:auto}
svg.joint{display:inline-block;width:18px;height:12px;margin-right:5px;vertical-align:-1px;fill:none;
stroke:currentColor;stroke-width:2.4}
svg.interval{width:156px}
svg.narrow{display:none}
svg text{font-family:var(--sans);font-size:12px;fill:var(--ink)}
svg text.small{font-size:11px}svg text.second{fill:var(--ink2)}svg text.strong{font-weight:600}
svg text.limit{fill:var(--madder);font-weight:600}
svg text.halo,svg text.limit{paint-order:stroke;stroke:var(--sheet);stroke-width:3px;stroke-linejoin:round}
.grid{stroke:var(--grid);fill:none}.grid5{stroke:var(--grid5);fill:none}.rule{stroke:var(--rule)}
.axis{stroke:var(--ink);stroke-width:1.25}.lead{stroke:var(--edge);stroke-width:1}
.wall{stroke:var(--madder);stroke-width:2}.wall.thin{stroke-width:1.5}
.whisker{stroke:var(--ink);stroke-width:1.5;fill:none}
circle.ink{fill:var(--ink)}circle.hollow{fill:var(--sheet);stroke:var(--ink);stroke-width:1.5}
circle.madder{fill:var(--madder)}
.weekend{fill:var(--wash)}.band{fill:var(--slate3);stroke:var(--slate);stroke-width:1}
.curve{fill:none;stroke:var(--ink);stroke-width:1.8;stroke-linejoin:round}
.outside{fill:none;stroke:var(--edge);stroke-width:1.2}
.charging{fill:var(--slate2)}.discharging{fill:var(--slate)}
.block{fill:none;stroke:var(--slate);stroke-width:1}.block.solid{fill:var(--slate)}.hatch{fill:var(--slate)}
.outline{fill:none;stroke:var(--ink);stroke-width:1.5}
.tone1{fill:var(--slate2)}.tone2{fill:var(--slate)}.tone3{fill:var(--ink)}.tone-short{fill:var(--madder)}
.boxed{fill:none;stroke:var(--madder);stroke-width:1.5}
.key,figcaption{font-size:12px;color:var(--ink2);margin:4px 0 8px}
.key span,figcaption span{display:inline-block;width:10px;height:10px;margin:0 5px 0 12px;vertical-align:-1px}
.key span:first-child,figcaption span:first-child{margin-left:0}
.key i{font-style:normal;background:var(--wash);padding:0 6px;margin-left:12px}
.k1{background:var(--slate2)}.k2{background:var(--slate)}.k3{background:var(--ink)}
.k4{background:var(--madder);outline:1.5px solid var(--madder);outline-offset:1.5px}
figcaption .swatch-ink,figcaption .swatch-outside{width:20px;height:0;border-top:2px solid var(--ink);
vertical-align:4px}
figcaption .swatch-outside{border-top:1.5px solid var(--edge)}
details{border-top:1px solid var(--rule);border-bottom:1px solid var(--rule);margin-top:8px}
summary{color:var(--violet);font-size:13.5px;padding:10px 0;cursor:pointer}
summary:focus-visible{outline:2px solid var(--violet);outline-offset:2px}
.cautions{display:grid;gap:10px}
.caution{border:1px solid var(--ink);position:relative;padding:8px 12px 9px 28px;font-size:13.5px;line-height:1.45}
.caution:before{content:"";position:absolute;left:-1px;top:-1px;bottom:-1px;width:14px;border:1px solid var(--ink);
background:repeating-linear-gradient(135deg,var(--ink) 0 4px,var(--sheet) 4px 8px);
-webkit-print-color-adjust:exact;print-color-adjust:exact}
.caution b{display:block}
ul{list-style:none;padding:0;font-size:13.5px;line-height:1.5}
ul li{border-bottom:1px solid var(--rule);padding:5px 0}
ul.pencil{font-style:italic;color:var(--pencil)}
footer.block{margin-top:36px;border:1.5px solid var(--ink);display:grid;
grid-template-columns:2fr 1.2fr 1fr 1.2fr 1.2fr .5fr;font-size:12px;line-height:1.35}
footer.block div{padding:6px 9px;border-left:1px solid var(--rule);min-width:0}
footer.block div:first-child{border-left:0}footer.block small{font-size:11px}
@media screen and (max-width:760px){
.sheet{padding:18px 16px 20px;border:0}h1{font-size:22px}.say{font-size:20px;margin:18px 0 16px}
.strip{grid-template-columns:1fr 1fr}.strip div:nth-child(odd){border-left:0;padding-left:0}
.strip div:nth-child(n+3){border-top:1px solid var(--rule)}
svg.wide{display:none}svg.narrow{display:block;max-width:540px}
.rank thead,.needs thead{display:none}
.rank,.rank tbody,.needs,.needs tbody,.needs tr,.needs td{display:block;width:auto}
.rank tr{display:grid;grid-template-columns:1.3fr .9fr 1.2fr .8fr;gap:3px 8px;padding:10px 0;
border-bottom:1px solid var(--rule)}
.rank td{display:block;border:0;padding:0;width:auto}
.rank .name,.rank .why,.rank .chance{grid-column:1/-1;width:auto}
.rank td[data-l]:before{content:attr(data-l);display:block;font-size:12px;color:var(--ink2)}
.rank .r{text-align:left}.rank td[data-l]{white-space:nowrap}
tr.best{background:var(--wash);border-left:4px solid var(--ink);padding-left:10px!important}
tr.best td,tr.best td.name{background:none;border:0;padding-left:0}
tr.had td{border:0}tr.had{border-top:1.5px solid var(--ink)}
.needs tr{padding:8px 0;border-bottom:1px solid var(--rule)}
.needs td,.needs td:first-child,.needs td:nth-child(2){border:0;padding:0;width:auto}
table.ledger,details table{font-size:12.5px}details td,details th{padding-right:6px}
table.ledger td:nth-child(2),table.ledger th:nth-child(2){padding-right:12px}
footer.block{grid-template-columns:1fr 1fr}footer.block div{border-top:1px solid var(--rule)}
footer.block div:nth-child(-n+2){border-top:0}footer.block div:nth-child(odd){border-left:0}
summary{padding:12px 0;min-height:44px}}
@media print{
@page{size:A4 portrait;margin:16mm 15mm}
:root{--desk:#fff;--sheet:#fff;--wash:#fff;--violet:#18242B}
body{font-size:9.5pt}.sheet{max-width:none;padding:0;border:0}
h1{font-size:19pt}h2{font-size:11.5pt;break-after:avoid}.say{font-size:14pt;margin:12pt 0 10pt}
.sub,ul,.caution{font-size:8.5pt}.sub.strong{font-size:9.5pt}
.sub{break-after:avoid}
.strip b{font-size:15pt}.strip div{font-size:8.5pt}
table{font-size:8.5pt}th,td small{font-size:7.8pt}th,td{padding-right:7pt}td{padding-top:4pt;padding-bottom:4pt}
th.chance,td.chance{width:128pt}svg.interval{width:117pt}
.key i{display:none}table.ledger{break-inside:avoid}
section{padding-top:14pt}
tr,figure,.caution,.strip,footer.block,ul li{break-inside:avoid}
thead{display:table-header-group}
details.data{display:none}details{border:0}details::details-content{content-visibility:visible;display:block;height:auto}
summary{list-style:none;color:var(--ink2)}
footer.block{font-size:8pt;margin-top:18pt}footer.block small{font-size:7.5pt}
svg,.key span{-webkit-print-color-adjust:exact;print-color-adjust:exact}}
@media (prefers-reduced-motion:reduce){*{transition:none!important}}
)css";

}  // namespace

std::string_view style_sheet() { return kStyle; }

}  // namespace voltwright::files::report
