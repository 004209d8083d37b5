/** The small field at the place of a number that was taken hold of. */
import { useLayoutEffect, useRef } from 'preact/hooks';
import { useDesk } from './desk.ts';

const MARGIN = 8;

export const Hold = () => {
  const desk = useDesk();
  const held = desk.held.value;
  const box = useRef<HTMLDivElement>(null);
  const field = useRef<HTMLInputElement>(null);

  // It keeps its place on the screen, inside the leaf and above what a screen keyboard covers, however the sheet moves under it.
  useLayoutEffect(() => {
    const { current } = box;
    const scroller = current?.closest('.leaf-sheet')?.querySelector('.lying');
    if (!current || !held || !scroller) return;
    const frame = scroller.getBoundingClientRect();
    const { height = innerHeight, offsetTop = 0 } = visualViewport ?? {};
    const { offsetWidth, offsetHeight } = current;
    const right = Math.min(frame.right, innerWidth) - offsetWidth - MARGIN;
    const bottom = Math.min(frame.bottom, offsetTop + height) - offsetHeight - MARGIN;
    const below = held.at.bottom + 4;
    const above = held.at.top - offsetHeight - 4;
    const left = Math.max(MARGIN, Math.min(held.at.left, right));
    const top = below <= bottom ? below : above >= frame.top ? above : Math.max(MARGIN, bottom);
    Object.assign(current.style, { left: '0px', top: '0px' });
    const origin = current.getBoundingClientRect();
    Object.assign(current.style, { left: `${left - origin.left}px`, top: `${top - origin.top}px` });
  }, [held?.path, held?.ready, held?.problem]);

  useLayoutEffect(() => {
    if (!held?.ready) return;
    field.current?.focus({ preventScroll: true });
    field.current?.select();
  }, [held?.path, held?.ready]);

  if (!held) return null;
  const pressed = (event: KeyboardEvent): void => {
    const far = event.shiftKey ? 10 : 1;
    if (event.key === 'ArrowUp') desk.turn(far);
    else if (event.key === 'ArrowDown') desk.turn(-far);
    else if (event.key === 'Enter') desk.letGo(true);
    else if (event.key === 'Escape') desk.letGo(false);
    else return;
    event.preventDefault();
    event.stopPropagation();
  };
  return (
    <div
      class="hold"
      role="dialog"
      aria-label={`Change ${held.path}`}
      ref={box}
      onKeyDown={pressed}
      onFocusOut={({ relatedTarget }) => {
        if (relatedTarget instanceof Node && !box.current?.contains(relatedTarget)) desk.letGo(true);
      }}
    >
      <p class="means">{held.means}</p>
      <p class="path mono">{held.path}</p>
      <div class="row">
        <input
          ref={field}
          type="text"
          aria-label={held.means || held.path}
          aria-invalid={held.problem !== undefined}
          value={held.text}
          disabled={!held.ready}
          onInput={({ currentTarget }) => desk.hand(currentTarget.value)}
        />
        <button type="button" onClick={() => desk.turn(-1)} aria-label="Less">
          −
        </button>
        <button type="button" onClick={() => desk.turn(1)} aria-label="More">
          +
        </button>
      </div>
      {held.problem === undefined ? null : (
        <p class="problem" role="alert">
          {held.problem}
        </p>
      )}
      <div class="row">
        <button type="button" class="first" onClick={() => desk.letGo(true)}>
          Keep
        </button>
        <button type="button" onClick={() => desk.letGo(false)}>
          Put back
        </button>
        <button type="button" class="bare" onClick={() => void desk.jump(held.path)}>
          Show in the text
        </button>
      </div>
      <p class="aside">
        <kbd>↑</kbd> <kbd>↓</kbd> turn it, with <kbd>Shift</kbd> by ten; <kbd>Enter</kbd> keeps, <kbd>Esc</kbd> puts
        back.
      </p>
    </div>
  );
};
