/** Pages that leave the editor: the sheet for the printer and the page for the poolside, and what comes back from there. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import type { Download } from 'playwright-core';
import { expect } from 'vitest';
import type { Session } from './session.ts';
import { focusText } from './sheetHands.ts';
import { step } from './step.ts';
import { isChanged, pressLasts, runCommand, save, saveAsProposed, textOf, until } from './workbench.ts';

export async function printTheSheet(session: Session): Promise<void> {
  const { page, file, patience, shoot } = session;
  const printed = file.replace('.boat.yaml', '.sheet.html');
  await step('the sheet is written beside the boat file as one page for the printer', async () => {
    await focusText(session);
    await runCommand(page, 'Trimwright: Print trim sheet', patience);
    const box = page.locator('.quick-input-widget:not(.hidden)');
    await box.locator('.monaco-list-row', { hasText: 'A4' }).first().click();
    await saveAsProposed(page, '.sheet.html', { until: async () => existsSync(printed), patience });
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
  await step('and handed over to the browser that the editor runs in', () =>
    takeTheDownload(session, printed, 'Open to print'),
  );
}

/** What was saved is handed over to the browser as it is; the panel that does it is closed again. */
async function takeTheDownload({ page, patience }: Session, saved: string, open: string): Promise<void> {
  await page.locator('.notifications-toasts .monaco-button', { hasText: open }).click();
  const coming = page.waitForEvent('download');
  let handed: Download | null = null;
  void coming.then(download => {
    handed = download;
  });
  await until({
    what: 'the page handed over',
    act: async () => {
      for (const frame of page.frames()) {
        const button = frame.locator('#download');
        if ((await button.count().catch(() => 0)) > 0) await button.click();
      }
    },
    seen: async () => handed !== null,
    patience,
    again: patience / 3,
  });
  const download = await coming;
  expect(download.suggestedFilename()).toBe(basename(saved));
  expect(readFileSync(await download.path(), 'utf8')).toBe(readFileSync(saved, 'utf8'));
  await until({
    what: 'the panel gone',
    act: () => page.keyboard.press('Control+w'),
    seen: async () => (await page.locator('.tab', { hasText: open }).count()) === 0,
    patience,
    again: patience / 3,
  });
}

/** Writes the page for the poolside, reads the boat on it as on a phone, and gives the day's trials as it saves them. */
export async function dayAtThePool(session: Session): Promise<string> {
  const { page, file, patience } = session;
  const written = file.replace('.boat.yaml', '.poolside.html');
  await step('the page for the poolside is written beside the boat file, and handed over to the browser', async () => {
    await runCommand(page, 'Trimwright: Poolside page', patience);
    await saveAsProposed(page, '.poolside.html', { until: async () => existsSync(written), patience });
    await takeTheDownload(session, written, 'Look at it');
  });
  let trials = '';
  await step('a day at the pool is saved as a file', async () => {
    const browser = page.context().browser()!;
    const phone = await browser.newPage({ viewport: { width: 360, height: 740 }, hasTouch: true, offline: true });
    await phone.goto(`file://${written}`);
    await phone.getByRole('button', { name: 'Water near the bow: more' }).tap();
    const [download] = await Promise.all([
      phone.waitForEvent('download'),
      phone.getByRole('button', { name: 'Save as a file' }).tap(),
    ]);
    trials = readFileSync(await download.path(), 'utf8');
    await phone.close();
  });
  return trials;
}

export async function takeTheDay(session: Session, trials: string): Promise<void> {
  const { page, file, patience, shoot } = session;
  const text = await textOf(file);
  const from = join(dirname(file), 'day.trials.yaml');
  const box = page.locator('.quick-input-widget:not(.hidden)');
  const takeBy = async (way: string): Promise<void> => {
    await runCommand(page, 'Trimwright: Take trials from the poolside page', patience);
    await box.locator('.monaco-list-row', { hasText: way }).click();
  };
  const told = (words: string): Promise<void> =>
    page.locator('.notifications-toasts', { hasText: words }).waitFor({ timeout: patience });
  await step('the trials of the day are taken from their file, and nothing else in the boat file changes', async () => {
    writeFileSync(from, trials);
    await takeBy('Choose a file');
    const input = box.locator('input[type="text"]').first();
    await until({
      what: 'the text changed',
      // Written anew before each press: the box puts its own folder in where it is slow to open. And only while it is
      // open: pressed too late, the key would go into the text.
      act: async () => {
        if (!(await input.isVisible())) return;
        await input.fill(from, { timeout: pressLasts }).catch(() => {});
        await input.press('Enter', { timeout: pressLasts }).catch(() => {});
      },
      seen: () => isChanged(page),
      patience,
    });
    await told('One trial to take');
    await shoot('taken');
    await save(page, patience);
    expect((await textOf(file)).startsWith(text.trimEnd())).toBe(true);
    expect(await textOf(file)).toContain('condition: surfaced');
  });
  await step('the same day pasted counts once', async () => {
    const taken = await textOf(file);
    await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
    await page.evaluate(`navigator.clipboard.writeText(${JSON.stringify(trials)})`);
    await takeBy('Paste');
    await told('Nothing new: the trial stands in the file already.');
    expect(await isChanged(page)).toBe(false);
    expect(await textOf(file)).toBe(taken);
  });
}
