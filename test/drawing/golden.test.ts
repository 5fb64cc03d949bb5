import { expect, it } from 'vitest';
import { type PictureId, trimSheet } from '../../server/core/drawing/trimSheet.ts';
import { heard } from '../helpers/analysed.ts';
import { probe } from '../helpers/probe.ts';

const boat = heard(probe(['150 to 250', '170 to 270']));

/** Looked at in a browser whenever they change. */
it.each<PictureId>(['surfaced-side', 'submerged-section', 'righting-lever'])('%s of a small boat', async id => {
  const { svg } = trimSheet(boat, { only: [id] }).pictures[0]!;
  await expect(`${svg.replaceAll('><', '>\n<')}\n`).toMatchFileSnapshot(`golden/${id}.svg.txt`);
});
