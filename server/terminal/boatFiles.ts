import { readFileSync, readSync, realpathSync, statSync } from 'node:fs';
import { plainly, RefusedFile } from './plainErrors.ts';
import { replaceFile } from './replaceFile.ts';

/** The longest text that is read, `longestText`, has no more in any writing. */
const MOST_BYTES = 2 * 1024 * 1024;
const BOM = '\uFEFF';

/** The text of a boat file, or of what is piped in for the name `-`; throws an error in plain words. */
export function readBoatFile(name: string): string {
  return plainly(() => {
    const bytes = name === '-' ? readPiped() : readPlainFile(name);
    return new TextDecoder().decode(bytes);
  });
}

function readPlainFile(name: string): Uint8Array {
  const found = statSync(name);
  if (found.isDirectory()) throw new RefusedFile('this is a folder, not a boat file');
  // Devices and pipes may go on for ever; what comes out of a pipe has a way of its own.
  if (!found.isFile())
    throw new RefusedFile('this is no file; for what another program puts out give “-” and pipe it in');
  if (found.size > MOST_BYTES) throw tooLarge();
  return readFileSync(name);
}

const tooLarge = (): RefusedFile =>
  new RefusedFile(`this has more than ${MOST_BYTES / 1024 / 1024} MB, more than any boat needs, and is not read`);

function readPiped(): Uint8Array {
  const chunks: Buffer[] = [];
  let size = 0;
  // Ends: what is piped in ends, or grows too large.
  for (;;) {
    const chunk = Buffer.alloc(64 * 1024);
    const count = readSome(chunk);
    if (count === 0) return Buffer.concat(chunks);
    size += count;
    if (size > MOST_BYTES) throw tooLarge();
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
  const bytes = readPlainFile(path);
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    throw new RefusedFile(
      'it has characters that are not UTF-8, which would be lost, so it is left as it is. Save it as UTF-8 in an editor, and do this again',
    );
  }
  const mark = text.startsWith(BOM) ? BOM : '';
  if (text.slice(mark.length) === was) return mark;
  throw new RefusedFile('it has been changed meanwhile, so it is left as it is. Do this again');
}
