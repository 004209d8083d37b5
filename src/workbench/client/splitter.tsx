/** Divides the desk between sheet and text: drawn by pointer, moved by the arrows. */
import { signal } from '@preact/signals';
import { useRef } from 'preact/hooks';

const [LEAST, MOST, BEGIN, STEP] = [20, 65, 34, 2];

/** The text's share of the width, in percent. */
const share = signal(BEGIN);

const within = (wanted: number): number => Math.round(Math.min(MOST, Math.max(LEAST, wanted)));

export const textWidth = (): { readonly '--text-width': string } => ({ '--text-width': `${share.value}%` });

export const Splitter = () => {
  const bar = useRef<HTMLDivElement>(null);
  const drawn = (event: PointerEvent): void => {
    const frame = bar.current?.closest('.leaves')?.getBoundingClientRect();
    if (!frame || !bar.current?.hasPointerCapture(event.pointerId)) return;
    share.value = within(((frame.right - event.clientX) / frame.width) * 100);
  };
  return (
    <div
      class="splitter"
      role="separator"
      aria-orientation="vertical"
      aria-label="Width of the text"
      aria-valuemin={LEAST}
      aria-valuemax={MOST}
      aria-valuenow={share.value}
      tabIndex={0}
      ref={bar}
      onPointerDown={(event) => bar.current?.setPointerCapture(event.pointerId)}
      onPointerMove={drawn}
      onKeyDown={(event) => {
        if (event.key === 'ArrowLeft') share.value = within(share.value + STEP);
        else if (event.key === 'ArrowRight') share.value = within(share.value - STEP);
        else return;
        event.preventDefault();
      }}
    />
  );
};
