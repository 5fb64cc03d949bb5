/** What is done in the text itself: names that hold together, and a trial to fill in. */
import { expect } from 'vitest';
import type { Session } from './session.ts';
import { step } from './step.ts';
import { goTo, isChanged, runCommand, save, textOf, until, visibleLines } from './workbench.ts';

export async function renameTheCompartment({ page, file, patience, shoot }: Session): Promise<void> {
  await step('a compartment is renamed from one of its uses, everywhere, and one undo brings it back', async () => {
    const text = await textOf(file);
    const line = text.split('\n').findIndex(each => each.includes('in: dry cylinder'));
    await goTo(page, line + 1, text.split('\n')[line]!.indexOf('dry') + 2, patience);
    const box = page.locator('.rename-box input.rename-input, .rename-box input').first();
    await until({
      what: 'the box for the new name',
      act: () => page.keyboard.press('F2'),
      seen: () => box.isVisible(),
      patience,
    });
    await box.fill('tube');
    await shoot('rename');
    await page.keyboard.press('Enter');
    await until({ what: 'the text renamed', seen: () => isChanged(page), patience });
    await save(page, patience);
    expect(await textOf(file)).toBe(text.replaceAll('dry cylinder', 'tube'));
    await page.keyboard.press('Control+z');
    await until({ what: 'the text undone', seen: () => isChanged(page), patience });
    await save(page, patience);
    expect(await textOf(file)).toBe(text);
  });
}

export async function beginATrial({ page, file, patience, shoot }: Session): Promise<void> {
  await step('a pool trial to fill in stands at the end of the file, of today', async () => {
    const text = await textOf(file);
    await runCommand(page, 'Trimwright: New pool trial', patience);
    await until({
      what: 'the trial in the text',
      seen: async () => (await visibleLines(page)).some(line => line.startsWith('trials:')),
      patience,
    });
    await shoot('trial');
    const lines = await visibleLines(page);
    expect(lines.some(line => /^ {2}- date: 20\d\d-\d\d-\d\d$/.test(line))).toBe(true);
    await page.keyboard.press('Escape');
    await until({
      what: 'the text without the trial',
      act: () => page.keyboard.press('Control+z'),
      seen: async () => !(await visibleLines(page)).some(line => line.startsWith('trials:')),
      patience,
    });
    await save(page, patience);
    expect(await textOf(file)).toBe(text);
  });
}
