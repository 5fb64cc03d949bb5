/** Hands and eyes on the trim sheet: where its pictures and their parts are, and what the text has become of a deed there. */
import type { Frame, Locator } from 'playwright-core';
import { expect } from 'vitest';
import { type Session, sampleName } from './session.ts';
import { isChanged, save, textOf, until } from './workbench.ts';

type Path = readonly (string | number)[];
type Point = { readonly x: number; readonly y: number };

/** The page in the panel; null until it is there. */
export async function sheetPage({ page }: Session): Promise<Frame | null> {
  for (const frame of page.frames()) {
    if (
      (await frame
        .locator('#pictures')
        .count()
        .catch(() => 0)) > 0
    )
      return frame;
  }
  return null;
}

/** A picture of the sheet, once it is drawn. */
export async function picture(session: Session, id: string): Promise<Locator> {
  let found: Locator | null = null;
  await until({
    what: `the picture ${id}`,
    seen: async () => {
      found = (await sheetPage(session))?.locator(`[data-picture="${id}"] svg`) ?? null;
      return found !== null && (await found.count()) > 0;
    },
    patience: session.patience,
  });
  return found!;
}

export const partIn = (drawn: Locator, path: Path): Locator => drawn.locator(`[data-path='${JSON.stringify(path)}']`);

export const drawing = async (session: Session, id: string): Promise<string> =>
  (await picture(session, id)).evaluate(element => element.innerHTML);

/** What the sheet says in words: where a part is that is being moved, the verdict, the gauges. */
export async function words(session: Session): Promise<string> {
  const sheet = await sheetPage(session);
  const said = ['#words', '#verdict', '#gauges'].map(part => sheet?.locator(part).textContent());
  return (await Promise.all(said)).join(' ').trim();
}

/** The ground of the drawings and their ink: two themes may have the same ground. */
export const coloursOf = async (session: Session): Promise<string> =>
  (await picture(session, 'surfaced-side')).evaluate(element => {
    const style = element.ownerDocument.defaultView?.getComputedStyle(element);
    return `${style?.backgroundColor} ${style?.fill}`;
  });

export async function chooseTheme({ page, patience }: Session, label: string): Promise<void> {
  const input = page.locator('.quick-input-widget:not(.hidden) input[placeholder*="Theme"]');
  await until({
    what: 'the list of themes',
    act: async () => {
      await page.keyboard.press('Control+k');
      await page.keyboard.press('Control+t');
    },
    seen: () => input.isVisible(),
    patience,
  });
  await input.fill(label);
  await page.locator('.quick-input-list .monaco-list-row.focused', { hasText: label }).waitFor({ timeout: patience });
  await page.keyboard.press('Enter');
}

/** Until the sheet is drawn whole. */
export async function atRest(session: Session): Promise<void> {
  await until({
    what: 'the whole sheet',
    seen: async () => (await (await sheetPage(session))?.locator('[aria-busy="true"]').count()) === 0,
    patience: session.patience,
  });
}

/** The middle of a part on the window, once the sheet is drawn whole and stays so. */
export async function middleOf(session: Session, part: Locator): Promise<Point> {
  const body = part.locator('.body').first();
  let middle: Point | null = null;
  await until({
    what: 'a part at rest',
    seen: async () => {
      const sheet = await sheetPage(session);
      if ((await sheet?.locator('[aria-busy="true"]').count()) !== 0) return false;
      await body.evaluate(element => element.scrollIntoView({ block: 'center' })).catch(() => null);
      const box = await body.boundingBox().catch(() => null);
      const last = middle;
      middle = box && { x: box.x + box.width / 2, y: box.y + box.height / 2 };
      return middle !== null && last?.x === middle.x && last.y === middle.y;
    },
    patience: session.patience,
  });
  return middle!;
}

export async function pixelsPerUnit(drawn: Locator): Promise<number> {
  const [, , width] = (await drawn.getAttribute('viewBox'))!.split(' ').map(Number);
  return (await drawn.boundingBox())!.width / width!;
}

/** Where an entry of the payload is: its line from 0, and its path. */
export function entryIn(text: string, name: string): { readonly line: number; readonly path: Path } {
  const lines = text.split('\n');
  const payload = lines.findIndex(line => line.startsWith('payload:'));
  const entries = lines.flatMap((line, i) => (i > payload && /^ {2}- name: /.test(line) ? [i] : []));
  const index = entries.findIndex(i => lines[i]!.includes(name));
  return { line: entries[index]!, path: ['payload', index] };
}

/** The text once a deed on the sheet has changed it; saved for this. */
export async function changedText(session: Session): Promise<string> {
  const { page, file, patience } = session;
  await until({
    what: 'the text changed',
    seen: async () => (await page.locator('.tab.dirty').count()) > 0,
    patience,
  });
  await focusText(session);
  await save(page, patience);
  return await textOf(file);
}

export async function undoOnce(session: Session, text: string): Promise<void> {
  const { page, file, patience } = session;
  await focusText(session);
  await page.keyboard.press('Control+z');
  await until({ what: 'the text undone', seen: () => isChanged(page), patience });
  await save(page, patience);
  expect(await textOf(file)).toBe(text);
}

export async function focusText({ page, patience }: Session): Promise<void> {
  await until({
    what: 'the text in front',
    act: () => page.locator('.tab', { hasText: sampleName }).click(),
    seen: async () => (await page.locator('.tab.active.selected', { hasText: sampleName }).count()) > 0,
    patience,
  });
}

/** Until the editor's words over the text, which it asks for when it finds the time, tell the draft that the sheet tells. */
export const wordsAgree = (session: Session): Promise<void> =>
  until({
    what: 'the same trim over the text',
    seen: async () => {
      const [, trim] = /submerged trim, ([\d.]+° bow \w+)/.exec(await words(session)) ?? [];
      const over = (await session.page.locator('.codelens-decoration').allInnerTexts()).join();
      return trim !== undefined && over.replaceAll('\u00a0', ' ').includes(trim);
    },
    patience: session.patience,
  });
