/** What the pool showed goes into the file, and the file learns from it. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect } from 'vitest';
import { projectRoot } from '../../client/launch/install.mjs';
import type { Session } from './session.ts';
import { step } from './step.ts';
import { goTo, isChanged, openFixes, readHover, runCommand, save, textOf, until, visibleLines } from './workbench.ts';

/** The trials that the guide writes down, as they stand there. */
const trialsOfTheGuide = (): string =>
  readFileSync(join(projectRoot, 'samples', 'README.md'), 'utf8').match(/```yaml\n(trials:\n.*?)```/s)![1]!;

/** What a boat shows that has 150 g more in its cylinder, 520 mm aft of the bow tip, than the file: by the model itself. */
const HEAVIER = `trials:
  - date: 2026-05-02
    condition: surfaced
    marks: [{ station: 60 mm, height: 93.3 mm ± 0.5 mm }, { station: 840 mm, height: 96.7 mm ± 0.5 mm }]
    heel: -2° ± 0.5°
  - date: 2026-05-02
    condition: submerged
    fill: 36 % ± 2 %
    trim: 2.4° ± 0.5°
`;

export async function logTheTrials(session: Session): Promise<void> {
  await step('the trials of the guide stand in the file', () => write(session, trialsOfTheGuide(), '48 %'));
}

/** The trials in the place of those that are there; `words` are in the new ones alone. */
async function write({ page, file, patience }: Session, trials: string, words: string): Promise<void> {
  const [boat] = (await textOf(file)).split(/^trials:/m);
  writeFileSync(file, `${boat!.trimEnd()}\n\n${trials}`);
  await until({
    what: 'the trials in the text',
    act: async () => {
      await runCommand(page, 'File: Revert File', patience);
      // A cursor that is at the end already would leave the view where it is.
      await page.keyboard.press('Control+Home');
      await page.keyboard.press('Control+End');
    },
    seen: async () => (await visibleLines(page)).some(line => line.includes(words)),
    patience,
    again: patience / 4,
  });
}

export async function readTheTrial({ page, file, patience, shoot }: Session): Promise<void> {
  await step('the hover of a trial sets what was read beside what the file says', async () => {
    const line = lineOf(file, 'condition: submerged');
    await goTo(page, line + 1, 6, patience);
    const hover = await readHover(page, patience);
    expect(hover).toMatch(/the trim\s+3\.4° bow down\s+[\d.]+° bow (?:up|down)/);
    expect(hover).toMatch(/the fill of the tanks\s+48 %\s+\d+ %/);
    await shoot('trial');
    await page.keyboard.press('Escape');
  });
}

export async function takeWhatItTeaches(session: Session): Promise<void> {
  const { page, file, patience, shoot } = session;
  await step('trials of a heavier boat stand in the file', () => write(session, HEAVIER, '36 %'));
  const text = await textOf(file);
  await step('the light bulb enters the weight that nobody wrote down, and one undo takes it out', async () => {
    await goTo(page, lineOf(file, 'condition: submerged') + 1, 6, patience);
    expect(await openFixes(page, patience)).toContain('Insert “unlisted weight”');
    await shoot('lessons');
    await until({
      what: 'the unlisted weight in focus',
      act: () => page.keyboard.press('ArrowDown'),
      seen: async () =>
        (await page.locator('.action-widget .monaco-list-row.focused', { hasText: 'unlisted weight' }).count()) > 0,
      patience,
      again: 500,
    });
    await page.keyboard.press('Enter');
    await until({ what: 'the text changed', seen: () => isChanged(page), patience });
    await save(page, patience);
    const learned = await textOf(file);
    expect(learned).toMatch(/- name: unlisted weight.*\n\s+mass: \d+ g/);
    expect(learned.split('\n').filter(each => !text.includes(each)).length).toBeLessThan(12);
    await page.keyboard.press('Control+z');
    await until({ what: 'the text undone', seen: () => isChanged(page), patience });
    await save(page, patience);
    expect(await textOf(file)).toBe(text);
  });
}

const lineOf = (file: string, words: string): number =>
  readFileSync(file, 'utf8')
    .split('\n')
    .findIndex(line => line.includes(words));
