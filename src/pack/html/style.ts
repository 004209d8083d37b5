/** How a sheet looks on a screen: paper, ink, hairlines; a column on a phone. */
import { blueprint, figureStyle, light, monoFamily, textFamily, variables } from '../../figures/index.ts';

const looks = `:root{color-scheme:light;${variables(light)}}
@media (prefers-color-scheme:dark){:root{color-scheme:dark;${variables(blueprint)}}}
:root:has(#look-paper:checked){color-scheme:light;${variables(light)}}
:root:has(#look-blue:checked){color-scheme:dark;${variables(blueprint)}}`;

const base = `*{box-sizing:border-box}
html{font:15px/1.5 ${textFamily};color:var(--ink);background:var(--paper);font-variant-numeric:tabular-nums lining-nums;-webkit-text-size-adjust:100%;text-size-adjust:100%}
body{margin:0;padding:0 clamp(0px,1.6vw,28px) 28px}
h1,h2,h3,p,ol,ul,dl,dd,figure{margin:0;padding:0}
ol,ul{list-style:none}
h1,h2,h3,b,th,dt,caption{font-weight:600}
a{color:var(--accent);text-decoration-thickness:.06em;text-underline-offset:.18em}
a:hover{text-decoration-thickness:.14em}
:focus-visible{outline:2px solid var(--accent);outline-offset:2px}
code,.mono{font-family:${monoFamily};font-size:.88em}
code{overflow-wrap:anywhere}
.aside,.place,.quiet,.note{color:var(--soft)}
.aside{font-weight:400}
.hidden{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%);white-space:nowrap}
.skip{position:absolute;left:-999px}
.skip:focus{left:8px;top:8px;background:var(--paper);padding:4px 10px;z-index:2}
.number{text-align:right;white-space:nowrap}
.prose{max-width:74ch;margin-bottom:10px}
:target{outline:2px solid var(--accent);outline-offset:4px}
svg{display:inline-block;vertical-align:middle}`;

const desk = `.desk{max-width:1640px;margin:0 auto;display:flex;flex-wrap:wrap;align-items:baseline;gap:4px 26px;padding:10px 4px 9px;font-size:.92rem}
.desk .set{font-weight:600}
.desk ol{display:flex;flex-wrap:wrap;gap:2px 18px}
.desk [aria-current]{color:var(--ink);text-decoration:none;border-bottom:2px solid var(--ink)}
.look{margin:0 0 0 auto;padding:0;border:0;display:flex;gap:12px;color:var(--soft)}
.look legend{float:left;margin-right:12px;padding:0}
.look input{margin:0 3px 0 0;accent-color:var(--accent);vertical-align:-1px}
.sheet{max-width:1640px;margin:0 auto;border:1px solid var(--ink);outline:1px solid var(--hair);outline-offset:5px;display:grid;grid-template-columns:minmax(0,1fr)}
.zone{display:grid;grid-template-columns:34px minmax(0,1fr);border-bottom:1px solid var(--ink)}
.letter{border-right:1px solid var(--ink);text-align:center;font-weight:600;color:var(--soft)}
.letter span{position:sticky;top:0;display:block;padding:14px 0}
.field{padding:14px 22px 20px;min-width:0}
.field>h2{font-size:1.24rem;line-height:1.25;margin-bottom:12px}
.masthead{display:flex;flex-wrap:wrap;align-items:baseline;gap:2px 22px;margin-bottom:12px}
h1{font-size:2.1rem;line-height:1.15;letter-spacing:-.01em}
.asks{color:var(--soft);max-width:80ch;flex:1 1 30ch}`;

const front = `.mark{white-space:nowrap;font-weight:600}
.mark svg{margin-right:5px;margin-top:-3px}
.v-fails>.word,.mark.v-fails{color:var(--fails)}
.mark.v-open{color:var(--open)}
.mark.v-tight{color:var(--tight)}
.mark.v-holds{color:var(--holds)}
.mark.v-not-stated{color:var(--soft)}
.strip{display:flex;flex-wrap:wrap;border-top:1px solid var(--ink);border-bottom:1px solid var(--ink)}
.strip li{flex:1 1 auto;padding:7px 20px 8px 0;margin-right:20px;border-right:1px solid var(--hair);white-space:nowrap}
.strip li:last-child{border-right:0;margin-right:0}
.strip a{color:inherit;text-decoration:none;display:block}
.strip a:hover .word{text-decoration:underline}
.strip .count{font-size:1.7rem;line-height:1.1;margin-right:5px}
.strip .none{color:var(--soft)}
.strip .none .count{font-weight:400}
.strip .none svg{opacity:.45}
.worst{border-bottom:1px solid var(--ink)}
.worst li{display:grid;grid-template-columns:minmax(0,1fr) auto;gap:4px 28px;align-items:center;padding:9px 0 7px}
.worst li+li{border-top:1px solid var(--hair)}
.worst a{color:var(--ink)}
.worst .mark{margin-right:8px}
.scale{display:flex;align-items:flex-start;gap:10px}
.scale .percent{width:10.5em;line-height:24px;font-weight:600;white-space:nowrap}
.cautions{border:2.5px solid var(--ink);padding:10px 16px 12px;margin-top:18px}
.cautions h2,.questions h2{font-size:1.02rem;margin-bottom:4px}
.cautions ul{columns:2 34ch;column-gap:34px}
.cautions li{break-inside:avoid;padding-left:15px;text-indent:-15px;margin-top:3px}
.cautions li::before{content:'';display:inline-block;width:7px;height:7px;margin-right:8px;background:var(--ink);vertical-align:1px}
.questions{margin-top:18px}
.questions ol{display:grid;grid-template-columns:repeat(auto-fit,minmax(min(100%,34ch),1fr));gap:0 34px;counter-reset:q}
.questions li{counter-increment:q;border-top:1px solid var(--hair);padding:7px 0 9px 26px;position:relative}
.questions li::before{content:counter(q);position:absolute;left:2px;font-weight:600}`;

const findings = `.group+.group{margin-top:20px}
.group h3{font-size:1.02rem;border-bottom:1px solid var(--ink);padding-bottom:3px}
.finding{display:grid;grid-template-columns:44px minmax(0,1fr) 270px;gap:2px 16px;padding:8px 0;border-bottom:1px solid var(--hair)}
.ref{color:var(--soft);font-weight:600}
.finding .says{max-width:96ch}
.finding .sentence .mark{margin-right:6px}
.tags,.place{font-size:.88em}
.tags{color:var(--soft)}
.tags a{margin-left:8px}
.more{margin-top:3px;font-size:.95em}
.edit{white-space:normal}
.edit+.edit::before{content:'; '}
.used{line-height:1.35}
.on-scale{display:flex;align-items:center;gap:6px;white-space:nowrap}
.used .compare,.used .advised{font-size:.9em}
.quiet{max-width:70ch}`;

const blocks = `.figures{display:flex;flex-wrap:wrap;gap:20px 40px;margin:4px 0 14px}
figure{flex:0 1 auto;min-width:0;max-width:100%}
.drawn svg{max-width:100%;height:auto}
figcaption{max-width:520px;margin-top:7px;font-size:.93em;color:var(--soft)}
.table{overflow-x:auto;margin:4px 0 16px}
table{border-collapse:collapse}
.table table{width:max-content;min-width:min(100%,34em)}
.table td,.table th{max-width:46ch}
caption{text-align:left;padding-bottom:5px}
th,td{text-align:left;vertical-align:top;padding:4px 18px 4px 0}
th:last-child,td:last-child{padding-right:0}
thead th{border-bottom:1px solid var(--ink);color:var(--soft);font-size:.9em;vertical-align:bottom}
tbody tr{border-bottom:1px solid var(--hair)}
tbody th{font-weight:600}
th.number,td.number{text-align:right}
.use{white-space:nowrap}
td code.path{color:var(--soft)}
.stays td:last-child,.stays thead th:last-child{position:sticky;right:0;background:var(--paper);padding-left:12px;box-shadow:-1px 0 0 var(--hair)}
.note{font-size:.88em;margin-top:5px;max-width:90ch}
.plain{font-size:.93em;margin-bottom:16px}
.records{display:flex;flex-wrap:wrap;align-items:start;gap:4px 56px}
.records .note{flex-basis:100%;order:9}
.status{white-space:nowrap}
.s-memory{font-style:italic}`;

const working = `.working{border-bottom:1px solid var(--hair);padding-bottom:8px;margin-bottom:10px}
.working summary{cursor:pointer;padding:5px 0;list-style-position:outside;margin-left:16px}
.working summary h3{display:inline;font-size:1rem}
.back{padding:4px 0 5px}
.back a{margin:0}
.working summary .tags{font-weight:400;font-family:${monoFamily};font-size:.82em}
.entries{padding-left:16px}
.entry{display:grid;grid-template-columns:minmax(0,1.05fr) minmax(0,1fr);gap:3px 34px;padding:7px 0 9px;border-top:1px dotted var(--hair)}
.entry-head,.standing{grid-column:1/-1}
.entry-head{display:grid;grid-template-columns:auto auto minmax(0,1fr) auto;align-items:baseline;gap:0 10px}
.again{display:flex;flex-wrap:wrap;align-items:baseline;gap:0 10px}
.value{font-weight:600;white-space:nowrap}
.again{padding:5px 0;border-top:1px dotted var(--hair)}
.again .value{font-weight:400}
.steps{font-size:1.06em;min-width:0}
.step{display:grid;grid-template-columns:minmax(2.6em,max-content) 1.1em minmax(0,1fr);align-items:baseline;padding:2px 0}
.step .eq{text-align:center}
.step .right{overflow-x:auto;overflow-y:hidden;padding:1px 0}
.step.result{padding-bottom:6px}
.inputs{font-size:.93em;align-self:start;width:100%}
.inputs td,.inputs th{padding:2px 14px 2px 0}
.inputs .symbol{width:2.5em}
.inputs th{font-weight:400}
.inputs .from{width:46%}
.standing{font-size:.86em;color:var(--soft);max-width:120ch}
.standing b{font-weight:600}
.e-memory{font-style:italic}
math{font-family:gb-math,gb-sans,math;font-size:1em;line-height:1.3}
math mi{text-transform:none;font-style:italic}
math mi[mathvariant]{font-style:normal}
math mtd{text-align:left;padding:1px .5em;math-style:normal}
math mtext,math mn{white-space:nowrap}`;

const title = `.title-block{justify-self:end;width:min(100%,480px);border-left:1px solid var(--ink);border-top:1px solid var(--ink);margin-top:-1px;background:var(--paper)}
.title-block dl{display:grid;grid-template-columns:repeat(6,1fr)}
.cell{grid-column:span 2;padding:4px 12px 6px;border-bottom:1px solid var(--hair);border-right:1px solid var(--hair);min-width:0}
.cell.wide{grid-column:span 3}
.cell:nth-child(2),.cell:nth-child(5),.cell:nth-child(7){border-right:0}
.cell.mono{grid-column:span 3}
.cell dt{font-family:${textFamily};font-weight:400;font-size:.76rem;color:var(--soft);line-height:1.2}
.cell dd{overflow-wrap:anywhere;line-height:1.35}
.cell.strong dd{font-weight:600;font-size:1.08rem}
.title-block p{padding:6px 12px 8px;font-size:.84rem;color:var(--soft)}`;

const cover = `.table .set-list{width:100%}
.set-list .asks{max-width:44ch}
.tally.none{color:var(--soft)}
.tally:not(.none){font-weight:600}
.worst-of{max-width:56ch}
.worst-of .use{display:block}`;

const narrow = `@media (max-width:980px){.entry{grid-template-columns:minmax(0,1fr)}
.finding{grid-template-columns:34px minmax(0,1fr) 245px}
.worst li{grid-template-columns:minmax(0,1fr)}}
@media (max-width:640px){html{font-size:16px}
body{padding:0}
.desk{padding:10px 14px;gap:6px 16px}
.desk nav{order:3;flex-basis:100%}
.desk .look{order:2}
.look legend{display:none}
.sheet{border-width:1px 0;outline:0;display:flex;flex-direction:column}
.title-block{order:-1;width:100%;border:0;border-bottom:1px solid var(--ink);margin:0}
.title-block .cell{padding:3px 14px 4px}
.title-block p{padding:4px 14px 6px}
.zone{grid-template-columns:minmax(0,1fr)}
.letter{display:none}
.field{padding:14px 14px 18px}
.field>h2::before{content:attr(data-zone);color:var(--soft);margin-right:10px}
h1{font-size:1.8rem}
.strip{display:grid;grid-template-columns:1fr 1fr}
.strip li{border-right:0;margin:0;padding:5px 0;border-bottom:1px solid var(--hair)}
.strip li:last-child{border-bottom:0}
.scale svg{flex:1 1 0;min-width:0;height:auto}
.scale .percent{width:auto}
.finding{grid-template-columns:minmax(0,1fr);gap:3px}
.finding .ref{position:absolute;right:14px}
.finding{position:relative}
.finding .ref{right:0}
.finding .sentence{padding-right:34px}
.used{display:flex;flex-wrap:wrap;gap:0 12px;align-items:center}
.entries{padding-left:0}
.inputs,.inputs tbody{display:block}
.inputs tr{display:grid;grid-template-columns:2.6em minmax(0,1fr) auto;padding:2px 0}
.inputs td,.inputs th{padding:0}
.inputs .from{grid-column:2/-1;width:auto}
.records{display:block}
.table .set-list,.set-list tbody{display:block;width:auto;min-width:0}
.set-list thead{position:absolute;clip-path:inset(50%)}
.set-list tr{display:flex;flex-wrap:wrap;gap:2px 14px;padding:8px 0}
.set-list td,.set-list th{padding:0}
.set-list .asks,.set-list .worst-of{flex:1 0 100%;max-width:none}
.set-list .tally::after{content:' ' attr(data-head)}
.set-list .tally.none{display:none}
.plain{width:100%}}
@media (prefers-reduced-motion:no-preference){html{scroll-behavior:smooth}}`;

/** The whole style of a page on a screen, with the figures' own. */
export const pageStyle = [looks, base, desk, front, findings, blocks, working, title, cover, narrow, figureStyle].join(
  '\n',
);
