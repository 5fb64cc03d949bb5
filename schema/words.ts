/** A word of the trade as the program uses it. */
export interface Word {
  /** As it stands on the screen. */
  readonly word: string;
  /** The letters that the trade has for it. */
  readonly symbol?: string;
  readonly means: string;
}

/** The words that stand in figures, hovers and messages, in the order in which a builder meets them. */
export const WORDS: readonly Word[] = [
  { word: 'station', means: 'Distance aft of the bow tip.' },
  { word: 'offset', means: 'Distance from the centreline, to starboard or to port.' },
  { word: 'height', means: 'Distance above the baseline, the lowest point of the keel.' },
  { word: 'waterline', means: 'The line painted on the hull, at which the boat shall float on the surface.' },
  { word: 'draft', symbol: 'T', means: 'How deep the baseline is below the surface, at half length.' },
  { word: 'trim', symbol: 'θ', means: 'Tilt fore and aft: so many degrees bow up or bow down; “level” is none.' },
  { word: 'heel', symbol: 'φ', means: 'Tilt athwart: so many degrees to starboard or to port; “upright” is none.' },
  { word: 'surfaced', means: 'Afloat with empty tanks.' },
  { word: 'submerged', means: 'Under water, with the tanks at the fill that makes it hang neutral.' },
  { word: 'free-flooding', means: 'Open to the water: only the wall displaces.' },
  {
    word: 'compartment',
    means: 'Watertight: it displaces whole, and what is in it only weighs. Many builders say WTC.',
  },
  { word: 'tank', means: 'Takes in the water that makes the boat dive: piston, bladder, vented or sealed.' },
  { word: 'bay', means: 'Room where lead or foam can still go. Corrections put pieces nowhere else.' },
  { word: 'displacement', symbol: 'Δ', means: 'Mass of the water that the boat pushes aside.' },
  {
    word: 'weight in water',
    means: 'What a thing weighs less the water that it pushes aside; what is less than nothing lifts.',
  },
  { word: 'reserve buoyancy', means: 'Mass of the water that what stands out of it could still push aside.' },
  { word: 'neutral fill', means: 'Share of the tanks at which the boat neither rises nor sinks.' },
  {
    word: 'planes hold down',
    means: 'How much too light the boat is under water with full tanks: its planes hold it down while it runs.',
  },
  { word: 'centre of buoyancy', symbol: 'B', means: 'Middle of the water pushed aside: there buoyancy acts.' },
  { word: 'centre of mass', symbol: 'G', means: 'Middle of all that weighs: there weight acts.' },
  {
    word: 'metacentric height',
    symbol: 'GM',
    means: 'How stiff the boat is on the surface: its righting lever grows by this for each unit of heel.',
  },
  {
    word: 'longitudinal GM',
    means: 'The same fore and aft.',
  },
  {
    word: 'BG',
    symbol: 'BG',
    means:
      'Height of B above G along the plumb line: under water it is all the stability there is, athwart and fore and aft.',
  },
  {
    word: 'tank water free, locked',
    means: 'With the water of a part-filled tank running to the low side, which takes off BG; or held still.',
  },
  { word: 'weight to sink it 1 mm', means: 'What is to be added for that much more draft.' },
  { word: 'moment to trim 1°', means: 'Weight times distance that tilts the boat 1° fore and aft.' },
  {
    word: 'righting lever',
    symbol: 'GZ',
    means:
      'Horizontal distance of the lines of weight and buoyancy when it is heeled: times its weight it rights the boat.',
  },
  {
    word: 'range of stability',
    means:
      'How far the boat may heel and still come back. Where that ends its stability vanishes: the angle of vanishing stability.',
  },
  {
    word: 'on the way down',
    means: 'From empty tanks to the neutral fill; a boat is often least stiff between the two.',
  },
  {
    word: '±, uncertainty',
    symbol: 'u',
    means:
      'How well a figure is known: two times out of three the truth lies within it, 19 times of 20 within twice that.',
  },
  { word: 'difference (in ±)', means: 'How far a reading is from the file, counted in what both leave open.' },
  {
    word: 'accounts for 46 %',
    means: 'Share of the ± of a figure that would be gone if one thing were known exactly, counted in squares.',
  },
  {
    word: 'ok, out',
    means: 'The limit is kept beyond doubt; the figure is beyond it. No word: the ± reaches across the limit.',
  },
  { word: 'trial', means: 'What was read off the boat in the water or on the bench, with the day.' },
  { word: 'slip', means: 'A reading that is wrong by more than its ±: the tape or the pen slipped.' },
  { word: 'unlisted weight', means: 'Something aboard that the file does not have.' },
  {
    word: 'correction',
    means: 'Lead, foam and moves that trim the boat, floated by the full model before they are offered.',
  },
];
