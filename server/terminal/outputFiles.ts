import {
  closeSync,
  existsSync,
  lstatSync,
  openSync,
  readFileSync,
  realpathSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { plainly, RefusedFile } from './plainErrors.ts';
import { replaceFile } from './replaceFile.ts';

/**
 * Writes a page or a drawing to a file of its own. A boat file is never written over, nor any other unless asked; devices
 * and pipes take what comes.
 */
export function writeOutput(
  name: string,
  content: string | Uint8Array,
  { from, overwrite }: { from: string; overwrite: boolean },
): void {
  plainly(() => {
    if (!existsSync(name) && !isLink(name)) {
      writeNew(name, content);
      return;
    }
    if (!statSync(name).isFile()) {
      writeFileSync(name, content);
      return;
    }
    const path = realpathSync(name);
    if (isSame(path, from) || [name, path].some(each => /\.boat\.ya?ml$/i.test(each))) {
      throw new RefusedFile('this is a boat file, and is left as it is. Give another name');
    }
    if (!overwrite)
      throw new RefusedFile('there is such a file already. Give another name, or “--overwrite” to replace it');
    replaceFile(path, { now: content, was: () => readFileSync(path) });
  });
}

/** Half a page is none: where the disk fills, nothing is left. */
function writeNew(name: string, content: string | Uint8Array): void {
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
