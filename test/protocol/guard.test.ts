import { describe, expect, it } from 'vitest';
import { CancellationTokenSource, LSPErrorCodes, ResponseError } from 'vscode-languageserver';
import { guard } from '../../server/editor/guard.ts';

/** A host whose clock only work moves on, and whose turns are taken one by one. */
function host() {
  const waiting: (() => void)[] = [];
  let time = 0;
  return {
    host: {
      defer: (run: () => void) => void waiting.push(run),
      log: (message: string) => {
        throw new Error(message);
      },
      now: () => time,
      refusal: () => null,
    },
    /** Takes so long, ms. */
    work: (milliseconds: number): void => {
      time += milliseconds;
    },
    turn: (): void => waiting.shift()?.(),
    left: () => waiting.length,
  };
}

describe('a request that takes long', () => {
  it.each<readonly [what: string, last: number, turns: number]>([
    ['is answered in a turn of its own after a long one', 20, 3],
    ['is answered at once after a short one', 1, 2],
  ])('%s', async (_, last, turns) => {
    const { host: at, work, turn, left } = host();
    const steps = [12, last];
    const answers: string[] = [];
    const answer = guard(
      at,
      { name: 'printing', fallback: '', given: [{}] },
      () => {
        answers.push('printed');
        return 'printed';
      },
      () => {
        work(steps.shift() ?? 0);
        return steps.length === 0;
      },
    );
    let taken = 0;
    // Ends: no more turns wait.
    while (left() > 0) {
      expect(answers).toEqual([]);
      turn();
      taken += 1;
    }
    expect(taken).toBe(turns);
    expect(await answer).toBe('printed');
  });

  it('is not answered when it is cancelled before that turn', async () => {
    const { host: at, work, turn } = host();
    const { token, cancel } = tokenSource();
    const answer = guard(
      at,
      { name: 'printing', fallback: '', given: [{}, token] },
      () => 'printed',
      () => {
        work(20);
        return true;
      },
    );
    turn();
    cancel();
    turn();
    const given = await answer;
    expect(given instanceof ResponseError && given.code).toBe(LSPErrorCodes.RequestCancelled);
  });
});

function tokenSource() {
  const source = new CancellationTokenSource();
  return { token: source.token, cancel: () => source.cancel() };
}
