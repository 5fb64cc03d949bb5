import { dirname, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { ReadFileParams } from '../editor/protocol.ts';
import type { Fetched } from '../service/meshes.ts';
import { RefusedFile } from './plainErrors.ts';
import { readBeside } from './readBeside.ts';

/** A mesh file by its address, for an editor that reads none for the server: from the boat file's folder, as the command line reads it. */
export function readByAddress({ uri, boatUri }: ReadFileParams): Fetched {
  if (!boatUri.startsWith('file:')) return { status: 'missing' };
  try {
    const boatFile = fileURLToPath(boatUri);
    const name = relative(dirname(boatFile), fileURLToPath(uri)).split(sep).join('/');
    if (name.split('/').includes('..')) return { status: 'outside' };
    const bytes = readBeside(boatFile, name);
    if (bytes === 'outside') return { status: 'outside' };
    return bytes ? { status: 'read', bytes } : { status: 'missing' };
  } catch (problem) {
    return {
      status: 'unreadable',
      problem: problem instanceof RefusedFile ? problem.message : 'its address is none of this machine.',
    };
  }
}
