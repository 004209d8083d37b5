import { execFile } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('..', import.meta.url));
const { scripts } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { scripts: Record<string, string> };

// The command that runs this test runs these itself.
const RUN_ALREADY = ['npm test', 'npm start', 'npm run types', 'npm run lint', 'npm run format:check', 'npm run build'];

interface Command {
  readonly line: number;
  readonly text: string;
  /** The exit code that the document promises: `# exit 1` after the command, else 0. */
  readonly code: number;
  /** Why it is not run, from a comment before its block, or nothing. */
  readonly spared: string | undefined;
}

/** The commands in the sh blocks of a document. */
function commandsIn(markdown: string): Command[] {
  const commands: Command[] = [];
  const lines = markdown.split('\n');
  let inBlock = false;
  let spared: string | undefined;
  let held = '';
  for (const [index, line] of lines.entries()) {
    const marker = /<!--\s*not run:\s*(.+?)\s*-->/.exec(line);
    if (!inBlock && marker !== null) spared = marker[1];
    else if (line.trim() === '```sh') inBlock = true;
    else if (inBlock && line.trim() === '```') {
      inBlock = false;
      spared = undefined;
    } else if (inBlock && line.endsWith('\\')) held += `${line.slice(0, -1)} `;
    else if (inBlock) {
      const [, text = '', code] = /^(.*?)(?:\s+#(?:\s*exit (\d+))?.*)?$/.exec((held + line).trim()) ?? [];
      held = '';
      if (text !== '' && !text.startsWith('#'))
        commands.push({ line: index + 1, text, code: Number(code ?? 0), spared });
    } else if (line.trim() !== '') spared = undefined;
  }
  return commands;
}

describe('commands in a document', () => {
  it('are found with the code that they promise and the reason why one is not run', () => {
    const markdown = [
      '<!-- not run: it serves until Ctrl-C -->',
      '```sh',
      'npm start',
      '```',
      '```sh',
      '# the first draft',
      'npx gantrybook check examples/a # exit 1',
      'npx gantrybook pack examples/a \\',
      '  --into made   # makes a folder',
      '```',
      '```yaml',
      'axes: {}',
      '```',
    ].join('\n');
    expect(commandsIn(markdown)).toEqual([
      { line: 3, text: 'npm start', code: 0, spared: 'it serves until Ctrl-C' },
      { line: 7, text: 'npx gantrybook check examples/a', code: 1, spared: undefined },
      { line: 9, text: 'npx gantrybook pack examples/a    --into made', code: 0, spared: undefined },
    ]);
  });
});

describe.each(['README.md', 'CONTRIBUTING.md'])('%s', (document) => {
  const commands = commandsIn(readFileSync(join(root, document), 'utf8'));
  let folder = '';

  // A copy, because some of the commands write beside the book.
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'gantrybook-docs-'));
    cpSync(join(root, 'examples'), join(folder, 'examples'), { recursive: true });
    symlinkSync(join(root, 'node_modules'), join(folder, 'node_modules'), 'junction');
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  const shell = (text: string): Promise<{ code: unknown; output: string }> =>
    new Promise((resolve) => {
      execFile(
        'sh',
        ['-c', text],
        { cwd: folder, env: { ...process.env, NO_COLOR: '1' }, maxBuffer: 64 * 2 ** 20 },
        (error, out, err) => {
          resolve({ code: error === null ? 0 : error.code, output: out + err });
        },
      );
    });

  it('has commands', () => {
    expect(commands).not.toEqual([]);
  });

  it('names only scripts that exist', () => {
    const named = commands.flatMap(({ text }) => /^npm (?:run )?([\w:-]+)/.exec(text)?.[1] ?? []);
    expect(named.filter((name) => !(name in scripts) && !['install', 'ci', 'pack'].includes(name))).toEqual([]);
  });

  // In their order: a later one may use what an earlier one made.
  for (const { line, text, code, spared } of commands) {
    if (spared !== undefined || RUN_ALREADY.includes(text)) continue;
    it(`line ${line}: ${text}`, async () => {
      expect(text, 'say why it is not run: <!-- not run: … -->').toMatch(/^npx gantrybook\b/);
      const ran = await shell(text);
      expect(ran.code, ran.output).toBe(code);
    });
  }
});
