import type { Analysis } from '../core/analysis/analysis.ts';
import { type Paint, plainPaint } from '../core/report/rows.ts';

/** What the command line touches of the world, so that tests can stand in for it. */
export interface World {
  /** Text of a file; throws an error with a plain message when it cannot be read. */
  readonly readFile: (name: string) => string;
  readonly writeFile: (name: string, text: string) => void;
  /**
   * Bytes of a file beside another; null when it is not there, 'outside' when it leads out of that one's folder. Throws as
   * `readFile` does.
   */
  readonly readBeside: (boatFile: string, name: string) => Uint8Array | 'outside' | null;
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  /** Output goes to a terminal: colours and progress are welcome. */
  readonly isTerminal: boolean;
}

/** Exit codes. */
export const OK = 0;
export const ERRORS_FOUND = 1;
export const WRONG_USE = 2;

export const hasErrors = ({ findings }: Analysis): boolean => findings.some(finding => finding.severity === 'error');

/** Colours where they are welcome. */
export function paintFor(world: World): Paint {
  if (!world.isTerminal) return plainPaint;
  const ink = (code: number) => (text: string) => `\u001b[${code}m${text}\u001b[0m`;
  return { heading: ink(1), good: ink(32), bad: ink(31) };
}
