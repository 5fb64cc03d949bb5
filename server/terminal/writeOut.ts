import { writeSync } from 'node:fs';

/**
 * Writes all of a text to an open file or pipe, by its number. Node's own stream for a file takes a disk that fills half-way
 * for written; throws as `writeSync` does.
 */
export function writeOut(file: number, text: string): void {
  const bytes = Buffer.from(text);
  // Ends: each round writes something, or fails.
  for (let at = 0; at < bytes.length; ) at += writeSome(file, bytes, at);
}

/** Bytes that were written. A pipe that is full says “again” and is asked again. */
function writeSome(file: number, bytes: Buffer, from: number): number {
  // Ends: when the other end reads on, or closes.
  for (;;) {
    try {
      return writeSync(file, bytes, from);
    } catch (problem) {
      if ((problem as NodeJS.ErrnoException).code !== 'EAGAIN') throw problem;
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 20);
    }
  }
}
