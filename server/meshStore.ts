import { type MeshFile, missingMesh, outsideMesh, unreadableMesh } from './mesh/meshFile.ts';
import { readMeshFile } from './mesh/readMeshFile.ts';
import type { ReadFileResult } from './protocol.ts';

/** Mesh files of the workspace, loaded once through the editor and kept until they change. */
export interface MeshStore {
  /** The file by its name from the folder of a boat file; null while it is being loaded. */
  lookup(boatUri: string, name: string): MeshFile | null;
  /** Forgets a file that changed; true when it was known. */
  forget(uri: string): boolean;
}

/** `fetch` asks the editor for a file's bytes; `arrived` is told when a file that was asked for is there. */
export function createMeshStore(
  fetch: (uri: string, boatUri: string) => Promise<ReadFileResult>,
  arrived: (uri: string) => void,
): MeshStore {
  const files = new Map<string, MeshFile | null>();
  const load = async (uri: string, boatUri: string): Promise<void> => {
    files.set(uri, null);
    const file = await fetch(uri, boatUri).then(meshOf, (problem: unknown) => unreadableMesh(String(problem)));
    // Forgotten while it was on its way: what arrived may be the old one.
    if (!files.has(uri)) return;
    files.set(uri, file);
    arrived(uri);
  };
  return {
    lookup(boatUri, name) {
      const uri = uriBeside(boatUri, name);
      if (uri === null) return missingMesh();
      if (!files.has(uri)) void load(uri, boatUri);
      return files.get(uri) ?? null;
    },
    forget: uri => files.delete(uri),
  };
}

/** The address of a file named from the boat file's folder; null for a boat file that lies nowhere yet. */
function uriBeside(boatUri: string, name: string): string | null {
  if (boatUri.startsWith('untitled:')) return null;
  const folder = boatUri.replace(/[^/]*$/, '');
  return folder + name.split('/').map(encodeURIComponent).join('/');
}

function meshOf(result: ReadFileResult): MeshFile {
  switch (result.status) {
    case 'read':
      return readMeshFile(Uint8Array.from(atob(result.base64), char => char.charCodeAt(0)));
    case 'missing':
      return missingMesh();
    case 'outside':
      return outsideMesh();
    case 'unreadable':
      return unreadableMesh(result.problem);
  }
}
