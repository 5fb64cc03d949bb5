import { readFileSync } from 'node:fs';
import { afterEach, expect, test } from 'vitest';
import { heard, service } from '../helpers/analysed.ts';
import { type Session, startSession } from '../helpers/client.ts';

const uri = 'file:///dunlin.boat.yaml';
/** The reading that was a slip in the sample, so near to the others that it takes the whole model to tell. */
const text = readFileSync(new URL('../../samples/dunlin.boat.yaml', import.meta.url), 'utf8').replace('96 mm', '74 mm');

let session: Session;
afterEach(() => session?.end());

async function openAndSettle(): Promise<void> {
  session = await startSession();
  await session.open(uri, text);
  await session.settle();
  session.clock.step(100);
  await session.settle();
}

const codesOf = (diagnostics: readonly { readonly code?: unknown }[]): readonly string[] =>
  diagnostics.map(({ code }) => String(code));

test('what the trials say is told as soon as it is found', async () => {
  await openAndSettle();
  await expect.poll(() => codesOf(session.published.at(-1)!.diagnostics), { timeout: 60_000 }).toContain('trial-slip');
  const last = session.published.at(-1)!;
  expect(codesOf(last.diagnostics)).toContain('trial-differs');
  expect(last.version).toBe(session.published[0]!.version);
});

test('a change in between ends the search for it, and the new text is told', async () => {
  await openAndSettle();
  await session.change(uri, 2, text.replace(/trials:[\s\S]*$/, ''));
  await session.settle();
  await expect.poll(() => session.published.at(-1)?.version, { timeout: 20_000 }).toBe(2);
  const told = session.published.length;
  await new Promise(resolve => setTimeout(resolve, 300));
  const last = session.published.at(-1)!;
  expect(session.published.slice(told).filter(({ version }) => version !== 2)).toEqual([]);
  const codes = codesOf(last.diagnostics);
  for (const code of ['trial-slip', 'trial-differs', 'trial-not-comparable']) expect(codes).not.toContain(code);
});

test('with what the trials say found in steps the findings are those of all at once', () => {
  const inSteps = service.analyse(text);
  let steps = 1;
  while (!inSteps.settled.step()) steps++;
  expect(steps).toBeGreaterThan(20);
  expect(inSteps.settled.all().findings).toEqual(heard(text).findings);
  expect(inSteps.settled.all().said.ofBoat).not.toEqual(inSteps.said.ofBoat);
});
