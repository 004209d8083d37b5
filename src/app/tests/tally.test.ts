import { describe, expect, it } from 'vitest';
import type { Finding, OpenReason, Verdict } from '../../kernel/index.ts';
import { counted, tally } from '../tally.ts';

const one = (key: string, verdict: Verdict, reason?: OpenReason, counts?: boolean): Finding =>
  ({
    key,
    verdict,
    ...(reason ? { reason: { kind: reason, text: '' } } : {}),
    ...(counts === undefined ? {} : { accepted: { because: '', counts } }),
  }) as Finding;

describe('what findings come to', () => {
  const all = tally([
    one('a', 'fails'),
    one('b', 'fails', undefined, true),
    one('c', 'fails', undefined, false),
    one('d', 'open', 'doubt'),
    one('e', 'open', 'outside'),
    one('f', 'open', 'did-not-converge'),
    one('g', 'open', 'did-not-converge', true),
    one('h', 'open', 'still-running'),
    one('i', 'not-stated'),
    one('j', 'open', 'doubt', true),
    one('k', 'holds'),
    one('l', 'tight', undefined, true),
  ]);

  it('against the book counts what fails or could not be worked out, unless accepted', () => {
    expect(all.against).toEqual(['a', 'c', 'e', 'f']);
  });
  it('not settled is what is in doubt, still running or not stated, unless accepted', () => {
    expect(all.unsettled).toEqual(['d', 'h', 'i']);
  });
  it('accepted is what would count otherwise', () => {
    expect(all.accepted).toEqual(['b', 'g', 'j']);
  });
  it('is counted worst first, and only what occurs', () => {
    expect(counted(all)).toEqual([
      ['fails', 3],
      ['open', 6],
      ['tight', 1],
      ['holds', 1],
      ['not-stated', 1],
    ]);
    expect(counted(tally([]))).toEqual([]);
  });
});
