import { execFileSync } from 'node:child_process';
import { type PreviewParams, type PreviewResult, previewRequest } from '../../../server/editor/protocol.ts';
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

const FRAMES = 120;

/** What is in sight of the sheet beside the text: the panel asks for no other pictures. */
const SEEN = ['surfaced-side', 'submerged-side'];

/** Share of the frames of a drag that come within 16 ms: a part moved along the sheet, two millimetres a frame. */
export async function dragOf(contender: Contender, text: string, path: string): Promise<number> {
  const talk = await startTalk(contender);
  const known = talk.diagnostics();
  talk.open(URI, text);
  await known;
  await talk.atRest();
  const times: number[] = [];
  for (let frame = 0; frame < 2 * FRAMES; frame += 1) {
    const start = performance.now();
    // Never so near to where it was that the tape does not show it.
    const metres = ((frame % 40) - 19.5) / 500;
    const asked: PreviewParams = { uri: URI, path, metres, seen: SEEN, width: 880, names: 'few' };
    const drawn = await talk.connection.sendRequest<PreviewResult>(previewRequest, asked);
    if (!drawn) throw new Error('Nothing is drawn.');
    if (frame >= FRAMES) times.push(performance.now() - start);
  }
  talk.end();
  return times.filter(time => time <= 16).length / times.length;
}
