import { execFileSync } from 'node:child_process';
import { median, URI } from './session.ts';
import { type Contender, startTalk } from './talk.ts';

const STARTS = 7;

/** From the start of the process, medians, ms. */
export interface Start {
  readonly initialized: number;
  readonly diagnostics: number;
}

/** Slips that both find: diagnostics without them were sent before the schema was read. */
const withSlip = (text: string): string => text.replace('kind: fresh', 'kind: lemonade');

/** Each server started over and over, in turn, and a file opened. */
export async function startsOf(contenders: readonly Contender[], text: string): Promise<readonly Start[]> {
  const starts = contenders.map((): Start[] => []);
  for (let round = 0; round < STARTS; round += 1)
    for (const [i, contender] of contenders.entries()) {
      const talk = await startTalk(contender);
      const known = talk.findings();
      talk.open(URI, withSlip(text));
      await known;
      starts[i]!.push({ initialized: talk.initialized, diagnostics: talk.sinceStart() });
      talk.end();
    }
  return starts.map(each => ({
    initialized: median(each.map(({ initialized }) => initialized)),
    diagnostics: median(each.map(({ diagnostics }) => diagnostics)),
  }));
}

/** A command of ours against an empty program of Node, in turn, medians, ms. */
export function commandsOf(args: readonly string[]): { readonly command: number; readonly nothing: number } {
  const time = (given: readonly string[]): number => {
    const start = performance.now();
    execFileSync(process.execPath, given, { stdio: 'ignore' });
    return performance.now() - start;
  };
  const times = Array.from({ length: STARTS }, () => [time(args), time(['-e', '0'])] as const);
  return { command: median(times.map(([each]) => each)), nothing: median(times.map(([, each]) => each)) };
}
