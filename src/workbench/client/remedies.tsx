/** What would cure a finding: each proposal with what else it does to the book, to be tried, taken or left. */
import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { percentText } from '../../kernel/percent.ts';
import type { Remedy } from '../../kernel/index.ts';
import type { Trial } from '../desk/engine.ts';
import { bringUp } from './anchor.ts';
import { useDesk } from './desk.ts';
import { Few, FindingLink, Mark, MovedList } from './uses.tsx';

const Else = ({ remedy }: { readonly remedy: Remedy }) => {
  const desk = useDesk();
  const standing = new Map(desk.laid.value?.findings.map(({ key, verdict }) => [key, verdict]));
  const { alsoCures, breaks } = remedy;
  return (
    <>
      {breaks.length > 0 ? (
        <div class="else">
          <p>
            <b>It makes worse</b>
          </p>
          <Few most={3}>
            {breaks.map(({ key, before, after }) => (
              <li key={key}>
                <Mark verdict={before} /> → <Mark verdict={after} /> <FindingLink of={key} />
              </li>
            ))}
          </Few>
        </div>
      ) : null}
      {alsoCures.length > 0 ? (
        <div class="else">
          <p>
            <b>It also cures</b>
          </p>
          <Few most={3}>
            {alsoCures.map((key) => {
              const verdict = standing.get(key);
              return (
                <li key={key}>
                  {verdict ? (
                    <>
                      <Mark verdict={verdict} /> → cured{' '}
                    </>
                  ) : null}
                  <FindingLink of={key} />
                </li>
              );
            })}
          </Few>
        </div>
      ) : null}
    </>
  );
};

const RemedyRow = ({ remedy, finding }: { readonly remedy: Remedy; readonly finding: string }) => {
  const desk = useDesk();
  const trial = useSignal<Trial | undefined>(undefined);
  const trying = useSignal(false);
  const row = useRef<HTMLLIElement>(null);
  const shown = useRef<HTMLDivElement>(null);
  const { says, verdict, percent, edits } = remedy;
  const wanted = edits.map(({ path, after }) => ({ path, text: after }));

  useEffect(() => {
    if (trial.value) shown.current?.focus({ preventScroll: true });
  }, [trial.value]);

  const tryIt = async (): Promise<Trial | undefined> => {
    if (trying.peek()) return undefined;
    trying.value = true;
    try {
      return await desk.tried(wanted);
    } finally {
      trying.value = false;
    }
  };
  const take = (made: Trial | undefined): void => {
    if (made?.problem !== undefined) {
      trial.value = made;
      return;
    }
    trial.value = undefined;
    if (!made) return;
    // What was taken is gone from the list: the keyboard goes on at the finding that it was for.
    const cured = row.current?.closest<HTMLElement>('.finding');
    if (cured) {
      cured.tabIndex = -1;
      cured.focus({ preventScroll: true });
      const scroller = cured.closest<HTMLElement>('.lying');
      if (scroller) bringUp(scroller, cured);
    }
    desk.take(made.files, `the remedy for ${finding}`);
  };
  const leave = (): void => {
    trial.value = undefined;
    requestAnimationFrame(() => row.current?.querySelector<HTMLElement>('.choices button')?.focus());
  };
  const isIdle = desk.current.value && !trying.value;
  return (
    <li ref={row}>
      <p class="proposal">
        {/[.!?]$/.test(says) ? says : `${says}.`} Then: {verdict === 'open' ? 'in doubt, ' : ''}
        <Mark verdict={verdict} />
        {percent === undefined ? '' : ` at ${percentText(percent)} of limit`}.
      </p>
      {edits.map(({ path, before, after }) => (
        <span class="edit" key={path}>
          <code>{path}</code> {before ?? 'not stated'} → {after ?? 'taken out'}
        </span>
      ))}
      {trial.value ? (
        <div class="tried" role="group" aria-label="What it changes" tabIndex={-1} ref={shown}>
          {trial.value.problem === undefined ? null : <p class="problem">{trial.value.problem}</p>}
          {trial.value.moved.length > 0 ? (
            <MovedList moved={trial.value.moved} most={6} />
          ) : trial.value.problem === undefined ? (
            <p>Nothing else moves.</p>
          ) : null}
          <div class="choices">
            {trial.value.problem === undefined ? (
              <button type="button" class="first" onClick={() => take(trial.value)}>
                Take it
              </button>
            ) : null}
            <button type="button" onClick={leave}>
              Leave it
            </button>
          </div>
        </div>
      ) : (
        <>
          <div class="choices">
            <button
              type="button"
              aria-disabled={!isIdle}
              onClick={() => void tryIt().then((made) => made && (trial.value = made), desk.failed)}
            >
              {trying.value ? 'Trying …' : 'Try'}
            </button>
            <button type="button" aria-disabled={!isIdle} onClick={() => void tryIt().then(take, desk.failed)}>
              Take
            </button>
          </div>
          <Else remedy={remedy} />
        </>
      )}
    </li>
  );
};

interface Props {
  /** Nothing while they are being tried. */
  readonly remedies: readonly Remedy[] | undefined;
  readonly finding: string;
}

export const Remedies = ({ remedies, finding }: Props) => {
  if (remedies === undefined) return <p class="quiet cures">Trying what the check proposes …</p>;
  if (remedies.length === 0) return <p class="quiet cures">Nothing that the check proposes is enough by itself.</p>;
  return (
    <ol class="remedies cures">
      {remedies.map((remedy) => (
        <RemedyRow key={remedy.says} remedy={remedy} finding={finding} />
      ))}
    </ol>
  );
};
