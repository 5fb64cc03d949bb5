import {
  chownSync,
  closeSync,
  fchmodSync,
  fsyncSync,
  openSync,
  readFileSync,
  readSync,
  realpathSync,
  renameSync,
  rmSync,
  type Stats,
  statSync,
  writeFileSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { plainly, RefusedFile } from './plainErrors.ts';

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
 * Puts `now` in the place of the text `was` of a file. Nothing else of the file changes: its byte order mark, mode, owner
 * and the links to it stay. It is written beside and put in place whole, and only where the file still says what was read.
 */
export function rewriteBoatFile(name: string, was: string, now: string): void {
  plainly(() => {
    const path = realpathSync(name);
    const mark = markOf(path, was);
    const found = statSync(path);
    // To put another file in its place would not ask whether this one may be written.
    closeSync(openSync(path, 'r+'));
    const beside = writeBeside(path, mark + now, found);
    try {
      markOf(path, was);
      if (found.nlink === 1 && isOwnedAlike(beside, found)) renameSync(beside, path);
      else writeOver(path, { was: mark + was, now: mark + now, beside });
    } finally {
      rmSync(beside, { force: true });
    }
  });
}

/** Writes into a file that cannot be put in place whole; where that fails half-way it says again what it said. */
function writeOver(path: string, { was, now, beside }: { was: string; now: string; beside: string }): void {
  try {
    writeFileSync(path, now);
  } catch (problem) {
    // Makes room for what was there.
    rmSync(beside, { force: true });
    writeFileSync(path, was);
    throw problem;
  }
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

function writeBeside(path: string, text: string, { mode }: Stats): string {
  const beside = join(dirname(path), `.${basename(path)}.${process.pid}.new`);
  const file = openSync(beside, 'wx', 0o600);
  try {
    writeFileSync(file, text);
    fchmodSync(file, mode);
    fsyncSync(file);
  } catch (problem) {
    closeSync(file);
    rmSync(beside, { force: true });
    throw problem;
  }
  closeSync(file);
  return beside;
}

/** Gives a file the owner and group of another; false where that is not allowed. */
function isOwnedAlike(path: string, { uid, gid }: Stats): boolean {
  const own = statSync(path);
  if (own.uid === uid && own.gid === gid) return true;
  try {
    chownSync(path, uid, gid);
    return true;
  } catch {
    return false;
  }
}
