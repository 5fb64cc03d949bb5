/** The packaged extension in a real VS Code, driven by keyboard in a real browser. */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { expect, test } from 'vitest';
import { projectRoot } from '../../client/launch/install.mjs';
import { followTheWalkthrough } from './firstBoat.ts';
import { beginATrial, renameTheCompartment } from './inText.ts';
import { dayAtThePool, printTheSheet, takeTheDay } from './pages.ts';
import { logTheTrials, readTheTrial, takeWhatItTeaches } from './pool.ts';
import { inEditor, ScenarioFailure, shots } from './session.ts';
import {
  clickAPart,
  dragAPart,
  lookInAllThemes,
  openTheSheet,
  openTheWindowAgain,
  seeTheSheetChange,
  showTheSheet,
  takeAGhost,
  typeAndSee,
} from './sheet.ts';
import {
  applyTheFix,
  makeANewBoat,
  mendABrokenKey,
  readTheHover,
  readTheStatusBar,
  restartTheServer,
  seeTheSquiggle,
  showTheReport,
} from './trimTheSample.ts';
import { webpOf } from './webp.ts';

const patience = 60_000;

/** `npm run screenshot` renews the pictures in the README and in the guide. */
async function keepShots(kept: Readonly<Record<string, string>>): Promise<void> {
  if (process.env.MODE !== 'screenshot') return;
  for (const [shot, file] of Object.entries(kept)) {
    const target = join(projectRoot, file);
    mkdirSync(dirname(target), { recursive: true });
    writeFileSync(target, await webpOf(readFileSync(join(shots, `${shot}.png`))));
  }
}

test('a boat out of trim is seen, explained and trimmed by keyboard', async () => {
  await inEditor({ name: 'trim', patience }, async session => {
    await seeTheSquiggle(session);
    await readTheHover(session);
    await readTheStatusBar(session);
    await applyTheFix(session);
    await mendABrokenKey(session);
    await renameTheCompartment(session);
    await beginATrial(session);
    await showTheReport(session);
    await makeANewBoat(session);
  });
  await keepShots({ 'trim-offers': 'client/media/editor.webp' });
});

test('the trim sheet shows the text, and the text what is done on the sheet', async () => {
  await inEditor({ name: 'sheet', patience }, async session => {
    await openTheSheet(session);
    await typeAndSee(session);
    await clickAPart(session);
    await dragAPart(session);
    await takeAGhost(session);
    await lookInAllThemes(session);
    await printTheSheet(session);
    await openTheWindowAgain(session);
  });
  await keepShots({
    'sheet-light': 'client/media/sheet.webp',
    'sheet-dark': 'client/media/sheetDark.webp',
    'sheet-dragged': 'samples/pictures/dragged.webp',
    'sheet-proposed': 'samples/pictures/proposed.webp',
    'sheet-taken': 'samples/pictures/taken.webp',
    'sheet-printed': 'samples/pictures/printed.webp',
  });
});

test('what the pool showed is compared, and the file learns from it', async () => {
  await inEditor({ name: 'pool', patience }, async session => {
    await seeTheSquiggle(session);
    await logTheTrials(session);
    await readTheTrial(session);
    await takeWhatItTeaches(session);
    await takeTheDay(session, await dayAtThePool(session));
  });
  await keepShots({ 'pool-trial': 'samples/pictures/trial.webp' });
});

test('the walkthrough leads from its first page to a boat in trim', async () => {
  await inEditor({ name: 'first', patience }, followTheWalkthrough);
});

test('the same extension works in the extension worker of the browser', async () => {
  await inEditor({ name: 'worker', patience, inWorker: true }, async session => {
    await seeTheSquiggle(session);
    await readTheStatusBar(session);
    await showTheSheet(session);
    await seeTheSheetChange(session);
    await restartTheServer(session);
    await mendABrokenKey(session);
  });
});

test('with a server that throws, the same scenario fails for want of a squiggle', async () => {
  const failure = await inEditor(
    {
      name: 'broken',
      // Three times what the squiggle takes when all is well.
      patience: 30_000,
      tamper: folder => writeFileSync(join(folder, 'dist', 'server.cjs'), "throw new Error('broken on purpose');\n"),
    },
    seeTheSquiggle,
  ).catch(error => error);
  expect(failure).toBeInstanceOf(ScenarioFailure);
  expect(failure.message).toContain('a squiggle is seen: not seen');
  expect(failure.browserLog.join('\n')).toContain("Trimwright client: couldn't create connection to server");
});
