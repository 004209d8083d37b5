/** Saves edit after edit of a book until it is killed, or kills itself. Run as a program of its own. */
import { writeFileSync, writeSync } from 'node:fs';
import { disk } from '../../../pack/disk.ts';
import { save } from '../save.ts';
import { bookAt, textsOf } from '../texts.ts';
import { watched } from './disks.ts';

const [folder = '', from = '1', lastThing = '0'] = process.argv.slice(2);
const at = bookAt(folder);
let seen = Object.fromEntries([...textsOf(at)].map(([name, { hash }]) => [name, hash]));
const before = Object.fromEntries([...textsOf(at)].map(([name, { text }]) => [name, text]));
/** Dies as a killed process does: at once, in the middle of whatever it does to the disk. */
const dying = watched((what, count, path) => {
  if (count !== Number(lastThing)) return;
  if (what === 'write') writeFileSync(path, before['book.yaml']?.slice(0, 1000) ?? '');
  process.kill(process.pid, 'SIGKILL');
});
const place = lastThing === '0' ? disk : dying;

for (let edit = Number(from); ; edit++) {
  const files = Object.fromEntries(
    Object.entries(before).map(([name, text]) => [
      name,
      text.replace(/^# \d+/, `# ${edit}`).replace(/# \d+\n$/, `# ${edit}\n`),
    ]),
  );
  const saved = await save(at, files, seen, place);
  if (saved.kind !== 'saved') throw new Error(JSON.stringify(saved));
  seen = { ...saved.seen };
  writeSync(1, `${edit}\n`);
}
