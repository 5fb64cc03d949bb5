import type { CheckedMesh } from '../geometry/mesh/meshCheck.ts';

/**
 * A mesh file as the rest of the program sees it. Whoever has the file system or the editor at hand loads it; for the
 * same contents they hand out the same object, since entries read before are kept as long as their files stay the same.
 */
export type MeshFile = LoadedMesh | FaultyMesh;

export interface LoadedMesh {
  readonly status: 'loaded';
  /** In the file's own unit and axes. */
  readonly mesh: CheckedMesh;
  /** The unit that the file itself says it is in; null where its format has none (STL). */
  readonly unit: MeshUnit | null;
}

export interface MeshUnit {
  readonly name: string;
  /** m. */
  readonly metres: number;
}

export interface FaultyMesh {
  readonly status: 'faulty';
  readonly code: FaultyMeshCode;
  /** Whole sentences whose first one begins after the file's name: "is cut short. …". */
  readonly words: string;
}

export type FaultyMeshCode = 'mesh-missing' | 'mesh-unreadable' | 'mesh-too-large' | 'mesh-outside';

/** A file by its name as `normalName` has it; null while it is still being loaded. */
export type MeshLookup = (name: string) => MeshFile | null;

export const faulty = (code: FaultyMeshCode, words: string): FaultyMesh => ({ status: 'faulty', code, words });

export const missingMesh = (): FaultyMesh =>
  faulty(
    'mesh-missing',
    'is not there. Its name counts from the folder of the boat file, such as “hull.stl” beside it.',
  );

/** The file is there but the system will not hand it out; `problem` is the system's own word for it. */
export const unreadableMesh = (problem: string): FaultyMesh =>
  faulty('mesh-unreadable', `could not be read: ${problem}`);

export const outsideMesh = (): FaultyMesh =>
  faulty(
    'mesh-outside',
    'lies outside the folder of the boat file. Copy it beside the boat file, and give its name from there.',
  );

/** “1,000,000”: what the system has for it takes some 10 ms at its first use, and one of the words below is made at the start. */
function grouped(count: number): string {
  return String(count).replace(/\B(?=(?:\d{3})+$)/g, ',');
}

/** Bytes that a mesh file may have. */
export const MOST_BYTES = 64 * 1024 * 1024;
/** Triangles that it may have. */
export const MOST_TRIANGLES = 500_000;

export const tooLargeMesh = (bytes: number): FaultyMesh =>
  faulty(
    'mesh-too-large',
    `has ${Math.ceil(bytes / 1024 / 1024)} MB; ${MOST_BYTES / 1024 / 1024} MB is the most that is read. ${SIMPLIFY}`,
  );

export const tooManyTriangles = (): FaultyMesh =>
  faulty('mesh-too-large', `has more than ${grouped(MOST_TRIANGLES)} triangles, the most that are read. ${SIMPLIFY}`);

/** Files that a package may have, wanted or not: a model, its relations, pictures, and perhaps a file for each object. */
export const MOST_PACKED_FILES = 1000;

export const tooManyPackedFiles = (): FaultyMesh =>
  faulty(
    'mesh-too-large',
    `has more than ${grouped(MOST_PACKED_FILES)} files packed in it, the most that are read: a 3MF file has a handful. Export it again.`,
  );

/** Triangles that all meshes of a boat may have together, each as often as the boat has it. */
export const MOST_TRIANGLES_IN_ALL = 2 * MOST_TRIANGLES;

/** One and the same, for entries are read again when what a file holds becomes another. */
export const tooManyInAll: FaultyMesh = faulty(
  'mesh-too-large',
  `is too much beside the others: the meshes of this boat, each as often as it has them, come to more than ${grouped(MOST_TRIANGLES_IN_ALL)} triangles, the most that are held. Export them again more coarsely, or name fewer.`,
);

const SIMPLIFY = 'Export it again more coarsely: a tenth of a millimetre is finer than any boat is built.';
