import { checkMeshSteps } from '../geometry/mesh/meshCheck.ts';
import { finish, type Steps } from '../steps/steps.ts';
import { faulty, type MeshFile, MOST_BYTES, tooLargeMesh } from './meshFile.ts';
import { read3mf } from './read3mf.ts';
import { readStl } from './readStl.ts';

/** Reads and checks a mesh file by what is in it, whatever its name says: a zip archive is 3MF, all else is tried as STL. */
export function* readMeshSteps(bytes: Uint8Array): Steps<MeshFile> {
  if (bytes.length > MOST_BYTES) return tooLargeMesh(bytes.length);
  const isZip = bytes[0] === 0x50 && bytes[1] === 0x4b;
  const read = isZip ? yield* read3mf(bytes) : yield* readStl(bytes);
  if ('status' in read) return read;
  yield;
  const { form, unit } = 'form' in read ? read : { form: read, unit: null };
  if (form.vertices.some(isTooFar)) return beyondAllBounds();
  yield;
  const mesh = yield* checkMeshSteps(form);
  if (mesh) return { status: 'loaded', mesh, unit };
  return faulty('mesh-unreadable', 'has no form: all its triangles lie in one spot. Export it again.');
}

/** The same at once. */
export const readMeshFile = (bytes: Uint8Array): MeshFile => finish(readMeshSteps(bytes));

/** In the file's own unit: a kilometre in microns. A drawing keeps within that of its origin, by any unit. */
const FARTHEST = 1e9;

/** True for NaN and infinity too. */
const isTooFar = (value: number): boolean => !(Math.abs(value) <= FARTHEST);

const beyondAllBounds = (): MeshFile =>
  faulty('mesh-unreadable', 'has corners farther away than any boat is long. It is damaged: export it again.');
