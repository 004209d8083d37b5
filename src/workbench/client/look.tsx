/** How the desk looks: as the computer is set, or paper, or blueprint. The style goes by which of these is chosen. */
import { effect, signal } from '@preact/signals';

const LOOKS = [
  { id: 'look-desk', word: 'as the desk' },
  { id: 'look-paper', word: 'paper' },
  { id: 'look-blue', word: 'blueprint' },
] as const;
const KEPT = 'gantrybook look';

const kept = (): string => {
  try {
    return localStorage.getItem(KEPT) ?? 'look-desk';
  } catch {
    return 'look-desk';
  }
};

const chosen = signal(kept());
effect(() => {
  const look = chosen.value;
  try {
    localStorage.setItem(KEPT, look);
  } catch {
    // A browser that keeps nothing still shows it.
  }
});

/** In the desk's edge; the style asks which of these is checked, also where there is no room to show them. */
export const Look = () => (
  <fieldset class="look">
    <legend class="hidden">Look</legend>
    {LOOKS.map(({ id, word }) => (
      <label key={id}>
        <input type="radio" name="look" id={id} checked={chosen.value === id} onChange={() => (chosen.value = id)} />{' '}
        {word}
      </label>
    ))}
  </fieldset>
);

/** The same choice where there is room for it on every screen. */
export const ChooseLook = ({ short = false }: { readonly short?: boolean }) => (
  <label class={short ? 'short-look' : ''}>
    <span class={short ? 'hidden' : ''}>Look of the desk </span>
    <select value={chosen.value} onChange={({ currentTarget }) => (chosen.value = currentTarget.value)}>
      {LOOKS.map(({ id, word }) => (
        <option key={id} value={id}>
          {word}
        </option>
      ))}
    </select>
  </label>
);
