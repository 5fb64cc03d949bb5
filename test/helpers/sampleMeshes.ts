import { existsSync, readFileSync } from 'node:fs';
import { type MeshFile, type MeshLookup, missingMesh } from '../../server/core/meshFiles/meshFile.ts';
import { readMeshFile } from '../../server/core/meshFiles/readMeshFile.ts';

const read = new Map<string, MeshFile>();

/** The mesh files beside the samples, each read once. */
export const sampleMeshes: MeshLookup = name => {
  const file = new URL(`../../samples/${name}`, import.meta.url);
  const mesh = read.get(name) ?? (existsSync(file) ? readMeshFile(readFileSync(file)) : missingMesh());
  read.set(name, mesh);
  return mesh;
};
