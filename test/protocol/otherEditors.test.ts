import { describe, expect, test } from 'vitest';
import type { ReadFileParams } from '../../server/editor/protocol.ts';
import { startSession } from '../helpers/client.ts';
import { PROBE } from '../helpers/probe.ts';

const uri = 'file:///boats/probe.boat.yaml';
const withMesh = `hull: { length: 300 mm, waterline: 30 mm, compartments: [{ name: hull, mass: 300 g, mesh: { file: hull.stl, unit: mm } }] }
`;

async function open(text: string, options: Parameters<typeof startSession>[0]) {
  const session = await startSession(options);
  await session.open(uri, text);
  await session.settle();
  session.clock.step(1000);
  await session.settle();
  return session;
}

describe('an editor that is not the extension', () => {
  test('is told of findings, and of nothing that only the extension knows', async () => {
    const session = await open(PROBE, { isExtension: false });
    expect(session.published.length).toBeGreaterThan(0);
    expect(session.summaries).toEqual([]);
    expect(session.initialized.capabilities.codeLensProvider).toBeUndefined();
    session.end();
  });

  test('has its mesh files read for it, and is not asked for them', async () => {
    const asked: ReadFileParams[] = [];
    const session = await open(withMesh, {
      isExtension: false,
      readFile(params) {
        asked.push(params);
        return { status: 'missing' };
      },
    });
    expect(asked).toEqual([{ uri: 'file:///boats/hull.stl', boatUri: uri }]);
    await expect.poll(() => session.published.at(-1)?.diagnostics.map(({ code }) => code)).toContain('mesh-missing');
    session.end();
  });

  test('may answer with an error whatever it is asked, and goes on', async () => {
    // Vitest fails where a rejection is left unhandled, as Node would end.
    const session = await open(PROBE, { isExtension: false, refuses: true });
    await session.connection.sendNotification('workspace/didChangeConfiguration', { settings: null });
    await session.settle();
    expect(session.published.length).toBeGreaterThan(0);
    session.end();
  });
});

test('the extension is told in one line how the boat lies', async () => {
  const session = await open(PROBE, {});
  expect(session.summaries.length).toBeGreaterThan(0);
  expect(session.initialized.capabilities.codeLensProvider).toBeDefined();
  session.end();
});
