/** The header compiles and says what the chart says; the data says the same once more. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { checkBook } from '../../../../app/testing.ts';
import type { Discipline, SheetContext } from '../../../../contract/index.ts';
import { catalogue } from '../../../../app/catalogue.ts';
import { createHouse } from '../../../../engine/machine.ts';
import { motion } from '../../../motion/index.ts';
import { assignment, BOARD, type Assignment } from '../../facts.ts';
import { controller } from '../../index.ts';
import type { ControllerBook } from '../../schema.ts';
import { headerText, macrosOf, neutralText, type FileStamp } from '../../sheet/files.ts';
import { base } from '../base.ts';

const stamp: FileStamp = { title: 'Bench "one" */ \\', revision: 'A', stamp: '0123456789ab' };

/** Texts made while a sheet is made: where a book and its pins are at hand. */
const textsOf = (book: string): { readonly header: string; readonly data: string } => {
  let made: { header: string; data: string } | undefined;
  const own = controller as unknown as Discipline<ControllerBook>;
  const spy: Discipline<ControllerBook> = {
    ...own,
    sheet: (context: SheetContext<ControllerBook>) => {
      const placed: Assignment = context.get(assignment, BOARD);
      if (!placed.ok) throw new Error(`no pins: ${placed.clash.join(', ')}`);
      made = {
        header: headerText(context.book, placed, stamp),
        data: neutralText(context.book, placed, stamp),
      };
      return own.sheet(context);
    },
  };
  const house = createHouse({ disciplines: [motion, spy as unknown as Discipline], catalogue });
  checkBook(book, house).sheet('controller');
  return made!;
};

const { header, data } = textsOf(base);

/** Compiles a program that includes the header and prints some of it. */
const compiled = (text: string, defines: readonly string[], language: 'c' | 'c++' = 'c'): string => {
  const folder = mkdtempSync(join(tmpdir(), 'pins-'));
  try {
    writeFileSync(join(folder, 'pins.h'), text);
    writeFileSync(
      join(folder, 'main.c'),
      '#include "pins.h"\n#include "pins.h"\n#include <stdio.h>\nint main(void) { printf("%d %d %d %d %d %d", PIN_D1_STEP, PIN_S9, ACTS_S1, PULLUP_S9, DEBOUNCE_MS_S8, STEP_TICKS_HZ); return 0; }\n',
    );
    const program = join(folder, 'main');
    execFileSync(
      'cc',
      [
        '-x',
        language,
        '-Wall',
        '-Wextra',
        '-Werror',
        ...defines.map((one) => `-D${one}`),
        '-o',
        program,
        join(folder, 'main.c'),
      ],
      { stdio: 'pipe' },
    );
    return execFileSync(program, { encoding: 'utf8' });
  } finally {
    rmSync(folder, { recursive: true });
  }
};

const hasCompiler = (): boolean => {
  try {
    execFileSync('cc', ['--version'], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
};

describe('the header', () => {
  it('names each pin with the number by which a program calls it', () => {
    expect(header).toContain('#define PIN_D1_STEP 22 /* 22, out, x: a step */');
    expect(header).toContain('#define PIN_S9 62 /* A8, in, door */');
    expect(header).toContain('#define ON_D1_ENABLE 0');
    expect(header).toContain('#define ACTS_S11 0');
    expect(header).toContain('#define SCAN_US 1000');
    expect(header).toContain('#define STEP_TIMER 1\n');
  });

  it('carries the stamp, and nothing that ends its comments too early', () => {
    expect(header).toContain('/* stamp 0123456789ab */');
    expect(header.split('\n')[0]).toBe('/* Bench "one" * / /, revision A: pins of the ATmega2560. */');
    expect(header.startsWith('/*')).toBe(true);
  });

  it.skipIf(!hasCompiler()).each(['c', 'c++'] as const)(
    'compiles without a warning as %s, included twice',
    (language) => {
      expect(compiled(header, ['__AVR_ATmega2560__'], language)).toBe('22 62 1 1 4 20000');
    },
  );

  it.skipIf(!hasCompiler())('refuses another board', () => {
    expect(() => compiled(header, ['__AVR_ATmega328P__'])).toThrow(/these are the pins of the ATmega2560/);
  });

  it('gives names that C takes, each once', () => {
    expect([...macrosOf(['a-b', 'a_b', '24V', 'Ünder']).values()]).toEqual(['A_B', 'A_B_2', '_24V', '_NDER']);
    const clash = [...macrosOf(['a', 'a-2', 'A']).values()];
    expect(new Set(clash).size).toBe(3);
  });
});

describe('the data', () => {
  it('says of every signal what the header says', () => {
    const read = JSON.parse(data) as {
      readonly board: string;
      readonly stamp: string;
      readonly scan: number;
      readonly signals: readonly { readonly name: string; readonly number: number; readonly debounce?: number }[];
    };
    expect(read.board).toBe('ATmega2560');
    expect(read.stamp).toBe(stamp.stamp);
    expect(read.scan).toBe(0.001);
    const macros = macrosOf(read.signals.map(({ name }) => name));
    for (const { name, number } of read.signals)
      expect(header).toContain(`#define PIN_${macros.get(name)!} ${number} `);
    expect(read.signals.find(({ name }) => name === 'S8')?.debounce).toBe(0.004);
  });

  it('is the same for the same book', () => expect(textsOf(base)).toEqual({ header, data }));
});
