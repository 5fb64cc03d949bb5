import { MOLAR_MASS } from '../../../schema/blow.ts';
import type { TankEntry } from '../../../schema/hull.ts';
import type { Blowing } from './boat.ts';
import { type Setting, tell } from './readingContext.ts';

/** How a tank is blown, and what of it says nothing or only half. */
export function readBlow({ blow, kind }: TankEntry, setting: Setting): Blowing | null {
  if (!blow) return null;
  const { depth, bottle, pressure, mass, gas = 'carbon dioxide' } = blow;
  const unused = (key: string, why: string) =>
    tell(setting, 'key-without-use', ['blow', key], `“${key}” changes nothing here: ${why}`, { severity: 'warning' });
  if (mass && (bottle || pressure)) unused(bottle ? 'bottle' : 'pressure', 'the charge is given by its “mass”.');
  if (blow.gas && !mass) unused('gas', 'of a bottle its size and pressure tell all.');
  if (!mass && Boolean(bottle) !== Boolean(pressure)) {
    const [said, lacks] = bottle ? ['bottle', 'pressure: 6 bar'] : ['pressure', 'bottle: 60 ml'];
    unused(said!, `a charge is told by the bottle and what it is filled to: add “${lacks}”.`);
  }
  if (kind === 'piston') unused('depth', 'a piston drives its water out by itself.');
  return {
    depth: depth.value,
    bottle: !mass && bottle && pressure ? { volume: bottle.value, pressure: pressure.value } : null,
    gas: mass ? { mass: mass.value, molarMass: MOLAR_MASS[gas] } : null,
  };
}
