import { type FaultyMesh, faulty } from './meshFile.ts';

/** Thrown where a package cannot be read any further, and caught where its reading began. */
export class Unreadable extends Error {
  readonly mesh: FaultyMesh;

  constructor(mesh: FaultyMesh) {
    super(mesh.words);
    this.mesh = mesh;
  }
}

/** `why` ends the sentence, in plain words; what it quotes is `quoted`. */
export const damaged = (why: string): Unreadable =>
  new Unreadable(faulty('mesh-unreadable', `is damaged, or no 3MF file inside: ${why}. Export it again.`));
