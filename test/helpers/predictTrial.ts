import type { Boat } from '../../server/core/boat/boat.ts';
import type { Trial } from '../../server/core/boat/trial.ts';
import type { BodyCache } from '../../server/core/bodies/assemble.ts';
import { floatTrial, shownBy } from '../../server/core/trials/pool/predict.ts';

/** What the full model says that this boat would have shown in a trial, one for each reading; null where it could not. */
export function predictTrial(boat: Boat, trial: Trial, cache: BodyCache): readonly (number | null)[] {
  const floatedTrial = floatTrial(boat, trial, cache);
  return trial.readings.map(reading => floatedTrial && shownBy(floatedTrial, reading, boat));
}
