import { spawnSync } from 'node:child_process';
import { accessSync, constants, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { plainly, RefusedFile } from './plainErrors.ts';

/** What browsers that print without a window are called, by the machine. */
const NAMES: Readonly<Partial<Record<NodeJS.Platform, readonly string[]>>> = {
  win32: ['chrome.exe', 'msedge.exe', 'chromium.exe'],
};
const OTHER_NAMES = [
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
  'chrome',
  'microsoft-edge',
];

/** Where they are put when they are not on the path. */
const PLACES: Readonly<Partial<Record<NodeJS.Platform, readonly string[]>>> = {
  darwin: [
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
    '/Applications/Chromium.app/Contents/MacOS/Chromium',
    '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
  ],
  win32: [
    'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
    'C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe',
    'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
  ],
};

/** A page that takes longer than this to print hangs, ms. */
const LONGEST = 60_000;

/** The page as it is printed, by a Chromium or Chrome of this machine; throws a plain sentence where there is none. */
export function pdfOf(html: string): Uint8Array {
  const browser = findBrowser();
  if (browser === null) {
    throw new RefusedFile(
      'a PDF needs Chromium, Chrome or Edge on this machine, and none was found. Write NAME.html instead and print it from any browser',
    );
  }
  const folder = plainly(() => mkdtempSync(join(tmpdir(), 'trimwright-')));
  try {
    const [page, pdf] = [join(folder, 'sheet.html'), join(folder, 'sheet.pdf')];
    writeFileSync(page, html);
    const { status, error } = spawnSync(
      browser,
      [
        '--headless',
        '--disable-gpu',
        '--no-first-run',
        `--user-data-dir=${join(folder, 'profile')}`,
        // Root has no sandbox to go into; the page runs nothing.
        ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
        '--no-pdf-header-footer',
        `--print-to-pdf=${pdf}`,
        pathToFileURL(page).href,
      ],
      { stdio: 'ignore', timeout: LONGEST },
    );
    if (status !== 0 || !isFile(pdf)) {
      throw new RefusedFile(
        `${browser} could not print the page${error ? ` (${error.message})` : ''}. Write NAME.html instead and print it from a browser`,
      );
    }
    return readFileSync(pdf);
  } finally {
    rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
  }
}

function findBrowser(): string | null {
  const folders = (process.env.PATH ?? '').split(delimiter).filter(folder => folder !== '');
  const names = NAMES[process.platform] ?? OTHER_NAMES;
  const onPath = names.flatMap(name => folders.map(folder => join(folder, name)));
  return [...onPath, ...(PLACES[process.platform] ?? [])].find(isRunnable) ?? null;
}

const isFile = (name: string): boolean => statSync(name, { throwIfNoEntry: false })?.isFile() ?? false;

function isRunnable(name: string): boolean {
  try {
    accessSync(name, constants.X_OK);
    return isFile(name);
  } catch {
    return false;
  }
}
