import { describe, expect, it } from 'vitest';
import { houseOn } from '../../../../app/index.ts';
import { checkBook, find } from '../../../../app/testing.ts';
import type { Block } from '../../../../contract/index.ts';
import { exactInterval } from '../../../../kernel/binomial.ts';
import type { Tally } from '../../calc/plays.ts';
import { player } from '../../data/player.ts';
import { jobsOf, missesOf, misses, PLAYS } from '../../studies/misses.ts';
import { base } from '../base.ts';

const blocksOf = (book: string): readonly Block[] => checkBook(book).sheet('swing').document.blocks;
const kinds = (blocks: readonly Block[], kind: Block['kind']): readonly string[] =>
  blocks.filter((block) => block.kind === kind).map((block) => ('name' in block ? block.name : ''));
const textOf = (blocks: readonly Block[]): string => JSON.stringify(blocks);

describe('the sheet', () => {
  it('of a load that hangs free shows its travels, a play from above, its way up and its misses', () => {
    const blocks = blocksOf(base);
    expect(kinds(blocks, 'figure')).toEqual(['plan-z', 'arrival-z', 'growth-z', 'misses-z']);
    expect(kinds(blocks, 'table')).toEqual(['stated', 'periods-z', 'travels-z']);
    expect(textOf(blocks)).toContain(`Of ${PLAYS} simulated plays`);
    expect(textOf(blocks)).not.toMatch(/NaN|undefined|Infinity/);
  });

  it('of one that rides in a cup has nothing to show of travelling', () => {
    const blocks = blocksOf(base.replace('kind: rest', 'kind: cup'));
    expect(kinds(blocks, 'figure')).toEqual(['arrival-z', 'growth-z', 'misses-z']);
    expect(textOf(blocks)).toContain('rides in its cup');
  });

  const swaying = base.replace('calm: 8°', 'calm: 1°').replace('catch: 60 mm', 'catch: 22 mm');

  it('lists cures, ranked, where something swings too far', () => {
    const blocks = blocksOf(swaying);
    expect(kinds(blocks, 'table')).toEqual([
      'stated',
      'periods-z',
      'travels-z',
      'cures-z-x',
      'cures-z',
      'cures-z-misses',
    ]);
    const table = blocks.find((block) => block.kind === 'table' && block.name === 'cures-z');
    expect(table?.kind === 'table' && table.rows.map(([cure]) => cure)[0]).toBe('a wider dock');
    expect(textOf(blocks)).toContain('driven by hand the axis lags');
    // What the table proposes was tried with every check, and holds.
    expect(table?.kind === 'table' && table.rows[0]![4]).toMatch(/^(holds|tight)$/);
  });

  it('says of each cure what a book says that takes it', () => {
    const facts: Readonly<Record<string, string>> = {
      'a lower acceleration': 'axes.x.acceleration',
      'a lower speed': 'axes.x.speed',
      'rounded ramps': 'axes.x.jerk',
      'a longer wait': 'hanging.dwell',
      'a cup that holds it while it travels': 'axes.z.dock.kind',
      'a wider dock': 'axes.z.dock.catch',
      'a slower hoist': 'axes.z.speed',
    };
    const keys: Readonly<Record<string, string>> = {
      'cures-z-x': 'SWING-010/z+x',
      'cures-z': 'SWING-030/z',
      'cures-z-misses': 'SWING-060/z',
    };
    // Also one whose load rides in its cup, so that only the hoist is left to be cured.
    const books = [swaying, swaying.replace('speed: 100 mm/s', 'speed: 300 mm/s').replace('250 mm/s²', '1500 mm/s²')];
    const taken = books.flatMap((book) => {
      const machine = checkBook(book);
      return machine.sheet('swing').document.blocks.flatMap((block) => {
        const key = block.kind === 'table' ? keys[block.name] : undefined;
        if (block.kind !== 'table' || key === undefined) return [];
        return block.rows.flatMap((row) => {
          const [cure, setting, , , said] = row.map((cell) => (typeof cell === 'string' ? cell : cell.text));
          const path = facts[cure!];
          if (path === undefined || said === '') return [];
          const texts = machine.editedTexts([{ path, text: setting === '' ? 'cup' : setting! }]);
          const found = checkBook(texts.get('book.yaml')!).findings.find((finding) => finding.key === key);
          expect(said!.split(';')[0], `${cure} for ${key}`).toBe(
            found === undefined ? 'no longer asked' : found.verdict,
          );
          return [cure];
        });
      });
    });
    expect(new Set(taken).size).toBeGreaterThan(4);
  });

  it('does not count more misses of a driven claw than the question about them lets pass', () => {
    const machine = checkBook(base);
    expect(find(machine, 'SWING-060/z').verdict).toBe('holds');
    const said = textOf(machine.sheet('swing').document.blocks);
    const missed = Number(/Of 1000 simulated plays, [^,]+, (\d+) miss/.exec(said)![1]);
    expect(exactInterval(missed, 1000).low).toBeLessThan(0.01);
    expect(missed).toBeLessThan(10);
  });

  it('of a young book says what is missing instead', () => {
    const blocks = blocksOf(base.slice(0, base.indexOf('hanging:')));
    expect(kinds(blocks, 'figure')).toEqual([]);
    expect(textOf(blocks)).toContain('not stated yet');
  });

  it('of a machine without a hoist says that nothing hangs', () => {
    expect(textOf(blocksOf('book: 1\ntitle: Desk\nrevision: A\naxes:\n  x:\n    drive: belt\n'))).toContain(
      'Nothing hangs on a line',
    );
  });
});

describe('simulated plays', () => {
  const plan = {
    gravity: 9.80665,
    fadingTime: 27,
    tolerance: 1e-6,
    docked: true,
    x: { travel: 0.5, profile: { speed: 0.2, acceleration: 0.7 }, room: Infinity },
    y: { travel: 0.4, profile: { speed: 0.2, acceleration: 0.7 }, room: Infinity },
    hoist: { speed: 0.16, acceleration: 0.5 },
    up: 0.14,
    down: 0.84,
    belowHook: 0.07,
    heap: [0, 0.3] as const,
    scatter: 0.012,
    reach: 0.01,
    lean: Infinity,
    player,
  };

  it('come to the same as jobs, in whatever order they are run', async () => {
    const jobs = jobsOf(plan, 250);
    expect(jobs.map(({ args }) => args.count)).toEqual([100, 100, 50]);
    const { inline } = houseOn();
    const forwards = (await inline.run(jobs)) as readonly Tally[];
    const backwards = ((await inline.run(jobs.toReversed())) as readonly Tally[]).toReversed();
    expect(backwards).toEqual(forwards);
    // Shared out among one to four workers, each of which takes the next job when it is through with one.
    for (const workers of [1, 2, 3, 4]) {
      const shares = Array.from({ length: workers }, (_, w) => jobs.filter((_job, i) => i % workers === w));
      const done = await Promise.all(shares.map((share) => houseOn().inline.run(share)));
      expect(jobs.map((_job, i) => done[i % workers]![Math.floor(i / workers)])).toEqual(forwards);
    }
    const study = misses.run(undefined as never, { plan, plays: 250 });
    let step = study.next();
    const partial: number[] = [];
    while (!step.done) {
      partial.push(step.value.tally.plays);
      step = study.next();
    }
    expect(partial).toEqual([100, 200, 250]);
    expect(step.value).toEqual(missesOf(forwards, 250));
    expect(step.value.interval.low).toBeLessThan(step.value.share);
  });
});
