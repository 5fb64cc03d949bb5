/** What was seen on the page, frame by frame. */
export interface Seen {
  readonly frames: readonly SeenFrame[];
  /** From asking for the figures until they came, ms. */
  readonly answers: readonly number[];
}

interface SeenFrame {
  /** When it began, ms. */
  readonly at: number;
  /** From the first move of the pointer in it until it was handed to the screen, ms; null without one. */
  readonly work: number | null;
  /** How far the part stood from where the pointer has it, px. */
  readonly off: number;
}

interface Grip {
  /** Of what gives the figures. */
  readonly address: string;
  /** The part, as a selector. */
  readonly part: string;
  /** Where the pointer takes it up, px from the left; null to leave it alone. */
  readonly grip: number | null;
}

/**
 * To be run in the page: looks at each frame, and fetches what the page asks for; `watched()` tells what was seen. A message
 * to itself comes after the frame was laid out and painted.
 */
export const watch = (grip: Grip): string => `{
  const { address, part, grip } = ${JSON.stringify(grip)};
  const frames = [];
  const answers = [];
  const middle = () => {
    const { left, right } = document.querySelector(part).getBoundingClientRect();
    return (left + right) / 2;
  };
  const began = middle();
  let pointer = grip ?? 0;
  let since = null;
  addEventListener('pointermove', ({ clientX }) => {
    pointer = clientX;
    since ??= performance.now();
  }, true);
  const { port1, port2 } = new MessageChannel();
  let open = null;
  port1.onmessage = () => {
    if (open) frames.push({ ...open, work: open.work === null ? null : performance.now() - open.work });
    open = null;
  };
  const look = at => {
    requestAnimationFrame(look);
    open = { at, work: since, off: grip === null ? 0 : middle() - began - (pointer - grip) };
    since = null;
    port2.postMessage(null);
  };
  requestAnimationFrame(look);
  const fetchFigures = async ({ drag, path, metres }) => {
    const start = performance.now();
    const asked = { path, metres, seen: ['surfaced-side', 'submerged-side'], width: 880, names: 'few' };
    const response = await fetch(address, { method: 'POST', body: JSON.stringify(asked) });
    const { pictures, words, glance } = await response.json();
    answers.push(performance.now() - start);
    const data = { kind: 'preview', drag, metres, pictures, words, glance };
    dispatchEvent(new MessageEvent('message', { data }));
  };
  heard.push = message => {
    if (message.kind === 'preview') void fetchFigures(message);
  };
  globalThis.watched = () => ({ frames, answers });
}`;
