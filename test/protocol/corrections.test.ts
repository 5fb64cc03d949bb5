import { readFileSync } from 'node:fs';
import { afterEach, describe, expect, test } from 'vitest';
import { CancellationTokenSource, LSPErrorCodes } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { CodeAction, TextDocumentEdit, TextEdit } from 'vscode-languageserver-types';
import { createBoatService } from '../../server/service/service.ts';
import { heard } from '../helpers/analysed.ts';
import { boatOutOfTrim } from '../helpers/boatsOutOfTrim.ts';
import { type Session, startSession } from '../helpers/client.ts';
import { corrected } from '../helpers/corrected.ts';
import { figureFindings } from '../helpers/figureFindings.ts';

const uri = 'file:///petrel.boat.yaml';
const petrel = readFileSync(new URL('../../samples/petrel.boat.yaml', import.meta.url), 'utf8');

let session: Session;
afterEach(() => session.end());

async function actionsAt(text: string, piece: string): Promise<readonly CodeAction[]> {
  session = await startSession();
  await session.open(uri, text);
  const position = TextDocument.create(uri, 'boat', 1, text).positionAt(text.indexOf(piece));
  return session.connection.sendRequest<readonly CodeAction[]>('textDocument/codeAction', {
    textDocument: { uri },
    range: { start: position, end: position },
    context: { diagnostics: [] },
  });
}

/** Codes that the server publishes of a text, as the next version of the file. */
async function codesOf(text: string): Promise<readonly string[]> {
  await session.change(uri, session.published.length + 2, text);
  await session.settle();
  session.clock.step(100);
  await session.settle();
  return (session.published.at(-1)?.diagnostics ?? []).map(({ code }) => String(code));
}

function applied(text: string, action: CodeAction): string {
  const changes = (action.edit?.documentChanges ?? []) as readonly TextDocumentEdit[];
  const edits = changes.flatMap(each => each.edits as TextEdit[]);
  return TextDocument.applyEdits(TextDocument.create(uri, 'boat', 1, text), edits);
}

describe('code actions on what the boat does out of its limits', () => {
  test('submerged: corrections of both conditions first, the first preferred; it clears both', async () => {
    const { text } = boatOutOfTrim(1);
    // The place of the submerged findings is the first tank.
    const actions = await actionsAt(text, 'main ballast');
    expect(await codesOf(`${text}\n`)).toEqual(expect.arrayContaining(['surfaced-draft', 'submerged-trim']));
    expect(actions.length).toBeGreaterThan(1);
    expect(actions.length).toBeLessThanOrEqual(5);
    expect(actions[0]).toMatchObject({ kind: 'quickfix', isPreferred: true });
    expect(actions[0]!.title).toMatch(/: both (conditions )?within limits$/);
    expect(actions[0]!.diagnostics!.map(({ code }) => code)).toContain('submerged-trim');
    expect(actions.slice(1).every(({ isPreferred }) => !isPreferred)).toBe(true);
    // What sets the surfaced condition right alone is not for here.
    const analysis = heard(text);
    const suiting = analysis.corrections.all().filter(({ condition }) => condition !== 'surfaced');
    expect(actions.map(action => applied(text, action))).toEqual(suiting.map(each => corrected(analysis, each)));
    const after = await codesOf(applied(text, actions[0]!));
    expect(after.filter(code => figureFindings.has(code))).toEqual([]);
  });

  test('of the sample: the preferred one clears both conditions', async () => {
    const [first] = await actionsAt(petrel, 'main ballast');
    expect(first).toMatchObject({ isPreferred: true, title: expect.stringContaining('both conditions within limits') });
    const after = await codesOf(applied(petrel, first!));
    expect(after.filter(code => figureFindings.has(code))).toEqual([]);
  });

  test('stop when they are cancelled, though they had begun', async () => {
    const service = createBoatService();
    let steps = 0;
    const cancelling = new CancellationTokenSource();
    session = await startSession({
      service: {
        ...service,
        prepareCodeActions: (analysis, span) => {
          steps++;
          if (steps === 2) cancelling.cancel();
          const isDone = service.prepareCodeActions(analysis, span);
          expect(isDone).toBe(false);
          return isDone;
        },
      },
    });
    const { text } = boatOutOfTrim(1);
    await session.open(uri, text);
    const position = TextDocument.create(uri, 'boat', 1, text).positionAt(text.indexOf('main ballast'));
    const asked = session.connection.sendRequest(
      'textDocument/codeAction',
      { textDocument: { uri }, range: { start: position, end: position }, context: { diagnostics: [] } },
      cancelling.token,
    );
    await expect(asked).rejects.toMatchObject({ code: LSPErrorCodes.RequestCancelled });
    const taken = steps;
    await session.settle();
    await session.settle();
    expect(steps).toBe(taken);
    // The cancellation is a message like any other: it is heard between two steps.
    expect(steps).toBeLessThan(20);
    expect(session.logged).toEqual([]);
  });

  test('a boat without bays is offered some', async () => {
    const bare = petrel.replace(/^bays:.*\n(?: {2}- .*\n)+/m, '');
    const actions = await actionsAt(bare, 'main ballast');
    const offer = actions.at(-1);
    expect(applied(bare, offer!)).toMatch(/^bays:\n {2}- /m);
    // They are room for lead, and no lead.
    expect(offer).toMatchObject({ diagnostics: [] });
    expect(offer!.isPreferred).toBeUndefined();
  });
});
