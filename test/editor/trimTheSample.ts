/** The way of a boat out of trim through the editor: see it, read about it, mend it by keyboard, read it back. */
import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { expect } from 'vitest';
import { type Session, sampleName } from './session.ts';
import { step } from './step.ts';
import {
  colours,
  goTo,
  isInTrim,
  openFixes,
  openInExplorer,
  type Problem,
  readHover,
  readProblems,
  runCommand,
  save,
  saveAsProposed,
  statusText,
  takeBestFix,
  textOf,
  until,
  visibleLines,
} from './workbench.ts';

/** What the surfaced boat does outside its limits; what cannot be told for the uncertainties is left after every correction. */
const isSurfaced = ({ message }: Problem): boolean =>
  message.includes('Surfaced,') && !message.includes('the file knows');

export async function seeTheSquiggle(session: Session): Promise<void> {
  const { page, patience, shoot } = session;
  await step('the boat file opens', () => openInExplorer(page, sampleName, patience));
  await step('its YAML is coloured', () =>
    until({
      what: 'a key and a value in different colours',
      seen: async () => (await colours(page, 'boat: ')).size >= 2,
      patience,
    }),
  );
  await step('a squiggle is seen', () =>
    until({
      what: 'a warning squiggle',
      seen: async () => (await page.locator('.squiggly-warning').count()) > 0,
      patience,
    }),
  );
  await shoot('squiggle');
}

export async function readTheHover({ page, file, patience, shoot }: Session): Promise<void> {
  await step('a payload entry has a hover', async () => {
    const lines = (await textOf(file)).split('\n');
    const line = lineInPayload(lines, /- name:/);
    await goTo(page, line + 1, (lines[line] ?? '').indexOf('name') + 1, patience);
    const hover = await readHover(page, patience);
    expect(hover).toMatch(/\d g\b/);
    expect(hover).toMatch(/moment/i);
    await shoot('hover');
    await page.keyboard.press('Escape');
  });
}

export async function readTheStatusBar({ page, patience }: Session): Promise<void> {
  await step('the status bar tells both conditions, down by the bow and to port', async () => {
    // The editor puts the extension's id before the id that we gave.
    const text = () => statusText(page, 'trimwright.trimwright.trimwright.summary');
    await until({ what: 'our line in the status bar', seen: async () => (await text()) !== '', patience });
    expect(await text()).toMatch(/surfaced: .*bow down.*to port.*submerged.*bow down/i);
  });
}

export async function applyTheFix({ page, file, patience, shoot }: Session): Promise<void> {
  await step('the auto-fix key puts the boat in trim', async () => {
    const before = await textOf(file);
    const problem = (await readProblems(page, patience)).find(
      found => isSurfaced(found) && found.message.includes('bow down'),
    );
    expect(problem, 'a problem with the surfaced trim').toBeDefined();
    await goTo(page, problem?.line ?? 0, problem?.column ?? 0, patience);
    expect(await openFixes(page, patience)).toMatch(/lead|foam/);
    await shoot('offers');
    await page.keyboard.press('Escape');
    await takeBestFix(page, patience);
    await until({
      what: 'a boat within its limits',
      seen: () => isInTrim(page),
      patience,
    });
    await save(page, patience);
    const added = linesAdded(before, await textOf(file));
    expect(added.lines.join('\n')).toMatch(/lead|foam/);
    await goTo(page, added.at + 1, 1, patience);
    await shoot('fixed');
    // Between an entry's name and its comment the editor shows what it weighs in the water.
    const seen = await visibleLines(page);
    const unseen = added.lines.filter(line => !seen.some(each => each.startsWith(line.replace(/\s+#.*$/, ''))));
    expect(unseen).toEqual([]);
  });
}

export async function mendABrokenKey({ page, file, patience, shoot }: Session): Promise<void> {
  await step('a misspelt key is an error, and a quick fix restores it', async () => {
    const text = await textOf(file);
    const lines = text.split('\n');
    const line = lineInPayload(lines, /^\s+mass:/);
    const column = (lines[line] ?? '').indexOf('mass') + 4;
    const errors = page.locator('.squiggly-error');
    await goTo(page, line + 1, column, patience);
    await page.keyboard.type('s');
    await page.keyboard.press('Escape');
    await until({ what: 'an error squiggle', seen: async () => (await errors.count()) > 0, patience });
    expect(await visibleLines(page)).toContain((lines[line] ?? '').replace('mass:', 'masss:'));
    await shoot('error');
    await openFixes(page, patience);
    await shoot('fixes');
    await page.keyboard.press('Enter');
    await until({ what: 'the error squiggle gone', seen: async () => (await errors.count()) === 0, patience });
    await save(page, patience);
    expect(await textOf(file)).toBe(text);
  });
}

export async function showTheReport({ page, patience, shoot }: Session): Promise<void> {
  await step('a click on the status bar shows the report beside the boat', async () => {
    await page.locator('.statusbar-item[id="trimwright.trimwright.trimwright.summary"] a').click();
    await page.locator('.tab', { hasText: 'Report of petrel' }).waitFor({ timeout: patience });
    await until({
      what: 'the text of the report',
      seen: async () => {
        const texts = page.frames().map(frame =>
          frame
            .locator('main')
            .textContent({ timeout: 500 })
            .catch(() => ''),
        );
        return (await Promise.all(texts)).some(text => /Draft.*Range of stability/s.test(text ?? ''));
      },
      patience,
    });
    await shoot('report');
    // A report taken for a boat file would be full of errors.
    expect(await statusText(page, 'status.problems')).toMatch(/^0\b/);
  });
}

export async function makeANewBoat({ page, file, patience, shoot }: Session): Promise<void> {
  await step('a new boat file of the given name and units lies in the folder and opens, without an error', async () => {
    await runCommand(page, 'Trimwright: New boat file', patience);
    const box = page.locator('.quick-input-widget:not(.hidden)');
    await box.locator('input[placeholder*="for example"]').fill('Grebe');
    await page.keyboard.press('Enter');
    await box.locator('.monaco-list-row', { hasText: 'Millimetres and grams' }).first().click();
    const made = join(dirname(file), 'grebe.boat.yaml');
    await saveAsProposed(page, 'grebe.boat.yaml', { until: async () => existsSync(made), patience });
    await page.locator('.tab.active', { hasText: 'grebe.boat.yaml' }).waitFor({ timeout: patience });
    await until({
      what: 'the new boat in the status bar',
      seen: async () => (await statusText(page, 'trimwright.trimwright.trimwright.summary')) !== '',
      patience,
    });
    await shoot('new');
    expect((await visibleLines(page)).join('\n')).toContain('boat: Grebe');
    expect(await page.locator('.squiggly-error').count()).toBe(0);
  });
}

export async function restartTheServer({ page, patience }: Session): Promise<void> {
  await step('the server is started anew', async () => {
    await runCommand(page, 'Trimwright: Restart the boat server', patience);
  });
}

/** Where in the payload the first line like `pattern` is, from 0. */
function lineInPayload(lines: readonly string[], pattern: RegExp): number {
  const payload = lines.findIndex(line => line.startsWith('payload:'));
  return lines.findIndex((line, index) => index > payload && pattern.test(line));
}

/** The lines that `after` has in one place more than `before`; everything else must be the same. */
function linesAdded(before: string, after: string): { readonly at: number; readonly lines: readonly string[] } {
  const old = before.split('\n');
  const now = after.split('\n');
  const at = now.findIndex((line, index) => line !== old[index]);
  const lines = now.slice(at, at + now.length - old.length);
  expect([...now.slice(0, at), ...now.slice(at + lines.length)]).toEqual(old);
  return { at, lines };
}
