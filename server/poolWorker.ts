/** The core in a worker of the poolside page: answers each day that it is asked about, the sooner first. */
import type { MeshFile } from './core/meshFiles/meshFile.ts';
import { missingMesh } from './core/meshFiles/meshFile.ts';
import { readMeshFile } from './core/meshFiles/readMeshFile.ts';
import { createPoolside } from './core/poolside/answer.ts';
import type { FromWorker, ToWorker } from './core/poolside/messages.ts';

/** What is used of the worker's own scope. */
export interface PoolScope {
  onmessage: ((event: { readonly data: ToWorker }) => void) | null;
  postMessage(message: FromWorker): void;
}

/** A stretch of work after which messages are heard, ms. */
const STRETCH = 20;

type Ask = ReturnType<typeof createPoolside>;

/** Answers the page. */
export function answerPoolside(scope: PoolScope): void {
  let ask: Ask | null = null;
  let asked = 0;

  const answer = ({ turn, day }: Extract<ToWorker, { kind: 'day' }>): void =>
    attempt(turn, () => {
      const found = ask?.(day);
      if (!found) return;
      scope.postMessage({ kind: 'view', turn, view: found.view });
      const advise = (): void => scope.postMessage({ kind: 'advice', turn, advice: found.advice.all() });
      // While pieces are being put aboard the advice stays what it was.
      const isKnown = found.advice.step();
      if (isKnown) advise();
      workOn(turn, found.settled.step, () => {
        scope.postMessage({ kind: 'view', turn, view: found.settled.all() });
        if (!isKnown) workOn(turn, found.advice.step, advise);
      });
    });

  /** Does the steps of a work, in stretches, and then what is to be done with it; given up when a later turn is asked for. */
  const workOn = (turn: number, step: () => boolean, done: () => void): void => {
    if (turn !== asked) return;
    attempt(turn, () => {
      const end = performance.now() + STRETCH;
      let isDone = step();
      // Ends: by the clock.
      while (!isDone && performance.now() < end) isDone = step();
      if (isDone) done();
      else setTimeout(() => workOn(turn, step, done));
    });
  };

  /** Whatever fails of ours is told; the page goes on keeping what is read. */
  const attempt = (turn: number, run: () => void): void => {
    try {
      run();
    } catch (problem) {
      scope.postMessage({ kind: 'failed', turn, reason: problem instanceof Error ? problem.message : String(problem) });
    }
  };

  scope.onmessage = ({ data }) => {
    if (data.kind === 'boat') ask = askerFor(data.boat);
    else {
      asked = data.turn;
      // Turns that came meanwhile are heard first: only the last one is answered.
      setTimeout(() => data.turn === asked && answer(data));
    }
  };
}

function askerFor({ text, meshes }: Extract<ToWorker, { kind: 'boat' }>['boat']): Ask {
  const files = new Map<string, MeshFile>(meshes.map(({ name, base64 }) => [name, readMeshFile(bytesOf(base64))]));
  return createPoolside(text, name => files.get(name) ?? missingMesh());
}

const bytesOf = (base64: string): Uint8Array => Uint8Array.from(atob(base64), character => character.charCodeAt(0));
