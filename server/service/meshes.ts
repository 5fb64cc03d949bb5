import { type MeshFile, missingMesh, outsideMesh, unreadableMesh } from '../core/meshFiles/meshFile.ts';
import { readMeshFile, readMeshSteps } from '../core/meshFiles/readMeshFile.ts';
import { inSteps, type Working } from '../core/steps/steps.ts';

export { type MeshFile, type MeshLookup, MOST_BYTES } from '../core/meshFiles/meshFile.ts';

/** What became of fetching a mesh file: whoever has the file system or the editor at hand tells. */
export type Fetched =
  | { readonly status: 'read'; readonly bytes: Uint8Array }
  | { readonly status: 'missing' | 'outside' }
  | { readonly status: 'unreadable'; readonly problem: string };

export function meshFrom(fetched: Fetched): MeshFile {
  switch (fetched.status) {
    case 'read':
      return readMeshFile(fetched.bytes);
    case 'missing':
      return missingMesh();
    case 'outside':
      return outsideMesh();
    case 'unreadable':
      return unreadableMesh(fetched.problem);
  }
}

/** A mesh file read and checked in steps. */
export const meshInSteps = (bytes: Uint8Array): Working<MeshFile> => inSteps(() => readMeshSteps(bytes));
