/** The frame that every figure stands in. */
import { tag, raw, type Markup, type Part } from './markup.ts';
import { px, pathOf, type Point } from './geometry.ts';
import { figureStyle, type Tone, type Weight } from './style.ts';

export interface Frame {
  readonly width: number;
  readonly height: number;
  readonly title: string;
  /** The figure in words. */
  readonly alt: string;
  /** True where the page carries the style of figures itself. */
  readonly bare?: boolean | undefined;
}

/**
 * A complete SVG element around its content, with the text that stands for it when it cannot be seen.
 * @param frame size in px and words
 * @param content what is drawn
 * @returns the element as text
 */
export const figure = (frame: Frame, content: Part): string => {
  const [width, height] = [px(frame.width), px(frame.height)];
  const label = frame.alt.startsWith(frame.title) ? frame.alt : `${frame.title}. ${frame.alt}`;
  return tag`<svg xmlns="http://www.w3.org/2000/svg" class="gb-fig" role="img" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}" aria-label="${label}"><title>${frame.title}</title><desc>${frame.alt}</desc>${
    frame.bare ? null : raw(`<style>${figureStyle}</style>`)
  }${content}</svg>`.markup;
};

export interface Pen {
  readonly tone?: Tone;
  readonly weight?: Weight;
  readonly stroke?: 'full' | 'dashed' | 'dotted' | 'chain' | 'short';
}

/** The classes of a stroked line. */
export const pen = ({ tone = 'ink', weight = 'fine', stroke = 'full' }: Pen = {}): string =>
  `s-${tone} w-${weight}${stroke === 'full' ? '' : ` ${stroke}`}`;

export const path = (d: string, classes: string): Markup => (d ? tag`<path class="${classes}" d="${d}"/>` : raw(''));

export const line = (from: Point, to: Point, classes: string): Markup => path(pathOf([from, to]), classes);

export interface Lettering {
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly classes?: string;
  /** Degrees clockwise about the text's own place. */
  readonly turn?: number;
}

export const text = ([x, y]: Point, words: string, { anchor = 'start', classes, turn }: Lettering = {}): Markup =>
  tag`<text x="${px(x)}" y="${px(y)}"${anchor === 'start' ? null : tag` text-anchor="${anchor}"`}${
    classes ? tag` class="${classes}"` : null
  }${turn ? tag` transform="rotate(${px(turn)} ${px(x)} ${px(y)})"` : null}>${words}</text>`;
