/** The walkthrough from its first page to a trimmed boat: every button is pressed, and what the file asks for is typed. */
import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { Locator, Page } from 'playwright-core';
import { expect } from 'vitest';
import { projectRoot } from '../../client/launch/install.mjs';
import type { Session } from './session.ts';
import { picture } from './sheetHands.ts';
import { step } from './step.ts';
import {
  goTo,
  isInTrim,
  runCommand,
  save,
  saveAsProposed,
  takeBestFix,
  textOf,
  until,
  visibleLines,
} from './workbench.ts';

const TITLE = 'Trim your first boat';
const BOAT = 'grebe.boat.yaml';

/** What this builder weighed, and where it lies: for the lines of the planned file that ask for it. */
const WEIGHED: readonly (readonly [asks: string, typed: string])[] = [
  ['mass: 326 g # not weighed yet: a wall of 2 mm', 'mass: 310 g'],
  ['mass: 245 g # not weighed yet: an acrylic tube with a wall of 3 mm', 'mass: 250 g'],
];
const ABOARD: readonly (readonly [asks: string, typed: string])[] = [
  ['# battery', '- { name: battery, mass: 180 g, station: 160 to 230 mm, height: 24 mm, in: dry cylinder }'],
  [
    '# receiver, speed controllers and wiring',
    '- { name: electronics, mass: 150 g, station: 390 mm, height: 40 mm, in: dry cylinder }',
  ],
  [
    '# keel lead, when all else is aboard',
    '- { name: keel lead, material: lead, mass: 110 g, station: 200 to 340 mm, height: 2 to 7 mm }',
  ],
];
const ROOM = [
  'bays: [{ name: keel aft, takes: lead, station: 345 to 392 mm, offset: -12 to 12 mm, height: 2 to 7 mm }]',
  'stock: { lead: { strip: 12 x 5 mm } }',
];

export async function followTheWalkthrough(session: Session): Promise<void> {
  const { page, patience, shoot } = session;
  const file = join(dirname(session.file), BOAT);
  await step('its first page opens', async () => {
    await runCommand(page, 'Welcome: Open Walkthrough', patience);
    await page.locator('.quick-input-list .monaco-list-row', { hasText: TITLE }).first().click();
    await stepOf(page, '1. Make the boat file').waitFor({ timeout: patience });
    await shoot('walkthrough');
  });
  await step('1: a boat is planned from four figures', () => planTheBoat(session, file));
  await step('2: the picture lies beside it', async () => {
    await press(session, '2. Lay the picture beside it', 'Open trim sheet');
    await picture(session, 'surfaced-side');
  });
  await step('3: the masses of the hull are weighed', async () => {
    await press(session, '3. Write in your hull', 'Open trim sheet');
    await overwrite(session, file, WEIGHED);
  });
  await step('4: what goes aboard is weighed and measured', async () => {
    await press(session, '4. Weigh and measure what goes aboard', 'Show report');
    await page.locator('.tab', { hasText: 'Report of grebe' }).waitFor({ timeout: patience });
    await overwrite(session, file, ABOARD);
  });
  await step('5: the lead that is proposed puts it in trim', () => takeTheLead(session, file));
  await step('6 and 7: the pages for the bench and for the pool are written', () => takeThePages(session, file));
  await step('the check has no fault to find with it', async () => {
    const said = execFileSync(process.execPath, [join(projectRoot, 'dist', 'trimwright.cjs'), 'check', file], {
      encoding: 'utf8',
    });
    expect(said).not.toMatch(/: (warning|error): /);
    expect(said).toContain(BOAT);
  });
}

const stepOf = (page: Page, title: string): Locator => page.locator('.getting-started-step', { hasText: title });

/** Goes back to the walkthrough, opens one of its steps and presses a button there. */
async function press({ page, patience }: Session, title: string, button: string): Promise<void> {
  await page.locator('.tab', { hasText: 'Walkthrough: Trimwright' }).first().click();
  const one = stepOf(page, title);
  const pressed = one.locator('.monaco-button', { hasText: button });
  await until({
    what: `the button “${button}”`,
    act: () => one.locator('.step-title').click(),
    seen: () => pressed.isVisible(),
    patience,
  });
  await pressed.click();
}

async function planTheBoat(session: Session, file: string): Promise<void> {
  const { page, patience, shoot } = session;
  await press(session, '1. Make the boat file', 'New boat file');
  const box = page.locator('.quick-input-widget:not(.hidden)');
  await box.locator('input[placeholder*="Petrel"]').fill('Grebe');
  await page.keyboard.press('Enter');
  await box.locator('.monaco-list-row', { hasText: 'Millimetres and grams, planned' }).click();
  await box.locator('input[placeholder*="1:60"]').fill('600, 80, 62, 1:60');
  await page.keyboard.press('Enter');
  await saveAsProposed(page, BOAT, { until: async () => existsSync(file), patience });
  await page.locator('.tab.active', { hasText: BOAT }).waitFor({ timeout: patience });
  await shoot('planned');
}

/** To the text of the boat, with the keyboard in it. */
async function toTheText({ page, patience }: Session): Promise<void> {
  const tab = page.locator('.tab', { hasText: new RegExp(`^${BOAT}`) }).first();
  await until({
    what: 'the text of the boat',
    act: () => tab.click(),
    seen: async () =>
      (await visibleLines(page)).some(line => line.startsWith('boat: Grebe') || line.includes('payload')),
    patience,
  });
}

/** Types over what the file has to say that something is still to be weighed, from there to the end of its line. */
async function overwrite(
  session: Session,
  file: string,
  figures: readonly (readonly [asks: string, typed: string])[],
): Promise<void> {
  const { page, patience } = session;
  await toTheText(session);
  const before = await textOf(file);
  for (const [asks, typed] of figures) {
    const lines = before.split('\n');
    const at = lines.findIndex(line => line.endsWith(asks));
    expect(at, asks).toBeGreaterThanOrEqual(0);
    await goTo(page, at + 1, lines[at]!.indexOf(asks) + 1, patience);
    await page.keyboard.press('Shift+End');
    await page.keyboard.type(typed);
    await page.keyboard.press('Escape');
  }
  await save(page, patience);
  expect(await textOf(file)).toBe(figures.reduce((text, [asks, typed]) => text.replace(asks, typed), before));
}

async function takeTheLead(session: Session, file: string): Promise<void> {
  const { page, patience, shoot } = session;
  await press(session, '5. Take the lead or foam', 'Open trim sheet');
  await toTheText(session);
  const before = await textOf(file);
  await goTo(page, before.split('\n').length, 1, patience);
  for (const [i, line] of ROOM.entries()) {
    if (i > 0) await page.keyboard.press('Enter');
    await page.keyboard.type(line);
    await page.keyboard.press('Escape');
  }
  await save(page, patience);
  expect(await textOf(file)).toBe(before + ROOM.join('\n'));
  await page.keyboard.press('Control+Home');
  const waterline = before.split('\n').findIndex(line => line.includes('waterline: 62 mm'));
  await goTo(page, waterline + 1, 5, patience);
  await takeBestFix(page, patience);
  await until({ what: 'a boat within its limits', seen: () => isInTrim(page), patience });
  await save(page, patience);
  await until({
    what: 'the same over the text',
    seen: async () =>
      (await page.locator('.codelens-decoration').allInnerTexts()).some(text => /tank 84\s%/.test(text)),
    patience,
  });
  await picture(session, 'surfaced-side');
  expect(await textOf(file)).toContain('name: lead keel aft, material: lead, mass: 35 g');
  await shoot('trimmed');
}

async function takeThePages(session: Session, file: string): Promise<void> {
  const { page, patience } = session;
  const [printed, poolside] = ['.sheet.html', '.poolside.html'].map(end => file.replace('.boat.yaml', end)) as [
    string,
    string,
  ];
  await press(session, '6. Take a sheet to the bench', 'Print trim sheet');
  await page.locator('.quick-input-widget:not(.hidden) .monaco-list-row', { hasText: 'A4' }).first().click();
  await saveAsProposed(page, '.sheet.html', { until: async () => existsSync(printed), patience });
  await press(session, '7. Let the pool have the last word', 'Poolside page');
  await saveAsProposed(page, '.poolside.html', { until: async () => existsSync(poolside), patience });
  await press(session, '7. Let the pool have the last word', 'New pool trial');
  await until({
    what: 'a trial to fill in',
    seen: async () => (await visibleLines(page)).some(line => line.startsWith('trials:')),
    patience,
  });
}
