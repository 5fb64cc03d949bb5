import { checkMesh } from '../geometry/mesh/meshCheck.ts';
import { faulty, type MeshFile, MOST_BYTES, tooLargeMesh } from './meshFile.ts';
import { read3mf } from './read3mf.ts';
import { readStl } from './readStl.ts';

/** Reads and checks a mesh file by what is in it, whatever its name says: a zip archive is 3MF, all else is tried as STL. */
export function readMeshFile(bytes: Uint8Array): MeshFile {
  if (bytes.length > MOST_BYTES) return tooLargeMesh(bytes.length);
  const isZip = bytes[0] === 0x50 && bytes[1] === 0x4b;
  const read = isZip ? read3mf(bytes) : readStl(bytes);
  if ('status' in read) return read;
  const { form, unit } = 'form' in read ? read : { form: read, unit: null };
  const mesh = checkMesh(form);
  if (mesh) return { status: 'loaded', mesh, unit };
  return faulty('mesh-unreadable', 'has no form: all its triangles lie in one spot. Export it again.');
}
