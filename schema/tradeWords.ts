import { closest } from './closest.ts';
import type { FileUnits } from './units.ts';

/**
 * What builders write for a key or a word of the boat file (trade use, from memory). One place for all: what is meant is
 * looked up here first, and by letters only where nothing is found. Words are split at the bar; case, blanks and hyphens
 * do not count.
 */
const KEYS: Readonly<Record<string, string>> = {
  aboard: 'added|extra|extras|temporary',
  axis: 'direction|orientation|lies',
  balance: 'cg|cog|centre of gravity|center of gravity|balance point|balances|knife edge',
  ball: 'sphere|globe',
  bays: 'bay|space|spaces|room|rooms|slots|free room',
  bg: 'b over g|bg submerged',
  boat: 'name|model|submarine|sub|title|ship|vessel',
  box: 'size|section|cross-section|block|dimensions|rectangle|square|bxh|wxh|breadth x depth',
  cells: 'compartments|cell|chambers|divisions|baffles',
  compartments: 'compartment|wtc|wtcs|cylinder|cylinders|pressure hull|dry|dry hull|dry compartments|tubes|watertight',
  condition: 'state|mode|kind|type|test',
  date: 'day|when|on',
  density: 'rho|specific gravity|sg|relative density|spec gravity',
  draft: 'draught|depth',
  ends: 'caps|end caps',
  fill: 'filled|full|filling|flooded',
  fills: 'end|fills from|from',
  fixed: 'fix|locked|lock|glued|immovable',
  forms: 'shapes',
  freeboard: 'deck height',
  gm: 'metacentric height',
  heel: 'roll|list|lean',
  height: 'z|level|vcg|kg|elevation|vertical|above keel|above baseline|height above keel|up',
  hull: 'body|vessel',
  in: 'inside|compartment|within|into|lies in|wtc',
  kind: 'type|sort|system|sea or fresh',
  length: 'loa|long|overall length|length overall|hull length',
  level: 'water level|height',
  limits: 'limit|tolerances|tolerance|allowed',
  marks: 'waterline|water marks|heights',
  mass: 'weight|wt|wgt|weighs|weighed|grams|grammes|ounces|kilos|pounds|heavy',
  material: 'stuff|mat|made of|substance|of',
  mesh: 'stl|file|3mf|cad',
  moved: 'shift|distance|by',
  name: 'item|part|what|label|title|called|thing|description|id',
  note: 'comment|comments|remark|remarks|notes|memo',
  offset: 'y|side|athwart|tcg|lateral|off centre|off-center|from centreline|transverse',
  payload: 'parts|load|equipment|contents|items|cargo|fittings|gear|things|components',
  pressure: 'max pressure|rating',
  profile: 'outline|contour|body of revolution|turned|lathe',
  reads: 'weight|mass|reading|shows|scale',
  removed: 'taken out|gone|ashore',
  round: 'dia|diameter|diam|od|outside diameter|outer diameter|inside diameter|ø|tube|cylinder|bore|pipe|rod|circle',
  salinity: 'salt|saltiness',
  scale: 'ratio|model scale',
  sections: 'frames|formers|bulkheads|table of offsets|offset table',
  share: 'rate|speed',
  shells: 'shell|outer hull|casing|skin|superstructure|hulls|free-flooding',
  station: 'position|location|x|pos|place|where|from bow|from the bow|lcg|distance|distance from bow|longitudinal|aft',
  stock: 'bench|materials|supplies|at hand',
  strip: 'bar|section|size|cross-section|box',
  submerged: 'dived|under water|underwater',
  surfaced: 'surface|afloat|on the surface',
  takes: 'for|holds|material|accepts',
  tanks: 'tank|ballast tanks|ballast|ballast tank|mbt',
  temperature: 'temp|degrees|t',
  trials: 'trial|tests|test|pool|readings|sea trials',
  trim: 'pitch',
  units: 'unit|measures|measured in',
  volume: 'vol|displaces|displacement|capacity|dunked',
  water: 'pool|lake|sea|water type',
  waterline: 'wl|dwl|water line|load waterline|painted waterline|cwl',
  without: 'missing|left out|left ashore',
};

/** The same for the few words that a value may be. */
const WORDS: Readonly<Record<string, string>> = {
  // Tanks: a pump presses water against the air that is shut in; gas and air blow it out through an open bottom or vent.
  sealed:
    'pump|pumped|pressure|pressurised|pressurized|closed|pump tank|peristaltic|peristaltic pump|gear pump|compression',
  vented: 'gas|air|open|vent|flooding|free-flooding|compressed air|co2|liquid gas|propellant|blown|atmospheric',
  piston: 'syringe|piston tank|plunger|cylinder|ram',
  bladder: 'bag|balloon|bellows|air bag|membrane|diaphragm',
  fresh: 'freshwater|fresh water|pool|swimming pool|chlorinated|lake|pond|river|tap|tap water|sweet|rain|distilled',
  sea: 'salt|saltwater|salt water|seawater|sea water|ocean|marine|salty',
  mm: 'millimetre|millimetres|millimeter|millimeters|metric|mil',
  cm: 'centimetre|centimetres|centimeter|centimeters',
  m: 'metre|metres|meter|meters',
  in: 'inch|inches|imperial|ins|"|us',
  ft: 'foot|feet',
  g: 'gram|grams|gramme|grammes|gr|grs|metric',
  kg: 'kilo|kilos|kilogram|kilograms|kilogramme|kilogrammes|kgs',
  oz: 'ounce|ounces|imperial|ozs|us',
  lb: 'pound|pounds|lbs',
  lead: 'weight|weights|ballast|ballast weight|shot|heavy',
  foam: 'float|floats|buoyancy|styrofoam|light|flotation|polystyrene',
  forward: 'bow|front|fore|ahead|forward end|fwd|bows',
  aft: 'stern|rear|back|after|aft end|astern',
  surfaced: 'surface|afloat|floating|on the surface|up|surf',
  submerged: 'dived|underwater|under water|diving|down|dive|neutral|hovering',
  inclining: 'inclining test|incline|inclined|inclining experiment|heeling|stability',
  bench: 'dry|scales|scale|on the bench|kitchen scales|weighing',
  hung: 'hanging|suspended|spring balance|hooks',
  'fore-aft': 'longitudinal|lengthways|lengthwise|along|fore and aft|x|horizontal',
  athwart: 'transverse|across|athwartships|sideways|y',
  vertical: 'upright|standing|up|z',
  closed: 'shut|capped|solid|both',
  open: 'none|hollow|no ends|tube',
  true: 'yes|y|on|fixed|locked',
  false: 'no|n|off|free|movable|moveable|loose',
};

/** Shop names that stand for more than one material of the handbook, the likeliest first. */
const MATERIALS: Readonly<Record<string, readonly string[]>> = {
  plastic: ['polystyrene', 'ABS', 'PVC'],
  'plastic sheet': ['polystyrene', 'ABS', 'PVC'],
  'plastic tube': ['PVC', 'acrylic', 'ABS'],
  wood: ['pine', 'birch plywood', 'balsa'],
  timber: ['pine', 'beech'],
  metal: ['brass', 'steel', 'aluminium'],
  'lead shot': ['lead', 'lead shot in resin'],
  shot: ['lead', 'lead shot in resin'],
  'foam board': ['XPS', 'expanded PVC sheet'],
  foamboard: ['XPS', 'expanded PVC sheet'],
  '3d print': ['PLA', 'PETG', 'print resin'],
  printed: ['PLA', 'PETG', 'print resin'],
  'fibre board': ['MDF'],
  battery: ['lithium polymer cell', 'NiMH cell', 'lead-acid battery'],
  composite: ['fibreglass', 'carbon laminate'],
};

const foldedTable = (table: Readonly<Record<string, string>>): ReadonlyMap<string, readonly string[]> => {
  const meanings = new Map<string, string[]>();
  for (const [meant, words] of Object.entries(table))
    for (const word of words.split('|')) meanings.set(fold(word), [...(meanings.get(fold(word)) ?? []), meant]);
  return meanings;
};

const fold = (word: string): string => word.toLowerCase().replace(/[-_\s.]+/g, '');

const keys = foldedTable(KEYS);
const words = foldedTable(WORDS);

/** Of the keys that a place may still take, the one that a builder means by a word; null where none is near. */
export const keyMeant = (word: string, free: readonly string[]): string | null => meant(word, free, keys);

/** Of a few words, the one that a builder means by another; null where none is near. */
export const wordMeant = (word: string, few: readonly string[]): string | null => meant(word, few, words);

function meant(word: string, known: readonly string[], table: ReadonlyMap<string, readonly string[]>): string | null {
  const folded = fold(word);
  const same = known.find(each => fold(each) === folded);
  return same ?? table.get(folded)?.find(each => known.includes(each)) ?? closest(word, known);
}

/** The materials of the handbook that a builder may mean by a shop name that stands for several. */
export const materialsMeant = (name: string): readonly string[] =>
  Object.entries(MATERIALS).find(([word]) => fold(word) === fold(name))?.[1] ?? [];

const LENGTHS = ['mm', 'cm', 'm', 'in', 'ft'] as const;
const MASSES = ['g', 'kg', 'oz', 'lb'] as const;

/** The units that a word or two stand for: `inches`, `metric`, `mm and g`; null where nobody can tell. */
export function unitsMeant(said: string): FileUnits | null {
  const parts = said.split(/[\s,;&/+]+|\band\b/i).filter(part => part !== '');
  const found = <T extends string>(few: readonly T[]): T | null =>
    parts.map(part => few.find(each => each === wordMeant(part, few)) ?? null).find(each => each !== null) ?? null;
  const length = found(LENGTHS);
  const mass = found(MASSES);
  if (length === null && mass === null) return null;
  return { length: length ?? (mass === 'oz' || mass === 'lb' ? 'in' : 'mm'), mass: mass ?? massBeside(length!) };
}

/** The unit that goes with a length on the bench. */
const massBeside = (length: FileUnits['length']): FileUnits['mass'] =>
  length === 'ft' ? 'lb' : length === 'in' ? 'oz' : length === 'm' ? 'kg' : 'g';

/** The tables, for their tests. */
export const tradeTables = { keys: KEYS, words: WORDS, materials: MATERIALS };
