/** Which page is shown, as the address says it, so that Back works and a sheet can be linked. */

export type Route =
  | { readonly page: 'sheet'; readonly name?: string; readonly finding?: string }
  | { readonly page: 'formulas'; readonly name?: string }
  | { readonly page: 'bench'; readonly name?: string; readonly test?: string }
  | { readonly page: 'begin' }
  | { readonly page: 'about' };

const decoded = (part: string): string => {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
};

/** Reads an address's hash. What it does not know leads to the sheets. */
export const routeOf = (hash: string): Route => {
  const [page = '', ...rest] = hash.replace(/^#\/?/, '').split('/').map(decoded);
  const [first, second] = rest.map((part) => (part === '' ? undefined : part));
  switch (page) {
    case 'formulas':
      return { page, name: first };
    case 'bench':
      return { page, name: first, test: second };
    case 'begin':
    case 'about':
      return { page };
    default:
      return { page: 'sheet', name: page === 'sheet' ? first : undefined, finding: second };
  }
};

/** The hash for a page. */
export const hashOf = (route: Route): string => {
  const parts: readonly (string | undefined)[] =
    route.page === 'sheet'
      ? ['sheet', route.name, route.name === undefined ? undefined : route.finding]
      : route.page === 'formulas'
        ? ['formulas', route.name]
        : route.page === 'bench'
          ? ['bench', route.name, route.test]
          : [route.page];
  return `#/${parts
    .filter((part) => part !== undefined)
    .map(encodeURIComponent)
    .join('/')}`;
};
