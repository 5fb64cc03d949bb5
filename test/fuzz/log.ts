/** Something that shall never be, and the text that it came of. */
export interface Fault {
  readonly round: number;
  readonly what: string;
  readonly how: string;
  readonly text: string;
}

/** What was tried. */
export type About = Omit<Fault, 'what'>;

/** What is heard while the program is tried. */
export interface Log {
  /** Called for each as it is found. */
  fault(fault: Fault): void;
  /** Something of a kind was tried, and took so much of the processor’s time, ms: a busy machine counts no more than a quiet one. */
  tried(kind: string, about: About, milliseconds: number): void;
}

/** Runs something; what is thrown is a fault. */
export function attempt<T>(log: Log, about: About, kind: string, run: () => T): T | undefined {
  const start = process.cpuUsage();
  try {
    return run();
  } catch (problem) {
    log.fault({ ...about, what: problem instanceof Error ? (problem.stack ?? problem.message) : String(problem) });
    return undefined;
  } finally {
    log.tried(kind, about, process.cpuUsage(start).user / 1000);
  }
}
