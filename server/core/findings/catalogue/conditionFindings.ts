/** Findings about what the boat does. */
export const conditionFindings = {
  'nothing-floats': {
    title: 'Nothing to float yet',
    means: 'The file has nothing that weighs, or nothing that displaces.',
    why: 'There is nothing to compute.',
    todo: 'Add the hull’s shells and compartments, and what they carry.',
  },
  'still-wanted': {
    title: 'Still wanted aboard',
    means:
      'More than a tenth of what the painted waterline asks the boat to weigh is not in the file yet. The figures are for what lies in the dry; what lies in the water and displaces some must weigh so much more.',
    why: 'It tells what is left for battery, gear and lead, and where their common centre must lie: station and offset for the trim, height for the stability.',
    todo: 'Go on entering what will be aboard; the figure grows smaller till nothing is wanted.',
  },
  'tank-wanted': {
    title: 'The tank does not fit the boat',
    means:
      'On its painted waterline more of the boat stands out of the water than the tanks can sink, or so little that they would hang neutral nearly empty; or there is no tank yet.',
    why: 'As much water as stands out of it must come in for the boat to hang neutral; where that volume has its centre, the ballast must have its own, or diving trims the boat.',
    todo: 'Take the tank that the quick fix writes as a beginning, or cut the volume above the waterline.',
  },
  sinks: {
    title: 'The boat sinks',
    means: 'It weighs more than all the water it can push aside.',
    why: 'It does not come back.',
    todo: 'Take weight out, or add foam or a larger compartment. Until then keep it on a line.',
  },
  overturns: {
    title: 'The boat does not stay upright',
    means: 'Let go upright on the surface it rolls or pitches over.',
    why: 'Its metacentric height is negative.',
    todo: 'Put weight lower and buoyancy higher.',
  },
  unsettled: {
    title: 'No rest was found',
    means: 'The search for an attitude in which weight and buoyancy are in line did not end.',
    why: 'No figure is better than a wrong one.',
    todo: 'Look for a slip in sizes and masses.',
  },
  'surfaced-draft': {
    title: 'Floats too deep or too high',
    means: 'At half length the water stands away from the painted waterline by more than the limit.',
    why: 'The waterline is what one sees, and how much must be sunk to dive.',
    todo: 'Add or take out weight near half length, or foam under the waterline.',
  },
  'surfaced-trim': {
    title: 'Out of trim on the surface',
    means: 'Bow or stern rides high against the painted waterline.',
    why: 'The boat looks wrong and steers badly.',
    todo: 'Lead towards the high end, foam under water towards the low one; the code action computes it.',
  },
  'surfaced-heel': {
    title: 'Lists on the surface',
    means: 'The boat leans to one side by more than the limit.',
    why: 'A list on the surface grows in turns, and shows.',
    todo: 'Lead on the high side, or move equipment across.',
  },
  'surfaced-lies-over': {
    title: 'Lies over on the surface',
    means: 'The boat rests far over to one side.',
    why: 'Draft and trim mean nothing there; it is not stable upright, or its weight is off the centreline.',
    todo: 'Weight lower down and on the centreline.',
  },
  'surfaced-gm': {
    title: 'Tender on the surface',
    means: 'The metacentric height, with the tank water free to move, is under the limit.',
    why: 'Little rights the boat: wind and turns lay it over.',
    todo: 'Weight lower down, or less free surface in the tank.',
  },
  'submerged-heavy': {
    title: 'Too heavy to hang neutral',
    means: 'Even with empty tanks the submerged boat weighs more than its buoyancy.',
    why: 'It goes to the bottom and stays there.',
    todo: 'Foam in the flooded hull, or less lead. Until then keep it on a line.',
  },
  'submerged-light': {
    title: 'Too light to submerge',
    means: 'Even with full tanks it is lighter than the water it pushes aside.',
    why: 'It cannot dive but by its planes.',
    todo: 'More weight, less foam, or a larger tank.',
  },
  'submerged-reserve': {
    title: 'Too light or too heavy to be held under',
    means: 'With all tanks full the buoyancy that is left is not within “reserve” of the limits.',
    why: 'Planes hold down only so much, and the less the slower it runs; with nothing left it does not come up when it stops.',
    todo: 'Weight in water, or foam, by what it is off. Until then keep it on a line.',
  },
  'submerged-overturns': {
    title: 'Upside down under water',
    means: 'The centre of mass lies above the centre of buoyancy.',
    why: 'Submerged nothing else keeps it upright.',
    todo: 'Lead lower, foam higher.',
  },
  'submerged-unstable': {
    title: 'Does not stay level under water',
    means: 'Water running along or across the tank takes more than all the stability there is.',
    why: 'The least tilt grows until the water is at one end.',
    todo: 'A shorter tank, cells, or a piston; lead lower and foam higher.',
  },
  'submerged-trim': {
    title: 'Out of trim under water',
    means: 'Hanging neutral the boat points up or down by more than the limit.',
    why: 'It rises or dives when it should run level.',
    todo: 'A few grams at the end of the boat; foam above the waterline acts here and not on the surface.',
  },
  'submerged-heel': {
    title: 'Lists under water',
    means: 'Hanging neutral the boat leans to one side by more than the limit.',
    why: 'It turns when it should run straight.',
    todo: 'Move weight or foam across.',
  },
  'submerged-bg': {
    title: 'Touchy under water',
    means: 'The centre of mass hangs only little below the centre of buoyancy once the tank water may move.',
    why: 'A few grams mean degrees.',
    todo: 'Lead lower and foam higher as a pair, or a tank with less free surface.',
  },
  'submerged-touchy': {
    title: 'Too touchy to trim by weight',
    means: 'Less than a scale tells, at one end of the submerged boat, swings it by more than half the limit.',
    why: 'The trim is lost again with the next drop of water in a corner.',
    todo: 'A stiffening pair: lead low and foam high that leave the balance as it is; a tank in cells. Slide pieces instead of trimming them.',
  },
  'neutral-fill': {
    title: 'The tank is the wrong size',
    means: 'The boat hangs neutral with the tank fuller or emptier than the limit.',
    why: 'Too full leaves no margin for colder or saltier water; too empty carries room for nothing.',
    todo: 'Change the boat’s weight, or the tank: the report says which size would do.',
  },
  'transit-trim': {
    title: 'Out of trim on the way down',
    means: 'Both ends are well, but in between the boat points up or down by more than the limit.',
    why: 'It slides away as it dives.',
    todo: 'Look at what leaves the water first, and where the tank lies.',
  },
  'transit-heel': {
    title: 'Lists on the way down',
    means: 'Both ends are well, but in between the boat leans by more than the limit.',
    why: 'It may lie over just when it goes under.',
    todo: 'Weight lower down; look at a heavy casing or sail.',
  },
  'transit-gm': {
    title: 'Tender on the way down',
    means:
      'Both ends are well, but in between little rights the boat: the waterplane has gone and G is not yet far below B.',
    why: 'It may lie over just when it goes under.',
    todo: 'Weight lower down, foam higher up, a tank with less free surface.',
  },
  'other-rest': {
    title: 'Another way to lie',
    means: 'The boat is stable in another attitude too.',
    why: 'Knocked over so far, it stays there.',
    todo: 'Weight lower down makes upright the only rest.',
  },
  'small-range': {
    title: 'Comes back from too little',
    means:
      'Heeled over surfaced and let go, the boat comes back from less than 40° on one side (common practice, no source): past that the righting lever is negative.',
    why: 'A wave, a wake or a hand knocks a model that far, and it goes over to another rest.',
    todo: 'Weight lower down, or more buoyancy high up; see the righting levers in the report.',
  },
  'tank-pressure': {
    title: 'Too much pressure in a sealed tank',
    means:
      'At the neutral fill the shut-in air is pressed harder than the tank is built for (Boyle’s law; filled fast it is more).',
    why: 'Pumps stall, seals leak, and a tank under pressure can burst.',
    todo: 'A larger tank, less fill, or a vent. Keep to the maker’s rating and local rules.',
  },
  'blow-short': {
    title: 'A charge does not blow its tank',
    means:
      'From the depth asked for the gas that is carried does not drive out the water that the tank holds under water (ideal gas of the water’s temperature, Boyle’s law; cold or spilled gas gives less).',
    why: 'It is what brings the boat up when all else fails.',
    todo: 'A larger charge or a smaller depth. Bottles and cartridges are pressure vessels: their maker’s rating and local rules come first, and filling them is for qualified people.',
  },
  'cannot-tell': {
    title: 'How well the figures are known',
    means:
      'A figure is inside its limit, but the limit lies within two uncertainties (±, standard uncertainties) of it: what the masses, places and sizes in the file leave open may put the boat outside.',
    why: 'On the bench all is well, in the pool it may not be.',
    todo: 'Weigh and measure what makes the most of the uncertainty and write its tolerance; what is left only a trial tells.',
  },
  'weigh-next': {
    title: 'What to weigh, measure or read next',
    means:
      'Of all that can be weighed, measured and read (the whole boat on scales, on a knife edge, hung up under water, afloat, under water, each figure in the file), this takes most of the uncertainty for its trouble in the figure that is nearest to its limit. What it would leave is known beforehand, whatever it will show.',
    why: 'Anything else takes longer and tells less.',
    todo: 'Do it, and write it down: a figure with its tolerance after ±, a reading of the whole boat as a trial. Lift a heavy boat with two, and keep mains leads away from water.',
  },
  'trial-differs': {
    title: 'The boat was not as its file has it',
    means:
      'What was read in the water differs from what the full model says of the file, by more than twice what the reading itself and all tolerances of the file leave open (each a standard uncertainty).',
    why: 'Something weighs, lies or displaces other than the file says, and every figure suffers by it.',
    todo: 'Look for what nobody wrote down, and weigh and measure again what is named; or take one of the quick fixes: an entry for the unlisted weight, or changed figures.',
  },
  'trial-slip': {
    title: 'A reading that fits nothing',
    means:
      'Neither the file, nor a weight that nobody wrote down, nor any of the other readings agrees with it: its normalised residual is above 3.29, which a good reading is once in a thousand (Baarda’s data snooping).',
    why: 'One slip of the tape would spoil what all the others teach, so it is left out.',
    todo: 'Look at your notes: two figures swapped, the wrong end of the tape, port for starboard. Else read it again at the next trial.',
  },
  'trial-not-comparable': {
    title: 'A trial that the file does not know',
    means: 'By the file the boat would have sunk, turned over or not hung neutral under the conditions of the trial.',
    why: 'There is nothing to compare the readings with.',
    todo: 'Say under “aboard” what was on board that day, under “pool” what water it was; fix the file’s errors.',
  },
} as const;
