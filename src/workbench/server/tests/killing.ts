/** Kills a process that saves and saves, and looks at what is left. */
import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { save, tidy } from '../save.ts';
import { bookAt, textsOf } from '../texts.ts';
import { book, filesIn, type Scratch } from './scratch.ts';

/** The text of a file in an edit: long enough for a half to be one, and the number of the edit on its first line and its last. */
export const textIn = (name: string, edit: number): string =>
  `# ${edit} ${name}\n${name === 'book.yaml' ? book('include: [motors.yaml]\n') : 'motors: {}\n'}# ${'filling '.repeat(6000)}\n# ${edit}\n`;

const NAMES = ['book.yaml', 'motors.yaml'];

/** Which edit a text is, whole and unmixed; NaN when it is none. */
const editOf = (name: string, text: string | undefined): number => {
  const edit = Number(/^# (\d+) /.exec(text ?? '')?.[1] ?? NaN);
  return text === textIn(name, edit) ? edit : NaN;
};

/** One of the programs here, so that it runs by itself. */
export const programIn = async (shelf: Scratch, name: string): Promise<string> => {
  const outfile = join(shelf.home, name.replace(/\.ts$/, '.mjs'));
  await build({
    entryPoints: [fileURLToPath(new URL(name, import.meta.url))],
    outfile,
    bundle: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    banner: {
      js: "import{createRequire as $makeRequire}from'node:module';const require=$makeRequire(import.meta.url);",
    },
    logLevel: 'warning',
  });
  return outfile;
};

/** The same numbers for the same seed, from 0 to 1. */
const randomFrom = (seed: number): (() => number) => {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
};

/** When a saver dies: so many ms after it told of an edit, or at so manyth a thing that it does to the disk. */
type End = { readonly patience: number } | { readonly thing: number };

/** Runs the saver to its end, and gives the last edit that it told of. */
const killed = (saver: string, folder: string, from: number, end: End): Promise<number> =>
  new Promise((resolve, reject) => {
    const thing = 'thing' in end ? end.thing : 0;
    const args = [saver, folder, String(from), String(thing)];
    const child = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'pipe'] });
    let out = '';
    let err = '';
    child.stderr.on('data', (chunk: Buffer) => (err += chunk.toString('utf8')));
    child.stdout.on('data', (chunk: Buffer) => {
      if (out === '' && 'patience' in end) setTimeout(() => child.kill('SIGKILL'), end.patience);
      out += chunk.toString('utf8');
    });
    child.on('close', (_, signal) => {
      const told = out
        .slice(0, Math.max(0, out.lastIndexOf('\n')))
        .split('\n')
        .at(-1);
      if (signal === 'SIGKILL') resolve(told ? Number(told) : from - 1);
      else reject(new Error(`the saver ended by itself: ${err}`));
    });
  });

export interface Outcome {
  readonly told: number;
  /** The edit of each file right after the kill. */
  readonly left: readonly number[];
  /** And when the next desk has opened the book. */
  readonly found: readonly number[];
  readonly others: readonly string[];
}

/** Kills savers of one book one after the other, each at another instant, the same for the same seed. */
export const killings = async (shelf: Scratch, count: number, seed: number): Promise<readonly Outcome[]> => {
  const saver = await programIn(shelf, 'saver.ts');
  const random = randomFrom(seed);
  const folder = shelf.folder(Object.fromEntries(NAMES.map((name) => [name, textIn(name, 0)])));
  const at = bookAt(folder);
  const outcomes: Outcome[] = [];
  let from = 1;
  for (let i = 0; i < count; i++) {
    // By turns at a moment, which no part of a save is safe from, and at a thing, since the most telling moments are short.
    const end = i % 2 === 0 ? { patience: random() * 25 } : { thing: 1 + Math.floor(random() * 60) };
    const told = await killed(saver, folder, from, end);
    const editsNow = (): readonly number[] => NAMES.map((name) => editOf(name, filesIn(folder)[name]));
    const left = editsNow();
    await tidy(at);
    const found = editsNow();
    const others = Object.keys(filesIn(folder)).filter((name) => !NAMES.includes(name));
    outcomes.push({ told, left, found, others });
    from = Math.max(...found) + 1;
  }
  // The book is none the worse: it can be saved on.
  const seen = Object.fromEntries([...textsOf(at)].map(([name, { hash }]) => [name, hash]));
  await save(at, { 'book.yaml': book() }, seen);
  return outcomes;
};

/** What went wrong, in words. */
export const wrongIn = (outcomes: readonly Outcome[]): readonly string[] =>
  outcomes.flatMap(({ told, left, found, others }, i) => [
    ...(left.every((edit) => edit >= told) ? [] : [`kill ${i}: half a file, or an edit lost: ${told}, ${left.join()}`]),
    ...(found.every((edit) => edit === found[0] && (edit === told || edit === told + 1))
      ? []
      : [`kill ${i}: the files do not agree: ${told}, ${found.join()}`]),
    ...(others.length === 0 ? [] : [`kill ${i}: left behind: ${others.join()}`]),
  ]);
