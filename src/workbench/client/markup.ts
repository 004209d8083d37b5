/** The one gate through which markup and a script's address come into the page: both are the desk's own, never a book's. */

interface Gate {
  readonly createHTML: (markup: string) => string;
  readonly createScriptURL: (address: string) => string;
}

interface WithGates {
  readonly trustedTypes?: { readonly createPolicy: (name: string, gate: Gate) => Gate };
}

const own = (address: string): string => {
  const { origin } = new URL(address, document.baseURI);
  if (origin !== location.origin) throw new TypeError(`a script from ${origin} is not the desk's own`);
  return address;
};

const plain: Gate = { createHTML: (markup) => markup, createScriptURL: own };
const gate: Gate = (globalThis as WithGates).trustedTypes?.createPolicy('gantrybook', plain) ?? plain;

/** Puts the engine's markup into an element. The renderers have escaped every text in it. */
export const put = (element: Element, markup: string): void => {
  element.innerHTML = gate.createHTML(markup);
};

/** For an element that a component renders. */
export const inner = (markup: string): { readonly __html: string } => ({ __html: gate.createHTML(markup) });

/** The address of one of the desk's own scripts. */
export const scriptAddress = (name: string): string => gate.createScriptURL(new URL(name, document.baseURI).href);
