/** The trim sheet beside the text: a hand on the picture changes the text, and the text the picture. */
import { existsSync, readFileSync } from 'node:fs';
import type { Frame, Locator } from 'playwright-core';
import { expect } from 'vitest';
import { type Session, sampleName } from './session.ts';
import { step } from './step.ts';
import { goTo, isChanged, isInTrim, openInExplorer, runCommand, save, statusText, until } from './workbench.ts';

type Path = readonly (string | number)[];
type Point = { readonly x: number; readonly y: number };

export async function openTheSheet(session: Session): Promise<void> {
  await step('the boat file opens', () => openInExplorer(session.page, sampleName, session.patience));
  await showTheSheet(session);
  await step('the sheet has room', () =>
    until({
      what: 'no side bar',
      act: () => session.page.keyboard.press('Control+b'),
      seen: async () => !(await session.page.locator('.part.sidebar').isVisible()),
      patience: session.patience,
    }),
  );
}

/** With the boat file in front. */
export async function showTheSheet(session: Session): Promise<void> {
  const { page, patience, shoot } = session;
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
    await until({
      what: 'the cursor on the line of the shaft',
      act: () => page.mouse.click(x, y),
      again: patience / 3,
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
      what: 'a boat within her limits',
      seen: () => isInTrim(page),
      patience,
    });
    await shoot('taken');
  });
  await step('one undo takes it out again', () => undoOnce(session, text));
}

/** Every picture of the sheet, in both themes and at high contrast. */
export async function lookInAllThemes(session: Session): Promise<void> {
  const { patience, shoot } = session;
  await step('the sheet is in the editor’s colours', async () => {
    const grounds = new Set<string>();
    for (const [name, key] of [
      ['light', 'Light Modern'],
      ['contrast', 'Dark High Contrast'],
      ['dark', 'Dark Modern'],
    ] as const) {
      await chooseTheme(session, key);
      await until({
        what: `a ground of its own: ${name}`,
        seen: async () => !grounds.has(await groundOf(session)),
        patience,
      });
      grounds.add(await groundOf(session));
      await atRest(session);
      await shoot(name);
    }
  });
}

export async function printTheSheet(session: Session): Promise<void> {
  const { page, file, patience, shoot } = session;
  await step('the sheet is written beside the boat file as one page for the printer', async () => {
    const printed = file.replace('.boat.yaml', '.sheet.html');
    await focusText(session);
    await runCommand(page, 'Trimwright: Print trim sheet', patience);
    const box = page.locator('.quick-input-widget:not(.hidden)');
    await box.locator('.monaco-list-row', { hasText: 'A4' }).click();
    await box.locator('input[type="text"]').first().waitFor();
    await until({
      what: 'the file name proposed',
      seen: async () => (await box.locator('input[type="text"]').first().inputValue()).endsWith('.sheet.html'),
      patience,
    });
    await until({
      what: 'the page on the disk',
      act: () => page.keyboard.press('Enter'),
      seen: async () => existsSync(printed),
      patience,
    });
    const paper = await page.context().browser()!.newPage();
    const fetched: string[] = [];
    paper.on('request', request => fetched.push(request.url()));
    await paper.goto(`file://${printed}`);
    expect(await paper.locator('svg').count()).toBeGreaterThan(5);
    // The page itself and nothing else.
    expect(fetched).toEqual([`file://${printed}`]);
    await paper.setViewportSize({ width: 900, height: 1270 });
    await shoot('printed', paper);
    await paper.close();
  });
}

export async function openTheWindowAgain(session: Session): Promise<void> {
  const { page, patience, shoot } = session;
  await step('the sheet comes back with the window', async () => {
    await page.reload();
    await until({ what: 'the sheet’s page', seen: async () => (await sheetPage(session)) !== null, patience });
    const drawn = await picture(session, 'surfaced-side');
    expect(await drawn.getAttribute('aria-label')).toMatch(/surfaced/i);
    await shoot('again');
  });
}

/** Types a figure and sees another picture, then takes it back. */
export async function seeTheSheetChange(session: Session): Promise<void> {
  const { page, file, patience } = session;
  const battery = entryIn(readFileSync(file, 'utf8'), 'battery');
  await step('the picture changes as one types', async () => {
    await goTo(page, battery.line + 2, 13, patience);
    await until({ what: 'the figures', seen: async () => /^Surfaced/.test(await words(session)), patience });
    const figures = await words(session);
    const drawn = await drawing(session, 'submerged-side');
    await page.keyboard.type('9');
    await until({
      what: 'another picture',
      seen: async () => (await drawing(session, 'submerged-side')) !== drawn,
      patience,
    });
    await page.keyboard.press('Backspace');
    await until({ what: 'the figures as before', seen: async () => (await words(session)) === figures, patience });
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

async function chooseTheme({ page, patience }: Session, label: string): Promise<void> {
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
async function atRest(session: Session): Promise<void> {
  await until({
    what: 'the whole sheet',
    seen: async () => (await (await sheetPage(session))?.locator('[aria-busy="true"]').count()) === 0,
    patience: session.patience,
  });
}

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
