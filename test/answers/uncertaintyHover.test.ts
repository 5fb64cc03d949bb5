import { describe, expect, it } from 'vitest';
import { heard, service } from '../helpers/analysed.ts';
import { probe, probeWith } from '../helpers/probe.ts';

/** The hover on some characters of a text. */
function hoverOn(text: string, at: string): string {
  const analysis = heard(text);
  const hover = service.hover(analysis, text.indexOf(at) + 1);
  if (!hover) throw new Error(`nothing is said of ${at}`);
  return (hover.contents as { value: string }).value;
}

describe('the hover of a value', () => {
  it('says its uncertainty, how that came about, and its share in each figure', () => {
    const said = hoverOn(probe(), '150 to 250 mm');
    expect(said).toMatch(
      /Station 200 ± 2 mm, as is usual for what was measured\. Its ± accounts for \d+ % of that of the surfaced trim, \d+ % of that of the submerged trim\./,
    );
  });

  it('of a range in the water says its middle and its length', () => {
    const said = hoverOn(probe(['station: 0 to 400 mm', 'station: 1 to 400 mm']), '1 to 400 mm');
    expect(said).toMatch(/Station 201 ± 2 mm/);
    expect(said).toMatch(/Length 399 ± 1 mm/);
  });

  it('of a material says the density and its range', () => {
    const part = '{ name: strip, material: brass, box: 10 x 5 mm, station: 100 to 200 mm, height: 10 mm }';
    const said = hoverOn(probeWith(part), 'brass');
    expect(said).toContain('Density 8500 ± 95 kg/m³, by the handbook’s range.');
  });

  it('of a tolerance that is written says so', () => {
    const said = hoverOn(probe(['mass: 800 g', 'mass: 800 g ± 2 g']), '800 g ± 2 g');
    expect(said).toMatch(/Mass 800 ± 2 g, as you wrote\./);
  });

  it('says nothing where nothing is in uncertainty', () => {
    expect(hoverOn(probe(), 'bladder')).not.toContain('±');
  });
});
