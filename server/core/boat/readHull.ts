import type { BayEntry } from '../../../schema/bays.ts';
import type { CompartmentEntry, ShellEntry, TankEntry } from '../../../schema/hull.ts';
import type { Path } from '../../../schema/path.ts';
import type { Finding } from '../findings/finding.ts';
import { canSlice } from '../geometry/cut/solids.ts';
import { scale } from '../geometry/form/vector.ts';
import type { Bay, Compartment, Shell, Tank } from './boat.ts';
import { densityOf } from './density.ts';
import { entryFault, valueFault } from './fault.ts';
import type { Placed, PlacedEntry } from './placed.ts';
import { placeEntry } from './placing.ts';
import type { FormUse, ReadingContext, Setting } from './readingContext.ts';
import { balanced, workedOut } from './readPart.ts';
import { tellWall } from './wallCheck.ts';

/** A free-flooding shell: its wall volume is mass over density, spread over its surface. */
export function readShell(entry: ShellEntry, path: Path, around: ReadingContext, findings: Finding[]): Shell | null {
  const endsClosed = entry.ends !== 'open';
  const setting: Setting = { path, around, findings, use: 'wall', endsClosed };
  const placed = placeWhole(entry, 'shell', setting);
  const { density } = densityOf(entry, around.stock, path, findings);
  if (density === null && entry.material === undefined) {
    findings.push(
      entryFault(
        'volume-unknown',
        path,
        `What the wall of “${entry.name}” displaces cannot be known without its material, such as “material: fibreglass”.`,
      ),
    );
  }
  if (!placed?.form || density === null) return null;
  const wall = around.shapes.wallOf(placed.form, endsClosed);
  const volume = entry.mass.value / density;
  if (entry.mesh) tellWall(entry.name, volume / wall.area, placed, setting);
  return {
    path,
    name: entry.name,
    mass: entry.mass.value,
    massFrom: 'scale',
    centroid: balanced(wall.centroid, entry.balance),
    form: placed.form,
    endsClosed,
    volume,
    worked: workedOut(placed, around.units),
  };
}

/** A watertight compartment by its outer form. */
export function readCompartment(
  entry: CompartmentEntry,
  path: Path,
  around: ReadingContext,
  findings: Finding[],
): Compartment | null {
  densityOf(entry, around.stock, path, findings);
  const placed = placeWhole(entry, 'compartment', solid('displaces', path, around, findings));
  if (!placed?.form) return null;
  const body = around.shapes.solidOf(placed.form);
  return {
    path,
    name: entry.name,
    mass: entry.mass.value,
    massFrom: 'scale',
    centroid: balanced(scale(body.moment, 1 / body.volume), entry.balance),
    form: placed.form,
    volume: body.volume,
    worked: workedOut(placed, around.units),
  };
}

/** A ballast tank by its inside form. */
export function readTank(entry: TankEntry, path: Path, around: ReadingContext, findings: Finding[]): Tank | null {
  const placed = placeWhole(entry, 'tank', solid('holds', path, around, findings));
  if (!placed?.form) return null;
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
    form: placed.form,
    capacity: around.shapes.solidOf(placed.form).volume,
    kind: entry.kind,
    inside: entry.in ?? null,
    fill,
    cells,
    fillsFrom: entry.fills ?? 'forward',
    share: entry.share ?? 1,
    pressure: entry.pressure?.value ?? null,
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

const solid = (use: FormUse, path: Path, around: ReadingContext, findings: Finding[]): Setting => ({
  path,
  around,
  findings,
  use,
  endsClosed: true,
});

/** A form that must follow from the entry's own sizes. */
function placeWhole(entry: PlacedEntry & { readonly name: string }, what: string, setting: Setting): Placed | null {
  const placed = placeEntry(entry, entry.volume?.value ?? null, setting);
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
