/** The trim sheet beside the text: a hand on the picture changes the text, and the text the picture. */
import { readFileSync } from 'node:fs';
import type { Frame, Locator } from 'playwright-core';
import { expect } from 'vitest';
import { type Session, sampleName } from './session.ts';
import { step } from './step.ts';
import { goTo, isChanged, openInExplorer, runCommand, save, statusText, until } from './workbench.ts';

type Path = readonly (string | number)[];
type Point = { readonly x: number; readonly y: number };

export async function openTheSheet(session: Session): Promise<void> {
  const { page, patience, shoot } = session;
  await step('the boat file opens', () => openInExplorer(page, sampleName, patience));
  await step('a button over the text opens the sheet beside it', async () => {
    await until({
      what: 'the panel of the sheet',
      act: () => page.locator('.editor-actions [aria-label^="Open trim sheet"]').first().click(),
      seen: async () => (await sheetPage(session)) !== null,
      patience,
      again: patience / 2,
    });
    expect(await (await picture(session, 'surfaced-side')).getAttribute('aria-label')).toMatch(/surfaced/i);
    await shoot('opened');
  });
}

export async function typeAndSee(session: Session): Promise<void> {
  const { page, file, patience, shoot } = session;
  const battery = entryIn(readFileSync(file, 'utf8'), 'battery');
  await step('what the cursor is in is lit in the picture, in words too', async () => {
    const part = partIn(await picture(session, 'surfaced-side'), battery.path);
    expect(await part.getAttribute('aria-current')).toBeNull();
    await goTo(page, battery.line + 2, 13, patience);
    await until({
      what: 'the battery lit',
      seen: async () => (await part.getAttribute('aria-current')) === 'true',
      patience,
    });
    expect(await part.getAttribute('class')).toContain('lit');
  });
  await step('the picture changes as one types, and back', async () => {
    const before = await words(session);
    const drawn = await drawing(session, 'submerged-side');
    await page.keyboard.type('9');
    await until({ what: 'other figures', seen: async () => (await words(session)) !== before, patience });
    await until({
      what: 'another picture',
      seen: async () => (await drawing(session, 'submerged-side')) !== drawn,
      patience,
    });
    await shoot('typed');
    await page.keyboard.press('Backspace');
    await until({ what: 'the figures as before', seen: async () => (await words(session)) === before, patience });
    await save(page, patience);
  });
}

export async function clickAPart(session: Session): Promise<void> {
  const { page, file, patience } = session;
  await step('a click on a part goes to its line', async () => {
    const shaft = entryIn(readFileSync(file, 'utf8'), 'shaft and propeller');
    const { x, y } = await middleOf(session, partIn(await picture(session, 'surfaced-side'), shaft.path));
    await page.mouse.click(x, y);
    await until({
      what: 'the cursor on the line of the shaft',
      seen: async () => (await statusText(page, 'status.editor.selection')).startsWith(`Ln ${shaft.line + 1}, `),
      patience,
    });
  });
  await step('Enter on a part with the keyboard’s focus does the same', async () => {
    const battery = entryIn(readFileSync(file, 'utf8'), 'battery');
    await partIn(await picture(session, 'surfaced-side'), battery.path).focus();
    await page.keyboard.press('Enter');
    await until({
      what: 'the cursor on the line of the battery',
      seen: async () => (await statusText(page, 'status.editor.selection')).startsWith(`Ln ${battery.line + 1}, `),
      patience,
    });
  });
}

export async function dragAPart(session: Session): Promise<void> {
  const { page, file, patience, shoot } = session;
  const text = readFileSync(file, 'utf8');
  const battery = entryIn(text, 'battery');
  const [, from, to] = /station: (\d+) to (\d+) mm/.exec(text.split('\n').slice(battery.line).join('\n'))!;
  await step('figures are shown while a part is dragged, and the text changes when it is dropped', async () => {
    const part = partIn(await picture(session, 'surfaced-side'), battery.path);
    const scale = Number(await (await picture(session, 'surfaced-side')).getAttribute('data-scale'));
    const start = await middleOf(session, part);
    const perUnit = await pixelsPerUnit(await picture(session, 'surfaced-side'));
    // 40 mm aft, as far as pixels go.
    const way = 0.04 * scale * perUnit;
    await page.mouse.move(start.x, start.y);
    await page.mouse.down();
    await page.mouse.move(start.x + way / 2, start.y, { steps: 5 });
    await page.mouse.move(start.x + way, start.y, { steps: 5 });
    await until({
      what: 'where the battery is being moved to',
      seen: async () => /“battery”: 3\d\d mm aft/.test(await words(session)),
      patience,
    });
    expect(readFileSync(file, 'utf8')).toBe(text);
    expect(await isChanged(page)).toBe(false);
    await shoot('dragged');
    await page.mouse.up();
    const moved = await changedText(session);
    const [, newFrom, newTo] = /station: (\d+) to (\d+) mm/.exec(moved.split('\n').slice(battery.line).join('\n'))!;
    expect(moved).toBe(text.replace(`station: ${from} to ${to} mm`, `station: ${newFrom} to ${newTo} mm`));
    expect(Number(newFrom) - Number(from)).toBeGreaterThan(34);
    expect(Number(newFrom) - Number(from)).toBeLessThan(46);
    expect(Number(newTo) - Number(newFrom)).toBe(Number(to) - Number(from));
  });
  await step('one undo brings it back', () => undoOnce(session, text));
  await step('an arrow key moves it by a millimetre, and the focus stays on it', async () => {
    const part = partIn(await picture(session, 'surfaced-side'), battery.path);
    await part.focus();
    await page.keyboard.press('Shift+ArrowRight');
    await until({
      what: 'ten millimetres',
      seen: async () =>
        (await part.locator('title').textContent())?.includes(`station ${Number(from) + 10} mm to`) ?? false,
      patience,
    });
    await page.keyboard.press('ArrowLeft');
    await until({
      what: 'one back',
      seen: async () =>
        (await part.locator('title').textContent())?.includes(`station ${Number(from) + 9} mm to`) ?? false,
      patience,
    });
    const focused = () => part.evaluate(element => element.ownerDocument.activeElement?.getAttribute('data-path'));
    expect(await focused()).toBe(JSON.stringify(battery.path));
    const moved = await changedText(session);
    expect(moved).toBe(
      text.replace(`station: ${from} to ${to} mm`, `station: ${Number(from) + 9} to ${Number(to) + 9} mm`),
    );
    await undoOnce(
      session,
      text.replace(`station: ${from} to ${to} mm`, `station: ${Number(from) + 10} to ${Number(to) + 10} mm`),
    );
    await undoOnce(session, text);
  });
}

export async function takeAGhost(session: Session): Promise<void> {
  const { page, file, patience, shoot } = session;
  const text = readFileSync(file, 'utf8');
  await step('a click on what is proposed takes it into the text', async () => {
    const ghost = (await picture(session, 'surfaced-side')).locator('[data-correction="0"]').first();
    await until({ what: 'something proposed', seen: async () => (await ghost.count()) > 0, patience });
    await shoot('proposed');
    await ghost.focus();
    const { x, y } = await middleOf(session, ghost);
    await page.mouse.click(x, y);
    const taken = await changedText(session);
    expect(taken).toMatch(/fixed: false/);
    await until({
      what: 'a boat within its limits',
      seen: async () => (await statusText(page, 'status.problems')).startsWith('0'),
      patience,
    });
    await shoot('taken');
  });
  await step('one undo takes it out again', () => undoOnce(session, text));
}

/** The sheet beside the text, in both themes. */
export async function lookInBothThemes(session: Session): Promise<void> {
  const { page, patience, shoot } = session;
  await step('the sheet is in the editor’s colours', async () => {
    await page.keyboard.press('Control+b');
    await shoot('light');
    const light = await groundOf(session);
    await runCommand(page, 'Preferences: Toggle between Light/Dark Themes', patience);
    await until({ what: 'another ground', seen: async () => (await groundOf(session)) !== light, patience });
    await shoot('dark');
  });
}

/** The page in the panel; null until it is there. */
async function sheetPage({ page }: Session): Promise<Frame | null> {
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
async function picture(session: Session, id: string): Promise<Locator> {
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

const partIn = (drawn: Locator, path: Path): Locator => drawn.locator(`[data-path='${JSON.stringify(path)}']`);

const drawing = async (session: Session, id: string): Promise<string> =>
  (await picture(session, id)).evaluate(element => element.innerHTML);

const words = async (session: Session): Promise<string> =>
  (await (await sheetPage(session))?.locator('#words').textContent()) ?? '';

const groundOf = async (session: Session): Promise<string> =>
  (await picture(session, 'surfaced-side')).evaluate(
    element => element.ownerDocument.defaultView?.getComputedStyle(element).backgroundColor ?? '',
  );

/** The middle of a part on the window, once the sheet is drawn whole and stays so. */
async function middleOf(session: Session, part: Locator): Promise<Point> {
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

async function pixelsPerUnit(drawn: Locator): Promise<number> {
  const [, , width] = (await drawn.getAttribute('viewBox'))!.split(' ').map(Number);
  return (await drawn.boundingBox())!.width / width!;
}

/** Where an entry of the payload is: its line from 0, and its path. */
function entryIn(text: string, name: string): { readonly line: number; readonly path: Path } {
  const lines = text.split('\n');
  const payload = lines.findIndex(line => line.startsWith('payload:'));
  const entries = lines.flatMap((line, i) => (i > payload && /^ {2}- name: /.test(line) ? [i] : []));
  const index = entries.findIndex(i => lines[i]!.includes(name));
  return { line: entries[index]!, path: ['payload', index] };
}

/** The text once a deed on the sheet has changed it; saved for this. */
async function changedText(session: Session): Promise<string> {
  const { page, file, patience } = session;
  await until({
    what: 'the text changed',
    seen: async () => (await page.locator('.tab.dirty').count()) > 0,
    patience,
  });
  await focusText(session);
  await save(page, patience);
  return readFileSync(file, 'utf8');
}

async function undoOnce(session: Session, text: string): Promise<void> {
  const { page, file, patience } = session;
  await focusText(session);
  await page.keyboard.press('Control+z');
  await until({ what: 'the text undone', seen: () => isChanged(page), patience });
  await save(page, patience);
  expect(readFileSync(file, 'utf8')).toBe(text);
}

async function focusText({ page, patience }: Session): Promise<void> {
  await until({
    what: 'the text in front',
    act: () => page.locator('.tab', { hasText: sampleName }).click(),
    seen: async () => (await page.locator('.tab.active.selected', { hasText: sampleName }).count()) > 0,
    patience,
  });
}
