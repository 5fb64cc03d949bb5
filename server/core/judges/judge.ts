import type { Boat } from '../boat/boat.ts';
import type { Passage } from '../conditions/passage.ts';
import type { Submerged } from '../conditions/submerged.ts';
import type { Surfaced } from '../conditions/surfaced.ts';
import type { Finding } from '../findings/finding.ts';
import { judgePassage } from './judgePassage.ts';
import { judgeSubmerged } from './judgeSubmerged.ts';
import { judgeSurfaced } from './judgeSurfaced.ts';

/** What the boat does outside its limits in either condition, or why nobody knows; entries in no figure are named. */
export function judge(boat: Boat, surfaced: Surfaced, submerged: Submerged, passage: Passage): readonly Finding[] {
  const findings = [
    ...(surfaced.status === 'empty' || submerged.status === 'empty' ? [nothingFloats] : []),
    ...judgeSurfaced(boat, surfaced),
    ...judgeSubmerged(boat, submerged),
    ...judgePassage(boat, passage),
  ];
  if (boat.leftOut.length === 0) return findings;
  const names = boat.leftOut.map(name => `“${name}”`).join(', ');
  // What is missing may be what brings the boat inside its limits: no alarm before it is known.
  return findings.map(finding => ({
    ...finding,
    severity: 'information',
    message: `${finding.message} (Figured without ${names}.)`,
  }));
}

/** Missing figures are explained too: a file without limits broken is not yet a boat within them. */
const nothingFloats: Finding = {
  code: 'nothing-floats',
  severity: 'information',
  message:
    'Nothing in the file floats yet, so there are no figures. Under “hull:” give it a compartment or a shell, and under “payload:” what it carries.',
  place: { on: 'key', path: ['hull'] },
};
