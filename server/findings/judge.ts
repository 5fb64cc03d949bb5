import type { Boat } from '../boat/boat.ts';
import type { Submerged } from '../conditions/submerged.ts';
import type { Surfaced } from '../conditions/surfaced.ts';
import type { Finding } from './finding.ts';
import { judgeSubmerged } from './judgeSubmerged.ts';
import { judgeSurfaced } from './judgeSurfaced.ts';

/** What the boat does outside its limits in either condition; entries that are in no figure are named. */
export function judge(boat: Boat, surfaced: Surfaced, submerged: Submerged): readonly Finding[] {
  const findings = [...judgeSurfaced(boat, surfaced), ...judgeSubmerged(boat, submerged)];
  if (boat.leftOut.length === 0) return findings;
  const names = boat.leftOut.map(name => `“${name}”`).join(', ');
  return findings.map(finding => ({ ...finding, message: `${finding.message} (Figured without ${names}.)` }));
}
