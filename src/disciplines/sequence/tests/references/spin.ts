/** A model checker at work: Debian's spin and a C compiler, run on the Promela text of a cycle. */
import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import type { CycleSpec } from '../../calc/spec.ts';
import { promela } from './promela.ts';

const isThere = (program: string): boolean =>
  (process.env['PATH'] ?? '').split(delimiter).some((folder) => existsSync(join(folder, program)));

/** What is missing for a judgement, in words; empty when nothing is. */
export const missing: readonly string[] = ['spin', 'gcc'].filter((program) => !isThere(program));

export interface Judged {
  readonly states: number;
  /** An assertion failed. */
  readonly broken: boolean;
}

export interface Judge {
  readonly ask: (property: number, limit?: number) => Judged;
  readonly close: () => void;
}

/** A verifier for a cycle: depth first, without reduction, one process, one atomic step a tick. */
export const judgeOf = (spec: CycleSpec, marks = true): Judge => {
  const folder = mkdtempSync(join(tmpdir(), 'gantrybook-spin-'));
  writeFileSync(join(folder, 'cycle.pml'), promela(spec, marks));
  execFileSync('spin', ['-a', 'cycle.pml'], { cwd: folder, stdio: 'pipe' });
  const flags = ['-O1', '-w', '-DNOREDUCE', '-DSAFETY', '-DMEMLIM=3000'];
  execFileSync('gcc', [...flags, '-o', 'pan', 'pan.c'], { cwd: folder, stdio: 'pipe' });
  return {
    ask: (property, limit = 0) => {
      const { stdout } = spawnSync('./pan', ['-m1000000', '-w20', '-n'], {
        cwd: folder,
        encoding: 'utf8',
        env: { ...process.env, PROP: String(property), LIMIT: String(limit) },
      });
      const states = /(\d+) states, stored/.exec(stdout);
      if (!states || /max search depth too small|out of memory|pan:1: invalid/.test(stdout)) throw new Error(stdout);
      return { states: Number(states[1]), broken: !stdout.includes('errors: 0') };
    },
    close: () => rmSync(folder, { recursive: true }),
  };
};
