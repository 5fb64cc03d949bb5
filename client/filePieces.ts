import type { NotRead, ReadFileParams, ReadFileResult } from '../server/editor/protocol.ts';

/** A whole file, or why it was not read. */
export type WholeFile = { readonly status: 'read'; readonly bytes: Uint8Array } | NotRead;

/** Bytes in one message: whole threes, so that each piece is whole as text too. */
const PIECE = 3 * 2 ** 19;

/** Hands out files in pieces, each file read once for all of its pieces: it may change between two of them. */
export function inPieces(
  read: (asked: ReadFileParams) => Promise<WholeFile>,
): (asked: ReadFileParams) => Promise<ReadFileResult> {
  const begun = new Map<string, Uint8Array>();
  return async asked => {
    const { uri, from = 0 } = asked;
    const held = from > 0 ? begun.get(uri) : undefined;
    const file: WholeFile = held ? { status: 'read', bytes: held } : await read(asked);
    if (file.status !== 'read') return file;
    const base64 = base64Of(file.bytes.subarray(from, from + PIECE));
    if (from + PIECE >= file.bytes.length) {
      begun.delete(uri);
      return { status: 'read', base64 };
    }
    begun.set(uri, file.bytes);
    return { status: 'read', base64, more: true };
  };
}

export function base64Of(bytes: Uint8Array): string {
  const chunk = 0x8000;
  let text = '';
  for (let at = 0; at < bytes.length; at += chunk) text += String.fromCharCode(...bytes.subarray(at, at + chunk));
  return btoa(text);
}
