import { describe, expect, it } from 'vitest';
import { cut, frameInAscii, few, harmless, inAscii, wrap } from '../../src/cli/text.ts';
import { csvText } from '../../src/pack/csv.ts';

describe('text for a terminal', () => {
  it('cannot take hold of it', () => {
    expect(harmless('a\u001b[31mred\u0007\u202egnp.exe\r\nb\tc')).toBe('a[31mredgnp.exe\nb\tc');
  });

  it.each([
    ['1.9 N·m ±15 %', '1.9 N*m +-15 %'],
    ['30 g·cm² at 1.8° and 8 °C', '30 g*cm^2 at 1.8 deg and 8 degC'],
    ['λ₀ = K/N_r, T ∝ √L', 'lambda0 = K/N_r, T ~ sqrtL'],
    ['12V → 24V; 0.9–1.3 Ω', '12V -> 24V; 0.9..1.3 ohm'],
    ['10\u2009000 × 10⁻³ ≤ −5 µH…', '10000 x 10^-3 <= -5 uH...'],
    ['Spülkran für Łódź', 'Spulkran fur Lodz'],
    ['漢', '?'],
  ])('%s in plain ASCII', (text, ascii) => {
    expect(inAscii(text)).toBe(ascii);
  });

  it('keeps what is underlined underlined', () => {
    expect(frameInAscii('book.yaml:3:9  "5 Ω" is…\n >  3 |   Größe: 5 Ω\n      |          ^^^')).toBe(
      'book.yaml:3:9  "5 ohm" is...\n >  3 |   Gr??e: 5 ?\n      |          ^^^',
    );
  });

  it('breaks between words, and inside one only when it is longer than a line', () => {
    expect(wrap('one two three', { width: 9, first: '- ', next: '  ' })).toEqual(['- one two', '  three']);
    expect(wrap('abcdefghij k', { width: 6, first: '> ' })).toEqual(['> abcd', '> efgh', '> ij k']);
    expect(wrap('', { width: 9 })).toEqual(['']);
  });

  it('says where something is left out', () => {
    expect(wrap('one two three four', { width: 9, most: 1 })).toEqual(['one two…']);
    expect(wrap('one twothree four', { width: 12, most: 1 })).toEqual(['one twothre…']);
    expect(cut('漢字漢字', 5)).toBe('漢字…');
    expect(few(['a', 'b', 'c', 'd'], 2)).toBe('a, b and 2 more');
    expect(few(['a', 'b'], 2)).toBe('a and b');
  });
});

describe('rows as CSV', () => {
  it('begin with the stamp and quote what would break a row', () => {
    expect(
      csvText(
        [
          ['part', 'note'],
          ['M1', 'a "b", c'],
          ['  M2', 'two\nlines'],
        ],
        'Tide\npool, B',
      ),
    ).toBe('# Tide pool, B\npart,note\nM1,"a ""b"", c"\n"  M2","two\nlines"\n');
  });

  it('hold nothing that a spreadsheet would run', () => {
    expect(csvText([['=HYPERLINK("x")', '@a', '+b', '-1.2 mm', '−3', '+5 V']], 's')).toBe(
      `# s\n"'=HYPERLINK(""x"")",'@a,'+b,-1.2 mm,−3,+5 V\n`,
    );
  });
});
