/** How a sheet looks on paper: A4, a frame and a line of the title block on each page, nothing that needs colour. */
import { print, variables } from '../../figures/index.ts';

/** A text as a CSS string; what could end it or the style element is written as an escape. */
export const cssText = (text: string): string =>
  `"${text.replace(/[^\p{L}\p{N} .,:·()/-]/gu, (c) => `\\${(c.codePointAt(0) ?? 0xfffd).toString(16)} `)}"`;

/**
 * Print rules.
 * @param paper which way up
 * @param running the line at the foot of every page: left and right
 */
export const printStyle = (paper: 'portrait' | 'landscape', [left, right]: readonly [string, string]): string => `
@page{size:A4 ${paper};margin:13mm 12mm 17mm 17mm;
@top-center{content:'';border-bottom:.7pt solid #000;width:100%;height:100%}
@bottom-left{content:${cssText(left)};font:8pt gb-sans,sans-serif;border-top:.7pt solid #000;vertical-align:top;padding-top:1.6mm;width:50%}
@bottom-right{content:${cssText(right)} " · page " counter(page) " of " counter(pages);font:8pt gb-sans,sans-serif;border-top:.7pt solid #000;vertical-align:top;padding-top:1.6mm;width:50%}}
@media print{:root,:root:has(#look-paper:checked),:root:has(#look-blue:checked){color-scheme:light;${variables(print)}}
html{font-size:9.2pt;line-height:1.38;background:#fff;-webkit-print-color-adjust:exact;print-color-adjust:exact}
body{padding:0}
a{color:inherit;text-decoration:none}
.desk,.skip{display:none}
.sheet{outline:0;display:block;max-width:none;border-top:0;border-bottom:0}
.zone{grid-template-columns:7mm minmax(0,1fr)}
.letter span{position:static;padding:2.5mm 0}
.field{padding:2.5mm 4mm 4mm;-webkit-box-decoration-break:clone;box-decoration-break:clone}
.strip li{padding-right:8px;margin-right:10px;flex:0 1 auto}
h1{font-size:20pt}
h1,h2,h3,caption,.entry-head,summary{break-after:avoid}
thead{display:table-header-group}
tr,.finding,.step,.worst li,.questions li,figure,.title-block,.cautions,.again{break-inside:avoid}
.entry{break-inside:avoid-page}
.entry-head,.steps{break-inside:avoid}
.table{overflow:visible}
.stays td:last-child,.stays thead th:last-child{position:static;padding-left:0;box-shadow:none}
.table table{min-width:0;width:auto;max-width:100%}
.strip .count{font-size:15pt}
.finding{grid-template-columns:9mm minmax(0,1fr) 52mm;padding:1.4mm 0}
.working summary{list-style:none;margin-left:0}
.working summary::-webkit-details-marker{display:none}
details:not([open])::details-content{content-visibility:visible;display:block;block-size:auto}
.entries{padding-left:0}
.entry{grid-template-columns:minmax(0,1fr) minmax(0,1.2fr);gap:.5mm 5mm;padding:1.6mm 0 2mm}
.worst li{grid-template-columns:minmax(0,1fr) auto}
.scale svg{width:56mm;height:auto}
.scale .percent{width:26mm}
.drawn svg{max-width:min(100%,108mm)}
.on-scale{flex-wrap:wrap}
.on-scale svg{width:25mm;height:auto}
.figures{gap:4mm 8mm}
figure{max-width:108mm}
.step .right{overflow:visible}
.title-block{margin-left:auto;width:112mm;border:.9pt solid #000}
:target{outline:0}}
`;
