import type { Position } from 'vscode-languageserver-types';
import { versionsOf } from '../typed.ts';
import { type Contender, startTalk } from './talk.ts';

/** Medians of one server with one file open. */
export interface Measured {
  /** From an edit to the next diagnostics, ms. */
  readonly diagnostics: number;
  /** Of an edit and all that follows it, ms of processor time. */
  readonly processor: number;
  /** From an edit and a question right after it to the answer, ms. */
  readonly hover: number;
  readonly completion: number;
  /** Resident set after all that, MB. */
  readonly memory: number;
}

export interface BoatFile {
  readonly text: string;
  readonly mesh?: Uint8Array;
}

/** Rounds, and those of them that are not counted: until the code runs as it does after a while of typing. */
const ROUNDS = { type: [60, 30], hover: [15, 4], completion: [15, 4] } as const;
export const URI = 'file:///benchmark.boat.yaml';

/** The same edits to the same file for each server, in turn, round after round. */
export async function measure(contenders: readonly Contender[], file: BoatFile): Promise<readonly Measured[]> {
  const typists: Typist[] = [];
  for (const contender of contenders) typists.push(await typistOf(contender, file));
  for (const does of ['type', 'hover', 'completion'] as const) {
    const [rounds, warm] = ROUNDS[does];
    for (let round = 0; round < rounds; round += 1) for (const typist of typists) await typist[does](round >= warm);
  }
  return Promise.all(typists.map(typist => typist.stop()));
}

/** Somebody who types a digit into the mass in the middle of a file, and takes it out again. */
interface Typist {
  type(counts: boolean): Promise<void>;
  hover(counts: boolean): Promise<void>;
  completion(counts: boolean): Promise<void>;
  stop(): Promise<Measured>;
}

async function typistOf(contender: Contender, { text, mesh }: BoatFile): Promise<Typist> {
  const talk = await startTalk(contender, mesh);
  const { before, digit, after } = placeOf(text);
  const opened = talk.diagnostics();
  talk.open(URI, text);
  await opened;
  let use = await talk.atRest();
  let version = 1;
  const times = { type: [] as number[], processor: [] as number[], hover: [] as number[], completion: [] as number[] };
  const edit = (): void => {
    version += 1;
    const isTyped = version % 2 === 0;
    void talk.connection.sendNotification('textDocument/didChange', {
      textDocument: { uri: URI, version },
      contentChanges: [{ range: { start: before, end: isTyped ? before : after }, text: isTyped ? digit : '' }],
    });
  };
  const ask = async (question: 'hover' | 'completion', counts: boolean): Promise<void> => {
    const known = talk.diagnostics();
    const start = performance.now();
    edit();
    const position: Position = { line: before.line, character: text.split('\n')[before.line]!.indexOf('mass') };
    const answer = await talk.connection.sendRequest(`textDocument/${question}`, {
      textDocument: { uri: URI },
      position,
    });
    if (!answer) throw new Error(`No ${question} from ${contender.name}.`);
    if (counts) times[question].push(performance.now() - start);
    await known;
    use = await talk.atRest();
  };
  return {
    async type(counts) {
      const known = talk.diagnostics();
      const start = performance.now();
      edit();
      await known;
      const taken = performance.now() - start;
      const now = await talk.atRest();
      if (counts) {
        times.type.push(taken);
        times.processor.push(now.processor - use.processor);
      }
      use = now;
    },
    hover: counts => ask('hover', counts),
    completion: counts => ask('completion', counts),
    async stop() {
      const { memory } = await talk.atRest();
      talk.end();
      return {
        diagnostics: median(times.type),
        processor: median(times.processor),
        hover: median(times.hover),
        completion: median(times.completion),
        memory: memory / 2 ** 20,
      };
    },
  };
}

/** Where the digit goes, and where it ends. */
function placeOf(text: string): { readonly before: Position; readonly digit: string; readonly after: Position } {
  const [, typed] = versionsOf(text);
  let at = 0;
  while (text[at] === typed[at]) at += 1;
  const digit = typed.slice(at, at + typed.length - text.length);
  const lines = text.slice(0, at).split('\n');
  const before = { line: lines.length - 1, character: lines.at(-1)!.length };
  return { before, digit, after: { ...before, character: before.character + digit.length } };
}

export const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1]!;
