/** The page of the trim sheet at all widths, zooms and themes, in a real browser: what it shows, by keyboard, to a screen reader. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { projectRoot } from '../../client/launch/install.mjs';
import { violationsIn } from './accessibility.ts';
import { openStage, type Stage } from './panelStage.ts';
import { launchBrowser, shots } from './session.ts';
import { type Theme, themes } from './themes.ts';

const sample = (name: string): string => readFileSync(join(projectRoot, 'samples', `${name}.boat.yaml`), 'utf8');
const petrel = sample('petrel');

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

async function on<T>(options: Parameters<typeof openStage>[1], look: (stage: Stage) => Promise<T>): Promise<T> {
  const stage = await openStage(browser, options);
  try {
    return await look(stage);
  } finally {
    await stage.page.close();
  }
}

const WIDTHS = [320, 700, 1400];
const ZOOMS = [1, 2];

describe.each(Object.keys(themes) as Theme[])('in the theme %s', theme => {
  it.each(WIDTHS.flatMap(width => ZOOMS.map(zoom => [width, zoom] as const)))(
    'at %i px and zoomed %i times nothing is cropped, type is 11 px at least, and no rule of accessibility is broken',
    async (width, zoom) => {
      // The least room is that of a phone, zoomed or not.
      const options = { text: petrel, theme, width: Math.max(width, 320 * zoom), zoom };
      await on(options, async stage => {
        const { page } = stage;
        await page.screenshot({ path: join(shots, `panel-${theme}-${width}-${zoom}.png`), fullPage: true });
        expect(await page.evaluate('document.documentElement.scrollWidth - document.documentElement.clientWidth')).toBe(
          0,
        );
        expect(await page.evaluate(CROPPED)).toEqual([]);
        expect(await page.evaluate(LEAST_TYPE)).toBeGreaterThanOrEqual(11);
        expect(await violationsIn(stage.page)).toEqual([]);
      });
    },
  );
});

/** Texts of pictures that stand out of theirs by more than a pixel. */
const CROPPED = `[...document.querySelectorAll('#pictures svg text')].flatMap(text => {
  const [own, room] = [text.getBoundingClientRect(), text.ownerSVGElement.getBoundingClientRect()];
  return own.width > 0 && (own.left < room.left - 1 || own.right > room.right + 1) ? [text.textContent] : [];
})`;

/** The smallest type that is shown anywhere, px as the page counts them. */
const LEAST_TYPE = `Math.min(...[...document.querySelectorAll('body *')]
  .filter(element => [...element.childNodes].some(node => node.nodeType === 3 && node.data.trim() !== ''))
  .filter(element => element.getBoundingClientRect().width > 1 && !element.closest('script, style'))
  .map(element => {
    const svg = element.ownerSVGElement;
    const scale = svg ? svg.getBoundingClientRect().width / svg.viewBox.baseVal.width : 1;
    return scale * Number.parseFloat(getComputedStyle(element).fontSize);
  }))`;

/** Texts of one picture that are printed over each other. */
const OVERPRINTED = `[...document.querySelectorAll('#pictures svg')].flatMap(svg => {
  const texts = [...svg.querySelectorAll('text')].map(text => ({ words: text.textContent, box: text.getBoundingClientRect() }));
  return texts.flatMap(({ words, box }, i) => texts.slice(i + 1).flatMap(other => {
    const wide = Math.min(box.right, other.box.right) - Math.max(box.left, other.box.left);
    const high = Math.min(box.bottom, other.box.bottom) - Math.max(box.top, other.box.top);
    return wide > 2 && high > 4 ? [svg.id + ': ' + words + ' | ' + other.words] : [];
  }));
})`;

/** Boats that are drawn otherwise: with trials, with conditions of their own, with a mesh, with a table of offsets, in inches. */
it.each(
  ['dunlin', 'grebe', 'guillemot', 'curlew', 'teal', 'sprat'].flatMap(name =>
    [320, 480, 1600].map(width => [name, width] as const),
  ),
)('of %s at %i px as little is cropped, printed over or hard to read', async (name, width) => {
  await on({ text: sample(name), theme: 'light', width, zoom: 1 }, async ({ page }) => {
    expect(await page.evaluate(CROPPED)).toEqual([]);
    expect(await page.evaluate(OVERPRINTED)).toEqual([]);
    expect(await page.evaluate(LEAST_TYPE)).toBeGreaterThanOrEqual(11);
    expect(await violationsIn(page)).toEqual([]);
  });
});

it('the boat is seen under its gauges without a scroll', async () => {
  for (const width of [650, 900, 1600]) {
    await on({ text: petrel, theme: 'light', width, zoom: 1 }, async ({ page }) => {
      const side = await page.locator('[data-picture="surfaced-side"]').boundingBox();
      expect(side!.y + 0.8 * side!.height).toBeLessThan(900);
    });
  }
});

it('a boat that says nothing is no trouble to read either', async () => {
  await on({ text: 'boat: Tern', theme: 'light', width: 700, zoom: 1 }, async stage => {
    expect(await stage.page.locator('#verdict').textContent()).toMatch(/^Nothing floats yet/);
    expect(await violationsIn(stage.page)).toEqual([]);
  });
});

it('is all done by keyboard: a gauge leads to its place in the file, the proposal is taken, names are shown', async () => {
  await on({ text: petrel, theme: 'dark', width: 880, zoom: 1 }, async ({ page, said }) => {
    const focused = (): Promise<string> =>
      page.evaluate(`document.activeElement.dataset.gauge ?? document.activeElement.id ?? ''`);
    const passed: string[] = [];
    for (let i = 0; i < 16; i++) {
      await page.keyboard.press('Tab');
      const name = await focused();
      passed.push(name);
      if (name === 'take' || name === 'names' || name === 'submerged trim') await page.keyboard.press('Enter');
    }
    expect(passed).toEqual(
      expect.arrayContaining(['choice', 'take', 'names', 'print', 'surfaced draft', 'submerged trim']),
    );
    const messages = await said();
    expect(messages).toContainEqual({ kind: 'take', proposal: 0 });
    expect(messages).toContainEqual({ kind: 'room', width: 880, names: 'all' });
    expect(messages).toContainEqual({ kind: 'reveal', path: expect.stringMatching(/^\["/) });
  });
});

it('names what one points at, and what the cursor is in', async () => {
  await on({ text: petrel, theme: 'light', width: 880, zoom: 1 }, async ({ page, send }) => {
    const side = page.locator('[data-picture="surfaced-side"]');
    const radio = side.locator(`[data-path='["payload",2]']`);
    await radio.hover({ force: true });
    await expect.poll(() => side.locator('.name-tag').allTextContents()).toEqual(['radio and servos']);
    await send({ kind: 'light', path: '["payload",3]' });
    await page.mouse.move(2, 2);
    await expect.poll(() => side.locator('.name-tag').allTextContents()).toEqual(['drive motor']);
  });
});
