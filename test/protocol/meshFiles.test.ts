import { afterEach, describe, expect, test } from 'vitest';
import { type ReadFileParams, type ReadFileResult, readFileRequest } from '../../server/editor/protocol.ts';
import { type Session, startSession } from '../helpers/client.ts';

const uri = 'file:///boats/plank.boat.yaml';
const text = `boat: Plank
hull:
  length: 300 mm
  waterline: 30 mm
  compartments:
    - name: hull
      mass: 300 g
      mesh: { file: hull.stl, unit: mm }
payload:
  - { name: lead, mass: 239 g, station: 150 mm, height: 5 mm, in: hull }
`;

/** A box of 300 x 60 x `depth` mm as ASCII STL. */
function boxStl(depth: number): string {
  const corner = (i: number) => [i & 4 ? 300 : 0, i & 2 ? 30 : -30, i & 1 ? depth : 0].join(' ');
  const quads = ['0132', '4675', '0451', '2376', '0264', '1573'];
  const triangles = quads.flatMap(([a, b, c, d]) => [
    [a, b, c],
    [a, c, d],
  ]);
  const facets = triangles.map(
    t => `facet normal 0 0 0\nouter loop\n${t.map(i => `vertex ${corner(Number(i))}\n`).join('')}endloop\nendfacet\n`,
  );
  return `solid box\n${facets.join('')}endsolid box\n`;
}

let session: Session | undefined;
afterEach(() => session?.end());

async function openWith(answer: (asked: ReadFileParams) => ReadFileResult): Promise<Session> {
  session = await startSession();
  session.connection.onRequest<ReadFileResult, void>(readFileRequest, answer);
  await session.open(uri, text);
  await session.settle();
  session.clock.step(1000);
  await session.settle();
  await session.settle();
  return session;
}

const codes = (of: Session) => of.published.at(-1)!.diagnostics.map(({ code }) => code);

describe('mesh files', () => {
  test('are asked of the editor, beside the boat file, and the boat floats by them', async () => {
    const asked: ReadFileParams[] = [];
    const open = await openWith(params => {
      asked.push(params);
      return { status: 'read', base64: btoa(boxStl(60)) };
    });
    expect(asked).toEqual([{ uri: 'file:///boats/hull.stl', boatUri: uri }]);
    // 539 g over 300 x 60 mm of fresh water of 20 °C: 30 mm, on the painted line (Archimedes).
    await expect.poll(() => codes(open)).not.toContain('mesh-loading');
    expect(codes(open)).not.toContain('surfaced-draft');
    expect(open.summaries.at(-1)!.text).toMatch(/^Surfaced: level, upright/);
  });

  test('are read again when they change', async () => {
    let depth = 60;
    const open = await openWith(() => ({ status: 'read', base64: btoa(boxStl(depth)) }));
    await expect.poll(() => codes(open)).not.toContain('mesh-loading');
    depth = 25;
    await open.connection.sendNotification('workspace/didChangeWatchedFiles', {
      changes: [{ uri: 'file:///boats/hull.stl', type: 2 }],
    });
    // 25 mm deep it displaces 449 g, less than it weighs.
    await expect.poll(() => codes(open)).toContain('sinks');
  });

  test.each([
    [{ status: 'missing' }, 'mesh-missing'],
    [{ status: 'outside' }, 'mesh-outside'],
    [{ status: 'unreadable', problem: 'no permission' }, 'mesh-unreadable'],
  ] as const)('%j is told on the name', async (answer, code) => {
    expect(codes(await openWith(() => answer))).toContain(code);
  });
});
