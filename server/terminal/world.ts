import type { PoolsideFiles } from '../editor/poolsidePage.ts';
import { type Paint, plainPaint } from '../service/service.ts';
import { printable, printableInLine, printableText } from './printable.ts';

/** What the command line touches of the world, so that tests can stand in for it. */
export interface World {
  readonly version: string;
  /** Text of a boat file, `-` for what is piped in; this and what follows throw an error with a plain message. */
  readonly readFile: (name: string) => string;
  /** The same of a page that was made of one, which is longer. */
  readonly readPage: (name: string) => string;
  /** Puts `now` in the place of the text `was` of a boat file. */
  readonly rewriteFile: (name: string, was: string, now: string) => void;
  /** Writes what was made from the file `from`, if it was from one, to a file of its own; made only where that may be. */
  readonly writeOutput: (
    name: string,
    content: () => string | Uint8Array,
    options: { from: string | null; overwrite: boolean },
  ) => void;
  /** A page as it is printed. */
  readonly pdfOf: (html: string) => Uint8Array;
  /**
   * Bytes of a file beside another; null when it is not there, 'outside' when it leads out of that one's folder. Throws as
   * `readFile` does.
   */
  readonly readBeside: (boatFile: string, name: string) => Uint8Array | 'outside' | null;
  /** What the poolside page is made of; throws as `readFile` does. */
  readonly readPoolsideFiles: () => PoolsideFiles;
  readonly out: (text: string) => void;
  /** Puts out what was made, a page or a boat file, as it is. */
  readonly document: (text: string) => void;
  readonly err: (text: string) => void;
  /** What is being done, on a line that the next one takes the place of; null when it is done. */
  readonly progress: (text: string | null) => void;
  /** Output goes to a terminal that shows colours. */
  readonly isTerminal: boolean;
}

/** Exit codes. */
export const OK = 0;
export const ERRORS_FOUND = 1;
export const WRONG_USE = 2;

/** Does something with files; false, and said with the file's name, when that cannot be. */
export function attempted(name: string, world: World, run: () => void): boolean {
  try {
    run();
    return true;
  } catch (problem) {
    world.err(`${printableInLine(`${name}: ${problem instanceof Error ? problem.message : String(problem)}`)}.\n`);
    return false;
  }
}

/** The world with what comes from strangers made harmless. */
export interface SafeWorld extends World {
  /** Puts out a text with its colours, where they are welcome, and with no other, whatever a name says. */
  readonly painted: (say: (paint: Paint) => string) => void;
}

export function safely(world: World, isJson: boolean): SafeWorld {
  return {
    ...world,
    out: text => world.out(isJson ? printableText(text) : printable(text)),
    err: text => world.err(printable(text)),
    progress: text => world.progress(text && printable(text)),
    painted(say) {
      if (!world.isTerminal) {
        world.out(printable(say(plainPaint)));
        return;
      }
      // No name can hold it.
      const mark = crypto.randomUUID();
      const ink = (code: number) => (text: string) => `${mark}${code}m${text}${mark}0m`;
      const text = say({ heading: ink(1), good: ink(32), bad: ink(31) });
      world.out(printable(text).replaceAll(mark, '\u001b['));
    },
  };
}
