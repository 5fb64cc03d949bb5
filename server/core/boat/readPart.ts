import { isRange } from '../../../schema/forms.ts';
import { PRINT_NOTE } from '../../../schema/handbook/plastics.ts';
import type { PartEntry } from '../../../schema/hull.ts';
import type { Path } from '../../../schema/path.ts';
import type { Quantity, Range } from '../../../schema/quantity.ts';
import type { FileUnits } from '../../../schema/units.ts';
import type { Finding } from '../findings/finding.ts';
import type { Cuttable } from '../geometry/cut/immersion.ts';
import { scale, type Vec3 } from '../geometry/form/vector.ts';
import { densityText, lengthText, massText } from '../wording/numbers.ts';
import type { Part, WrittenExtent, WrittenPlace } from './boat.ts';
import { readSeveral } from './copies.ts';
import { densityOf, type KnownDensity } from './density.ts';
import { entryFault, valueFault } from './fault.ts';
import { USES } from './formUse.ts';
import { heldWords } from './holds.ts';
import type { Placed } from './placed.ts';
import { placeEntry } from './placing.ts';
import type { ReadingContext, Setting } from './readingContext.ts';
import { checkWeighedInWater, weighedInWater } from './weighedInWater.ts';

/** A part of the payload from its checked entry; null (with findings) when it cannot be in any figure. */
export function readPart(entry: PartEntry, path: Path, around: ReadingContext, findings: Finding[]): Part | null {
  const inside = entry.in ?? null;
  const setting: Setting = { path, around, findings, ...USES.payload(entry), inside };
  return readSeveral(entry, setting, one => readOnePart(one, setting));
}

function readOnePart(entry: PartEntry, setting: Setting): Part | null {
  const { path, around, findings } = setting;
  const known = densityOf(entry, around.stock, path, findings);
  const roomDensity = known.poured ?? known.density;
  const volumeByMass = entry.mass && roomDensity !== null ? entry.mass.value / roomDensity : null;
  const inside = entry.in ?? null;
  const weighed = weighedInWater(entry, setting);
  const placed = placeEntry(entry, weighed?.volume ?? entry.volume?.value ?? volumeByMass, setting);
  if (!placed) return null;
  if (placed.form === null && inside === null) {
    findings.push(volumeUnknown(entry, path));
    return null;
  }
  const body = placed.form ? around.shapes.solidOf(placed.form) : null;
  const mass = massOf(entry, body, roomDensity, path, findings);
  if (mass === null) return null;
  if (weighed) checkWeighedInWater(entry, weighed, { placed, volume: body?.volume ?? null, known }, setting);
  else if (entry.mass && body && placed.measured)
    checkDensity(entry, mass, body.volume, known, { path, around, findings });
  // Between the shot there is water.
  const ofMetal = known.poured !== null && known.density !== null ? mass / known.density : null;
  const middle = body ? scale(body.moment, 1 / body.volume) : placed.centre;
  const bounds = placed.form ? around.shapes.boundsOf(placed.form) : placed;
  return {
    path,
    name: entry.name,
    copies: 1,
    mass,
    massFrom: entry.mass ? 'scale' : 'form',
    centroid: balanced(middle, entry.balance),
    form: placed.form,
    volume: inside === null && body ? (weighed?.volume ?? ofMetal ?? body.volume) : 0,
    inside,
    material: known.material?.key ?? entry.material ?? null,
    materialWords: entry.material ?? null,
    fixed: entry.fixed ?? true,
    pinned: entry.fixed === true,
    isLearned: entry.learned ?? false,
    from: bounds.from,
    to: bounds.to,
    holds: (entry.holds ?? []).map(({ name }) => name),
    worked: [...workedOut(placed, around.units), ...(weighed ? [weighed.words] : []), ...heldWords(entry, setting)],
    written: writtenPlace(entry),
  };
}

/** A balance point of its own does not move with the form, so such an entry is not moved. */
function writtenPlace(entry: PartEntry): WrittenPlace | null {
  if (!entry.station || entry.balance?.station || entry.balance?.offset) return null;
  if (entry.profile || entry.sections || entry.mesh || entry.forms) return null;
  const written = (extent: Quantity | Range): WrittenExtent => ({
    isRange: isRange(extent),
    unit: extent.unit,
    sigma: extent.sigma,
  });
  return {
    station: written(entry.station),
    offset: entry.offset ? written(entry.offset) : null,
    row: 0,
    isPaired: false,
  };
}

/** The balance point where the entry gives one, else the form's centroid, axis by axis. */
export function balanced(centroid: Vec3, balance: PartEntry['balance']): Vec3 {
  return [
    balance?.station?.value ?? centroid[0],
    balance?.offset?.value ?? centroid[1],
    balance?.height?.value ?? centroid[2],
  ];
}

/** Sizes that the program worked out, in the words of the trade. */
export function workedOut(placed: Placed, units: FileUnits): readonly string[] {
  const words = { station: 'length', offset: 'breadth', height: 'depth' } as const;
  if (placed.solved.length === 0 && !placed.measured && placed.form?.shape === 'ball') {
    return [`taken as a ball of ${lengthText(2 * placed.form.radius, units)}`];
  }
  return [...placed.solved.map(([axis, size]) => `${words[axis]} ${lengthText(size, units)}`), ...placed.words];
}

function massOf(
  entry: PartEntry,
  body: Cuttable | null,
  density: number | null,
  path: Path,
  findings: Finding[],
): number | null {
  if (entry.mass) return entry.mass.value;
  if (body && density !== null) return body.volume * density;
  const missing = body
    ? 'Weigh it (“mass: 310 g”), or name its material and the program weighs it by its form.'
    : 'Weigh it: “mass: 310 g”.';
  findings.push(entryFault('mass-unknown', path, `“${entry.name}” has no mass. ${missing}`));
  return null;
}

function volumeUnknown(entry: PartEntry, path: Path): Finding {
  const heavy = entry.mass ? 'its material (“material: brass”)' : 'its mass and material';
  return entryFault(
    'volume-unknown',
    path,
    `“${entry.name}” lies in the water, but what it displaces cannot be known. Give ${heavy}, its form (“round: 20 mm”), “inWater: 22 g” or “volume: 32 ml”. Or does it lie in a compartment (“in:”)?`,
  );
}

interface Checking {
  readonly path: Path;
  readonly around: ReadingContext;
  readonly findings: Finding[];
}

/** Mass, form and material all given: the scale and the tape must agree with the handbook's range. */
function checkDensity(entry: PartEntry, mass: number, volume: number, known: KnownDensity, checking: Checking): void {
  const { material } = known;
  if (!material || entry.density || volume <= 0) return;
  const density = mass / volume;
  const [least, most] = material.poured?.range ?? material.range;
  // A tape reads a small piece to a few per cent; inside that the scale is believed.
  if (density >= least * 0.95 && density <= most * 1.05) return;
  const { units } = checking.around;
  const [from, to] = [massText(least * volume, units), massText(most * volume, units)];
  const expected = from === to ? from : `${from} to ${to}`;
  const voids = density < least && material.note === PRINT_NOTE ? ` ${PRINT_NOTE}` : '';
  checking.findings.push(
    valueFault(
      'density-unlikely',
      [...checking.path, 'mass'],
      `${massText(mass, units)} in this form is ${densityText(density)}; ${entry.material} is ${least} to ${densityText(most)}, so the scale should have shown ${expected}. Check the sizes, the mass and the material.${voids}`,
      { severity: 'warning' },
    ),
  );
}
