/** Keeps what the reader is at where it stands on the screen, while the sheet around it is drawn anew. */

export const findingOf = (sheet: HTMLElement, key: string): HTMLElement | undefined =>
  [...sheet.querySelectorAll<HTMLElement>('.finding[data-key]')].find((row) => row.dataset['key'] === key);

/** A number as it can be found again after its part was drawn anew: the how many-eth with its path in that part. */
interface Named {
  readonly part: string;
  readonly path: string;
  readonly nth: number;
}

const samePath = (part: Element, path: string): readonly HTMLElement[] =>
  [...part.querySelectorAll<HTMLElement>('[data-path][tabindex]')].filter(({ dataset }) => dataset['path'] === path);

const nameOf = (element: HTMLElement): Named | undefined => {
  const part = element.closest<HTMLElement>('.part');
  const { path } = element.dataset;
  return part && path !== undefined
    ? { part: part.dataset['part'] ?? '', path, nth: samePath(part, path).indexOf(element) }
    : undefined;
};

const named = (sheet: HTMLElement, { part, path, nth }: Named): HTMLElement | undefined => {
  const place = sheet.querySelector(`.part[data-part="${part}"]`);
  const same = place ? samePath(place, path) : [];
  return same[nth] ?? same.at(-1) ?? samePath(sheet, path)[0];
};

export interface Anchor {
  /** Brings what was meant back to where it was. */
  readonly keep: () => void;
}

/**
 * What must not move, as it stands before the sheet is drawn anew: the number that is held, the finding that is open, or else
 * the first finding in sight.
 */
export const anchorIn = (scroller: HTMLElement, sheet: HTMLElement, open: string | undefined): Anchor => {
  const frame = scroller.getBoundingClientRect();
  const inSight = (element: HTMLElement): boolean => {
    const { top, bottom } = element.getBoundingClientRect();
    return bottom > frame.top && top < frame.bottom;
  };
  const keepAt = (top: number, find: () => HTMLElement | undefined): Anchor => ({
    keep: () => {
      const now = find();
      if (now) scroller.scrollTop += now.getBoundingClientRect().top - top;
    },
  });
  const held = sheet.querySelector<HTMLElement>('[data-held]');
  const name = held ? nameOf(held) : undefined;
  if (held && name)
    return keepAt(held.getBoundingClientRect().top, () => {
      const again = named(sheet, name);
      if (again) again.dataset['held'] = '';
      return again;
    });
  const opened = open === undefined ? undefined : findingOf(sheet, open);
  const rows = [...sheet.querySelectorAll<HTMLElement>('.finding[data-key]')];
  const row = opened && inSight(opened) ? opened : scroller.scrollTop > 0 ? rows.find(inSight) : undefined;
  const key = row?.dataset['key'];
  if (!row || key === undefined) return { keep: () => undefined };
  return keepAt(row.getBoundingClientRect().top, () => findingOf(sheet, key));
};

/** Brings a finding into the upper part of what is seen, unless it stands there. */
export const bringUp = (scroller: HTMLElement, row: HTMLElement): void => {
  const frame = scroller.getBoundingClientRect();
  const { top } = row.getBoundingClientRect();
  if (top < frame.top || top > frame.top + frame.height * 0.4) row.scrollIntoView({ block: 'start' });
};
