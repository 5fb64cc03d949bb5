import {
  chownSync,
  closeSync,
  fchmodSync,
  fsyncSync,
  openSync,
  renameSync,
  rmSync,
  type Stats,
  statSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';

type Content = string | Uint8Array;

interface Replacing {
  readonly now: Content;
  /** What the file says, asked right before it is replaced; throws where it must not be. */
  readonly was: () => Content;
}

/**
 * Puts something else in a file: it is written beside and put in place whole, so that a disk that fills leaves what was there.
 * The file’s mode, owner and other names stay. `path` leads to the file by no link.
 */
export function replaceFile(path: string, { now, was }: Replacing): void {
  const found = statSync(path);
  // To put another file in its place would not ask whether this one may be written.
  closeSync(openSync(path, 'r+'));
  const beside = writeBeside(path, now, found);
  try {
    const before = was();
    const isPutInPlace = found.nlink === 1 && isOwnedAlike(beside, found) && isRenamed(beside, path);
    if (!isPutInPlace) writeOver(path, { was: before, now, beside });
  } finally {
    rmSync(beside, { force: true });
  }
}

/** False for a file that is lent to this folder by itself, as containers do it: no other can take its place. */
function isRenamed(from: string, to: string): boolean {
  try {
    renameSync(from, to);
    return true;
  } catch (problem) {
    const code = (problem as NodeJS.ErrnoException).code;
    if (code === 'EBUSY' || code === 'EXDEV') return false;
    throw problem;
  }
}

/** Writes into a file that cannot be put in place whole; where that fails half-way it says again what it said. */
function writeOver(path: string, { was, now, beside }: { was: Content; now: Content; beside: string }): void {
  try {
    writeFileSync(path, now);
  } catch (problem) {
    // Makes room for what was there.
    rmSync(beside, { force: true });
    writeFileSync(path, was);
    throw problem;
  }
}

function writeBeside(path: string, content: Content, { mode }: Stats): string {
  // Of no name that a program which was killed may have left, nor longer than the file's own may be.
  const beside = join(dirname(path), `.${crypto.randomUUID()}.new`);
  const file = openSync(beside, 'wx', 0o600);
  try {
    writeFileSync(file, content);
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
