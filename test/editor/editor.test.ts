/** The packaged extension in a real VS Code, driven by keyboard in a real browser. */
import { copyFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { projectRoot } from '../../client/launch/install.mjs';
import { inEditor, ScenarioFailure, shots } from './session.ts';
import { clickAPart, dragAPart, lookInBothThemes, openTheSheet, takeAGhost, typeAndSee } from './sheet.ts';
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

const patience = 60_000;

test('a boat out of trim is seen, explained and trimmed by keyboard', async () => {
  await inEditor({ name: 'trim', patience }, async session => {
    await seeTheSquiggle(session);
    await readTheHover(session);
    await readTheStatusBar(session);
    await applyTheFix(session);
    await mendABrokenKey(session);
    await showTheReport(session);
    await makeANewBoat(session);
  });
  // `npm run screenshot` renews the picture in the README.
  if (process.env.MODE === 'screenshot') {
    copyFileSync(join(shots, 'trim-offers.png'), join(projectRoot, 'client', 'media', 'editor.png'));
  }
});

test('the trim sheet shows the text, and the text what is done on the sheet', async () => {
  await inEditor({ name: 'sheet', patience }, async session => {
    await openTheSheet(session);
    await typeAndSee(session);
    await clickAPart(session);
    await dragAPart(session);
    await takeAGhost(session);
    await lookInBothThemes(session);
  });
});

test('the same extension works in the extension worker of the browser', async () => {
  await inEditor({ name: 'worker', patience, inWorker: true }, async session => {
    await seeTheSquiggle(session);
    await readTheStatusBar(session);
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
