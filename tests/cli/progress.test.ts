import { describe, expect, it } from 'vitest';
import { progressOn } from '../../src/cli/progress.ts';

const watched = (isTTY: boolean) => {
  const said: string[] = [];
  let time = 0;
  const progress = progressOn({ isTTY, write: (text) => said.push(text) }, () => time);
  return { said, progress, wait: (passed: number) => (time += passed) };
};

describe('progress', () => {
  it('is silent for a second, then says what is worked on, and takes it away', () => {
    const { said, progress, wait } = watched(true);
    progress.step('one');
    wait(999);
    progress.step('two');
    expect(said).toEqual([]);
    wait(1);
    progress.step('three');
    expect(said).toEqual(['\r\u001b[Kworking on three ']);
    progress.done();
    expect(said.at(-1)).toBe('\r\u001b[K');
  });

  it('leaves no mark when nothing was said', () => {
    const { said, progress } = watched(true);
    progress.step('one');
    progress.done();
    expect(said).toEqual([]);
  });

  it('is for a terminal only', () => {
    const { said, progress, wait } = watched(false);
    wait(5000);
    progress.step('one');
    progress.done();
    expect(said).toEqual([]);
  });
});
