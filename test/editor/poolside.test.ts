/** The poolside page as a phone has it: from its memory, without a network, under a finger. */
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { projectRoot } from '../../client/launch/install.mjs';
import { takeTrials } from '../../server/core/poolside/take.ts';
import { splice } from '../../server/core/text/editing/edit.ts';
import { POOLSIDE_FILES, poolsidePage } from '../../server/editor/poolsidePage.ts';
import { heard, service } from '../helpers/analysed.ts';
import { launchBrowser, shots } from './session.ts';

const folder = mkdtempSync(join(tmpdir(), 'trimwright-poolside-'));
const file = join(folder, 'dunlin.poolside.html');
const dunlin = readFileSync(join(projectRoot, 'samples', 'dunlin.boat.yaml'), 'utf8');
let browser: Browser;

beforeAll(async () => {
  mkdirSync(shots, { recursive: true });
  const { files: _, ...boat } = service.poolBoat(heard(dunlin)).all();
  const built = (name: string): string => readFileSync(join(projectRoot, 'dist', name), 'utf8');
  const { page, worker, licences } = POOLSIDE_FILES;
  const texts = { page: built(page), worker: built(worker), licences: built(licences) };
  const made = poolsidePage(texts, { ...boat, meshes: [] });
  expect(made.length).toBeLessThan(2e6);
  writeFileSync(file, made);
  browser = await launchBrowser();
});
afterAll(async () => {
  await browser.close();
  rmSync(folder, { recursive: true });
});

const PHONE: BrowserContextOptions = {
  viewport: { width: 360, height: 740 },
  deviceScaleFactor: 2,
  isMobile: true,
  hasTouch: true,
  offline: true,
};
const WORKED_OUT = { timeout: 120_000 };

interface Phone {
  readonly page: Page;
  /** What the page asked of the world, and what the browser held against it. */
  readonly asked: readonly string[];
  readonly complaints: readonly string[];
}

async function onPhone(options: BrowserContextOptions, prepare?: (page: Page) => Promise<unknown>): Promise<Phone> {
  const context = await browser.newContext({ ...PHONE, ...options });
  const page = await context.newPage();
  const [asked, complaints]: [string[], string[]] = [[], []];
  page.on('request', request => asked.push(request.url().replace(/:.*/s, '')));
  page.on('console', message => complaints.push(message.text()));
  page.on('pageerror', error => complaints.push(String(error.stack)));
  await prepare?.(page);
  await page.goto(pathToFileURL(file).href);
  return { page, asked, complaints };
}

const more = (page: Page, label: string) => page.getByRole('button', { name: `${label}: more` });
const workedOut = (page: Page) =>
  page
    .locator('.working')
    .first()
    .waitFor({ state: 'hidden', ...WORKED_OUT });

/** Reads the boat high at the bow, and its heel. */
async function read(page: Page): Promise<void> {
  for (let tap = 0; tap < 6; tap++) await more(page, 'Water near the bow').tap();
  await page.getByLabel('Heel', { exact: true }).fill('0,5');
  await page.getByRole('button', { name: 'to port' }).tap();
  await page.locator('.said.agrees, .said.differs').first().waitFor(WORKED_OUT);
  await workedOut(page);
}

/** What cannot be seen whole, read or hit; runs in the page, whose types the tests do not know. */
const FAULTS = `(() => {
  const all = [...document.body.querySelectorAll('*')].filter(
    element => element.getClientRects().length > 0 && !element.closest('svg'),
  );
  const words = element => element.tagName + ' ' + element.textContent.slice(0, 30);
  const hasText = element => [...element.childNodes].some(node => node.nodeType === 3 && node.textContent.trim() !== '');
  const isCut = element => element.matches('button, p, h1, h2, h3, label') && element.scrollWidth > element.clientWidth + 1;
  const faults = {
    'out of the page': element => element.getBoundingClientRect().right > innerWidth + 0.5,
    'cut off': isCut,
    'too small to read': element => hasText(element) && Number.parseFloat(getComputedStyle(element).fontSize) < 14,
    'too small to hit': element => {
      const { width, height } = element.getBoundingClientRect();
      return element.matches('button, summary, input') && (width < 48 || height < 48);
    },
  };
  return [
    ...Object.entries(faults).flatMap(([fault, has]) => all.filter(has).map(element => fault + ': ' + words(element))),
    ...(document.documentElement.scrollWidth > innerWidth ? ['the page scrolls sideways'] : []),
  ];
})()`;
const faultsOf = (page: Page): Promise<readonly string[]> => page.evaluate(FAULTS);

test('a day at the pool, from the first reading to the boat file, with the phone asleep in between', async () => {
  const { page, asked, complaints } = await onPhone({});
  expect(await page.locator('h1').textContent()).toBe('Dunlin');
  expect(await page.locator('.expected').first().textContent()).toMatch(/^expected \d+(\.\d+)? mm/);
  await page.screenshot({ path: join(shots, 'poolside-first.png') });
  await read(page);
  expect(await page.locator('#told').textContent()).toMatch(/Most likely \(/);
  await page.screenshot({ path: join(shots, 'poolside-read.png'), fullPage: true });
  const done = page.getByRole('button', { name: 'Done: put aboard' });
  const pieces = Number((await page.locator('.count').textContent())?.split(' of ')[1] ?? 1);
  for (let piece = 0; piece < pieces; piece++) await done.tap();
  expect(await page.locator('#todo').textContent()).toContain('Now read it again.');

  await page.reload();
  await workedOut(page);
  await page.getByRole('button', { name: 'Submerged' }).tap();
  await more(page, 'Tank').tap();
  await workedOut(page);
  await page.getByText('The text', { exact: true }).tap();
  const text = await page.locator('textarea').inputValue();
  expect(text).toMatch(/condition: surfaced\n\s+marks: .*\n\s+heel: -0\.5°\n[\s\S]*condition: submerged\n\s+aboard:/);
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save as a file' }).tap(),
  ]);
  expect(download.suggestedFilename()).toMatch(/^dunlin-\d{4}-\d\d-\d\d\.trials\.yaml$/);
  expect(readFileSync(await download.path(), 'utf8')).toBe(text);

  const taking = takeTrials(heard(dunlin).syntax, text);
  if (taking.status === 'refused') throw new Error(taking.reason);
  const taken = heard(splice(dunlin, taking.splices));
  expect(taken.trials).toHaveLength(heard(dunlin).trials.length + 2);
  expect(taken.file.findings).toEqual([]);
  expect(new Set(asked)).toEqual(new Set(['file', 'blob']));
  expect(complaints).toEqual([]);
  await page.context().close();
});

test('how far a reading is from the file is told while nothing is figured: the page has what it goes by', async () => {
  const { page } = await onPhone({}, page =>
    page.addInitScript({ content: 'Worker.prototype.postMessage = () => {}' }),
  );
  for (let tap = 0; tap < 6; tap++) await more(page, 'Water near the bow').tap();
  expect(await page.locator('.said.differs, .said.agrees').first().textContent()).toMatch(
    /^\d+(?:\.\d+)? mm more than by the file \(\d+(?:\.\d+)? mm\)\. \w/,
  );
  expect(await page.locator('.working').count()).toBeGreaterThan(0);
  await page.context().close();
});

describe.each([
  ['of usual breadth', { viewport: { width: 360, height: 740 } }, 100],
  ['in the dark', { viewport: { width: 360, height: 740 }, colorScheme: 'dark' }, 100],
  ['that is narrow', { viewport: { width: 320, height: 568 } }, 100],
  ['with large type', { viewport: { width: 320, height: 568 } }, 200],
  ['that lies on its side', { viewport: { width: 740, height: 360 } }, 100],
] as const)('on a phone %s', (name, options, type) => {
  test('everything is seen whole, can be read, and can be hit', async () => {
    const { page } = await onPhone(options);
    await page.evaluate(`document.documentElement.style.fontSize = '${type * 1.125}%'`);
    await read(page);
    for (const condition of ['Surfaced', 'Submerged']) {
      await page.getByRole('button', { name: condition }).tap();
      expect(await faultsOf(page)).toEqual([]);
      const shot = `poolside ${name} ${condition}`.toLowerCase().replaceAll(' ', '-');
      await page.screenshot({ path: join(shots, `${shot}.png`), fullPage: true });
    }
    await page.context().close();
  });
});

test('a browser that keeps nothing says so, and the trials are there to copy', async () => {
  const { page } = await onPhone({}, page =>
    page.addInitScript({
      content: `Object.defineProperty(window, 'localStorage', { get: () => { throw new Error('forbidden'); } })`,
    }),
  );
  await more(page, 'Water near the bow').tap();
  expect(await page.locator('#trouble').textContent()).toContain('keeps nothing');
  expect(await page.locator('textarea').inputValue()).toContain('condition: surfaced');
  await page.context().close();
});

/** Milliseconds from opening to the first paint, which a busy machine may take long to report. */
async function paintedAfter(page: Page): Promise<number> {
  const first = `performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? 0`;
  // What waits in the page itself would run a text there, which the page forbids.
  await expect.poll(() => page.evaluate<number>(first), WORKED_OUT).toBeGreaterThan(0);
  return page.evaluate<number>(first);
}

/** Milliseconds from the finger until it is told how far a reading is from the file, as the page counts them. */
const TOLD_AFTER = `toldAfter = new Promise(resolve => {
  let since = 0;
  addEventListener('pointerdown', () => { since = performance.now(); }, { capture: true, once: true });
  new MutationObserver(() => {
    if (document.querySelector('.said.agrees, .said.differs')) resolve(performance.now() - since);
  }).observe(document.body, { subtree: true, childList: true, attributes: true });
}); 0`;

/** The browser slows down the page alone: what its worker figures comes as soon as this machine has it. */
test('how long a slow phone takes is printed', async () => {
  for (const rate of [1, 4]) {
    const { page } = await onPhone({}, async page => {
      const session = await page.context().newCDPSession(page);
      await session.send('Emulation.setCPUThrottlingRate', { rate });
    });
    const shown = await paintedAfter(page);
    await page.evaluate(TOLD_AFTER);
    const begun = Date.now();
    await more(page, 'Water near the bow').tap();
    const compared = await page.evaluate<number>('toldAfter');
    await workedOut(page);
    const advised = Date.now() - begun;
    console.log(
      `${rate}x slower: the boat and what is expected ${Math.round(shown)} ms after opening; after a first reading how far it is from the file ${Math.round(compared)} ms, what to do ${advised} ms`,
    );
    await page.context().close();
  }
});
