import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { builtinModules } from 'node:module';
import { dirname, join, posix, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('..', import.meta.url));

// Who may import whom. The registry is the one place where the house meets its disciplines.
const LAYERS: Record<string, readonly string[]> = {
  kernel: [],
  figures: ['kernel'],
  contract: ['kernel', 'figures'],
  disciplines: ['kernel', 'figures', 'contract'],
  engine: ['kernel', 'contract'],
  app: ['kernel', 'figures', 'contract', 'engine', 'disciplines'],
  pack: ['kernel', 'figures', 'contract', 'engine', 'app'],
  cli: ['kernel', 'figures', 'contract', 'engine', 'app', 'pack', 'workbench'],
  workbench: ['kernel', 'figures', 'contract', 'engine', 'app', 'pack'],
};
const CORE = ['kernel', 'figures', 'contract', 'disciplines', 'engine', 'app'];

// Inside one discipline. A room is a file or, where one grows too long, a folder.
const ROOMS: Record<string, readonly string[]> = {
  schema: [],
  facts: [],
  data: [],
  calc: ['data', 'schema', 'facts'],
  providers: ['data', 'calc', 'schema', 'facts'],
  bench: ['data', 'calc', 'schema', 'facts'],
  checks: ['data', 'calc', 'schema', 'facts'],
  figures: ['data', 'calc', 'schema', 'facts'],
  studies: ['data', 'calc', 'checks', 'schema', 'facts'],
  sheet: ['data', 'calc', 'checks', 'figures', 'studies', 'schema', 'facts'],
  index: ['data', 'calc', 'providers', 'bench', 'checks', 'figures', 'studies', 'sheet', 'schema', 'facts'],
};

// Inside the workbench. Page, worker and server know what they agreed upon and not each other.
const TABLES: Record<string, readonly string[]> = {
  desk: [],
  worker: ['desk'],
  server: ['desk'],
  client: ['desk'],
};
/** Rooms that run in a page. */
const IN_PAGE = ['desk', 'worker', 'client'];

const LONGEST = 400;
const LONGER: Record<string, string> = {};

// Also ordinary words of a program: only their use as a text betrays that a discipline is meant.
const ORDINARY = new Set(['run', 'supply', 'cost', 'sequence', 'structure', 'controller', 'wiring']);

interface Source {
  /** Path from the root, with forward slashes. */
  readonly path: string;
  readonly text: string;
  readonly code: string;
  readonly layer: string;
  readonly discipline: string | undefined;
  readonly room: string | undefined;
  readonly isTest: boolean;
}

function walk(folder: string): string[] {
  if (!existsSync(join(root, folder))) return [];
  return readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter((file) => /\.(ts|tsx|mjs)$/.test(file))
    .map((file) => [folder, ...file.split(sep)].join('/'));
}

// Texts are matched first, so that what looks like a comment inside one stays.
const withoutComments = (text: string): string =>
  text.replaceAll(/('(?:\\.|[^'\\\n])*'|"(?:\\.|[^"\\\n])*"|`(?:\\.|[^`\\])*`)|\/\*[\s\S]*?\*\/|\/\/[^\n]*/g, '$1');
const textsIn = (code: string): string[] =>
  [...code.matchAll(/'((?:\\.|[^'\\\n])*)'|"((?:\\.|[^"\\\n])*)"|`((?:\\.|[^`\\])*)`/g)].map(
    ([, single, double, template]) => single ?? double ?? template ?? '',
  );
const withoutTexts = (code: string): string =>
  code.replaceAll(/'(?:\\.|[^'\\\n])*'|"(?:\\.|[^"\\\n])*"|`(?:\\.|[^`\\])*`/g, "''");
const importsIn = (code: string): string[] =>
  [...code.matchAll(/(?:\bfrom|\bimport)\s*\(?\s*(['"])([^'"\n]+)\1/g)].map(([, , target]) => target ?? '');

function source(path: string, text: string): Source {
  const [, layer = '', third = '', fourth = ''] = path.split('/');
  const inDiscipline = layer === 'disciplines' && fourth !== '';
  const inWorkbench = layer === 'workbench' && fourth !== '';
  return {
    path,
    text,
    code: withoutComments(text),
    layer: layer.replace(/\.ts$/, ''),
    discipline: inDiscipline ? third : undefined,
    room: inDiscipline ? fourth.replace(/\.ts$/, '') : inWorkbench ? third : undefined,
    isTest: path.includes('/tests/'),
  };
}

const read = (folder: string): Source[] =>
  walk(folder).map((path) => source(path, readFileSync(join(root, path), 'utf8')));
const sources = read('src');
const disciplines = [...new Set(sources.flatMap((file) => file.discipline ?? []))];

/** What is wrong with one import of one file, or nothing. */
function objection(from: Source, target: string): string | undefined {
  const says = (why: string): string => `${from.path} imports ${target}: ${why}`;
  if (!target.startsWith('.')) {
    const isNode = target.startsWith('node:') || builtinModules.includes(target);
    const isInPage = CORE.includes(from.layer) || (from.layer === 'workbench' && IN_PAGE.includes(from.room ?? ''));
    return isNode && isInPage ? says('this runs in a page too') : undefined;
  }
  if (!/\.(tsx?|json|css)$/.test(target)) return says('the name of a file ends in what it is');
  const path = posix.join(posix.dirname(from.path), target);
  if (!path.startsWith('src/')) return path.endsWith('.json') ? undefined : says('code lives in src');
  const to = source(path, '');
  if (from.layer !== to.layer)
    return LAYERS[from.layer]?.includes(to.layer) ? undefined : says(`${from.layer} does not know ${to.layer}`);
  if (from.layer === 'workbench')
    return to.room === from.room || TABLES[from.room ?? '']?.includes(to.room ?? '')
      ? undefined
      : says(`${from.room} does not know ${to.room}`);
  if (from.layer !== 'disciplines') return undefined;
  if (from.discipline === undefined)
    return to.room === 'index' ? undefined : says('a discipline is entered by its door');
  if (to.discipline !== from.discipline)
    return to.room === 'facts' ? undefined : says('disciplines meet in facts.ts only');
  if (to.room === from.room) return undefined;
  return ROOMS[from.room ?? '']?.includes(to.room ?? '') ? undefined : says(`${from.room} does not know ${to.room}`);
}

const objections = (files: readonly Source[]): string[] =>
  files.flatMap((file) => importsIn(file.code).flatMap((target) => objection(file, target) ?? []));

/** Where a file of the house names a discipline. */
function namings(file: Source, names: readonly string[]): string[] {
  const code = withoutTexts(file.code);
  return names.flatMap((name) => {
    const meant = new RegExp(`^${name}([./].*)?$|^${name.toUpperCase()}-`);
    const texts = textsIn(file.code).filter((text) => meant.test(text));
    const identifier = !ORDINARY.has(name) && new RegExp(`\\b${name}\\b`).test(code) ? [name] : [];
    return [...texts, ...identifier].map((found) => `${file.path} says ${found}`);
  });
}

describe('imports go one way', () => {
  it('from layer to layer, from room to room, and between disciplines through facts', () => {
    expect(sources.length).toBeGreaterThan(0);
    expect(objections(sources.filter((file) => !file.isTest))).toEqual([]);
  });

  it.each([
    ['src/kernel/units.ts', "import { a } from '../engine/index.ts';"],
    ['src/engine/graph.ts', "import type { A } from '../disciplines/swing/index.ts';"],
    ['src/engine/graph.ts', "export { a } from '../figures/index.ts';"],
    ['src/app/index.ts', "import { readFile } from 'node:fs';"],
    ['src/contract/index.ts', "const late = await import('../app/index.ts');"],
    ['src/cli/main.ts', "import { swing } from '../disciplines/swing/index.ts';"],
    ['src/disciplines/swing/checks/reach.ts', "import { a } from '../sheet.ts';"],
    ['src/disciplines/swing/facts.ts', "import { a } from './calc/period.ts';"],
    ['src/disciplines/swing/calc/period.ts', "import { a } from '../../motion/calc/profile.ts';"],
    ['src/disciplines/registry.ts', "import { a } from './swing/sheet.ts';"],
    ['src/kernel/units.ts', "import { a } from './numbers';"],
    ['src/workbench/client/app.tsx', "import { a } from '../server/index.ts';"],
    ['src/workbench/desk/engine.ts', "import { a } from '../worker/main.ts';"],
    ['src/workbench/worker/main.ts', "import { a } from 'node:fs';"],
  ])('%s may not hold: %s', (path, text) => {
    expect(objections([source(path, text)])).toHaveLength(1);
  });

  it.each([
    ['src/disciplines/swing/calc/period.ts', "import { a } from '../../motion/facts.ts';"],
    ['src/disciplines/registry.ts', "import { swing } from './swing/index.ts';"],
    ['src/kernel/units.ts', "// import { a } from '../engine/index.ts';"],
    ['src/pack/index.ts', "import { writeFile } from 'node:fs/promises';"],
    ['src/workbench/client/app.tsx', "import { A } from './sheet.tsx'; import type { B } from '../desk/engine.ts';"],
    ['src/workbench/server/index.ts', "import { createServer } from 'node:http';"],
  ])('%s may hold: %s', (path, text) => {
    expect(objections([source(path, text)])).toEqual([]);
  });
});

describe('a discipline', () => {
  it.each(disciplines)('%s has rooms of the agreed names only, and says what it answers', (name) => {
    const rooms = readdirSync(join(root, 'src/disciplines', name)).map((entry) => entry.replace(/\.ts$/, ''));
    expect(rooms).toEqual(expect.arrayContaining(['README.md', 'index', 'tests']));
    expect(rooms.filter((room) => !(room in ROOMS) && room !== 'README.md' && room !== 'tests')).toEqual([]);
  });

  it.each(disciplines)('%s lets out nothing but itself', (name) => {
    const door = sources.find((file) => file.path === `src/disciplines/${name}/index.ts`);
    const camel = name.replaceAll(/-(\w)/g, (_, letter: string) => letter.toUpperCase());
    expect(door?.code.match(/^export\b.*$/gm)).toEqual([expect.stringMatching(`^export const ${camel}\\b`)]);
  });

  it('is named nowhere in the house', () => {
    const house = sources.filter((file) => !['disciplines', 'app'].includes(file.layer) && !file.isTest);
    expect(house.flatMap((file) => namings(file, disciplines))).toEqual([]);
  });

  it('would be noticed where it is named', () => {
    const named = (text: string): string[] => namings(source('src/engine/a.ts', text), ['motion', 'run']);
    expect(named("if (sheet === 'motion') run();")).toHaveLength(1);
    expect(named('return facts.motion;')).toHaveLength(1);
    expect(named("ask('motion.speed', 'MOTION-010', 'run')")).toHaveLength(3);
    expect(named("const css = '@media (prefers-reduced-motion) {}'; // motion")).toEqual([]);
  });
});

describe('every file', () => {
  const all = [...sources, ...read('tests'), ...read('scripts')];
  const here = relative(root, fileURLToPath(import.meta.url))
    .split(sep)
    .join('/');

  it('is short enough to read', () => {
    const long = all.filter((file) => file.text.trimEnd().split('\n').length > LONGEST && !(file.path in LONGER));
    expect(long.map((file) => file.path)).toEqual([]);
  });

  it('is where the list of longer ones says', () => {
    expect(Object.keys(LONGER).filter((path) => !all.some((file) => file.path === path))).toEqual([]);
    expect(dirname(here)).toBe('tests');
  });

  it('silences no check and puts nothing off', () => {
    const silencer = /@ts-(ignore|expect-error|nocheck)|(ox|es)lint-disable|prettier-ignore|\b(TODO|FIXME|XXX)\b/;
    expect(all.filter((file) => file.path !== here && silencer.test(file.text)).map((file) => file.path)).toEqual([]);
  });
});
