import { asText } from '../../../schema/fields.ts';
import { type Path, samePath } from '../../../schema/path.ts';
import type { Analysis } from '../../core/analysis/analysis.ts';
import type { Bay, Part } from '../../core/boat/boat.ts';
import { scalarSpan } from '../../core/text/editing/rewrite.ts';
import type { Span } from '../../core/text/reading/lines.ts';
import type { Syntax } from '../../core/text/reading/syntax.ts';
import { entriesOf, valueAt } from '../../core/text/reading/values.ts';

/** Something with a name, and where the name stands: first where it is given, then where it is used. */
export interface Named {
  readonly name: string;
  /** The place of the `name` that defines it. */
  readonly given: Path;
  /** The places that mean it by its name. */
  readonly uses: readonly Path[];
  /** Names that it must not take: those of everything that findings could mix it up with. */
  readonly others: readonly string[];
}

const SHELLS: Path = ['hull', 'shells'];
const COMPARTMENTS: Path = ['hull', 'compartments'];
const TANKS: Path = ['hull', 'tanks'];
const PAYLOAD: Path = ['payload'];
const BAYS: Path = ['bays'];
const CONDITIONS: Path = ['conditions'];
const TRIALS: Path = ['trials'];
/** The lists whose entries share one set of names. */
const THINGS: readonly Path[] = [SHELLS, COMPARTMENTS, TANKS, PAYLOAD];
/** Lists that share their names with no other. */
const APART: readonly Path[] = [BAYS, CONDITIONS];

/** A place that means something by its name, and the lists of which it means an entry: the first of that name. */
interface Use {
  readonly path: Path;
  readonly means: readonly Path[];
}

/** What the name at an offset stands for, whether it is given or used there; null where there is none. */
export function namedAt(syntax: Syntax, offset: number): Named | null {
  const isHere = (path: Path): boolean => {
    const span = scalarSpan(syntax, path);
    return span !== null && span[0] <= offset && offset <= span[1];
  };
  const given = placesIn(syntax, [...THINGS, ...APART], 'name').find(isHere);
  if (given) return namedBy(syntax, given);
  const use = usesIn(syntax).find(({ path }) => isHere(path));
  const meant = use && meaningOf(syntax, use);
  return meant ? namedBy(syntax, meant) : null;
}

function namedBy(syntax: Syntax, given: Path): Named {
  const name = textAt(syntax, given);
  const apart = APART.find(([section]) => section === given[0]);
  const mates = placesIn(syntax, apart ? [apart] : THINGS, 'name').filter(path => !samePath(path, given));
  const uses = usesIn(syntax).filter(use => {
    const meant = textAt(syntax, use.path) === name ? meaningOf(syntax, use) : undefined;
    return meant !== undefined && samePath(meant, given);
  });
  return { name, given, uses: uses.map(({ path }) => path), others: mates.map(path => textAt(syntax, path)) };
}

const meaningOf = (syntax: Syntax, { path, means }: Use): Path | undefined => {
  const name = textAt(syntax, path);
  return placesIn(syntax, means, 'name').find(place => textAt(syntax, place) === name);
};

function usesIn(syntax: Syntax): readonly Use[] {
  const below = (list: Path, key: string): readonly Path[] => entriesOf(syntax, list).map(({ path }) => [...path, key]);
  const loaded = (key: string): readonly Path[] => [...below(CONDITIONS, key), ...below(TRIALS, key)];
  const inhabited = [TANKS, PAYLOAD, BAYS, ...loaded('aboard')];
  return [
    ...placesIn(syntax, inhabited, 'in').map(path => ({ path, means: [COMPARTMENTS] })),
    ...placesIn(syntax, below(TRIALS, 'freeboard'), 'of').map(path => ({ path, means: [SHELLS, COMPARTMENTS] })),
    ...placesIn(syntax, [TRIALS, ...below(CONDITIONS, 'tanks')], 'tank').map(path => ({ path, means: [TANKS] })),
    ...itemsIn(syntax, loaded('without')).map(path => ({ path, means: [PAYLOAD] })),
  ];
}

/** Where the entries of some lists write a key with a text. */
const placesIn = (syntax: Syntax, lists: readonly Path[], key: string): readonly Path[] =>
  lists
    .flatMap(list => entriesOf(syntax, list))
    .map(entry => [...entry.path, key])
    .filter(path => textAt(syntax, path) !== '');

/** Where some lists of names have one. */
const itemsIn = (syntax: Syntax, lists: readonly Path[]): readonly Path[] =>
  lists
    .flatMap(list => entriesOf(syntax, list))
    .map(({ path }) => path)
    .filter(path => textAt(syntax, path) !== '');

/** A name as it is read: without blanks around it. */
const textAt = (syntax: Syntax, path: Path): string => asText(valueAt(syntax, path)).trim();

/** Half a mark of the tape: a piece is cut no finer, m. */
const SAME_EDGE = 0.0005;

/** The bay that a loose piece of lead or foam lies in. */
export function bayOf({ boat }: Analysis, given: Path): Bay | null {
  const part = boat.payload.find(each => samePath([...each.path, 'name'], given));
  return (part && boat.bays.find(bay => liesIn(part, bay))) ?? null;
}

/** The loose pieces that lie in a bay. */
export const piecesIn = ({ boat }: Analysis, given: Path): readonly Part[] => {
  const bay = boat.bays.find(each => samePath([...each.path, 'name'], given));
  return bay ? boat.payload.filter(part => liesIn(part, bay)) : [];
};

const liesIn = (part: Part, bay: Bay): boolean =>
  !part.fixed &&
  part.inside === bay.inside &&
  part.material === bay.takes &&
  ([0, 1, 2] as const).every(
    axis => part.from[axis] >= bay.from[axis] - SAME_EDGE && part.to[axis] <= bay.to[axis] + SAME_EDGE,
  );

/** The characters of the names at some places, in the order of the text, each once. */
export function spansOf(syntax: Syntax, paths: readonly Path[]): readonly Span[] {
  const spans = new Map(
    paths.flatMap(path => {
      const span = scalarSpan(syntax, path);
      return span ? [[span[0], span] as const] : [];
    }),
  );
  return [...spans.values()].sort((a, b) => a[0] - b[0]);
}
