/** What is written to: how wide it is, whether it shows colours, which letters it knows. */
import picocolors from 'picocolors';
import { frameInAscii, harmless, inAscii } from './text.ts';

export type Colours = ReturnType<typeof picocolors.createColors>;

/** What the terminal and the environment say, so that a test can say something else. */
export interface Surroundings {
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly platform: string;
  readonly out: { readonly isTTY?: boolean; readonly columns?: number; readonly write: (text: string) => unknown };
  readonly err: { readonly isTTY?: boolean; readonly write: (text: string) => unknown };
  /** What is typed or piped in, line by line; opened only when something is asked. */
  readonly lines?: () => AsyncIterator<string>;
}

export interface Terminal {
  readonly columns: number;
  readonly unicode: boolean;
  readonly colours: Colours;
  /** A person sits before it. */
  readonly isLive: boolean;
  /** A text as it may stand there: nothing that takes hold of the terminal, plain letters where it knows no others. */
  readonly text: (text: string) => string;
  /** The same for a problem in its frame, as lines. */
  readonly frame: (frame: string) => readonly string[];
  /** The mark for something left out. */
  readonly more: string;
  readonly print: (...lines: readonly string[]) => void;
  readonly complain: (...lines: readonly string[]) => void;
  readonly around: Surroundings;
}

const NARROWEST = 40;
const WIDEST = 100;
const USUAL = 80;

const knowsUnicode = ({ env, platform }: Surroundings): boolean => {
  const locale = env['LC_ALL'] || env['LC_CTYPE'] || env['LANG'];
  if (locale) return /utf-?8/i.test(locale);
  return platform === 'darwin' || (platform === 'win32' && env['WT_SESSION'] !== undefined);
};

export const terminalIn = (around: Surroundings): Terminal => {
  const { env, out, err } = around;
  const isLive = out.isTTY === true;
  const unicode = knowsUnicode(around);
  const wantsColour = isLive && !env['NO_COLOR'] && env['TERM'] !== 'dumb';
  const columns = isLive && out.columns ? Math.min(Math.max(out.columns, NARROWEST), WIDEST) : USUAL;
  const lines = (texts: readonly string[]): string => texts.map((text) => `${text}\n`).join('');
  return {
    columns,
    unicode,
    colours: picocolors.createColors(wantsColour),
    isLive,
    text: (text) => (unicode ? harmless(text) : inAscii(harmless(text))),
    frame: (frame) => (unicode ? harmless(frame) : frameInAscii(harmless(frame))).split('\n'),
    more: unicode ? '…' : '...',
    print: (...texts) => void out.write(lines(texts)),
    complain: (...texts) => void err.write(lines(texts)),
    around,
  };
};
