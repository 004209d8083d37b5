/** Working and remedies of one finding, under it. */
import { useSignal, useSignalEffect } from '@preact/signals';
import { percentText } from '../../kernel/percent.ts';
import type { Remedy } from '../../kernel/index.ts';
import type { Trial } from '../desk/engine.ts';
import { useDesk } from './desk.ts';
import { letScroll } from './enliven.ts';
import { inner } from './markup.ts';
import { MovedList, Mark } from './uses.tsx';

interface Known {
  readonly working?: string;
  readonly remedies?: readonly Remedy[];
}

const RemedyRow = ({ remedy, finding }: { readonly remedy: Remedy; readonly finding: string }) => {
  const desk = useDesk();
  const trial = useSignal<Trial | undefined>(undefined);
  const trying = useSignal(false);
  const { says, verdict, percent, alsoCures, breaks, edits } = remedy;
  const wanted = edits.map(({ path, after }) => ({ path, text: after }));

  const tryIt = async (): Promise<Trial | undefined> => {
    trying.value = true;
    try {
      return await desk.tried(wanted);
    } finally {
      trying.value = false;
    }
  };
  const take = (made: Trial | undefined): void => {
    trial.value = undefined;
    if (made) desk.take(made.files, `the remedy for ${finding}`);
  };
  return (
    <li>
      <p>
        {/[.!?]$/.test(says) ? says : `${says}.`} Then: <Mark verdict={verdict} />
        {percent === undefined ? '' : ` at ${percentText(percent)} of limit`}
        {alsoCures.length > 0 ? `; also cures ${alsoCures.join(', ')}` : ''}
        {breaks.length > 0 ? (
          <>
            ; <b>breaks</b> {breaks.map(({ key }) => key).join(', ')}
          </>
        ) : null}
        .
      </p>
      {edits.map(({ path, before, after }) => (
        <span class="edit" key={path}>
          <code>{path}</code> {before ?? 'not stated'} → {after ?? 'taken out'}
        </span>
      ))}
      {trial.value ? (
        <div class="tried" role="group" aria-label="What it changes">
          {trial.value.moved.length > 0 ? <MovedList moved={trial.value.moved} most={6} /> : <p>Nothing else moves.</p>}
          <div class="choices">
            <button type="button" class="first" onClick={() => take(trial.value)}>
              Take it
            </button>
            <button type="button" onClick={() => (trial.value = undefined)}>
              Leave it
            </button>
          </div>
        </div>
      ) : (
        <div class="choices">
          <button
            type="button"
            disabled={trying.value || !desk.current.value}
            onClick={() => void tryIt().then((made) => (trial.value = made))}
          >
            {trying.value ? 'Trying …' : 'Try'}
          </button>
          <button type="button" disabled={trying.value || !desk.current.value} onClick={() => void tryIt().then(take)}>
            Take
          </button>
        </div>
      )}
    </li>
  );
};

export const Slip = ({ finding, close }: { readonly finding: string; readonly close: () => void }) => {
  const desk = useDesk();
  const known = useSignal<Known>({});

  // What is known of an earlier text stays until it is known of this one.
  useSignalEffect(() => {
    const version = desk.version.value;
    if (version === 0) return;
    void desk.engine.working(version, finding).then((working) => {
      if (working !== undefined) known.value = { ...known.peek(), working };
    }, desk.failed);
    const later = setTimeout(() => {
      void desk.engine.remedies(version, finding).then((remedies) => {
        if (remedies) known.value = { ...known.peek(), remedies };
      }, desk.failed);
    }, 150);
    return () => clearTimeout(later);
  });

  const card = desk.laid.value?.findings.find(({ key }) => key === finding);
  const { working, remedies } = known.value;
  const clicked = (event: MouseEvent): void => {
    const target = event.target as Element;
    const link = target.closest('a');
    const href = link?.getAttribute('href') ?? '';
    const path = target.closest<HTMLElement>('[data-path]')?.dataset['path'];
    event.stopPropagation();
    if (path !== undefined) void desk.jump(path);
    if (!href.startsWith('#') || href.startsWith('#/')) return;
    event.preventDefault();
    const within = event.currentTarget as HTMLElement;
    const id = href.slice(1);
    const goal = [...within.querySelectorAll('[id]')].find((one) => one.id === id);
    (goal ?? document.getElementById(id))?.scrollIntoView({ block: 'center' });
  };
  const pressed = (event: KeyboardEvent): void => {
    const path = (event.target as Element).closest<HTMLElement>('[data-path]')?.dataset['path'];
    event.stopPropagation();
    if (event.key === 'Escape') close();
    else if (event.key === 'Enter' && path !== undefined) void desk.jump(path);
  };
  return (
    <section
      class="slip"
      aria-label={`Working of ${finding}`}
      onClick={clicked}
      onKeyDown={pressed}
      onPointerDown={(event) => event.stopPropagation()}
    >
      <header>
        <h3>Working</h3>
        <span class="tags mono">{finding}</span>
        {card?.place ? (
          <button type="button" class="bare" onClick={() => card.place && desk.jumpTo(card.place)}>
            Show in the text
          </button>
        ) : null}
        <button type="button" onClick={close}>
          Fold
        </button>
      </header>
      {working === undefined ? (
        <p class="quiet">Being worked out …</p>
      ) : working === '' ? (
        <p class="quiet">There is nothing to work out yet: a fact is not stated.</p>
      ) : (
        <div dangerouslySetInnerHTML={inner(working)} ref={(element) => void (element && openInputs(element))} />
      )}
      {card?.hasLevers ? (
        <>
          <h4>What would cure it</h4>
          {remedies === undefined ? (
            <p class="quiet">Trying what the check proposes …</p>
          ) : remedies.length === 0 ? (
            <p class="quiet">Nothing that the check proposes is enough by itself.</p>
          ) : (
            <ol class="remedies">
              {remedies.map((remedy) => (
                <RemedyRow key={remedy.says} remedy={remedy} finding={finding} />
              ))}
            </ol>
          )}
        </>
      ) : null}
    </section>
  );
};

/** Each input leads to its line in the book, also by the keyboard. */
const openInputs = (element: Element): void => {
  letScroll(element);
  for (const input of element.querySelectorAll<HTMLElement>('[data-path]')) {
    input.tabIndex = 0;
    input.setAttribute('role', 'link');
  }
};
