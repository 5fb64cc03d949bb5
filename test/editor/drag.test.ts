/** A part under a hand on the trim sheet: the page moves it at once, the server’s picture of it comes when it comes. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';
import fc from 'fast-check';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { projectRoot } from '../../client/launch/install.mjs';
import type { SheetPicture } from '../../server/editor/protocol.ts';
import { createBoatService } from '../../server/service/service.ts';
import { sampleMeshes } from '../helpers/sampleMeshes.ts';
import { openStage, type Stage } from './panelStage.ts';
import { launchBrowser } from './session.ts';

const petrel = readFileSync(join(projectRoot, 'samples', 'petrel.boat.yaml'), 'utf8');
const BATTERY = '["payload",0]';
const WAY = 60;

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

/** The sheet with the battery in the hand, taken up and not yet moved; where it is. */
async function taken(): Promise<{ readonly stage: Stage; readonly x: number; readonly y: number }> {
  const stage = await openStage(browser, { text: petrel, theme: 'light', width: 880, zoom: 1 });
  const body = stage.page.locator(`[data-picture="surfaced-side"] [data-path='${BATTERY}'] .body`);
  await body.evaluate(element => element.scrollIntoView({ block: 'center' }));
  const { x, y } = await middle(stage);
  await stage.page.mouse.move(x, y);
  await stage.page.mouse.down();
  return { stage, x, y };
}

const middle = ({ page }: Stage, picture = 'surfaced-side'): Promise<{ readonly x: number; readonly y: number }> =>
  page.evaluate(`(() => {
    const body = document.querySelector(${JSON.stringify(`[data-picture="${picture}"] [data-path='${BATTERY}'] .body`)});
    const { left, top, width, height } = body.getBoundingClientRect();
    return { x: left + width / 2, y: top + height / 2 };
  })()`);

/** What the server says of the last wish that the page has sent. */
async function answer({ said, send }: Stage): Promise<readonly SheetPicture[]> {
  const wish = (await said()).filter(message => message.kind === 'preview').at(-1)!;
  const service = createBoatService();
  const { path, metres, drag } = wish;
  const meshes = sampleMeshes;
  const moved = service.moved(service.analyse(petrel, undefined, meshes), { key: path, by: { metres } }, meshes)!;
  const seen = ['surfaced-side', 'submerged-side'];
  const sheet = service.sheet(moved, { proposal: null, moved: path, seen, width: 880, names: 'few' }).all();
  await send({ kind: 'preview', drag, metres, ...sheet });
  return sheet.pictures;
}

it('lies under the pointer before the server has answered, in all pictures, and no further off once it has', async () => {
  const { stage, x, y } = await taken();
  const { page } = stage;
  const below = await middle(stage, 'submerged-side');
  await page.mouse.move(x + WAY, y, { steps: 4 });
  expect((await middle(stage)).x).toBeCloseTo(x + WAY, 0);
  expect((await middle(stage, 'submerged-side')).x - below.x).toBeGreaterThan(0.8 * WAY);
  await page.evaluate(`mark = document.querySelector(${JSON.stringify(`[data-path='${BATTERY}']`)})`);
  await answer(stage);
  await expect.poll(() => page.locator('#words').textContent()).toMatch(/^“battery”: /);
  // A mark of the tape is a pixel and a half.
  await expect.poll(async () => Math.abs((await middle(stage)).x - x - WAY)).toBeLessThan(2);
  await page.mouse.move(x - WAY, y, { steps: 4 });
  expect(Math.abs((await middle(stage)).x - x + WAY)).toBeLessThan(2);
  // The same element all the while, with the keyboard’s focus on it.
  expect(await page.evaluate('mark.isConnected && document.activeElement === mark')).toBe(true);
  await page.close();
});

it('is shown in the whole of the picture that came, of which only what changed is read', async () => {
  const { stage, x, y } = await taken();
  const { page } = stage;
  for (const way of [WAY, -WAY]) {
    await page.mouse.move(x + way, y, { steps: 4 });
    const { svg } = (await answer(stage)).find(({ id }) => id === 'surfaced-side')!;
    const isShown = page.waitForFunction(`(() => {
      const told = root => [...root.querySelectorAll('*')]
        .filter(one => !one.hasAttribute('data-added'))
        .map(one => ['class', 'd', 'x', 'y', 'aria-label', 'data-path'].map(name => one.getAttribute(name)?.replace(/ ?(carried|lit)/, '')).join(' ') + one.textContent)
        .join('\\n');
      const came = new DOMParser().parseFromString(${JSON.stringify(svg)}, 'image/svg+xml');
      return told(document.querySelector('[data-picture="surfaced-side"] svg')) === told(came.documentElement);
    })()`);
    expect(await (await isShown).jsonValue()).toBe(true);
  }
  await page.close();
});

it('stays where it was dropped until the text has it there, and goes back when it is let go of', async () => {
  const { stage, x, y } = await taken();
  const { page, said } = stage;
  await page.mouse.move(x + WAY, y, { steps: 4 });
  await page.keyboard.press('Escape');
  expect((await middle(stage)).x).toBeCloseTo(x, 0);
  await page.mouse.up();
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + WAY, y, { steps: 4 });
  await page.mouse.up();
  expect((await middle(stage)).x).toBeCloseTo(x + WAY, 0);
  expect((await said()).filter(message => message.kind === 'drop')).toHaveLength(1);
  await page.close();
});

it('the gauges follow, each the same element', async () => {
  const { stage, x, y } = await taken();
  const { page } = stage;
  const gauge = page.locator('[data-gauge="submerged trim"]');
  const before = await gauge.textContent();
  await page.evaluate(`marks = [...document.querySelectorAll('.gauge, .gauge-bar')]`);
  await page.mouse.move(x + WAY, y, { steps: 4 });
  await answer(stage);
  await expect.poll(() => gauge.textContent()).not.toBe(before);
  expect(await page.evaluate('marks.length > 8 && marks.every(mark => mark.isConnected)')).toBe(true);
  await page.close();
});

it('is not dragged where the boat is seen from astern: a click there goes to its line', async () => {
  const stage = await openStage(browser, { text: petrel, theme: 'light', width: 880, zoom: 1 });
  const cut = stage.page.locator(`[data-picture="surfaced-section"] [data-path^='["payload"']`).first();
  await cut.click({ force: true });
  expect(await stage.said()).toContainEqual({ kind: 'reveal', path: await cut.getAttribute('data-path') });
  await stage.page.close();
});

it('any drawing becomes any other, and what has a name stays the same element', async () => {
  const { outputFiles } = await build({
    entryPoints: [join(projectRoot, 'client', 'panel', 'renew.ts')],
    bundle: true,
    format: 'iife',
    globalName: 'made',
    write: false,
  });
  const page = await browser.newPage();
  await page.addScriptTag({ content: outputFiles[0]!.text });
  const leaf = fc.oneof(fc.constant('<b></b>'), fc.constant('<i class="x">t</i>'), fc.constantFrom('one', 'two'));
  const keyed = fc
    .tuple(fc.constantFrom('a', 'b', 'c'), fc.constantFrom('u', 'g'), fc.array(leaf, { maxLength: 3 }))
    .map(([key, name, inner]) => `<${name} data-path="${key}">${inner.join('')}</${name}>`);
  const drawing = fc
    .array(fc.oneof(leaf, keyed), { maxLength: 6 })
    .map(parts => `<p>${parts.join('')}</p><q>${parts.slice(2).join('')}</q>`);
  const pairs = fc.sample(fc.tuple(drawing, drawing), { numRuns: 400, seed: 11 });
  const wrong = await page.evaluate(`(${JSON.stringify(pairs)}).filter(([from, to]) => {
    const [shown, next] = [from, to].map(text => Object.assign(document.createElement('div'), { innerHTML: text }));
    const once = (root, key) => [...root.querySelectorAll('p > [data-path="' + key + '"]')];
    const names = ['a', 'b', 'c'].map(key => [key, once(shown, key), once(next, key)]);
    const same = names.filter(([, was, will]) => was.length === 1 && will.length === 1 && was[0].localName === will[0].localName);
    const html = next.innerHTML;
    shown.querySelector('p').insertAdjacentHTML('beforeend', '<s data-added=""></s>');
    made.renew(shown, next);
    const kept = shown.querySelectorAll('[data-added]').length === 1;
    for (const tag of shown.querySelectorAll('[data-added]')) tag.remove();
    return !kept || shown.innerHTML !== html || same.some(([key, [was]]) => once(shown, key)[0] !== was);
  })`);
  expect(wrong).toEqual([]);
  await page.close();
});
