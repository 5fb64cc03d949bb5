/** Findings about things measured in more than one way, and of several from one entry. */
export const measuredFindings = {
  'in-water-mass': {
    title: 'A weight in water without a weight in air',
    means: 'The entry says “inWater” but not “mass”.',
    why: 'The buoyancy is the difference of the two.',
    todo: 'Weigh the thing dry and give its “mass”.',
  },
  'in-water-impossible': {
    title: 'Something weighs as much in water as in air',
    means: 'The weight in water is not less than the mass.',
    why: 'Water buoys up as much as it is pushed aside (Archimedes), so one of the two figures is wrong.',
    todo: 'Check both figures and their units. What floats weighs less than nothing in water: give it with a minus sign.',
  },
  'in-water-form': {
    title: 'The weight in water and the form disagree',
    means:
      'The volume by weight in water and the volume by the sizes differ by more than three standard uncertainties of their difference.',
    why: 'One of the two is wrong. The figures go by the weight in water, the form only says where the volume lies.',
    todo: 'Check the sizes and their units, and weigh again without bubbles.',
  },
  'in-water-material': {
    title: 'The weight in water and the material disagree',
    means: 'The density by the two weighings lies outside the material’s by more than three standard uncertainties.',
    why: 'The material is another, a weight is wrong, or there is air in the thing.',
    todo: 'Weigh again without bubbles, or name the material that it is.',
  },
  'capacity-disagrees': {
    title: 'The jug and the form of a tank disagree',
    means:
      'What the tank holds by the jug and by its sizes differs by more than three standard uncertainties of the difference.',
    why: 'One of the two is wrong. The figures go by the jug, the form only says where the water lies.',
    todo: 'Check the sizes: the inside is wanted, less what stands in it. Measure again with the air out of the corners.',
  },
  'assembly-twice': {
    title: 'Something counts twice: in an assembly and by itself',
    means: 'An entry lists under “holds” what has an entry of its own.',
    why: 'Its mass is in that of the assembly already.',
    todo: 'Take out one of the two.',
  },
  'assembly-lighter': {
    title: 'An assembly weighs less than what is in it',
    means: 'The masses under “holds” come to more than the mass of the entry, beyond what scales leave open.',
    why: 'The entry was weighed without them, or a mass is wrong.',
    todo: 'Weigh it with all that it holds.',
  },
  'scale-missing': {
    title: 'A length in full size, but no scale',
    means: 'A length is given in full size, and the file does not say the scale of the model.',
    why: 'What it is on the model is not known, so what hangs on it is in no figure.',
    todo: 'Add “scale: 1:72”, the scale that it is built to; or give the length of the model.',
  },
  'row-incomplete': {
    title: 'A row lacks its count or its spacing',
    means: 'The entry says “count” without “spacing”, or the other way round.',
    why: 'Where the others lie is not known, so only one is in the figures.',
    todo: 'Give both: “count: 4” and “spacing: 40 mm”, from middle to middle.',
  },
  'row-overlaps': {
    title: 'Those of a row lie in each other',
    means: 'Each is longer than the spacing.',
    why: 'What lies in two of them would displace twice, so the entry is left out.',
    todo: 'Check the spacing and the length of one; “station” is that of the foremost.',
  },
  'pair-overlaps': {
    title: 'The two of a pair lie in each other',
    means: '“sides: both”, and the one to starboard reaches across the centreline.',
    why: 'Its mirror image would take up the same room, so the entry is left out.',
    todo: 'Give the “offset” of the one to starboard.',
  },
} as const;
