/** Hands and eyes on the editor's window: what a user would do with the keyboard, and read on the screen. */
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';

/** How long one press of a key is given before it is taken for lost, in milliseconds. */
export const pressLasts = 3_000;

/**
 * Does `act` until `seen` holds. A chord can get lost while the focus moves, so it is pressed again until its effect
 * is there; never a fixed wait.
 */
export async function until(options: {
  readonly what: string;
  readonly act?: () => Promise<unknown>;
  readonly seen: () => Promise<boolean>;
  readonly patience: number;
  readonly again?: number;
}): Promise<void> {
  const { what, act, seen, patience, again = pressLasts } = options;
  const end = Date.now() + patience;
  while (Date.now() < end) {
    await act?.();
    for (const next = Math.min(end, Date.now() + again); Date.now() < next; ) {
      if (await seen()) {
        return;
      }
      await new Promise(resolve => setTimeout(resolve, 150));
    }
  }
  throw new Error(`not seen: ${what}`);
}

export async function openInExplorer(page: Page, name: string, patience: number): Promise<void> {
  const entry = page.locator(`.explorer-folders-view [aria-label^="${name}"]`).first();
  await entry.waitFor({ timeout: patience });
  await until({
    what: `the text of ${name}`,
    act: () => entry.dblclick(),
    seen: async () => (await page.locator('.editor-instance .view-line').count()) > 3,
    patience,
  });
}

/** Puts the cursor on `line` and `column` (both from 1), by keyboard. */
export async function goTo(page: Page, line: number, column: number, patience: number): Promise<void> {
  const input = page.locator('.quick-input-widget:not(.hidden) input');
  await until({
    what: 'the box for a line number',
    act: () => page.keyboard.press('Control+g'),
    seen: () => input.isVisible(),
    patience,
  });
  await input.fill(`:${line}:${column}`);
  await page.keyboard.press('Enter');
  await until({
    what: `the cursor at ${line}:${column}`,
    seen: async () => (await statusText(page, 'status.editor.selection')) === `Ln ${line}, Col ${column}`,
    patience,
  });
}

/** Runs a command by its name in the command palette, which is opened again where the focus moved away and closed it. */
export async function runCommand(page: Page, name: string, patience: number): Promise<void> {
  const input = page.locator('.quick-input-widget:not(.hidden) input');
  const row = page.locator('.quick-input-list .monaco-list-row.focused', { hasText: name });
  await until({
    what: `“${name}” in the command palette`,
    act: async () => {
      if (!(await input.isVisible())) await page.keyboard.press('F1');
      await input.fill(`>${name}`, { timeout: pressLasts }).catch(() => {});
    },
    seen: () => row.isVisible(),
    patience,
  });
  await page.keyboard.press('Enter');
}

/** The text of the lines on the screen, top to bottom, as typed. */
export async function visibleLines(page: Page): Promise<readonly string[]> {
  const lines = await page.locator('.editor-instance .view-line').evaluateAll(elements =>
    elements
      .map(element => ({
        top: Number.parseFloat((element as unknown as { style: { top: string } }).style.top),
        text: element.textContent ?? '',
      }))
      .sort((a, b) => a.top - b.top)
      .map(line => line.text),
  );
  return lines.map(plainSpaces);
}

/** The classes that colour the words of the visible line that begins with `start`. */
export async function colours(page: Page, start: string): Promise<ReadonlySet<string>> {
  const line = page.locator('.editor-instance .view-line', { hasText: start }).first();
  const classes = await line.locator('span > span').evaluateAll(spans => spans.map(span => span.className));
  return new Set(classes.flatMap(names => names.split(' ')).filter(name => /^mtk\d/.test(name)));
}

/** Opens the hover at the cursor and reads it. */
export async function readHover(page: Page, patience: number): Promise<string> {
  const hover = page.locator('.monaco-hover:not(.hidden) .hover-contents');
  await until({
    what: 'a hover',
    act: async () => {
      await page.keyboard.press('Control+k');
      await page.keyboard.press('Control+i');
    },
    seen: async () => /^(?!.*Loading).*\S/s.test((await hover.allInnerTexts()).join()),
    patience,
  });
  return plainSpaces((await hover.allInnerTexts()).join('\n'));
}

/** Opens the menu of fixes at the cursor and reads it; its first entry has the focus. Some take a while to be worked out. */
export async function openFixes(page: Page, patience: number): Promise<string> {
  const menu = page.locator('.action-widget');
  const words = async () => plainSpaces((await menu.allInnerTexts()).join());
  await until({
    what: 'the menu of fixes',
    act: () => page.keyboard.press('Control+Period'),
    seen: async () => (await words()) !== '',
    patience,
    again: patience / 4,
  });
  return words();
}

/** The text of one item of the status bar; empty while it is not shown. */
export async function statusText(page: Page, id: string): Promise<string> {
  const item = page.locator(`.statusbar-item[id="${id}"]`);
  return plainSpaces((await item.allInnerTexts()).join()).trim();
}

/** Our line in the status bar has the mark of a boat that is out of no limit, be it surely or as far as can be told. */
export async function isInTrim(page: Page): Promise<boolean> {
  const line = page.locator('.statusbar-item[id="trimwright.trimwright.trimwright.summary"]');
  return (await line.locator('.codicon-check, .codicon-question').count()) > 0;
}

export type Problem = { readonly message: string; readonly line: number; readonly column: number };

/** What the Problems view lists; it is opened for this and closed again. */
export async function readProblems(page: Page, patience: number): Promise<readonly Problem[]> {
  const panel = page.locator('.markers-panel-container');
  await until({
    what: 'the Problems view',
    act: () => page.keyboard.press('Control+Shift+m'),
    seen: () => panel.isVisible(),
    patience,
  });
  const rows = await panel.locator('.marker-message-details-container').allInnerTexts();
  await until({
    what: 'the Problems view closed',
    act: () => page.keyboard.press('Control+Shift+m'),
    seen: async () => !(await panel.isVisible()),
    patience,
  });
  return rows.map(row => {
    const [, line, column] = /\[Ln (\d+), Col (\d+)\]/.exec(plainSpaces(row)) ?? [];
    return { message: plainSpaces(row), line: Number(line), column: Number(column) };
  });
}

/** Saves the file and waits until the editor holds nothing that is not on the disk. */
export async function save(page: Page, patience: number): Promise<void> {
  await until({
    what: 'the file saved',
    act: () => page.keyboard.press('Control+s'),
    seen: async () => !(await isChanged(page)),
    patience,
  });
}

/** What a file says. While the editor writes it, it is empty for a moment. */
export async function textOf(file: string): Promise<string> {
  for (let look = 0; look < 40; look += 1) {
    const text = readFileSync(file, 'utf8');
    if (text !== '') return text;
    await new Promise(resolve => setTimeout(resolve, 50));
  }
  return '';
}

/** In the box that asks where a file shall lie, takes the place that is proposed, until the file is there. */
export async function saveAsProposed(
  page: Page,
  ending: string,
  { until: isThere, patience }: { readonly until: () => Promise<boolean>; readonly patience: number },
): Promise<void> {
  const input = page.locator('.quick-input-widget:not(.hidden) input[type="text"]').first();
  await until({
    what: `${ending} proposed`,
    seen: async () => (await input.isVisible()) && (await input.inputValue()).endsWith(ending),
    patience,
  });
  await until({
    what: `${ending} on the disk`,
    // Pressed too late, it would go into the text.
    act: async () => {
      if (await input.isVisible()) await page.keyboard.press('Enter');
    },
    seen: isThere,
    patience,
  });
}

/** Takes the best fix at the cursor by its key. */
export const takeBestFix = (page: Page, patience: number): Promise<void> =>
  until({
    what: 'the text changed by the fix',
    act: () => page.keyboard.press('Shift+Alt+Period'),
    seen: () => isChanged(page),
    patience,
    // Not sooner: two presses that both arrive would be two fixes.
    again: patience / 2,
  });

export async function isChanged(page: Page): Promise<boolean> {
  return (await page.locator('.tab.active.dirty').count()) > 0;
}

/** The editor draws spaces as no-break ones. */
function plainSpaces(text: string): string {
  return text.replaceAll('\u00a0', ' ');
}
