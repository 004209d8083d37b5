/** The command line: which command is meant, what it ends with, and what is said when it cannot be done. */
import { Command, CommanderError, InvalidArgumentError, Option } from 'commander';
import { version } from '../app/version.ts';
import { Refused } from '../pack/refused.ts';
import { FAULT, GOOD, UNREADABLE, type ExitCode } from './exit.ts';
import { terminalIn, type Surroundings, type Terminal } from './terminal.ts';
import { wrap } from './text.ts';

const examplesText = (...lines: readonly (readonly [string, string])[]): string =>
  `\nFor instance:\n${lines.map(([command, says]) => `  ${command}\n      ${says}`).join('\n')}\n`;

const exitCodes = `
Exit codes:
  0   nothing fails; what is open by doubt or not stated is counted (--strict makes it 1)
  1   something fails or could not be worked out, and is not accepted
  2   the book cannot be read, or what was asked for cannot be done
  70  a fault of the program
`;

const portOf = (text: string): number => {
  const port = /^\d{1,5}$/.test(text) ? Number(text) : NaN;
  if (port >= 1 && port <= 65_535) return port;
  throw new InvalidArgumentError('A port is a number from 1 to 65535.');
};

const intoOption = (): Option =>
  new Option(
    '-i, --into <folder>',
    'where the files go: a new folder, or one with an earlier pack',
  ).makeOptionMandatory();

/** Sets up the commands; each loads what it needs only when it is run. */
const programFor = (terminal: Terminal, ended: (code: ExitCode) => void): Command => {
  const { out, err } = terminal.around;
  const program = new Command('gantrybook')
    .exitOverride()
    .configureOutput({
      writeOut: (text) => void out.write(terminal.text(text)),
      writeErr: (text) => void err.write(terminal.text(text)),
      getOutHelpWidth: () => terminal.columns,
      getErrHelpWidth: () => terminal.columns,
      outputError: (text, write) => write(text.replace(/^error: /, 'gantrybook: ').replace(/\n\(/, ' (')),
    })
    .showHelpAfterError('Help: gantrybook --help')
    .description("Checks a gantry machine's book trade by trade, shows its working and makes its drawing set.")
    .version(version, '-V, --version', 'print the version')
    .helpOption('-h, --help', 'print this help')
    .helpCommand('help [command]', 'print the help of a command')
    .addHelpText(
      'after',
      examplesText(
        ['gantrybook new my-machine --from tidepool', 'a book to begin with'],
        ['gantrybook open my-machine', 'on the desk: edit it, and see what moves'],
        ['gantrybook check my-machine', 'what holds, what fails, what to measure'],
        ['gantrybook show my-machine --into my-machine/made', 'its drawing set on the screen'],
      ) + exitCodes,
    );

  program
    .command('open')
    .showHelpAfterError('Help: gantrybook open --help')
    .summary('open the desk')
    .description(
      'Opens a book on the desk: its sheets, its text beside them, verdicts that move as you edit. Served to this machine only, until Ctrl-C.',
    )
    .argument('[book]', "a book's folder or file; without it, the one in the folder you are in, or a first visit")
    .addOption(
      new Option('-p, --port <number>', 'serve at this port, or the next that is free').argParser(portOf).default(4860),
    )
    .option('--no-browser', 'open no browser')
    .addHelpText(
      'after',
      examplesText(
        ['gantrybook open my-machine', 'edit it; saving writes into its folder'],
        ['gantrybook open', 'choose a demo, or answer five questions; new books go into this folder'],
      ),
    )
    .action(async (book: string | undefined, options: { port: number; browser: boolean }) => {
      const { open } = await import('./open.ts');
      ended(await open(book, options, terminal));
    });

  program
    .command('check')
    .showHelpAfterError('Help: gantrybook check --help')
    .summary('check a book')
    .description('Checks a book and prints a summary of one screen.')
    .argument('[book]', "a book's folder or file; without it, the folder you are in")
    .option('-j, --json', 'print every finding and every fact as JSON')
    .option('--sarif <file>', 'also write a SARIF 2.1.0 log, for code hosts and editors')
    .option('-s, --sheet <name>', 'print one sheet in full, by name or number')
    .option('--strict', 'end with 1 also when something is open by doubt or not stated')
    .option('-q, --quick', 'verdicts only: look for no measurements and no cures')
    .addHelpText(
      'after',
      examplesText(
        ['gantrybook check examples/tidepool', 'the summary'],
        ['gantrybook check --sheet motion', 'one sheet in full, of the book in this folder'],
        ['gantrybook check --strict --sarif findings.sarif', 'for a CI that annotates changes'],
        ['gantrybook check --json | jq ".tally.counts"', 'for programs; docs/json.md says what stands where'],
      ) + exitCodes,
    )
    .action(async (book: string | undefined, options: object) => {
      const { check } = await import('./check.ts');
      ended(await check(book, options, terminal));
    });

  program
    .command('pack')
    .showHelpAfterError('Help: gantrybook pack --help')
    .summary('make the drawing set')
    .description('Makes the drawing set of a book: a self-contained page for each sheet, tables, and findings as data.')
    .argument('[book]', "a book's folder or file; without it, the folder you are in")
    .addOption(intoOption())
    .addHelpText(
      'after',
      examplesText([
        'gantrybook pack examples/tidepool --into out/tidepool',
        'all files of the set, each with its stamp',
      ]),
    )
    .action(async (book: string | undefined, options: { into: string }) => {
      const { pack } = await import('./pack.ts');
      ended(pack(book, options, terminal));
    });

  program
    .command('show')
    .showHelpAfterError('Help: gantrybook show --help')
    .summary('make the drawing set and show it')
    .description('Checks a book, makes its drawing set and serves it to this machine only, until Ctrl-C.')
    .argument('[book]', "a book's folder or file; without it, the folder you are in")
    .addOption(intoOption())
    .addOption(
      new Option('-p, --port <number>', 'serve at this port, or the next that is free').argParser(portOf).default(4824),
    )
    .option('--no-browser', 'open no browser')
    .addHelpText(
      'after',
      examplesText(['gantrybook show examples/tidepool --into out/tidepool', 'prints the address to open']),
    )
    .action(async (book: string | undefined, options: { into: string; port: number; browser: boolean }) => {
      const { show } = await import('./pack.ts');
      ended(await show(book, options, terminal));
    });

  program
    .command('bench')
    .showHelpAfterError('Help: gantrybook bench --help')
    .summary('measure a part and narrow the book')
    .description(
      'Prints the form for measuring something at the bench, takes readings, and writes what they leave of the facts into the book. Without a name, lists what can be measured.',
    )
    .argument('[part]', 'what is on the bench: a part, a motor, an axis, a rail, hanging')
    .argument('[book]', "a book's folder or file; without it, the folder you are in")
    .option('-f, --form', 'print the form only, to be carried to the bench')
    .option('-t, --test <name>', 'one test of the part')
    .option('-r, --readings <file>', 'take the readings from a file instead of asking')
    .option('--replace', 'take the readings also where they contradict what the book says, and drop that')
    .addHelpText(
      'after',
      examplesText(
        ['gantrybook bench examples/tidepool', 'what of it can be measured, and what first'],
        ['gantrybook bench M1 examples/tidepool --form', 'the form for its motor, on paper'],
        ['gantrybook bench scrap-23 --test winding-resistance', 'asks for volts, ampere, temperature'],
        ['gantrybook bench x my-machine --readings x.yaml', 'readings that were noted before'],
      ) +
        `
A file of readings holds, for each test, a list of sets:
  winding-resistance:
    - { volts: 0.94 V, current: 0.96 A, temperature: 21 degC }
A reading may carry its own error: 0.94 V ±0.1%.
` +
        exitCodes,
    )
    .action(async (part: string | undefined, book: string | undefined, options: object) => {
      const { bench } = await import('./bench.ts');
      ended(await bench(part, book, options, terminal));
    });

  program
    .command('compare')
    .showHelpAfterError('Help: gantrybook compare --help')
    .summary('compare two books')
    .description(
      'Says what another book changes: which verdicts and percentages move, and by which changes, on one screen.',
    )
    .argument('<from>', 'a book')
    .argument('<to>', 'the other book')
    .option('-j, --json', 'print everything as JSON')
    .option('-a, --all', 'print every finding that moves, with the facts behind it')
    .option('-s, --sheet <name>', 'print every finding of one trade, by name or number')
    .option('-i, --into <folder>', 'also write the comparison as a sheet, comparison.html')
    .addHelpText(
      'after',
      examplesText(
        ['gantrybook compare examples/tidepool-first-draft examples/tidepool', 'what the second draft made better'],
        [
          'gantrybook compare examples/tidepool-first-draft examples/tidepool --into out/compared',
          'the same to read on the screen and to print',
        ],
      ),
    )
    .action(async (from: string, to: string, options: object) => {
      const { compare } = await import('./compare.ts');
      ended(await compare(from, to, options, terminal));
    });

  program
    .command('work')
    .showHelpAfterError('Help: gantrybook work --help')
    .summary('work out one formula')
    .description('Works out one formula with its working; without a name, lists all of them.')
    .argument('[name]', 'the formula')
    .argument('[values...]', 'key=value, by symbol or by name: "L=1 m" "theta=30 deg" "loads=[1 N, 2 N]"')
    .addHelpText(
      'after',
      examplesText(
        ['gantrybook work', 'every formula with symbols, units, range, source and evidence'],
        ['gantrybook work axis-force', 'what one of them takes, and an example'],
        ['gantrybook work axis-force "m=2.5 kg" "a=700 mm/s^2" "F_run=7 N"', 'its working, step by step'],
      ),
    )
    .action(async (name: string | undefined, values: string[]) => {
      const { work } = await import('./work.ts');
      ended(work(name, values, terminal));
    });

  program
    .command('new')
    .showHelpAfterError('Help: gantrybook new --help')
    .summary('begin a book')
    .description('Copies an example into a new folder.')
    .argument('<folder>', 'where your book goes')
    .option('-f, --from <example>', 'which example', 'five-facts')
    .addHelpText(
      'after',
      examplesText(
        ['gantrybook new my-machine', 'the smallest book that gets an answer'],
        ['gantrybook new my-crane --from tidepool', 'the whole demo machine'],
      ),
    )
    .action(async (folder: string, { from }: { from: string }) => {
      const { begin } = await import('./new.ts');
      ended(begin(folder, from, terminal));
    });

  program
    .command('schema')
    .showHelpAfterError('Help: gantrybook schema --help')
    .summary('print the schema of books')
    .description('Prints the JSON Schema of a book, by which an editor completes and checks what you type.')
    .addHelpText('after', examplesText(['gantrybook schema > book.schema.json', 'beside a book, for your editor']))
    .action(async () => {
      const { schema } = await import('./new.ts');
      ended(schema(terminal));
    });
  return program;
};

const faultText = (error: unknown): string =>
  `gantrybook: a fault of the program, not of your book: ${error instanceof Error ? error.message : String(error)}. Please report it with the command, the book and what GANTRYBOOK_TRACE=1 adds (version ${version}, Node ${process.versions.node}, ${process.platform}).`.replaceAll(
    /\s+/g,
    ' ',
  );

/** Says what went wrong. A stack is for those who asked for it. */
export const told = (error: unknown, terminal: Terminal): ExitCode => {
  if (error instanceof CommanderError) return error.exitCode === 0 ? GOOD : UNREADABLE;
  if (error instanceof Refused) {
    terminal.complain(...wrap(terminal.text(`gantrybook: ${error.message}`), { width: terminal.columns, next: '  ' }));
    return UNREADABLE;
  }
  terminal.complain(terminal.text(faultText(error)));
  if (terminal.around.env['GANTRYBOOK_TRACE'] && error instanceof Error) terminal.complain(error.stack ?? '');
  return FAULT;
};

/** Runs one command and says what to end with. */
export const run = async (args: readonly string[], around: Surroundings): Promise<ExitCode> => {
  const terminal = terminalIn(around);
  let code: ExitCode = GOOD;
  try {
    const program = programFor(terminal, (ended) => (code = ended));
    if (args.length === 0) program.outputHelp();
    else await program.parseAsync(args, { from: 'user' });
  } catch (error) {
    code = told(error, terminal);
  }
  return code;
};
