import type { BayEntry } from '../../schema/bays.ts';
import type { CompartmentEntry, ShellEntry, TankEntry } from '../../schema/hull.ts';
import type { Path } from '../../schema/path.ts';
import type { Finding } from '../findings/finding.ts';
import { solidOf, wallOf } from '../geometry/solids.ts';
import { scale } from '../geometry/vector.ts';
import type { Bay, Compartment, Shell, Tank } from './boat.ts';
import { densityOf } from './density.ts';
import { entryFault, valueFault } from './fault.ts';
import { isFault, type Placed, type PlacedEntry, placeEntry } from './placing.ts';
import { balanced, placingFinding, type Surroundings } from './readPart.ts';

/** A free-flooding shell: its wall volume is mass over density, spread over its surface. */
export function readShell(entry: ShellEntry, path: Path, around: Surroundings, findings: Finding[]): Shell | null {
  const placed = placeWhole(entry, path, 'shell', findings);
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
  const endsClosed = entry.ends !== 'open';
  const wall = wallOf(placed.form, { endsClosed });
  return {
    path,
    name: entry.name,
    mass: entry.mass.value,
    massFrom: 'scale',
    centroid: balanced(wall.centroid, entry.balance),
    form: placed.form,
    endsClosed,
    volume: entry.mass.value / density,
  };
}

/** A watertight compartment by its outer form. */
export function readCompartment(
  entry: CompartmentEntry,
  path: Path,
  around: Surroundings,
  findings: Finding[],
): Compartment | null {
  densityOf(entry, around.stock, path, findings);
  const placed = placeWhole(entry, path, 'compartment', findings);
  if (!placed?.form) return null;
  const body = solidOf(placed.form);
  return {
    path,
    name: entry.name,
    mass: entry.mass.value,
    massFrom: 'scale',
    centroid: balanced(scale(body.moment, 1 / body.volume), entry.balance),
    form: placed.form,
    volume: body.volume,
  };
}

/** A ballast tank by its inside form. */
export function readTank(entry: TankEntry, path: Path, _: Surroundings, findings: Finding[]): Tank | null {
  const placed = placeWhole(entry, path, 'tank', findings);
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
    capacity: solidOf(placed.form).volume,
    kind: entry.kind,
    inside: entry.in ?? null,
    fill,
    cells: hasSurface ? (entry.cells ?? 1) : 1,
    fillsFrom: entry.fills ?? 'forward',
    share: entry.share ?? 1,
    pressure: entry.pressure?.value ?? null,
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

/** A form that must follow from the entry's own sizes. */
function placeWhole(
  entry: PlacedEntry & { readonly name: string },
  path: Path,
  what: string,
  findings: Finding[],
): Placed | null {
  const placed = placeEntry(entry, entry.volume?.value ?? null);
  if (isFault(placed)) {
    findings.push(placingFinding(placed, path));
    return null;
  }
  if (placed.form) return placed;
  findings.push(
    entryFault(
      'form-unknown',
      path,
      `The ${what} “${entry.name}” needs a form: “round: 76 mm” with a station range, a “profile”, or ranges for station, offset and height.`,
    ),
  );
  return null;
}
