import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { trimSheet } from '../../server/core/drawing/trimSheet.ts';
import { offWaterline } from '../../server/core/figures/offWaterline.ts';
import { heard } from '../helpers/analysed.ts';
import { circleOf, parseXml, pointsOf, withClass } from '../helpers/svg.ts';

const sample = (name: string) =>
  heard(readFileSync(new URL(`../../samples/${name}.boat.yaml`, import.meta.url), 'utf8'));

const drawn = (analysis: ReturnType<typeof heard>, id: 'surfaced-side' | 'submerged-side') => {
  const svg = parseXml(trimSheet(analysis, { only: [id] }).pictures[0]!.svg);
  return { svg, scale: Number(svg.attributes['data-scale']), trim: Number(svg.attributes['data-trim']) };
};

/** What two decimals of a user unit may hide. */
const ROUNDED = 0.011;

describe.each(['petrel', 'curlew', 'sprat'])('%s from the side, read back from the picture', name => {
  const analysis = sample(name);
  const { surfaced, submerged, boat } = analysis;
  if (surfaced.status !== 'afloat' || submerged.status !== 'neutral') throw new Error('expected to float and to hang');

  it('the painted waterline stands as far from the water as the figures say, at both ends', () => {
    const { svg, scale } = drawn(analysis, 'surfaced-side');
    const [[, surface]] = pointsOf(withClass(svg, 'surface')[0]!.attributes.d!) as [[number, number]];
    const [bow, stern] = pointsOf(withClass(svg, 'painted')[0]!.attributes.d!);
    const off = offWaterline(boat, surfaced);
    // On the paper heights are square to the water, drafts are square to the baseline: the trim's cosine between them.
    const cosine = Math.cos(surfaced.attitude.trim);
    expect((surface - bow![1]) / scale / cosine).toBeCloseTo(off.bowUp!, 4);
    expect((surface - stern![1]) / scale / cosine).toBeCloseTo(off.sternUp!, 4);
    expect(Math.hypot(stern![0] - bow![0], stern![1] - bow![1]) / scale).toBeCloseTo(
      Math.hypot(boat.length, boat.waterline!.stern - boat.waterline!.bow),
      4,
    );
  });

  it('says its scale and its trim', () => {
    expect(drawn(analysis, 'surfaced-side').trim).toBeCloseTo(surfaced.attitude.trim, 3);
    expect(drawn(analysis, 'submerged-side').trim).toBeCloseTo(submerged.trim, 3);
  });

  it('B stands over G, as far as the figures say', () => {
    const { svg, scale } = drawn(analysis, 'submerged-side');
    const [g, b] = ['mark-G', 'mark-B'].map(mark => circleOf(withClass(svg, mark)[0]!));
    expect(Math.abs(g![0] - b![0])).toBeLessThan(2 * ROUNDED);
    // Seen from the side a heel shortens the distance by its cosine squared at most.
    const seen = (g![1] - b![1]) / scale;
    expect(Math.abs(seen - submerged.bg)).toBeLessThan(
      (2 * ROUNDED) / scale + submerged.bg * Math.sin(submerged.heel) ** 2,
    );
  });

  it('every entry that was read is there once, with its name', () => {
    const { svg } = drawn(analysis, 'submerged-side');
    const entries = [...boat.shells, ...boat.compartments, ...boat.tanks, ...boat.bays, ...boat.payload];
    const paths = withClass(svg, 'entry').map(({ attributes }) => attributes['data-path']);
    expect([...paths].sort()).toEqual(entries.map(({ path }) => JSON.stringify(path)).sort());
    for (const entry of entries) {
      const group = withClass(svg, 'entry').find(
        ({ attributes }) => attributes['data-path'] === JSON.stringify(entry.path),
      )!;
      expect(group.attributes['aria-label']).toContain(entry.name);
      expect(group.children[0]!.name).toBe('title');
    }
  });

  it('every label of an entry goes to the entry that it names', () => {
    const { svg } = drawn(analysis, 'submerged-side');
    const entries = [...boat.shells, ...boat.compartments, ...boat.tanks, ...boat.bays, ...boat.payload];
    const labels = withClass(svg, 'label').filter(({ attributes }) => attributes['data-of'] !== undefined);
    expect(labels).toHaveLength(entries.length);
    for (const label of labels) {
      const named = entries.find(({ path }) => JSON.stringify(path) === label.attributes['data-of'])!;
      expect(named.name.slice(0, 20)).toBe(label.text.replace('…', '').trimEnd().slice(0, 20));
    }
  });
});
