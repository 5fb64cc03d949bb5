/** The trim sheet beside the text: a hand on the picture changes the text, and the text the picture. */
import { expect } from 'vitest';
import { violationsIn } from './accessibility.ts';
import { type Session, sampleName } from './session.ts';
import {
  atRest,
  changedText,
  chooseTheme,
  coloursOf,
  drawing,
  entryIn,
  middleOf,
  partIn,
  picture,
  pixelsPerUnit,
  sheetPage,
  undoOnce,
  words,
  wordsAgree,
} from './sheetHands.ts';
import { step } from './step.ts';
import { goTo, isChanged, isInTrim, openInExplorer, save, statusText, textOf, until } from './workbench.ts';

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
  const battery = entryIn(await textOf(file), 'battery');
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
    // What is proposed comes into the words last.
    await atRest(session);
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
    const shaft = entryIn(await textOf(file), 'shaft and propeller');
    const { x, y } = await middleOf(session, partIn(await picture(session, 'surfaced-side'), shaft.path));
    await until({
      what: 'the cursor on the line of the shaft',
      act: () => page.mouse.click(x, y),
      again: patience / 3,
      seen: async () => (await statusText(page, 'status.editor.selection')).startsWith(`Ln ${shaft.line + 1}, `),
      patience,
    });
  });
  await step('and so does a click on its name', async () => {
    const pump = entryIn(await textOf(file), 'tank pump and valves');
    const name = (await picture(session, 'surfaced-side')).locator(`[data-of='${JSON.stringify(pump.path)}']`);
    await until({
      what: 'the cursor on the line of the pump',
      act: () => name.click(),
      again: patience / 3,
      seen: async () => (await statusText(page, 'status.editor.selection')).startsWith(`Ln ${pump.line + 1}, `),
      patience,
    });
  });
  await step('Enter on a part with the keyboard’s focus does the same', async () => {
    const battery = entryIn(await textOf(file), 'battery');
    await until({
      what: 'the cursor on the line of the battery',
      act: async () => {
        await partIn(await picture(session, 'surfaced-side'), battery.path).focus();
        await page.keyboard.press('Enter');
      },
      again: patience / 3,
      seen: async () => (await statusText(page, 'status.editor.selection')).startsWith(`Ln ${battery.line + 1}, `),
      patience,
    });
  });
}

export async function dragAPart(session: Session): Promise<void> {
  const { page, file, patience, shoot } = session;
  const text = await textOf(file);
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
    expect(await textOf(file)).toBe(text);
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
  const text = await textOf(file);
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
      seen: () => isInTrim(page),
      patience,
    });
    await shoot('taken');
  });
  await step('one undo takes it out again', () => undoOnce(session, text));
}

/** Every picture of the sheet, light and dark and at high contrast, and what an accessibility checker says of it. */
export async function lookInAllThemes(session: Session): Promise<void> {
  const { patience, shoot } = session;
  await step('the words over the text are those of the sheet', () => wordsAgree(session));
  // The boat on the surface and under water in one picture.
  await (await picture(session, 'submerged-side')).evaluate(element => element.scrollIntoView({ block: 'end' }));
  await step('the sheet is in the editor’s colours', async () => {
    const seen = new Set<string>();
    for (const [name, key] of [
      ['light', 'Light Modern'],
      ['contrast', 'Dark High Contrast'],
      ['contrastLight', 'Light High Contrast'],
      ['dark', 'Dark Modern'],
    ] as const) {
      await chooseTheme(session, key);
      await until({
        what: `colours of its own: ${name}`,
        seen: async () => !seen.has(await coloursOf(session)),
        patience,
      });
      seen.add(await coloursOf(session));
      await atRest(session);
      await shoot(name);
      expect(await violationsIn((await sheetPage(session))!)).toEqual([]);
    }
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
  const battery = entryIn(await textOf(file), 'battery');
  await step('the picture changes as one types', async () => {
    await goTo(page, battery.line + 2, 13, patience);
    await until({ what: 'the figures', seen: async () => /^Not yet: /.test(await words(session)), patience });
    await atRest(session);
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
