/** What one slip of the pen makes of a text. */
export interface Slipped {
  readonly kind: string;
  /** The piece that was written wrong, and what it became. */
  readonly was: string;
  readonly is: string;
  readonly text: string;
  /** What the writer meant is told well enough to be offered: the first mend must bring the boat back. */
  readonly isTold: boolean;
}

/** A way to write something wrong. */
interface Kind {
  readonly kind: string;
  /** Global; each match is a place for the slip. */
  readonly at: RegExp;
  /** What is written instead; null where the slip makes no sense. */
  readonly make: (match: RegExpMatchArray) => string | readonly string[] | null;
  readonly isTold?: boolean;
}

const instead =
  (text: string): (() => string) =>
  () =>
    text;

/** A key with a figure behind it. */
const FIGURE = /(?<=(?<!cells): )-?\d[^,{}[\]\n#]*(?<! )(?= ?[,}\n]| #|$)/g;
/** The same on a line of its own. */
const LINE_FIGURE = /(?<=^ +(?:- )?\w+: )-?\d[^,{}[\]\n#]*$/gm;
const NUMBER = /(?<=(?<!scale|cells): (?:-?[\d./]+ to |-?[\d.]+ x )?)\d+(?:\.\d+)?(?![\d./:]| \d)/g;
const KEYED = /(?<=^ *(?:- )?)(\w+): (?=[^\s{[])([^\n]*)$/gm;
const UNIT = /(?<=\d ?)(?:mm|cm|in|g|oz|lb|kg\/m3|°C|°F|°|%)(?=[\s,}]|$)/g;

const OTHER_UNIT: Readonly<Record<string, string>> = {
  mm: 'g',
  cm: 'oz',
  in: 'lb',
  g: 'mm',
  oz: 'cm',
  '°': 'mm',
  '%': 'ml',
};

const FIGURES: readonly Kind[] = [
  {
    kind: 'comma decimal',
    at: NUMBER,
    // Not so much more that the range behind it ends where it begins.
    make: ([n]) => (n.includes('.') ? n.replace('.', ',') : `${n},2`),
    isTold: true,
  },
  { kind: 'space in number', at: /(?<=[\w]: )\d{3}(?= (?:mm|g))/g, make: ([n]) => `1 ${n}` },
  { kind: 'space for point', at: NUMBER, make: ([n]) => (n.includes('.') ? n.replace('.', '. ') : null) },
  { kind: 'two points', at: NUMBER, make: ([n]) => (n.includes('.') ? n.replace('.', '..') : null) },
  { kind: 'letter O', at: NUMBER, make: ([n]) => (n.endsWith('0') ? n.replace(/0$/, 'O') : null) },
  { kind: 'unit of another dimension', at: UNIT, make: ([u]) => OTHER_UNIT[u] ?? null },
  { kind: 'unit twice', at: UNIT, make: ([u]) => `${u} ${u}` },
  { kind: 'unit glued twice', at: UNIT, make: ([u]) => (u.length === 1 ? null : u + u) },
  { kind: 'unit in capitals', at: UNIT, make: ([u]) => u.toUpperCase() },
  { kind: 'unit plural', at: UNIT, make: ([u]) => (/^[a-z]+$/.test(u) ? `${u}s` : null) },
  { kind: 'unit with a point', at: UNIT, make: ([u]) => (/^[a-z]+$/.test(u) ? `${u}.` : null) },
  { kind: 'unit misspelt', at: UNIT, make: ([u]) => ({ mm: 'nm', g: 'gr', oz: 'os', in: 'im', cm: 'vm' })[u] ?? null },
  { kind: 'unit left out', at: UNIT, make: ([u]) => (/^[a-z]/.test(u) ? '' : null) },
  {
    kind: 'unit first',
    at: FIGURE,
    make: ([v]) => (/^[\d.]+ [a-z]+$/.test(v) ? v.split(' ').reverse().join(' ') : null),
  },
  {
    kind: 'unit of old',
    at: UNIT,
    make: ([u]) => ({ mm: 'mil', g: 'grammes', oz: 'onces', in: 'ins', '°': 'degs' })[u] ?? null,
  },
  {
    kind: 'about',
    at: FIGURE,
    make: ([v]) => ['~', 'ca. ', 'about ', 'approx. ', '≈ '].map(word => word + v),
    isTold: true,
  },
  { kind: 'a question mark', at: FIGURE, make: ([v]) => `${v}?` },
  { kind: 'a note behind', at: FIGURE, make: ([v]) => [`${v} (wet)`, `${v} measured`] },
  {
    kind: 'dash for to',
    at: / to (?=-?\d)/g,
    make: () => ['-', ' - ', '–', ' – ', '..', ' ... ', ' till ', ' until ', ' and ', ' / ', ' -> '],
  },
  {
    kind: 'from',
    at: FIGURE,
    make: ([v]) => (v.includes(' to ') ? [`from ${v}`, `between ${v}`] : null),
    isTold: true,
  },
  { kind: 'range backwards', at: /(?<=: )(-?[\d.]+) to (-?[\d.]+)/g, make: ([, a, b]) => `${b} to ${a}`, isTold: true },
  { kind: 'range in brackets', at: /(?<=: )(\d+) to (\d+) mm/g, make: ([, a, b]) => `[${a}, ${b}]`, isTold: true },
  { kind: 'times', at: / x (?=\d)/g, make: () => [' × ', '*', 'x', ' by ', ' X ', ' to ', '/', ' mm x '] },
  {
    kind: 'diameter sign',
    at: /(?<=round: )[\d][^,}\n]*/g,
    make: ([v]) => [`Ø ${v}`, `ø${v}`, `dia ${v}`, `${v} dia`, `${v} diameter`, `D${v}`, `${v} OD`],
    isTold: true,
  },
  { kind: 'plus minus', at: / ± /g, make: () => [' +- ', ' +/- ', '±', ' + - ', ' -+ ', ' plus or minus ', ' +/ '] },
  {
    kind: 'sign words',
    at: /(?<=offset: )-?[\d.]+ \w+/g,
    make: ([v]) => [
      `${v.replace('-', '')} to port`,
      `${v.replace('-', '')} port`,
      `${v.replace('-', '')} starboard`,
      `${v.replace('-', '')} P`,
    ],
  },
  {
    kind: 'angle words',
    at: /(?<=trim: )1.5°(?= ±)/g,
    make: ([v]) => [`${v} bow up`, `${v} bow down`, `${v} by the stern`, `${v} nose up`, `${v} up`],
  },
  {
    kind: 'place words',
    at: /(?<=station: )[\d. /]+ \w+(?=[,}\n])/g,
    make: ([v]) => [`${v} aft`, `${v} from the bow`, `${v} aft of the bow tip`],
  },
  {
    kind: 'height words',
    at: /(?<=height: )[\d. /]+ \w+(?=[,}\n])/g,
    make: ([v]) => [`${v} high`, `${v} up`, `${v} above the baseline`],
  },
  {
    kind: 'fraction',
    at: /1\/[248]/g,
    make: ([f]) =>
      [
        f.replace('/', '⁄'),
        f.replace('/', ' / '),
        f.replace('/', '\\'),
        { '1/2': '½', '1/4': '¼', '1/8': '⅛' }[f] ?? null,
      ].filter(each => each !== null),
  },
  {
    kind: 'hyphened fraction',
    at: /\d (?=\d\/\d)/g,
    make: ([f]) => [f.replace(' ', '-'), f.replace(' ', ' - '), f.replace(' ', ' & '), f.replace(' ', ' and ')],
  },
  { kind: 'inch mark', at: / in(?=[,}\n])/g, make: () => ['"', "''", '”', '″'] },
  { kind: 'degree words', at: /(?<=\d)°(?=[,}\s])/g, make: () => [' deg', ' degrees', ' grad', 'º', ' º', ''] },
  { kind: 'curly quotes', at: FIGURE, make: ([v]) => [`“${v}”`, `‘${v}’`, `"${v}`, `'${v}`, `${v}"`], isTold: true },
  { kind: 'figure twice', at: LINE_FIGURE, make: ([v]) => `${v} ${v}` },
  { kind: 'comma behind', at: LINE_FIGURE, make: ([v]) => [`${v},`, `${v};`], isTold: true },
  { kind: 'equals before', at: FIGURE, make: ([v]) => `= ${v}`, isTold: true },
  {
    kind: 'minus',
    at: FIGURE,
    make: ([v]) =>
      v.startsWith('-')
        ? [v.replace('-', '−'), v.replace('-', '–'), v.replace('-', '- '), v.replace('-', 'minus ')]
        : [`+${v}`, `-${v}`],
  },
  { kind: 'left empty', at: FIGURE, make: instead('') },
  { kind: 'words for a figure', at: FIGURE, make: () => ['?', 'tbd', 'unknown', 'TODO', 'xx'] },
];

/** What builders call things, with the key that they stand for here. */
const TRADE: Readonly<Record<string, readonly string[]>> = {
  mass: ['weight', 'wt', 'weighs', 'Mass', 'mas', 'masse', 'MASS', 'masses', 'grams'],
  round: ['dia', 'diameter', 'od', 'OD', 'Ø', 'tube', 'cylinder', 'rond', 'Round'],
  box: ['size', 'section', 'block', 'dimensions', 'Box', 'rectangle'],
  station: ['position', 'location', 'x', 'pos', 'place', 'staton', 'Station', 'stations', 'from bow', 'lcg'],
  offset: ['y', 'Offset', 'ofset', 'side', 'athwart', 'tcg'],
  height: ['z', 'hight', 'heigth', 'Height', 'level', 'vcg', 'elevation'],
  name: ['Name', 'nam', 'item', 'part', 'what', 'label', 'title'],
  material: ['made of', 'Material', 'materal', 'stuff', 'mat'],
  in: ['inside', 'compartment', 'within', 'In', 'into'],
  kind: ['type', 'Kind', 'knd', 'sort'],
  length: ['LOA', 'loa', 'lenght', 'Length', 'long', 'overall length'],
  waterline: ['wl', 'water line', 'waterlin', 'DWL', 'Waterline'],
  temperature: ['temp', 'Temperature', 'temperatur'],
  payload: ['parts', 'load', 'equipment', 'contents', 'Payload', 'items', 'cargo'],
  boat: ['name', 'Boat', 'model', 'submarine'],
  hull: ['Hull', 'hul', 'body'],
  bays: ['bay', 'space', 'room', 'Bays'],
  compartments: ['compartment', 'WTC', 'wtcs', 'pressure hull', 'dry'],
  tanks: ['tank', 'ballast tanks', 'tnaks', 'ballast'],
  shells: ['shell', 'outer hull', 'casing', 'skin'],
  limits: ['limit', 'tolerances', 'Limits'],
  stock: ['bench', 'Stock', 'materials'],
  trials: ['trial', 'tests', 'trails', 'pool'],
  fixed: ['fix', 'locked', 'Fixed'],
  takes: ['for', 'Takes', 'take'],
  trim: ['pitch', 'Trim', 'trimm'],
  heel: ['roll', 'list', 'Heel'],
  condition: ['state', 'Condition', 'mode'],
  date: ['day', 'when', 'Date'],
  fill: ['filled', 'full', 'Fill'],
  units: ['unit', 'Units'],
  water: ['Water', 'pool', 'wter'],
  density: ['rho', 'Density', 'densty', 'specific gravity', 'sg'],
  cells: ['compartments', 'cell', 'chambers'],
  strip: ['bar', 'Strip', 'section', 'size'],
  gm: ['GM', 'metacentric height'],
  draft: ['draught', 'Draft', 'depth'],
  scale: ['Scale', 'ratio'],
};

const KEYS: readonly Kind[] = [
  {
    kind: 'trade word for a key',
    at: /(?<=^ *(?:- )?(?:\{ )?|[{,] )([a-z]+)(?=:(?:\s|$))/gm,
    make: ([key]) => TRADE[key!] ?? null,
    isTold: true,
  },
  {
    kind: 'letters swapped in a key',
    at: /(?<=^ *(?:- )?(?:\{ )?|[{,] )([a-z]{4,})(?=:(?:\s|$))/gm,
    make: ([key]) => key[0] + key[2]! + key[1]! + key.slice(3),
  },
  {
    kind: 'equals for colon',
    at: KEYED,
    make: ([, key, value]) => [`${key} = ${value}`, `${key}= ${value}`, `${key}=${value}`],
    isTold: true,
  },
  {
    kind: 'equals for colon in braces',
    at: /(?<=[{,] )(\w+): (?=[^{[])/g,
    make: ([, key]) => [`${key} = `, `${key}=`],
    isTold: true,
  },
  { kind: 'no colon', at: KEYED, make: ([, key, value]) => `${key} ${value}`, isTold: true },
  { kind: 'no colon in braces', at: /(?<=[{,] )(\w+): (?=[^{[])/g, make: ([, key]) => `${key} `, isTold: true },
  { kind: 'no space after the colon', at: KEYED, make: ([, key, value]) => `${key}:${value}`, isTold: true },
  {
    kind: 'no space after the colon in braces',
    at: /(?<=[{,] )(\w+): (?=[^{[])/g,
    make: ([, key]) => `${key}:`,
    isTold: true,
  },
  {
    kind: 'other signs for a colon',
    at: KEYED,
    make: ([, key, value]) => [
      `${key}; ${value}`,
      `${key} - ${value}`,
      `${key} -> ${value}`,
      `${key}, ${value}`,
      `${key}：${value}`,
      `${key}\t${value}`,
    ],
    isTold: true,
  },
  { kind: 'space before the colon', at: KEYED, make: ([, key, value]) => `${key} : ${value}` },
  { kind: 'tab after the colon', at: KEYED, make: ([, key, value]) => `${key}:\t${value}` },
  { kind: 'quotes round the key', at: KEYED, make: ([, key, value]) => [`"${key}": ${value}`, `“${key}”: ${value}`] },
  { kind: 'quotes round the line', at: KEYED, make: ([, key, value]) => `"${key}: ${value}"` },
  { kind: 'key twice', at: /^ +(\w+): [^\n{[]*$/gm, make: ([line]) => `${line}\n${line}` },
  {
    kind: 'key and bullet',
    at: /^( +)(?!- )(\w+: [^\n{[]*)$/gm,
    make: ([, lead, line]) => [`${lead}* ${line}`, `${lead}• ${line}`, `${lead}- ${line}`],
  },
];

const LINES: readonly Kind[] = [
  { kind: 'no dash', at: /^( *)- (?=name)/gm, make: ([, lead]) => `${lead}  ` },
  { kind: 'no dash and no indent', at: /^( *)- (?=name)/gm, make: ([, lead]) => lead! },
  { kind: 'no dash before braces', at: /^( *)- (?=\{)/gm, make: ([, lead]) => `${lead}  ` },
  { kind: 'dash glued', at: /^( *)- (?=\w|\{)/gm, make: ([, lead]) => `${lead}-`, isTold: true },
  {
    kind: 'long dash',
    at: /^( *)- (?=\w|\{)/gm,
    make: ([, lead]) => [`${lead}– `, `${lead}— `, `${lead}* `, `${lead}• `, `${lead}1. `],
    isTold: true,
  },
  { kind: 'a line moved right', at: /^ +(?=[\w-])/gm, make: ([lead]) => [`${lead} `, `${lead}  `] },
  { kind: 'a line moved left', at: /^ +(?=[\w-])/gm, make: ([lead]) => [lead.slice(1), lead.slice(2)] },
  {
    kind: 'tab',
    at: /^ +(?=[\w-])/gm,
    make: ([lead]) => ['\t'.repeat(lead.length / 2), `${lead.slice(2)}\t`],
    isTold: true,
  },
  { kind: 'bracket not closed', at: / ?[}\]](?=$)/gm, make: instead('') },
  { kind: 'bracket twice', at: /[}\]](?=$)/gm, make: ([b]) => b + b },
  { kind: 'wrong bracket', at: /[}\]](?=$)/gm, make: ([b]) => [')', b === '}' ? ']' : '}'] },
  { kind: 'no comma', at: /(?<=\w), (?=\w+: )/g, make: () => [' ', '; '] },
  { kind: 'point for comma', at: /(?<=[a-z]), (?=\w+: )/g, make: () => ['. ', ',, ', ','] },
  { kind: 'line gone', at: /^ +(?:mass|station|height|kind|takes|name|round): [^\n]*\n/gm, make: instead('') },
];

const VALUES: readonly Kind[] = [
  {
    kind: 'kind of tank',
    at: /(?<=kind: )(piston|vented)/g,
    make: () => [
      'pump',
      'gas',
      'air',
      'Piston',
      'pistn',
      'bag',
      'compressed air',
      'syringe',
      'rubbish',
      'open',
      'closed',
      'flooding',
      'pressure',
      'peristaltic',
      'bellows',
      'vent',
      'CO2',
      'liquid gas',
    ],
  },
  {
    kind: 'kind of water',
    at: /(?<=kind: )(fresh|sea)/g,
    make: () => [
      'salt',
      'pool',
      'lake',
      'brackish',
      'freshwater',
      'saltwater',
      'seawater',
      'Sea',
      'sweet',
      'tap',
      'river',
      'ocean',
      'chlorinated',
      'swimming pool',
      'fresch',
    ],
  },
  {
    kind: 'a unit of length',
    at: /(?<=length: )(mm|cm|in)(?=,)/g,
    make: () => ['inches', 'inch', 'millimetres', 'MM', 'milimeter', 'yards', '"', 'metric', 'imperial'],
  },
  {
    kind: 'a unit of mass',
    at: /(?<=mass: )(g|oz)(?= \})/g,
    make: () => ['grams', 'ounces', 'gr', 'gram', 'pounds', 'lbs', 'stone', 'imperial'],
  },
  {
    kind: 'units as a word',
    at: /(?<=units: )\{[^}]*\}/g,
    make: () => ['inches', 'metric', 'imperial', 'mm', 'in', 'mm, g', 'in oz', 'US', 'in and oz', 'metrisch'],
  },
  {
    kind: 'water as a word',
    at: /(?<=water: )\{[^}]*\}/g,
    make: () => ['salt', 'pool', 'lake', 'brackish', 'freshwater', 'sea water', 'fresch', '1.025', '1025', '20 °C'],
  },
  {
    kind: 'name of a material',
    at: /(?<=material: )\w+/g,
    make: () => [
      'styrofoam',
      'GRP',
      'fiberglass',
      'plexi',
      'styrene',
      'brass rod',
      'leed',
      'Lead',
      'fibreglas',
      'lead shot',
      'plastic',
      'wood',
      'metal',
      'polysterene',
      'unobtainium',
      'foam board',
      'aluminium tube',
      'gold',
      'stainles',
      'printed',
      'depron',
      'white metal',
      'pink foam',
      'perspex tube',
    ],
  },
  {
    kind: 'name of a compartment',
    at: /(?<=in: )(WTC|dry tube|hull)/g,
    make: () => ['wtc', 'W.T.C.', 'dry', 'dry cylinder', 'yes', 'cylinder', 'main'],
  },
  { kind: 'yes and no', at: /(?<=fixed: )\w+/g, make: () => ['yes', 'no', 'True', 'fixed', 'y', 'maybe'] },
  {
    kind: 'lead or foam',
    at: /(?<=takes: )\w+/g,
    make: () => ['Lead', 'led', 'both', 'weights', 'float', 'ballast', 'brass'],
  },
  {
    kind: 'end of a piston',
    at: /(?<=fills: )\w+/g,
    make: () => ['forward end', 'rear', 'stern', 'bow', 'front', 'back', 'afft'],
  },
  {
    kind: 'condition of a trial',
    at: /(?<=condition: )\w+/g,
    make: () => ['surface', 'dived', 'underwater', 'Submerged', 'submergd', 'periscope depth', 'afloat'],
  },
  {
    kind: 'scale',
    at: /(?<=scale: )1:96/g,
    make: () => ['1/96', '96', '1-96', '1 : 96', '1 to 96', '1:96th', '1;96', '1:96 scale'],
  },
  {
    kind: 'density',
    at: /(?<=density: )30 kg\/m3/g,
    make: () => [
      '30',
      '0.03',
      '30 kg',
      '30 kg/m',
      '0.03 g/ml',
      '30 kg/m^3',
      '30 kgm3',
      '30 g/l',
      '0,03',
      '30 kg per m3',
    ],
  },
  {
    kind: 'curly quotes round a word',
    at: /(?<=name: )[\w ]+(?=[,\n])/g,
    make: ([v]) => [`“${v}”`, `"${v}`, `${v}:`, ...(/WTC|hull|tube/.test(v) ? [] : [`${v}: big`])],
  },
];

const all: readonly Kind[] = [...FIGURES, ...KEYS, ...LINES, ...VALUES];

/** Every slip of every kind that a text can take. */
export function slipsOf(text: string): readonly Slipped[] {
  return all.flatMap(({ kind, at, make, isTold = false }) =>
    [...text.matchAll(at)].flatMap(match => {
      const made = make(match);
      const list = made === null ? [] : typeof made === 'string' ? [made] : made;
      return list
        .filter(is => is !== match[0])
        .map(is => ({
          kind,
          was: match[0],
          is,
          text: text.slice(0, match.index) + is + text.slice(match.index + match[0].length),
          isTold,
        }));
    }),
  );
}
