import type { BayEntry } from '../../../schema/bays.ts';
import type { CompartmentEntry, ShellEntry, TankEntry } from '../../../schema/hull.ts';
import type { Path } from '../../../schema/path.ts';
import type { Finding } from '../findings/finding.ts';
import { canSlice } from '../geometry/cut/solids.ts';
import { scale } from '../geometry/form/vector.ts';
import type { Bay, Compartment, Shell, Tank } from './boat.ts';
import { checkCapacity } from './capacity.ts';
import { readSeveral } from './copies.ts';
import { densityOf } from './density.ts';
import { entryFault, valueFault } from './fault.ts';
import { USES } from './formUse.ts';
import { heldWords } from './holds.ts';
import type { Placed, PlacedEntry } from './placed.ts';
import { placeEntry } from './placing.ts';
import { readBlow } from './readBlow.ts';
import type { ReadingContext, Setting } from './readingContext.ts';
import { balanced, workedOut } from './readPart.ts';
import { tellWall } from './wallCheck.ts';
import { checkWeighedInWater, weighedInWater } from './weighedInWater.ts';

/** A free-flooding shell: its wall volume is mass over density, spread over its surface. */
export function readShell(entry: ShellEntry, path: Path, around: ReadingContext, findings: Finding[]): Shell | null {
  const setting: Setting = { path, around, findings, ...USES.shells(entry) };
  return readSeveral(entry, setting, one => readOneShell(one, setting));
}

function readOneShell(entry: ShellEntry, setting: Setting): Shell | null {
  const { path, around, findings, endsClosed } = setting;
  const placed = placeWhole(entry, 'shell', null, setting);
  const known = densityOf(entry, around.stock, path, findings);
  const { density } = known;
  const weighed = weighedInWater(entry, setting);
  if (density === null && !weighed && entry.material === undefined) {
    findings.push(
      entryFault(
        'volume-unknown',
        path,
        `What the wall of “${entry.name}” displaces cannot be known without its material, such as “material: fibreglass”, or its weight in water, such as “inWater: 280 g”.`,
      ),
    );
  }
  const volume = weighed?.volume ?? (density === null ? null : entry.mass.value / density);
  if (!placed?.form || volume === null) return null;
  const wall = around.shapes.wallOf(placed.form, endsClosed);
  if (weighed) checkWeighedInWater(entry, weighed, { placed, volume: null, known }, setting);
  if (entry.mesh) tellWall(entry.name, volume / wall.area, placed, setting);
  return {
    path,
    name: entry.name,
    copies: 1,
    mass: entry.mass.value,
    massFrom: 'scale',
    centroid: balanced(wall.centroid, entry.balance),
    form: placed.form,
    endsClosed,
    volume,
    holds: (entry.holds ?? []).map(({ name }) => name),
    worked: [...workedOut(placed, around.units), ...(weighed ? [weighed.words] : []), ...heldWords(entry, setting)],
  };
}

/** A watertight compartment by its outer form. */
export function readCompartment(
  entry: CompartmentEntry,
  path: Path,
  around: ReadingContext,
  findings: Finding[],
): Compartment | null {
  const setting: Setting = { path, around, findings, ...USES.compartments(entry) };
  return readSeveral(entry, setting, one => readOneCompartment(one, setting));
}

function readOneCompartment(entry: CompartmentEntry, setting: Setting): Compartment | null {
  const { path, around, findings } = setting;
  const known = densityOf(entry, around.stock, path, findings);
  const weighed = weighedInWater(entry, setting);
  const placed = placeWhole(entry, 'compartment', weighed?.volume ?? null, setting);
  if (!placed?.form) return null;
  const body = around.shapes.solidOf(placed.form);
  // Its density is that of its wall and the air in it: the material says nothing of that.
  if (weighed) {
    const hollow = { ...known, material: null };
    checkWeighedInWater(
      { ...entry, density: undefined },
      weighed,
      { placed, volume: body.volume, known: hollow },
      setting,
    );
  }
  return {
    path,
    name: entry.name,
    copies: 1,
    mass: entry.mass.value,
    massFrom: 'scale',
    centroid: balanced(scale(body.moment, 1 / body.volume), entry.balance),
    form: placed.form,
    volume: weighed?.volume ?? body.volume,
    holds: (entry.holds ?? []).map(({ name }) => name),
    worked: [...workedOut(placed, around.units), ...(weighed ? [weighed.words] : []), ...heldWords(entry, setting)],
  };
}

/** A ballast tank by its inside form. */
export function readTank(entry: TankEntry, path: Path, around: ReadingContext, findings: Finding[]): Tank | null {
  const setting: Setting = { path, around, findings, ...USES.tanks(entry), inside: entry.in ?? null };
  return readSeveral(entry, setting, one => readOneTank(one, setting));
}

function readOneTank(entry: TankEntry, setting: Setting): Tank | null {
  const { path, around, findings } = setting;
  const placed = placeWhole(entry, 'tank', entry.capacity?.value ?? null, setting);
  if (!placed?.form) return null;
  const byForm = around.shapes.solidOf(placed.form).volume;
  if (entry.capacity) checkCapacity(entry, entry.capacity, placed, byForm, setting);
  const hasSurface = entry.kind === 'sealed' || entry.kind === 'vented';
  if (entry.fills !== undefined && entry.kind !== 'piston') {
    findings.push(
      valueFault(
        'key-without-use',
        [...path, 'fills'],
        `Only a piston tank fills from one end; this one is ${entry.kind}.`,
        {
          severity: 'warning',
        },
      ),
    );
  }
  if (entry.cells !== undefined && !hasSurface) {
    findings.push(
      valueFault(
        'key-without-use',
        [...path, 'cells'],
        `A ${entry.kind} tank has no free surface for cells to divide.`,
        {
          severity: 'warning',
        },
      ),
    );
  }
  if (entry.pressure !== undefined && entry.kind !== 'sealed') {
    findings.push(
      valueFault(
        'key-without-use',
        [...path, 'pressure'],
        `Only a sealed tank builds up pressure; this one is ${entry.kind}.`,
        {
          severity: 'warning',
        },
      ),
    );
  }
  const divides = hasSurface && canSlice(placed.form);
  if (hasSurface && !divides && (entry.cells ?? 1) > 1) {
    findings.push(
      valueFault(
        'cells-undivided',
        [...path, 'cells'],
        'A ball, or a round that lies athwart or stands, is not divided into cells here: its water is figured as one, with the larger free surface. Give the tank as a box or a fore-and-aft round, or each cell as a tank of its own.',
        { severity: 'warning' },
      ),
    );
  }
  const cells = divides ? (entry.cells ?? 1) : 1;
  const fill = entry.fill?.value ?? 0;
  if (fill > 1) {
    findings.push(
      valueFault('wrong-quantity', [...path, 'fill'], 'A tank cannot be more than full: expected 0 to 100 %.'),
    );
    return null;
  }
  return {
    path,
    name: entry.name,
    copies: 1,
    form: placed.form,
    capacity: entry.capacity?.value ?? byForm,
    byJug: entry.capacity !== undefined,
    kind: entry.kind,
    inside: entry.in ?? null,
    fill,
    cells,
    fillsFrom: entry.fills ?? 'forward',
    share: entry.share ?? 1,
    pressure: entry.pressure?.value ?? null,
    blow: readBlow(entry, setting),
    worked: workedOut(placed, around.units),
  };
}

/** Room for lead or foam. */
export const readBay = (entry: BayEntry, path: Path): Bay => ({
  path,
  name: entry.name,
  takes: entry.takes,
  inside: entry.in ?? null,
  from: [entry.station.from, entry.offset.from, entry.height.from],
  to: [entry.station.to, entry.offset.to, entry.height.to],
});

/** A form that must follow from the entry's own sizes, and its volume where that was `measured`, m3. */
function placeWhole(
  entry: PlacedEntry & { readonly name: string },
  what: string,
  measured: number | null,
  setting: Setting,
): Placed | null {
  const placed = placeEntry(entry, measured ?? entry.volume?.value ?? null, setting);
  if (!placed) return null;
  if (placed.form) return placed;
  setting.findings.push(
    entryFault(
      'form-unknown',
      setting.path,
      `The ${what} “${entry.name}” needs a form: “round: 76 mm” with a station range, a “profile”, or ranges for station, offset and height.`,
    ),
  );
  return null;
}
