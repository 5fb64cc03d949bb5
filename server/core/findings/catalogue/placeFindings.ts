/** Findings about where things lie: past the hull, out of their compartment, in each other's room. */
export const placeFindings = {
  'sticks-out': {
    title: 'A part sticks out of its compartment',
    means: 'The part’s room reaches past the compartment’s.',
    why: 'What sticks out would be in the water and displace, or does not fit.',
    todo: 'Check station, offset, height and sizes.',
  },
  'perhaps-inside': {
    title: 'Something in a compartment counts as in the water',
    means: 'Its room lies whole in a watertight compartment, but it has no “in:”.',
    why: 'Without “in:” it displaces water of its own, though its compartment already displaces that room.',
    todo: 'Add “in:” with the compartment’s name; or check the place if it really lies in the water.',
  },
  'compartments-overlap': {
    title: 'Two compartments overlap',
    means: 'Two watertight spaces take up the same room.',
    why: 'That water would be displaced twice, and the boat float too high.',
    todo: 'Check their stations and sizes.',
  },
  'mesh-beyond-hull': {
    title: 'A mesh reaches beyond the hull',
    means: 'The mesh ends more than a tenth of the hull’s length past the bow tip or the hull’s after end.',
    why: 'Its unit, its axes or its place are wrong, or the hull’s length is.',
    todo: 'Check “unit”, “axes” and “at”, and the hull’s length.',
  },
  'beyond-hull': {
    title: 'Something reaches past the end of the hull',
    means: 'By its station and length it begins ahead of the bow tip, or ends aft of the hull’s length.',
    why: 'It weighs and displaces far from midships, where every gram turns the boat the most. Stations that were counted from the stern or from midships show so too; where all of them are, “origin” under “hull:” says it once.',
    todo: 'Check its station and length, and the hull’s length. What is meant to stand outside says “outside: true”.',
  },
  'hull-too-short': {
    title: 'The hull’s length does not go with what is in it',
    means:
      'Several things reach past the ends of the hull, one of them the hull’s own shell; or nothing in the file reaches anywhere near its stern.',
    why: 'Draft and trim are told at half of that length, and the painted waterline runs from end to end of it.',
    todo: 'Measure the hull from the bow tip to its aftmost point and correct “length”.',
  },
  'below-keel': {
    title: 'Something lies below the keel',
    means: 'It reaches below the lowest point of the hull, from which heights are counted.',
    why: 'Lead that lies lower than it can be makes the boat look stiffer than it is.',
    todo: 'Check its height and depth. A keel that is bolted underneath says “outside: true”.',
  },
  'outside-hull': {
    title: 'Something stands out of the hull',
    means: 'At its station part of it lies outside the outer form of the shells.',
    why: 'It would not go in, so its place or its size is wrong, and with it the balance.',
    todo: 'Check its station, offset, height and size, and the shell’s form there. What is meant to stand outside says “outside: true”.',
  },
  'same-room': {
    title: 'Two things take up the same room',
    means: 'By their forms and places one lies partly where the other is.',
    why: 'One of them lies elsewhere, or is smaller; in the water their common room would displace twice.',
    todo: 'Check the places and sizes of both.',
  },
  'room-not-all-told': {
    title: 'Not everything was held against the hull and its neighbours',
    means:
      'More things share room, or lie close, than in any boat, each of a pair or a row counted; the one that is named, and those after it, were not looked at.',
    why: 'Every keystroke takes longer with each pair of them.',
    todo: 'Set right the things that are told: then the others are looked at. Write a long row of small things as one block.',
  },
} as const;
