import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { chromium, type Browser } from 'playwright-core';

/** The browser that is installed here (CHROMIUM overrides the path), or nothing. */
export const chromiumPath: string | undefined =
  process.env['CHROMIUM'] ??
  (process.env['PATH'] ?? '')
    .split(delimiter)
    .flatMap((folder) => ['chromium', 'chromium-browser', 'google-chrome'].map((program) => join(folder, program)))
    .find((program) => existsSync(program));

/** Starts that browser. Root has no sandbox to start it in, as in a container. */
export function launchChromium(): Promise<Browser> {
  if (chromiumPath === undefined) throw new Error('no Chromium: guard the tests with describe.skipIf(!chromiumPath)');
  return chromium.launch({ executablePath: chromiumPath, args: process.getuid?.() === 0 ? ['--no-sandbox'] : [] });
}
