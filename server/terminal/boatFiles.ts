import { readFileSync, readSync, realpathSync, statSync } from 'node:fs';
import { plainly, RefusedFile } from './plainErrors.ts';
import { replaceFile } from './replaceFile.ts';

/** The longest text that is read, `longestText`, has no more in any writing. */
const MOST_BYTES = 2 * 1024 * 1024;
/** A sheet of a thousand parts with all its pictures has a tenth of it. */
const MOST_OF_A_PAGE = 64 * 1024 * 1024;
const BOM = '\uFEFF';

/** The text of a boat file, or of what is piped in for the name `-`; throws an error in plain words. */
export const readBoatFile = (name: string): string => readText(name, { most: MOST_BYTES, what: 'boat' });

/** The same of a page that was made of a boat file. */
export const readPage = (name: string): string => readText(name, { most: MOST_OF_A_PAGE, what: 'page' });

interface Room {
  /** Bytes. */
  readonly most: number;
  /** What needs no more. */
  readonly what: 'boat' | 'page';
}

function readText(name: string, room: Room): string {
  return plainly(() => {
    const text = decoded(name === '-' ? readPiped(room) : readPlainFile(name, room));
    return text.startsWith(BOM) ? text.slice(BOM.length) : text;
  });
}

/** Text, with its byte order mark; throws where characters would be lost. */
function decoded(bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    throw new RefusedFile(
      'it has characters that are not UTF-8, which would be lost. Save it as UTF-8 in an editor, and do this again',
    );
  }
}

function readPlainFile(name: string, room: Room): Uint8Array {
  const found = statSync(name, { throwIfNoEntry: false });
  if (!found && name.includes('\ufffd'))
    throw new RefusedFile(
      'its name is not in UTF-8, and cannot be read here. Rename the file, or pipe it in and give “-”',
    );
  if (!found) throw new RefusedFile('there is no such file or folder');
  if (found.isDirectory()) throw new RefusedFile('this is a folder, not a boat file');
  // Devices and pipes may go on for ever; what comes out of a pipe has a way of its own.
  if (!found.isFile())
    throw new RefusedFile('this is no file; for what another program puts out give “-” and pipe it in');
  if (found.size > room.most) throw tooLarge(room);
  return readFileSync(name);
}

const tooLarge = ({ most, what }: Room): RefusedFile =>
  new RefusedFile(`this has more than ${most / 1024 / 1024} MB, more than any ${what} needs, and is not read`);

function readPiped(room: Room): Uint8Array {
  const chunks: Buffer[] = [];
  let size = 0;
  // Ends: what is piped in ends, or grows too large.
  for (;;) {
    const chunk = Buffer.alloc(64 * 1024);
    const count = readSome(chunk);
    if (count === 0) return Buffer.concat(chunks);
    size += count;
    if (size > room.most) throw tooLarge(room);
    chunks.push(chunk.subarray(0, count));
  }
}

/** Bytes that came, 0 at the end. A terminal or a pipe that is still empty says “again” and is asked again. */
function readSome(chunk: Buffer): number {
  // Ends: when something comes, or the other end closes.
  for (;;) {
    try {
      return readSync(0, chunk);
    } catch (problem) {
      const code = (problem as NodeJS.ErrnoException).code;
      if (code === 'EOF') return 0;
      if (code !== 'EAGAIN') throw problem;
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 20);
    }
  }
}

/**
 * Puts `now` in the place of the text `was` of a file, and changes nothing else of it: its byte order mark stays too. Only
 * where the file still says what was read.
 */
export function rewriteBoatFile(name: string, was: string, now: string): void {
  plainly(() => {
    const path = realpathSync(name);
    replaceFile(path, { now: markOf(path, was) + now, was: () => markOf(path, was) + was });
  });
}

/** The byte order mark that a file begins with, or nothing; throws where the file is another than was read. */
function markOf(path: string, was: string): string {
  const text = decoded(readPlainFile(path, { most: MOST_BYTES, what: 'boat' }));
  const mark = text.startsWith(BOM) ? BOM : '';
  if (text.slice(mark.length) === was) return mark;
  throw new RefusedFile('it has been changed meanwhile, so it is left as it is. Do this again');
}
