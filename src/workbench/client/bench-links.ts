/** Leads from the questions on a sheet to the forms that answer them. */
import type { BenchCard } from '../desk/engine.ts';
import { hashOf } from './routes.ts';

/** Adds to each question in front the way to its form, where the bench has one. */
export const linkForms = (sheet: Element, cards: readonly BenchCard[]): void => {
  for (const row of sheet.querySelectorAll('.questions li')) {
    const path = row.querySelector<HTMLElement>('[data-path]')?.dataset['path'];
    const card = cards.find((one) => one.path === path);
    if (!card || row.querySelector('.to-form')) continue;
    const link = document.createElement('a');
    link.href = hashOf({ page: 'bench', name: card.name, test: card.test });
    link.textContent = `Measure it: the form for ${card.what} of ${card.name}`;
    const line = document.createElement('p');
    line.className = 'to-form';
    line.append(link);
    row.append(line);
  }
};
