/** Findings about forms drawn elsewhere, tabulated, or put together. */
export const formFindings = {
  'forms-overlap': {
    title: 'Two forms of one thing overlap',
    means: 'Two entries under “forms” take up the same room.',
    why: 'What lies in both counts twice, in volume and in weight by form.',
    todo: 'Let them touch without overlapping: end one where the other begins.',
  },
  'form-size': {
    title: 'A form is far too large, or nothing',
    means:
      'The form is longer than 20 m or lies that far away, or it encloses nothing: a mesh of one flat sheet, a size worked out from mass and density that is no size.',
    why: 'A unit or a digit is wrong. With such a form no figure of the boat would mean anything, so the entry is left out.',
    todo: 'Check the units and sizes of the entry, its mass and density, and the unit of its mesh.',
  },
  'sections-order': {
    title: 'The stations of a table of offsets do not rise',
    means: 'A section lies forward of the one before it, or at the same station.',
    why: 'The hull would run back through itself.',
    todo: 'Put the sections in order from bow to stern; for a step leave a tenth of a millimetre between the two.',
  },
  'sections-outline': {
    title: 'The outline of a section is no outline',
    means:
      'A half-breadth is negative, the line crosses itself or runs from deck to keel, or no section encloses anything.',
    why: 'A crossed outline has no inside, and a wrong point changes the displacement.',
    todo: 'Give [half-breadth, height] points of the starboard side in order from keel to deck.',
  },
  'wall-unlikely': {
    title: 'The wall of a meshed shell would be too thick',
    means: 'Mass, density and surface together make a wall of more than a tenth of the shell’s greatest extent.',
    why: 'The mass or the size is off, most likely by a unit.',
    todo: 'Check the mass, the material, and the unit of the mesh.',
  },
  'cells-undivided': {
    title: 'A tank of this form is not divided into cells',
    means:
      'Cells divide boxes, meshes, tables of offsets and rounds that lie fore and aft; not balls and other rounds.',
    why: 'Its water is figured as one, so the boat is a little stiffer in fact.',
    todo: 'Give the tank as a box or a fore-and-aft round, or each cell as a tank of its own.',
  },
  'mesh-name': {
    title: 'The name of a mesh file cannot be used',
    means: 'The name is a place on one computer, or does not end in .stl or .3mf.',
    why: 'Files are read from the folder of the boat file only, so that a boat file works wherever its folder goes.',
    todo: 'Copy the file beside the boat file and give its name from there.',
  },
  'mesh-loading': {
    title: 'A mesh file is being read',
    means: 'The file has been asked for and has not come yet.',
    why: 'Until then the entry is in no figure.',
    todo: 'Wait a moment.',
  },
  'mesh-missing': {
    title: 'A mesh file is not there',
    means: 'There is no file of that name, counted from the folder of the boat file.',
    why: 'The entry is in no figure.',
    todo: 'Check the name, or copy the file there.',
  },
  'mesh-unreadable': {
    title: 'A mesh file cannot be read',
    means: 'The file is neither STL nor 3MF inside, is cut short or damaged, or the system will not hand it out.',
    why: 'The entry is in no figure.',
    todo: 'Export it again from the drawing program as STL (binary or text) or 3MF.',
  },
  'mesh-too-large': {
    title: 'A mesh file is too large',
    means:
      'It has more than 64 MB or 500,000 triangles, or unpacks to more than 192 MB; or the meshes of a boat, each as often as it has them, come to more than a million triangles together.',
    why: 'Finer triangles change the displacement less than the paint does, and cost time at every look.',
    todo: 'Export it again more coarsely.',
  },
  'mesh-outside': {
    title: 'A mesh file lies outside the folder of the boat file',
    means: 'The name leads out of the folder with “..”, or a link on the way does.',
    why: 'A boat file reads nothing but its own folder: one from a stranger shall not look round the computer.',
    todo: 'Copy the file into the folder of the boat file.',
  },
  'mesh-unit': {
    title: 'The unit of a mesh overrules the file’s own',
    means: 'A 3MF file says what it is drawn in, and the entry says something else.',
    why: 'A wrong unit is a wrong boat.',
    todo: 'Remove “unit”, unless the file is known to be wrong.',
  },
  'mesh-mirrored': {
    title: 'The axes of a mesh make it its mirror image',
    means: 'The three axes turn a right-handed drawing into a left-handed boat, and its two sides differ.',
    why: 'What is to port comes to starboard, and the boat would list the other way.',
    todo: 'Change the sign of one axis.',
  },
  'mesh-open': {
    title: 'A mesh is not closed',
    means:
      'Edges have a triangle on one side only. The finding says how wide the gaps are and what share of the volume hangs on how they are closed: what lies under straight lids over them, seen from the middle of the body.',
    why: 'An open surface has no volume of its own. Up to 1 % at stake it is figured as closed straight across, beyond that left out. For a shell it does not matter.',
    todo: 'Close the surface in the drawing program, or put a free-flooding hull under “shells”.',
  },
  'mesh-turned': {
    title: 'Triangles of a mesh faced the wrong way',
    means: 'All or some of its triangles had their inside out.',
    why: 'Turned over as they are here the volume is right. Other programs may stumble over it.',
    todo: 'Nothing; or turn the normals over in the drawing program.',
  },
  'mesh-hollow': {
    title: 'A mesh has closed surfaces inside it',
    means: 'A closed piece lies wholly inside another: the inside of a wall, or a void.',
    why: 'Water does not get there, so the thing displaces by its outer surface; but its weight by form would be that of a solid.',
    todo: 'Weigh the thing. For a tank see that the mesh is the inside of the tank.',
  },
  'mesh-twisted': {
    title: 'A mesh has no inside',
    means: 'Its surface is joined to itself with half a twist, so that no side is out.',
    why: 'It has no volume.',
    todo: 'Draw the surface anew there.',
  },
  'mesh-edges': {
    title: 'Edges of a mesh belong to three triangles or more',
    means: 'Pieces touch along an edge, or a sheet stands inside the body.',
    why: 'In most cases the volume holds; a sheet inside a shell counts as wall.',
    todo: 'Nothing, unless the finding says more.',
  },
  'mesh-tidied': {
    title: 'Triangles without any area were left out',
    means:
      'Triangles had two corners in one spot. Corners closer than a millionth of the mesh’s diagonal count as one, since STL keeps about seven digits.',
    why: 'It changes nothing.',
    todo: 'Nothing.',
  },
  'mesh-twice': {
    title: 'Triangles of a mesh lie on each other',
    means:
      'Triangles have the same three corners as another and face the same way. Often a body was exported twice in one place.',
    why: 'Each of them counts once; the volume would be twice that of the body otherwise.',
    todo: 'Nothing; or take away what is there twice, so that other programs do not count it twice.',
  },
  'mesh-crossing': {
    title: 'A mesh goes through itself',
    means: 'Triangles go through each other: pieces were put together without being united.',
    why: 'What lies in two pieces counts twice; the finding says how much of the volume that is.',
    todo: 'Unite the pieces in the drawing program.',
  },
} as const;
