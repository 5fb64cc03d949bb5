import { describe, expect, test } from 'vitest';
import type { Finding } from '../../server/core/findings/finding.ts';
import { createBoatService } from '../../server/service/service.ts';
import { boatText } from '../helpers/boatText.ts';
import { probe, probeWith } from '../helpers/probe.ts';
import { sessionOfTest } from '../helpers/sessionOfTest.ts';

const uri = 'file:///probe.boat.yaml';
const service = createBoatService();

const height = (figure: number) => boatText`
  height: ${figure} mm
      in: hold`;

/** The probe with a battery so high that it comes back from a small heel only. */
const tender = (battery: number, at = 45): string =>
  probe(['mass: 800 g', `mass: ${battery} g`], [height(30), height(at)], [height(20), height(at === 45 ? 40 : at)]);

const codesOf = (sent: { readonly diagnostics: readonly { readonly code?: unknown }[] }) =>
  sent.diagnostics.map(({ code }) => code);

const NOTHING = { diagnostics: [] };

describe('what a boat does when knocked over', () => {
  const settled = service.analyse(tender(1200)).settled.all();
  const last = service.lastKnown(settled, null)!;

  test('is found after what it does at rest, and stays told meanwhile', () => {
    const changed = service.analyse(tender(1201), settled);
    expect(changed.said.inMotion.isDone()).toBe(false);
    const meanwhile = service.meanwhile(changed, last);
    expect(changed.said.inMotion.isDone()).toBe(false);
    expect(meanwhile.findings.map(({ code }) => code)).toContain('small-range');
    expect(meanwhile.findings.filter(({ code }) => code !== 'small-range')).toEqual(
      changed.findings.filter(({ code }) => code !== 'small-range'),
    );
  });

  test('is not told of a boat that floats no more, or is not read whole', () => {
    for (const text of [tender(9000), tender(1200).replace('1200 g', 'heavy')]) {
      const changed = service.analyse(text, settled);
      expect(changed.said.inMotion.isDone()).toBe(true);
      expect(service.meanwhile(changed, last).findings.map(({ code }) => code)).not.toContain('small-range');
    }
  });

  test('goes from the editor once it is looked at again, and comes back', async () => {
    const session = await sessionOfTest();
    await session.open(uri, tender(1200));
    await expect.poll(() => codesOf(session.published.at(-1) ?? NOTHING), { timeout: 20_000 }).toContain('weigh-next');
    for (const [version, text, isTold] of [
      [2, tender(1200, 20), false],
      [3, tender(1200), true],
    ] as const) {
      await session.change(uri, version, text);
      await expect
        .poll(() => codesOf(session.published.at(-1)!).includes('small-range'), { timeout: 20_000 })
        .toBe(isTold);
      expect(session.published.at(-1)?.version).toBe(version);
    }
    // First what is at rest, the rest as it was; then what is in motion.
    const first = session.published.find(({ version }) => version === 2)!;
    expect(codesOf(first)).toContain('small-range');
  });
});

describe('what lies where it cannot', () => {
  const part = (name: string, station: string) =>
    `{ name: ${name}, mass: 10 g, station: ${station}, offset: -20 to 20 mm, height: 10 to 30 mm, in: hold }`;
  const parts = [part('pin', '300 to 340 mm'), part('box', '310 to 350 mm')];
  const text = probeWith(...parts);
  const settled = service.analyse(text).settled.all();
  const last = service.lastKnown(settled, null)!;
  const placesOf = (told: { readonly findings: readonly Finding[] }) =>
    told.findings.filter(({ code }) => code === 'same-room').map(({ place }) => place);

  test('stays told while nothing but figures is edited, and is found afterwards', () => {
    expect(placesOf(settled)).toHaveLength(1);
    const changed = service.analyse(text.replace('300 to 340', '300 to 309'), settled);
    expect(placesOf(service.meanwhile(changed, last))).toEqual(placesOf(settled));
    expect(service.lastKnown(changed, last)!.places).toBe(last.places);
    changed.file.places.found.all();
    expect(placesOf(service.meanwhile(changed, last))).toEqual([]);
    expect(service.lastKnown(changed, last)!.places).toBe(changed.file.places);
  });

  test('stands with its entry at once where another goes in before it', () => {
    const more = probeWith(part('cap', '20 to 30 mm'), ...parts);
    const changed = service.analyse(more, settled);
    expect(placesOf(service.meanwhile(changed, last))).toEqual(placesOf(service.analyse(more)));
    expect(placesOf(changed)).not.toEqual(placesOf(settled));
  });
});
