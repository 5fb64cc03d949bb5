import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { Browser } from 'playwright-core';
import { type PreviewParams, type PreviewResult, previewRequest } from '../../../server/editor/protocol.ts';
import { openStage } from '../../editor/panelStage.ts';
import { launchBrowser } from '../../editor/session.ts';
import { URI } from '../peer/session.ts';
import { type Contender, startTalk, type Talk } from '../peer/talk.ts';
import { type Seen, watch } from './watch.ts';

/*
 * A part dragged along the trim sheet in a real browser, the real page fed by the real server in a process of its own. What
 * stands between the two in an editor is left out. It asserts nothing.
 */

/** What a drag looked like. */
export interface DragMeasured {
  /** Percentage of the screen’s frames that came in time, and the same for the same moves with nothing in the hand. */
  readonly frames: number;
  readonly framesOfNothing: number;
  /** Percentage of the frames in which the part stood under the pointer, within a pixel. */
  readonly followed: number;
  /** From a move of the pointer until its frame was handed to the screen, median, ms; and for the moves of nothing. */
  readonly work: number;
  readonly workOfNothing: number;
  /** From asking for the figures until they come to the page, median, ms. */
  readonly figures: number;
}

const MOVES = 240;
/** Of a screen, ms. */
const FRAME = 1000 / 60;

/** Drags a part of a boat to and fro; the first time is not counted. */
export async function measureDrag(contender: Contender, text: string, part: string): Promise<DragMeasured> {
  const talk = await startTalk(contender);
  const known = talk.diagnostics();
  talk.open(URI, text);
  await known;
  await talk.atRest();
  const server = await serveFigures(talk);
  const browser = await launchBrowser();
  const drag = (isHeld: boolean): Promise<Seen> => dragged(browser, { text, part, server, isHeld });
  try {
    await drag(true);
    const [nothing, held] = [await drag(false), await drag(true)];
    return {
      frames: inTime(held),
      framesOfNothing: inTime(nothing),
      followed: percentage(held.frames, ({ off }) => Math.abs(off) <= 1),
      work: workOf(held),
      workOfNothing: workOf(nothing),
      figures: middle(held.answers),
    };
  } finally {
    await browser.close();
    server.close();
    talk.end();
  }
}

/** Answers what the page asks while a part is held. */
function serveFigures({ connection }: Talk): Promise<Server> {
  const server = createServer(async (request, response) => {
    let body = '';
    for await (const piece of request) body += piece;
    const asked: PreviewParams = { uri: URI, ...JSON.parse(body) };
    const result = await connection.sendRequest<PreviewResult>(previewRequest, asked);
    response.writeHead(200, { 'Access-Control-Allow-Origin': '*', 'Content-Type': 'application/json' });
    response.end(JSON.stringify(result));
  });
  return new Promise(resolved => server.listen(0, '127.0.0.1', () => resolved(server)));
}

interface Drag {
  readonly text: string;
  readonly part: string;
  readonly server: Server;
  readonly isHeld: boolean;
}

async function dragged(browser: Browser, { text, part, server, isHeld }: Drag): Promise<Seen> {
  const { page } = await openStage(browser, { text, theme: 'light', width: 880, zoom: 1 });
  try {
    const { port } = server.address() as AddressInfo;
    const body = `[data-picture="surfaced-side"] [data-path='${part}'] .body`;
    await page.locator(body).evaluate(element => element.scrollIntoView({ block: 'center' }));
    const box = (await page.locator(body).boundingBox())!;
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await page.mouse.move(x, y);
    await page.evaluate(watch({ address: `http://127.0.0.1:${port}/`, part: body, grip: isHeld ? x : null }));
    if (isHeld) await page.mouse.down();
    const moves: Promise<void>[] = [];
    const start = performance.now();
    for (let move = 1; move <= MOVES; move += 1) {
      await new Promise(resolved => setTimeout(resolved, Math.max(0, start + move * FRAME - performance.now())));
      moves.push(page.mouse.move(x + 60 * Math.sin(move / 20), y));
    }
    await Promise.all(moves);
    return (await page.evaluate('watched()')) as Seen;
  } finally {
    await page.close();
  }
}

/** Frames that came with the screen’s next, of all that the screen had. */
function inTime({ frames }: Seen): number {
  const gaps = frames.slice(1).map(({ at }, i) => Math.max(1, Math.round((at - frames[i]!.at) / FRAME)));
  return (100 * gaps.filter(gap => gap === 1).length) / gaps.reduce((sum, gap) => sum + gap, 0);
}

const workOf = ({ frames }: Seen): number => middle(frames.flatMap(({ work }) => work ?? []));

const percentage = <T>(all: readonly T[], counts: (one: T) => boolean): number =>
  (100 * all.filter(counts).length) / all.length;

const middle = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1]!;
