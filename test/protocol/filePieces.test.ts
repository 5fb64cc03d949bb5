import { describe, expect, test } from 'vitest';
import { inPieces, type WholeFile } from '../../client/filePieces.ts';
import { fetchFile } from '../../server/editor/fetchFile.ts';
import type { NotRead, ReadFileParams, ReadFileResult } from '../../server/editor/protocol.ts';

const asked: ReadFileParams = { uri: 'file:///boats/hull.stl', boatUri: 'file:///boats/tern.boat.yaml' };
const MEGABYTE = 2 ** 20;

const bytesFrom = (count: number, start: number): Uint8Array =>
  Uint8Array.from({ length: count }, (_, i) => (7 * i + start) % 251);

/** Server and extension with each other: what comes of it, and what was sent. */
async function fetched(read: (asked: ReadFileParams) => Promise<WholeFile>) {
  const answer = inPieces(read);
  const sent: ReadFileResult[] = [];
  const got = await fetchFile(
    asked,
    async params => {
      const result = await answer(params);
      sent.push(result);
      return result;
    },
    () => Promise.resolve(),
  );
  return { got, sent };
}

describe('a file goes over the wire in pieces', () => {
  test.each([0, 1, 1000, 1.5 * MEGABYTE - 1, 1.5 * MEGABYTE, 1.5 * MEGABYTE + 1, 4 * MEGABYTE])(
    'of %i bytes none is lost, and no message is long',
    async count => {
      const bytes = bytesFrom(count, 0);
      const { got, sent } = await fetched(async () => ({ status: 'read', bytes }));
      expect(got.status).toBe('read');
      expect(got.status === 'read' && Buffer.compare(got.bytes, bytes)).toBe(0);
      expect(sent).toHaveLength(Math.max(1, Math.ceil(count / (1.5 * MEGABYTE))));
      for (const each of sent) expect(JSON.stringify(each).length).toBeLessThan(2.1 * MEGABYTE);
    },
  );

  test('all of one version, though it changes between two pieces', async () => {
    let reads = 0;
    const { got, sent } = await fetched(async () => {
      reads += 1;
      return { status: 'read', bytes: bytesFrom(4 * MEGABYTE, reads) };
    });
    expect(sent).toHaveLength(3);
    expect(got.status === 'read' && Buffer.compare(got.bytes, bytesFrom(4 * MEGABYTE, 1))).toBe(0);
    expect(reads).toBe(1);
  });

  test.each<NotRead>([{ status: 'missing' }, { status: 'unreadable', problem: 'no permission' }])(
    'or it is told why not: %j',
    async why => {
      expect((await fetched(async () => why)).got).toEqual(why);
    },
  );

  test('an editor that sends for ever is asked no more than a file may hold', async () => {
    const base64 = btoa('x'.repeat(3 * MEGABYTE));
    let asks = 0;
    await fetchFile(
      asked,
      async () => {
        asks += 1;
        return { status: 'read', base64, more: true };
      },
      () => Promise.resolve(),
    );
    expect(asks).toBeGreaterThan(20);
    expect(asks).toBeLessThan(24);
  });
});
