/** Where the program starts and ends. */
import { run, told } from './command.ts';
import { GOOD } from './exit.ts';
import { linesFrom } from './lines.ts';
import { terminalIn, type Surroundings } from './terminal.ts';

const surroundings: Surroundings = {
  env: process.env,
  platform: process.platform,
  out: process.stdout,
  err: process.stderr,
  lines: () => linesFrom(process.stdin, process.stdout),
};

// A reader that has seen enough, such as head, is no fault.
for (const stream of [process.stdout, process.stderr])
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
    process.exit(process.exitCode ?? GOOD);
  });

const failed = (error: unknown): void => {
  process.exit(told(error, terminalIn(surroundings)));
};
process.on('uncaughtException', failed);
process.on('unhandledRejection', failed);

process.exitCode = await run(process.argv.slice(2), surroundings);
