import { describe, expect, test } from 'vitest';
import type { CodeAction, Hover } from 'vscode-languageserver-types';
import type { Session } from '../helpers/client.ts';
import { PROBE, probe } from '../helpers/probe.ts';
import { sessionOfTest } from '../helpers/sessionOfTest.ts';

const here = 'file:///boats/probe.boat.yaml';
/** The same file by another address, as another window or a link has it. */
const there = 'file:///harbour/probe.boat.yaml';
const slipped = probe(['mass: 800 g', 'mass:800 g']);

const told = (session: Session, uri: string) => {
  const { version, diagnostics } = session.published.filter(sent => sent.uri === uri).at(-1) ?? {};
  return { version, codes: diagnostics?.map(({ code }) => code) };
};

/** What is told once everything is. */
async function settled(session: Session, uri: string) {
  for (let i = 0; i < 3; i++) {
    await session.settle();
    session.clock.step(1000);
    await actionsOf(session, uri);
  }
  return told(session, uri);
}

const actionsOf = ({ connection }: Session, uri: string): Promise<CodeAction[]> =>
  connection.sendRequest<CodeAction[]>('textDocument/codeAction', {
    textDocument: { uri },
    range: { start: { line: 0, character: 0 }, end: { line: 99, character: 0 } },
    context: { diagnostics: [] },
  });

const hover = ({ connection }: Session, uri: string): Promise<Hover | null> =>
  connection.sendRequest<Hover | null>('textDocument/hover', {
    textDocument: { uri },
    position: { line: 0, character: 1 },
  });

describe('a server that was killed and is started again', () => {
  test('tells the open files as they are by then, as if it had never been away', async () => {
    const first = await sessionOfTest();
    await first.open(here, PROBE);
    await first.open(there, PROBE);
    await first.change(here, 2, slipped);
    const unanswered = actionsOf(first, here).catch(() => 'gone');
    first.end();
    const second = await sessionOfTest();
    // The editor opens its files anew, with the version that each has come to.
    const textDocument = { uri: here, languageId: 'boat', version: 2, text: slipped };
    await second.connection.sendNotification('textDocument/didOpen', { textDocument });
    await second.open(there, PROBE);
    expect(await settled(second, here)).toMatchObject({ version: 2, codes: expect.arrayContaining(['missing-space']) });
    expect(await settled(second, there)).toMatchObject({ version: 1 });
    await second.change(here, 3, PROBE);
    const [mended, whole] = [await settled(second, here), await settled(second, there)];
    expect(mended).toEqual({ version: 3, codes: whole.codes });
    expect(second.logged).toEqual([]);
    await Promise.race([unanswered, new Promise(resolve => setTimeout(resolve, 10))]);
  });

  test('lives, where the editor goes on as if nothing had been', async () => {
    const session = await sessionOfTest();
    await session.change(here, 9, slipped);
    await session.close(there);
    expect(await hover(session, here)).toBeNull();
    expect(await actionsOf(session, here)).toEqual([]);
    await session.open(here, PROBE);
    expect(await hover(session, here)).not.toBeNull();
  });
});

describe('one file in two editors', () => {
  test('is two texts: each is told what it says itself, and each edit is for its own', async () => {
    const session = await sessionOfTest();
    await session.open(here, PROBE);
    await session.open(there, PROBE);
    await session.change(here, 2, slipped);
    expect((await settled(session, here)).codes).toContain('missing-space');
    expect((await settled(session, there)).codes).not.toContain('missing-space');
    const [mend] = await actionsOf(session, here);
    expect(mend?.edit?.documentChanges).toMatchObject([{ textDocument: { uri: here, version: 2 } }]);
    await session.close(here);
    expect(await hover(session, there)).not.toBeNull();
  });

  test('that one of them saves leaves the other as it is typed', async () => {
    const session = await sessionOfTest();
    await session.open(here, slipped);
    const before = await settled(session, here);
    // The editor owns the text of what is open; it tells when it has read the file again.
    for (const type of [2, 3, 1])
      await session.connection.sendNotification('workspace/didChangeWatchedFiles', { changes: [{ uri: here, type }] });
    expect(await settled(session, here)).toEqual(before);
    expect(session.logged).toEqual([]);
  });
});
