/** Whatever happens in whatever order: nothing that somebody wrote is lost silently. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { draftOf, withDraft } from '../draft.ts';
import {
  heard,
  notSaved,
  openText,
  put,
  redone,
  saveBegun,
  saved,
  settled,
  typed,
  undone,
  unsaved,
  type OpenText,
} from '../session.ts';

const NAMES = ['book.yaml', 'motors.yaml'] as const;
type Name = (typeof NAMES)[number];
type Disk = Record<string, string | null>;

const hash = (text: string): string => `hash of ${text}`;
const seenOf = (disk: Disk): Record<string, string> =>
  Object.fromEntries(Object.entries(disk).flatMap(([name, text]) => (text === null ? [] : [[name, hash(text)]])));
const textsOf = (disk: Disk): Record<string, string> =>
  Object.fromEntries(Object.entries(disk).filter((entry): entry is [string, string] => entry[1] !== null));

/** The desk, the disk, and what is on the way between them. */
interface World {
  text: OpenText;
  disk: Disk;
  now: number;
  /** What others did and has not been heard of yet. */
  news: Name[];
  /** A save that was asked for: what the disk made of it, not yet answered. */
  answer?: { readonly files: Record<string, string>; readonly theirs?: Disk };
  count: number;
  /** Every text that could be got at so far, by file. */
  readonly shown: Readonly<Record<Name, Set<string | null>>>;
}

const walk = (text: OpenText, step: (one: OpenText) => OpenText): readonly OpenText[] => {
  const all = [text];
  for (let here = step(text); here !== all.at(-1); here = step(here)) all.push(here);
  return all;
};
/** Every text of a file that a person can get at: by undo and redo, or because it is asked about. */
const within = (text: OpenText, name: string): ReadonlySet<string | null> =>
  new Set([
    ...[...walk(text, undone), ...walk(text, redone)].map(({ files }) => files[name] ?? null),
    ...(text.conflict && Object.hasOwn(text.conflict.theirs, name) ? [text.conflict.theirs[name]!] : []),
  ]);

type Event =
  | { readonly kind: 'type' | 'change' | 'other' | 'vanish'; readonly name: Name }
  | { readonly kind: 'undo' | 'redo' | 'save' | 'answer' | 'hear' | 'crash' | 'lose' }
  | { readonly kind: 'choose'; readonly name: Name; readonly choice: 'mine' | 'theirs' };

const name = fc.constantFrom(...NAMES);
const event: fc.Arbitrary<Event> = fc.oneof(
  { weight: 6, arbitrary: fc.record({ kind: fc.constantFrom('type', 'change', 'other', 'vanish'), name }) },
  {
    weight: 8,
    arbitrary: fc.record({ kind: fc.constantFrom('undo', 'redo', 'save', 'answer', 'hear', 'crash', 'lose') }),
  },
  { weight: 3, arbitrary: fc.record({ kind: fc.constant('choose'), name, choice: fc.constantFrom('mine', 'theirs') }) },
);

const begin = (): World => {
  const disk: Disk = { 'book.yaml': 'b0', 'motors.yaml': 'm0' };
  return {
    text: openText({ book: { main: 'book.yaml', files: textsOf(disk) }, seen: seenOf(disk) }),
    disk,
    now: 0,
    news: [],
    count: 0,
    shown: { 'book.yaml': new Set(['b0']), 'motors.yaml': new Set(['m0']) },
  };
};

/** The folder: writes all or nothing, and only over what was seen. */
const store = (world: World): void => {
  const begun = saveBegun(world.text);
  if (!begun || world.answer) return;
  const { files, seen } = begun;
  world.text = begun.text;
  const others = Object.keys(files).filter((one) => (seenOf(world.disk)[one] ?? '') !== (seen[one] ?? ''));
  if (others.length > 0) {
    world.answer = { files, theirs: Object.fromEntries(others.map((one) => [one, world.disk[one] ?? null])) };
    return;
  }
  for (const [one, text] of Object.entries(files)) {
    const over = world.disk[one] ?? null;
    // What is written over must have been before somebody's eyes.
    if (over !== null) expect(world.shown[one as Name]).toContain(over);
    world.disk[one] = text;
  }
  world.answer = { files };
};

const answered = (world: World): void => {
  const { answer } = world;
  if (!answer) return;
  delete world.answer;
  if (answer.theirs) {
    const change = { files: answer.theirs, seen: seenOf(answer.theirs) };
    world.text = heard(notSaved(world.text), change, world.now);
  } else world.text = saved(world.text, answer.files, seenOf(answer.files), world.now);
};

const happen = (world: World, event: Event): void => {
  world.now += 700;
  const fresh = `w${world.count++}`;
  switch (event.kind) {
    case 'type':
      world.text = typed(world.text, event.name, `${world.text.files[event.name] ?? ''}${fresh}`, world.now);
      break;
    case 'change':
      world.text = put(world.text, { [event.name]: fresh }, { words: 'a remedy', now: world.now });
      break;
    case 'other':
      world.disk[event.name] = fresh;
      world.news.push(event.name);
      break;
    case 'vanish':
      world.disk[event.name] = null;
      world.news.push(event.name);
      break;
    case 'undo':
      world.text = undone(world.text);
      break;
    case 'redo':
      world.text = redone(world.text);
      break;
    case 'save':
      store(world);
      break;
    case 'answer':
      answered(world);
      break;
    case 'hear': {
      const files = Object.fromEntries(world.news.map((one) => [one, world.disk[one] ?? null]));
      world.news = [];
      world.text = heard(world.text, { files, seen: seenOf(files) }, world.now);
      break;
    }
    case 'lose':
      // The answer to a save never comes; what it did is heard of as anybody's doing.
      if (world.answer) {
        world.news.push(...(Object.keys(world.answer.files) as Name[]));
        delete world.answer;
        world.text = notSaved(world.text);
      }
      break;
    case 'crash': {
      // A disk without its main file cannot be opened.
      if (world.disk['book.yaml'] === null) break;
      const kept: unknown = JSON.parse(JSON.stringify(draftOf(world.text) ?? null));
      delete world.answer;
      world.news = [];
      const opened = openText({ book: { main: 'book.yaml', files: textsOf(world.disk) }, seen: seenOf(world.disk) });
      world.text = withDraft(opened, kept, world.now);
      break;
    }
    case 'choose':
      world.text = settled(world.text, { [event.name]: event.choice }, world.now);
      break;
  }
  for (const file of NAMES) for (const text of within(world.text, file)) world.shown[file].add(text);
};

const events = fc.array(event, { minLength: 1, maxLength: 40 });

describe('whatever happens', () => {
  it('an unsaved text stays here, or is one or more steps away, or is on the disk', () => {
    fc.assert(
      fc.property(events, (all) => {
        const world = begin();
        for (const one of all) {
          const before = unsaved(world.text);
          happen(world, one);
          for (const file of NAMES) {
            const text = before[file];
            // What goes on being typed is one step.
            const goesOn = one.kind === 'type' && one.name === file;
            if (text === undefined || world.disk[file] === text || goesOn) continue;
            expect(within(world.text, file)).toContain(text);
          }
        }
      }),
      { numRuns: 400 },
    );
  });

  it('undo and then redo changes nothing, and redo and then undo neither', () => {
    fc.assert(
      fc.property(events, (all) => {
        const world = begin();
        for (const one of all) {
          happen(world, one);
          const { text } = world;
          if (text.past.length > 0) expect(redone(undone(text))).toEqual(text);
          if (text.future.length > 0) expect(undone(redone(text))).toEqual(text);
        }
      }),
      { numRuns: 200 },
    );
  });

  it('comes to rest: once all is heard, answered, chosen and saved, desk and disk are the same', () => {
    fc.assert(
      fc.property(events, fc.constantFrom('mine' as const, 'theirs' as const), (all, choice) => {
        const world = begin();
        for (const one of all) happen(world, one);
        for (let round = 0; round < 4; round++) {
          world.news.push(...NAMES);
          happen(world, { kind: 'answer' });
          happen(world, { kind: 'hear' });
          for (const file of NAMES) happen(world, { kind: 'choose', name: file, choice });
          // A main file that is gone can only be put back.
          happen(world, { kind: 'choose', name: 'book.yaml', choice: 'mine' });
          happen(world, { kind: 'save' });
        }
        happen(world, { kind: 'answer' });
        expect(world.text.conflict).toBeUndefined();
        // A file that was taken out here stays on the disk: the desk deletes nothing.
        expect(textsOf(world.disk)).toMatchObject(world.text.files);
        expect(world.text.seen).toEqual(seenOf(world.disk));
      }),
      { numRuns: 400 },
    );
  });
});
