import { existsSync, readFileSync, realpathSync, statSync } from 'node:fs';
import { dirname, isAbsolute, join, relative } from 'node:path';
import { MOST_BYTES } from '../service/meshes.ts';
import { plainly, RefusedFile } from './plainErrors.ts';

/**
 * Bytes of a file by its name from the folder of a boat file; null when it is not there, 'outside' when a link leads out of
 * that folder. Throws, in plain words, for one that is too large, before it is read, and for what is no file.
 */
export function readBeside(boatFile: string, name: string): Uint8Array | 'outside' | null {
  return plainly(() => {
    const folder = dirname(boatFile);
    const path = join(folder, name);
    if (!existsSync(path)) return null;
    const way = relative(realpathSync(folder), realpathSync(path));
    if (/^\.\.(?:[/\\]|$)/.test(way) || isAbsolute(way)) return 'outside';
    const found = statSync(path);
    // A pipe or a device may go on for ever.
    if (!found.isFile()) throw new RefusedFile('it is a folder, or no file at all.');
    const megabytes = Math.ceil(found.size / 1024 / 1024);
    const most = MOST_BYTES / 1024 / 1024;
    if (megabytes > most) throw new RefusedFile(`it has ${megabytes} MB, more than ${most} MB.`);
    return readFileSync(path);
  });
}
