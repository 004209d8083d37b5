/** What the desk is, what its verdicts are worth, and what to beware of. */
import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { worstFirst } from '../../../figures/mark.ts';
import type { Verdict } from '../../../kernel/index.ts';
import { ChooseLook } from '../look.tsx';
import { Mark } from '../uses.tsx';

declare const __GANTRYBOOK_VERSION__: string;

const means: Readonly<Record<Verdict, string>> = {
  holds: 'The demand stays within the limit, with the advised margin, wherever the uncertain facts may lie.',
  tight: 'It stays within the limit, but with less than the advised margin.',
  fails: 'The demand is over its limit.',
  open: 'It depends on something that is not known well enough; the finding says on what.',
  'not-stated': 'A fact is missing. That is normal in a young book.',
};

const keys: readonly (readonly [keys: string, does: string])[] = [
  ['Ctrl S', 'save'],
  [
    'Ctrl Z, Ctrl Y',
    'undo and redo, whatever it was: typing, a number turned on a sheet, a remedy, a result from the bench',
  ],
  ['Enter on a number', 'take hold of it; the arrows turn it, Escape puts it back'],
  ['Ctrl Space in the text', 'what could stand here'],
  ['Escape, then Tab in the text', 'leave the text'],
];

export const About = () => {
  const kept = useSignal<boolean | undefined>(undefined);
  useEffect(() => {
    kept.value = 'serviceWorker' in navigator && navigator.serviceWorker.controller !== null;
  }, []);
  return (
    <main class="whole" id="sheet">
      <h1>About this desk</h1>
      <p class="lead">
        Gantrybook {__GANTRYBOOK_VERSION__}. One text, the book, holds the facts of a gantry machine; its sheets are
        worked out from that text, in this page, and nothing is sent anywhere.
      </p>
      <section class="cautions" aria-labelledby="beware">
        <h2 id="beware">Caution</h2>
        <ul>
          <li>A holds is arithmetic, not permission. Local codes and licensed people decide.</li>
          <li>
            This is no certified safety assessment: for mains wiring, machine safety and amusement devices ask people
            who are licensed for them.
          </li>
          <li>What the book does not say, no sheet can know. A guess in the book is a guess on the sheet.</li>
          <li>Take a machine from its supply, and wait, before you touch its wiring or its drive.</li>
        </ul>
      </section>
      <h2>What the verdicts mean</h2>
      <table class="plain">
        <tbody>
          {worstFirst.map((verdict) => (
            <tr key={verdict}>
              <th scope="row">
                <Mark verdict={verdict} />
              </th>
              <td>{means[verdict]}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p class="prose">
        The short ruler shows how much of a limit is used: the tick at its end is the limit, the bar the demand, a
        bracket the part that is uncertain, the shaded stretch the advised margin.
      </p>
      <h2>Look</h2>
      <p>
        <ChooseLook />
      </p>
      <h2>By keyboard</h2>
      <table class="plain">
        <tbody>
          {keys.map(([name, does]) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td>{does}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <h2>Without a network</h2>
      <p class="prose">
        {kept.value
          ? 'This page is kept by the browser and opens without a network.'
          : 'Nothing here asks a network while it works. A page from a server of files is kept by the browser after the first time; one from gantrybook open comes from this machine.'}
      </p>
    </main>
  );
};
