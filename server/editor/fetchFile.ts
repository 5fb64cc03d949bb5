import { type Fetched, MOST_BYTES } from '../service/meshes.ts';
import type { ReadFileParams, ReadFileResult } from './protocol.ts';

/**
 * A file from the editor, piece by piece. One message with all of a large mesh would hold the server while it is taken
 * apart; a piece that is long all the same is made bytes with a `pause` now and then.
 */
export async function fetchFile(
  asked: ReadFileParams,
  ask: (asked: ReadFileParams) => Promise<ReadFileResult>,
  pause: () => Promise<void>,
): Promise<Fetched> {
  const pieces: Uint8Array[] = [];
  let count = 0;
  // Ends: each piece brings bytes, and of too many no more are asked for.
  for (;;) {
    const answer = await ask(count === 0 ? asked : { ...asked, from: count });
    if (answer.status !== 'read') return answer;
    const piece = await bytesOf(answer.base64, pause);
    pieces.push(piece);
    count += piece.length;
    if (!answer.more || piece.length === 0 || count > MOST_BYTES)
      return { status: 'read', bytes: joined(pieces, count) };
  }
}

function joined(pieces: readonly Uint8Array[], count: number): Uint8Array {
  const [only] = pieces;
  if (only && pieces.length === 1) return only;
  const bytes = new Uint8Array(count);
  let at = 0;
  for (const piece of pieces) {
    bytes.set(piece, at);
    at += piece.length;
  }
  return bytes;
}

/** Characters that are made bytes at a time: whole fours of them, which are three bytes. */
const STRETCH = 1 << 21;

async function bytesOf(base64: string, pause: () => Promise<void>): Promise<Uint8Array> {
  const bytes = new Uint8Array(Math.ceil(base64.length / 4) * 3);
  let count = 0;
  for (let at = 0; at < base64.length; at += STRETCH) {
    if (at > 0) await pause();
    const text = atob(base64.slice(at, at + STRETCH));
    for (let i = 0; i < text.length; i++) bytes[count++] = text.charCodeAt(i);
  }
  return bytes.subarray(0, count);
}
