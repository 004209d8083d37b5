/** What the comparison needs besides the style of every sheet. */
export const compareStyle = `.change{border-top:1px solid var(--ink);padding-top:9px;margin-top:16px}
.change:first-of-type{margin-top:0}
.change h3{font-size:1.06rem;line-height:1.35}
.change h3 code{font-size:.94em}
.change h3 .aside{white-space:nowrap;margin-left:10px;font-size:.9em}
.change .finding:last-child{border-bottom:0}
.finding .was{color:var(--soft)}
.finding .was,.finding .is{padding-left:7.4em;text-indent:-7.4em;margin-top:2px}
.finding .was>.state,.finding .is>.state{display:inline-block;width:7.4em;text-indent:0}
.finding .none{font-weight:600;color:var(--soft)}
.both .on-scale .when{width:3.6em;color:var(--soft);font-size:.9em}
.both .on-scale+.on-scale{margin-top:-1px}
.both .on-scale .percent{min-width:5.5em}
.behind{display:flex;flex-wrap:wrap;align-items:baseline;gap:1px 18px;margin-top:3px;font-size:.88em;color:var(--soft)}
.behind .mono{font-size:1em}
.behind details[open]{flex-basis:100%}
.behind summary{cursor:pointer}
.behind li{padding-left:14px;text-indent:-14px;overflow-wrap:anywhere}
.strips td .was{color:var(--soft)}
.strips tfoot th,.strips tfoot td{border-top:1px solid var(--ink)}
.title-blocks{justify-self:end;display:flex;flex-wrap:wrap;width:min(100%,960px)}
.title-blocks .title-block{flex:1 1 340px;width:auto;justify-self:stretch}
.asides .cautions{margin-top:0}
.lead{max-width:86ch;margin:12px 0 4px}
@media (max-width:640px){.title-blocks{order:-1;width:100%;display:block}
.title-blocks .title-block p{display:none}
.strips caption{display:block}
.finding .was,.finding .is{padding-left:0;text-indent:0}
.finding .was{padding-right:34px}
.finding .was>.state,.finding .is>.state{width:auto;margin-right:6px}}
@media print{.behind{gap:0 4mm}
.behind .facts,.behind .words{display:none}
.behind .alike{flex-basis:100%}
.change{padding-top:2mm;margin-top:4mm}
.change h3,.change h3+p{break-after:avoid}
.change .finding:first-child{break-before:avoid}
.comparison .finding{grid-template-columns:9mm minmax(0,1fr) 60mm}
.title-blocks{display:flex;width:auto;gap:4mm;break-inside:avoid}
.title-blocks .title-block{flex:1 1 0;width:auto;margin:0}}
`;
