/** One palette, one set of line weights and one lettering for figures, sheets and print. */

export type Tone = 'paper' | 'ink' | 'soft' | 'hair' | 'tone' | 'accent' | 'holds' | 'tight' | 'fails' | 'open';

export type Palette = Readonly<Record<Tone, string>>;

/** Warm paper and ink. */
export const light: Palette = {
  paper: '#fbfaf6',
  ink: '#1b2330',
  soft: '#515b69',
  hair: '#cdc9bc',
  tone: '#ebe8dd',
  accent: '#1d5c9e',
  holds: '#1c6370',
  tight: '#8a5f00',
  fails: '#9c1c1c',
  open: '#5d4a86',
};

/** A blueprint: pale lines on a deep blue ground. */
export const blueprint: Palette = {
  paper: '#0f2a4a',
  ink: '#e6eef7',
  soft: '#b1c3d8',
  hair: '#3c5a80',
  tone: '#1b3a60',
  accent: '#8fc7ff',
  holds: '#7fd6c9',
  tight: '#f0c25a',
  fails: '#ff9a86',
  open: '#cdbcf2',
};

/** Black on white: nothing may depend on a colour here. */
export const print: Palette = {
  paper: '#ffffff',
  ink: '#000000',
  soft: '#333333',
  hair: '#9a9a9a',
  tone: '#ececec',
  accent: '#000000',
  holds: '#000000',
  tight: '#000000',
  fails: '#000000',
  open: '#000000',
};

/** Stroke widths in px. */
export const weights = { hair: 0.5, fine: 0.8, medium: 1.3, heavy: 2.2 } as const;
export type Weight = keyof typeof weights;

export const lettering = { size: 13, small: 11.5 } as const;

export const textFamily = "'gb-sans','Fira Sans',system-ui,sans-serif";
export const monoFamily = "'gb-mono','Fira Mono',ui-monospace,monospace";

/** The palette as custom properties, for a rule of a page's style sheet. */
export const variables = (palette: Palette): string =>
  Object.entries(palette)
    .map(([name, colour]) => `--${name}:${colour}`)
    .join(';');

/** A colour that follows the page, and is that of light paper where there is no page. */
export const colour = (name: Tone): string => `var(--${name},${light[name]})`;

const rule = (selector: string, body: string): string => `.gb-fig ${selector}{${body}}`;
const stroked: readonly Tone[] = ['ink', 'soft', 'hair', 'accent', 'holds', 'tight', 'fails', 'open'];

/**
 * The style of every figure, scoped to `.gb-fig`. A page that shows many figures carries it once.
 * `s-` classes stroke, `f-` classes fill, `w-` classes set a line weight.
 */
export const figureStyle = [
  `.gb-fig{font-family:${textFamily};font-size:${lettering.size}px;font-variant-numeric:tabular-nums lining-nums;overflow:visible}`,
  rule('text', `fill:${colour('ink')};stroke:none`),
  rule('.soft', `fill:${colour('soft')}`),
  rule('.small', `font-size:${lettering.small}px`),
  rule('.strong', 'font-weight:600'),
  rule('.halo', `paint-order:stroke;stroke:${colour('paper')};stroke-width:3.5px;stroke-linejoin:round`),
  ...stroked.map((name) => rule(`.s-${name}`, `stroke:${colour(name)};fill:none`)),
  ...stroked.map((name) => rule(`.f-${name}`, `fill:${colour(name)};stroke:none`)),
  rule('.f-tone', `fill:${colour('tone')};stroke:none`),
  rule('.f-paper', `fill:${colour('paper')};stroke:none`),
  rule('.both', `fill:${colour('paper')}`),
  ...Object.entries(weights).map(([name, width]) => rule(`.w-${name}`, `stroke-width:${width}px`)),
  rule('.dashed', 'stroke-dasharray:6 3.5'),
  rule('.dotted', 'stroke-dasharray:0.1 3.6;stroke-linecap:round'),
  rule('.chain', 'stroke-dasharray:14 3 2 3'),
  rule('.short', 'stroke-dasharray:3 2.4'),
].join('');
