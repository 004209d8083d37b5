import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildDesk, LIMITS } from '../../scripts/build-desk.mjs';

describe('the built desk', () => {
  let into: string;
  let built: Awaited<ReturnType<typeof buildDesk>>;
  beforeAll(async () => {
    into = mkdtempSync(join(tmpdir(), 'gantrybook-desk-size-'));
    built = await buildDesk({ into });
  });
  afterAll(() => rmSync(into, { recursive: true, force: true }));

  const files = (): string[] =>
    readdirSync(into, { recursive: true, encoding: 'utf8' })
      .map((file) => file.replaceAll('\\', '/'))
      .filter((file) => statSync(join(into, file)).isFile());

  it.each(['page', 'worker'] as const)('fetches no more of the %s at once than agreed', (part) => {
    expect(LIMITS[part]).toBe(250_000);
    expect(built.sizes[part]).toBeGreaterThan(10_000);
    expect(built.sizes[part]).toBeLessThanOrEqual(LIMITS[part]);
  });

  it('keeps every file that the page may ask for, so that it goes on without a network', () => {
    const offline = readFileSync(join(into, 'offline.js'), 'utf8');
    const missing = files().filter(
      (file) => file !== 'offline.js' && !file.endsWith('.txt') && !offline.includes(`"${file}"`),
    );
    expect(missing).toEqual([]);
  });

  it('asks for nothing from elsewhere', () => {
    const addresses = files()
      .filter((file) => /\.(html|css|js)$/.test(file))
      .flatMap(
        (file) =>
          readFileSync(join(into, file), 'utf8').match(
            /(?:src|href)="(?:https?:)?\/\/[^"]*|url\((?:https?:)?\/\/[^)]*/g,
          ) ?? [],
      );
    expect(addresses).toEqual([]);
    expect(readFileSync(join(into, 'index.html'), 'utf8')).toContain("default-src 'none'");
  });

  it('is built anew to the same files', async () => {
    const before = files().toSorted();
    await buildDesk({ into });
    expect(files().toSorted()).toEqual(before);
  });
});
