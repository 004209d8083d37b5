export { drawing, rectangle, type Drawing, type Shape } from './drawing.ts';
export type { Box, Point } from './geometry.ts';
export { escapeText, raw, tag, type Markup, type Part } from './markup.ts';
export { markSvg, markText, verdictSign, verdictTone, verdictWord, worstFirst } from './mark.ts';
export { math, mathInner, mathTerms, symbolMath } from './mathml.ts';
export { plot, type Axis, type Fill, type Layer, type Plot } from './plot.ts';
export {
  blueprint,
  colour,
  figureStyle,
  light,
  monoFamily,
  print,
  textFamily,
  variables,
  type Palette,
  type Tone,
} from './style.ts';
export { movedScaleSvg, useScaleSvg, useScaleText, useText, type Used } from './use-scale.ts';
