/** Terminals that exist only in a test. */
import { run } from '../../src/cli/command.ts';
import { terminalIn, type Surroundings, type Terminal } from '../../src/cli/terminal.ts';

export interface Around {
  readonly live?: boolean;
  readonly columns?: number;
  readonly env?: Readonly<Record<string, string>>;
  /** What is typed or piped in. */
  readonly lines?: () => AsyncIterator<string>;
}

interface Written {
  readonly out: string;
  readonly err: string;
}

const surroundings = (
  { live = false, columns, env = { LANG: 'C.UTF-8' }, lines }: Around,
  said: { out: string; err: string },
): Surroundings => ({
  env,
  platform: 'linux',
  out: { isTTY: live, ...(columns === undefined ? {} : { columns }), write: (text) => void (said.out += text) },
  err: { isTTY: live, write: (text) => void (said.err += text) },
  ...(lines ? { lines } : {}),
});

export const terminal = (around: Around = {}): Terminal => terminalIn(surroundings(around, { out: '', err: '' }));

/** Runs a command inside this process. */
export const ran = async (
  args: readonly string[],
  around: Around = {},
): Promise<Written & { readonly code: number }> => {
  const said = { out: '', err: '' };
  const code = await run(args, surroundings(around, said));
  return { ...said, code };
};
