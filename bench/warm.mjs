// Times what happens after one edited number, inside one process that has been at work for a while. Prints JSON.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { houseOn } from '../src/app/index.ts';
import { axes, edited } from './books.mjs';

const [part, examples] = process.argv.slice(2);
const read = (name) => readFileSync(join(examples, name, 'book.yaml'), 'utf8');
const timed = (work) => {
  const from = performance.now();
  const result = work();
  return [performance.now() - from, result];
};
const opened = (house, text) => {
  const [reading, result] = timed(() => house.read((name) => (name === 'book.yaml' ? text : undefined), 'book.yaml'));
  if (!result.ok) throw new Error(result.problems.map(({ place, what }) => `${place.line}: ${what}`).join('\n'));
  const [verdicts, machine] = timed(() => house.open(result.book));
  return { reading, verdicts, machine };
};

const parts = {
  /** One number is edited, again and again. */
  edits: () => {
    const house = houseOn();
    const text = read('tidepool');
    for (let i = 0; i < 10; i++) opened(house, edited(text, 'speed', i));
    const times = { reading: [], verdicts: [] };
    for (let i = 10; i < 90; i++) {
      const { reading, verdicts } = opened(house, edited(text, 'speed', i));
      times.reading.push(reading);
      times.verdicts.push(verdicts);
    }
    return times;
  },
  /** What is shown a moment after the verdicts. */
  afterwards: () => {
    const house = houseOn();
    const [text, draft] = [read('tidepool'), read('tidepool-first-draft')];
    const times = { rankings: [], remedies: [], figures: [], studied: [] };
    for (let i = 0; i < 7; i++) {
      const { machine } = opened(house, edited(text, 'speed', i));
      times.rankings.push(timed(() => machine.questions())[0]);
      times.figures.push(timed(() => house.disciplines.map(({ name }) => machine.sheet(name, 'later')))[0]);
      times.studied.push(timed(() => house.disciplines.map(({ name }) => machine.sheet(name)))[0]);
    }
    for (let i = 0; i < 5; i++) {
      const { machine } = opened(house, edited(draft, 'speed', i));
      const failing = machine.findings.filter(({ verdict, levers }) => verdict === 'fails' && levers.length > 0);
      const worst = failing.toSorted((a, b) => (b.use?.worst ?? 0) - (a.use?.worst ?? 0))[0];
      times.remedies.push(timed(() => worst && machine.remedies(worst.key))[0]);
    }
    return times;
  },
  /** Does twice the machine take twice as long? */
  axes: () => {
    const times = { 10: [], 20: [], 40: [] };
    opened(houseOn(), axes(10));
    for (let round = 0; round < 3; round++)
      for (const count of [10, 20, 40]) times[count].push(opened(houseOn(), axes(count)).verdicts);
    return times;
  },
};

process.stdout.write(JSON.stringify(parts[part]()));
