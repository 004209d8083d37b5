import { describe, expect, it } from 'vitest';
import { hashOf, routeOf, type Route } from '../routes.ts';

describe('the address of a page', () => {
  const routes: readonly Route[] = [
    { page: 'sheet' },
    { page: 'sheet', name: 'first' },
    { page: 'sheet', name: 'first', finding: 'CODE-010/x, y@up/down' },
    { page: 'formulas' },
    { page: 'formulas', name: 'some-formula' },
    { page: 'bench', name: 'M1/#%', test: 'pull' },
    { page: 'begin' },
    { page: 'about' },
  ];

  it.each(routes)('leads back to it: %o', (route) => {
    expect(routeOf(hashOf(route))).toEqual(route);
  });

  it.each(['', '#', '#/', '#/nowhere', '#finding-x', '#/sheet/'])(
    'that nobody knows, %s, leads to the sheets',
    (hash) => {
      expect(routeOf(hash)).toMatchObject({ page: 'sheet' });
    },
  );

  it('may be broken', () => {
    expect(routeOf('#/sheet/%E0%A4%A')).toEqual({ page: 'sheet', name: '%E0%A4%A', finding: undefined });
  });
});
