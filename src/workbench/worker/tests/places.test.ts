import { describe, expect, it } from 'vitest';
import type { BookText, FactPlace } from '../../desk/engine.ts';
import { offsetAt } from '../places.ts';
import { beganDemo, begin, bookOf, changed, demo } from './books.ts';

const on = ({ files }: BookText, place: FactPlace | undefined): string | undefined =>
  place && files[place.file]!.slice(place.from, place.to);

describe('a place', () => {
  it.each([
    ['abc', 1, 1, 0],
    ['abc\ndef', 2, 2, 5],
    ['\uFEFFabc\r\ndef', 1, 1, 1],
    ['\uFEFFabc\r\ndef', 2, 1, 6],
    ['😀x\ny', 2, 1, 4],
    ['abc', 9, 9, 3],
    ['abc', 1, 99, 3],
    ['', 1, 1, 0],
  ])('in %j, line %d, column %d is at %d', (text, line, column, offset) => {
    expect(offsetAt(text, { line, column })).toBe(offset);
  });
});

describe('where a fact stands', () => {
  it('is its value, also of a fact that says where it comes from, of a list and in it', async () => {
    const book = demo('tidepool');
    const { engine } = await beganDemo('tidepool');
    const at = async (path: string) => {
      const place = await engine.placeOf(1, path);
      return [on(book, place), place?.exact];
    };
    expect(await at('axes.x.speed')).toEqual(['220 mm/s', true]);
    expect(await at('axes.x.moving-mass')).toEqual(['2.4..2.6 kg', true]);
    expect(await at('axes.y.motors.1')).toEqual(['M3', true]);
    expect(await at('axes.y.motors')).toEqual(['[M2, M3]', true]);
    expect(await at('modes.aiming.moving.0')).toEqual(['x', true]);
    expect(await at('axes.z.drum.diameter')).toEqual(['32 mm', true]);
    expect(await at('supplies.G1.rails.24V.volts')).toEqual(['24 V ±2%', true]);
    expect((await at('axes.z'))[0]).toMatch(/^drive: hoist[^]*\[?S6/);
  });

  it('is the nearest thing around it when a table or the catalogue has it', async () => {
    const book = demo('tidepool');
    const { engine } = await beganDemo('tidepool');
    for (const [path, text] of [
      ['axes.x.efficiency', 'x'],
      ['parts.scrap-23.rotor-inertia', 'scrap-23'],
      ['parts.chain-rated-4x0.5.core', 'parts'],
    ] as const) {
      const place = await engine.placeOf(1, path);
      expect([on(book, place), place?.exact]).toEqual([text, false]);
    }
    expect(await engine.placeOf(1, 'nowhere.at.all')).toBeUndefined();
  });

  it('is in whichever file has it, and where the anchor of an alias is', async () => {
    const book: BookText = {
      main: 'book.yaml',
      files: {
        'book.yaml':
          'book: 1\ntitle: T\nrevision: A\ninclude: [parts/motors.yaml]\naxes:\n  x: &axis { drive: belt, speed: 1 mm/s }\n  y: *axis\n',
        'parts/motors.yaml': 'motors:\n  M1: { part: frame-23-56 }\n',
      },
    };
    const { engine } = await begin(book);
    const motor = await engine.placeOf(1, 'motors.M1.part');
    expect([motor?.file, on(book, motor)]).toEqual(['parts/motors.yaml', 'frame-23-56']);
    expect(on(book, await engine.placeOf(1, 'axes.y.speed'))).toBe('1 mm/s');
    expect(on(book, await engine.placeOf(1, 'axes.y'))).toBe('*axis');
  });
});

describe('a fact that is taken hold of', () => {
  it('has its text, also when only a table has it', async () => {
    const { engine } = await beganDemo('tidepool');
    expect(await engine.handle(1, 'axes.x.speed')).toMatchObject({
      means: 'greatest speed',
      text: '220 mm/s',
      place: { exact: true },
    });
    expect(await engine.handle(1, 'axes.x.moving-mass')).toMatchObject({ text: '2.4..2.6 kg' });
    expect(await engine.handle(1, 'axes.x.pulley-teeth')).toMatchObject({ text: '20' });
    expect(await engine.handle(1, 'axes.x.drive')).toMatchObject({ text: 'belt' });
    const filled = await engine.handle(1, 'parts.scrap-23.rotor-inertia');
    expect(filled).toMatchObject({ text: expect.stringMatching(/g·cm²/), place: { exact: false } });
    expect(await engine.handle(1, 'axes.x')).toBeUndefined();
    expect(await engine.handle(1, 'nonsense')).toBeUndefined();
  });

  it('is changed in the text, where it stands, and every other byte is kept', async () => {
    const book = demo('tidepool');
    const { engine } = await begin(book);
    const trial = (await engine.trial(1, [{ path: 'axes.x.speed', text: '160 mm/s' }]))!;
    expect(trial.files).toEqual(changed(book, 'speed: 220 mm/s', 'speed: 160 mm/s').files);
    expect(trial.moved.length).toBeGreaterThan(0);
    const laid = await engine.lay({ ...book, files: { ...trial.files } }, 2);
    expect(laid?.ok && laid.moved.map(({ key, after }) => [key, after])).toEqual(
      trial.moved.map(({ key, after }) => [key, after]),
    );
  });

  it.each([
    [{ path: 'axes.x.speed', text: '160' }, /has no unit/],
    [{ path: 'axes.x.speed', text: '-3 mm/s' }, /not possible/],
    [{ path: 'axes.x.drive', text: 'rocket' }, /not one of|belt/i],
    [{ path: 'axes.x.speed.deeper', text: '1' }, /cannot be changed/],
    [{ path: 'motors.M1.driver', text: 'D9' }, /D9/],
    [{ path: 'book', text: null }, /book/i],
  ])('is not changed into what cannot stand there: %o', async (edit, says) => {
    const { engine } = await beganDemo('tidepool');
    const trial = await engine.trial(1, [edit]);
    expect(trial).toMatchObject({ moved: [], files: {}, problem: expect.stringMatching(says) });
  });
});

describe('a problem', () => {
  it('is told with its stretch of text, and all of them at once', async () => {
    const text =
      '# YAML 1.2\nbook: 1\ntitle: T\nrevision: A\naxes:\n  x: { drive: belt, speed: 160, sped: 1 }\nextra: 1\n';
    const { engine } = await begin(demo('five-facts'));
    const unread = await engine.lay(bookOf(text), 2);
    if (!unread || unread.ok) throw new Error('it was read');
    expect(unread.problems.map(({ from, to }) => text.slice(from, to))).toEqual(['160', 'sped', 'extra']);
    expect(unread.problems[1]!.says).toMatch(/speed/);
    expect(unread.problems.every(({ keepsFromReading }) => keepsFromReading)).toBe(true);
  });

  it('may leave the book readable', async () => {
    const text = 'book: 1\ntitle: T\nrevision: A\naccepted: [{ finding: NONE-010, because: b }]\n';
    const { laid } = await begin(bookOf(text));
    expect(laid.warnings).toMatchObject([{ keepsFromReading: false }]);
    expect(text.slice(laid.warnings[0]!.from, laid.warnings[0]!.to)).toBe('NONE-010');
  });
});
