import {
  closeSync,
  existsSync,
  lstatSync,
  openSync,
  readFileSync,
  readSync,
  realpathSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { plainly, RefusedFile } from './plainErrors.ts';
import { replaceFile } from './replaceFile.ts';

type Content = string | Uint8Array;

/**
 * Writes a page or a drawing to a file of its own. A boat file is never written over, nor any other unless asked; devices
 * and pipes take what comes. What is written is made only where it can be.
 */
export function writeOutput(
  name: string,
  content: () => Content,
  { from, overwrite }: { from: string | null; overwrite: boolean },
): void {
  plainly(() => {
    if (!existsSync(name) && !isLink(name)) {
      const made = content();
      if (isBoatFileName(name) && !isText(made))
        throw new RefusedFile(
          'this is a name for a boat file. Give one that ends as what is written does, such as .html',
        );
      writeNew(name, made);
      return;
    }
    if (!statSync(name).isFile()) {
      writeFileSync(name, content());
      return;
    }
    const path = realpathSync(name);
    if ([name, path].some(isBoatFileName) || holdsBoat(path))
      throw new RefusedFile('this is a boat file, and is left as it is. Give another name');
    if (from !== null && isSame(path, from))
      throw new RefusedFile('this is the file that it is made from, and is left as it is. Give another name');
    if (!overwrite)
      throw new RefusedFile('there is such a file already. Give another name, or “--overwrite” to replace it');
    replaceFile(path, { now: content(), was: () => readFileSync(path) });
  });
}

const isBoatFileName = (name: string): boolean => /\.boat\.ya?ml$/i.test(name);

/** A boat file's text, not a page or a drawing. */
const isText = (content: Content): boolean => typeof content === 'string' && !content.startsWith('<');

/** Whatever it is called: the beginning of a boat file has a key that only boats have. */
function holdsBoat(path: string): boolean {
  const beginning = Buffer.alloc(BEGINNING);
  const file = openSync(path, 'r');
  try {
    const text = beginning.toString('utf8', 0, readSync(file, beginning, 0, BEGINNING, 0));
    return isText(text.trimStart()) && /^(?:boat|hull|payload)[ \t]*:/m.test(text);
  } finally {
    closeSync(file);
  }
}

/** Bytes that are looked at. */
const BEGINNING = 64 * 1024;

/** Half a page is none: where the disk fills, nothing is left. */
function writeNew(name: string, content: Content): void {
  const file = openSync(name, 'wx');
  try {
    writeFileSync(file, content);
  } catch (problem) {
    rmSync(name, { force: true });
    throw problem;
  } finally {
    closeSync(file);
  }
}

/** Also one that leads nowhere yet. */
const isLink = (name: string): boolean => lstatSync(name, { throwIfNoEntry: false })?.isSymbolicLink() ?? false;

function isSame(one: string, other: string): boolean {
  if (!existsSync(other)) return false;
  const [a, b] = [statSync(one), statSync(other)];
  return a.ino === b.ino && a.dev === b.dev;
}
