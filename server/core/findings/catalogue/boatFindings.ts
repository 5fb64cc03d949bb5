/** Findings about what the file says of the boat. */
export const boatFindings = {
  'not-a-boat': {
    title: 'Not a boat file',
    means: 'The file does not begin with keys such as boat: and hull:.',
    why: 'Nothing can be computed.',
    todo: 'Begin with “boat: NAME” and “hull:”, or start from a new boat file.',
  },
  'not-a-list': {
    title: 'A list was expected',
    means: 'Shells, compartments, tanks, payload and bays are lists of entries.',
    why: 'The entries cannot be told apart.',
    todo: 'Begin each entry on a line with “- ”.',
  },
  'too-many': {
    title: 'There are more entries than any boat has',
    means:
      'A file has 50 shells, compartments and trials, 24 tanks, 100 bays, 12 loading conditions and 1,000 parts at most, and 300 readings in all trials together.',
    why: 'Every figure takes longer with each of them. Those beyond are in no figure.',
    todo: 'Put together what lies together: weigh the screws of a lid with the lid.',
  },
  'unknown-key': {
    title: 'There is no such key',
    means: 'The key is not one of those that belong here.',
    why: 'A mistyped key would silently change nothing.',
    todo: 'Use the key that is suggested, or take the line out.',
  },
  'missing-key': {
    title: 'A key is missing',
    means: 'The entry lacks something that it cannot do without.',
    why: 'Without it the entry is in no figure.',
    todo: 'Add the key.',
  },
  'unit-guessed': {
    title: 'A density stands without its unit',
    means: 'A bare density is in kg/m3, but the figure is so small that it can only be g/ml.',
    why: 'It is read as g/ml. Whoever reads the file after you has to guess as well.',
    todo: 'Write the unit behind it: “1.025 g/ml”, or “1025 kg/m3”.',
  },
  'wrong-value': {
    title: 'The value is not one that belongs here',
    means: 'The key takes one of a few words, or another kind of value.',
    why: 'The value has no meaning here.',
    todo: 'Use one of the values that are named.',
  },
  'wrong-quantity': {
    title: 'The quantity cannot be read',
    means:
      'The number, its unit or its range is not as expected: a mass where a length belongs, an unknown unit, a range that falls.',
    why: 'A wrong unit is a wrong boat.',
    todo: 'Write a number and a unit, such as 240 g, 5 1/4 in or 120 to 480 mm.',
  },
  'duplicate-name': {
    title: 'Two things have one name',
    means: 'Another entry is called the same.',
    why: 'Findings and “in:” go by names.',
    todo: 'Give one of them another name.',
  },
  'unknown-compartment': {
    title: 'There is no such compartment',
    means: '“in:” names something that is not under hull: compartments.',
    why: 'Whether the part is dry decides whether it displaces. Until it is fixed it counts as dry.',
    todo: 'Use the name of a compartment, or leave “in:” out for a part in the water.',
  },
  'condition-impossible': {
    title: 'A loading condition that cannot be',
    means:
      'Under “conditions:” an entry names a part or a tank that the boat has not, or says twice what is in the tanks.',
    why: 'Its figures would be those of another boat, so the condition is not figured.',
    todo: 'Use a name of the file, or keep one of the two.',
  },
  'condition-unused': {
    title: 'A key that says nothing in this condition',
    means:
      'What is given means nothing here: the fill of a boat that hangs neutral, a limit of a figure that it does not have there, or the tolerance of a fill that is set.',
    why: 'It would seem to be heeded, and is not.',
    todo: 'Take it out, or look at “condition:” of the entry.',
  },
  'unknown-material': {
    title: 'The handbook has no such material',
    means: 'The name is not in the materials handbook.',
    why: 'Its density, and so its volume, is not known.',
    todo: 'Use a handbook name, or give the density.',
  },
  'density-unlikely': {
    title: 'Mass, form and material do not agree',
    means: 'Mass over volume lies outside the material’s range.',
    why: 'One of the three is wrong, or the part is hollow.',
    todo: 'Weigh and measure again. A hollow or printed part: give its own density.',
  },
  'volume-unknown': {
    title: 'What it displaces cannot be known',
    means: 'A part in the water has neither form, nor material and mass, nor a dunked volume.',
    why: 'Buoyancy is volume: the part would be in no figure.',
    todo: 'Give a form, or material and mass, or dunk it in a measuring jug and give the volume.',
  },
  'mass-unknown': {
    title: 'The part has no mass',
    means: 'Neither is it weighed, nor can the program weigh it by form and material.',
    why: 'Weight is half of the balance.',
    todo: 'Put it on the scale.',
  },
  'form-unknown': {
    title: 'The form is missing',
    means: 'A shell, compartment or tank needs a form.',
    why: 'Its volume and surface are not known.',
    todo: 'Give round, box, profile or ranges on all three axes.',
  },
  'length-unknown': {
    title: 'Its length cannot be told',
    means: 'A round or box has a place but no length along its axis.',
    why: 'Its volume is not known.',
    todo: 'Give a range, such as station: 200 to 680 mm, or mass and material.',
  },
  'two-forms': {
    title: 'Two forms in one entry',
    means: 'An entry has one form.',
    why: 'It is not clear which counts.',
    todo: 'Keep one.',
  },
  'size-twice': {
    title: 'A size is given twice',
    means: 'The form gives the size on this axis, and a range gives another.',
    why: 'They disagree.',
    todo: 'Give one figure for the middle.',
  },
  'profile-order': {
    title: 'The profile runs backwards',
    means: 'The stations of a profile go from bow to stern.',
    why: 'A profile that turns back has no volume that can be told.',
    todo: 'Put the points in order of station.',
  },
  'profile-radius': {
    title: 'A radius of the profile is wrong',
    means: 'Radii cannot be negative, nor all nothing.',
    why: 'There is no such body.',
    todo: 'Check the second figure of each point.',
  },
  'key-without-use': {
    title: 'The key changes nothing here',
    means: 'The key belongs to another kind of tank.',
    why: 'It would seem to matter and does not.',
    todo: 'Take it out, or change the kind.',
  },
  'water-out-of-range': {
    title: 'The water is outside the tables',
    means: 'Temperature or salt lie outside what the equation of state is made for: 0 to 40 °C, 0 to 42 g/kg.',
    why: 'Fresh water of 20 °C stands in.',
    todo: 'Check the figure, or measure the density and give it.',
  },
} as const;
