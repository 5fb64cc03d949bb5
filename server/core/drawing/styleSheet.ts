/**
 * How every picture looks: for light paper, readable in black and white. Whoever shows a picture on another ground sets the
 * custom properties on an element around it.
 */
export const styleSheet = `
.sheet {
  --ink: var(--sheet-ink, #1b2430);
  --paper: var(--sheet-paper, #ffffff);
  --faint: var(--sheet-faint, #6a7480);
  --water: var(--sheet-water, #2f6f9f);
  --wash: var(--sheet-wash, #e4eef5);
  --good: var(--sheet-good, #1f6b3a);
  --bad: var(--sheet-bad, #a3261c);
  --ghost: var(--sheet-ghost, #7a3e9d);
  --lit: var(--sheet-lit, #b36a00);
  font-family: var(--sheet-font, "Helvetica Neue", Helvetica, Arial, "Liberation Sans", sans-serif);
  font-size: 14px;
  fill: var(--ink);
  stroke: none;
  background: var(--paper);
}
.sheet text { fill: var(--ink); font-variant-numeric: tabular-nums; }
.sheet .paper { fill: var(--paper); }
.sheet .caption { font-size: 16px; font-weight: 600; }
.sheet .note { font-size: 13px; fill: var(--faint); }
.sheet .proposal { fill: var(--ghost); font-weight: 600; }
.sheet .beyond { fill: none; stroke: var(--faint); stroke-width: 0.7; stroke-dasharray: 3 3; }
.sheet .water { fill: var(--wash); }
.sheet .surface { stroke: var(--water); stroke-width: 1.4; fill: none; }
.sheet .surface-mark { fill: none; stroke: var(--water); stroke-width: 1.2; }
.sheet .body { fill: var(--paper); stroke: var(--ink); stroke-width: 1; stroke-linejoin: round; }
.sheet .shell .body { fill: var(--paper); stroke: none; }
.sheet .shell .flooded { fill: var(--wash); stroke: none; }
.sheet .legend .shell .body { stroke: var(--ink); stroke-width: 1.8; }
.sheet .rims { pointer-events: none; }
.sheet .rim { fill: none; stroke: var(--ink); stroke-width: 1.8; stroke-linejoin: round; stroke-linecap: round; }
.sheet .hidden-rim { fill: none; stroke: var(--ink); stroke-width: 0.9; stroke-dasharray: 4 3; }
.sheet .compartment .body { fill: var(--paper); stroke-width: 1.3; }
.sheet .tank .body { fill: var(--paper); stroke-width: 1.1; }
.sheet .ballast { fill: var(--wash); stroke: var(--water); stroke-width: 0.8; }
.sheet .bay .body { fill: none; stroke: var(--faint); stroke-width: 0.8; stroke-opacity: 0.7; stroke-dasharray: 5 3; }
.sheet .unsized { stroke-dasharray: 2 2; }
.sheet .ghost .body { stroke: var(--ghost); stroke-width: 1.6; stroke-dasharray: 7 2 1.5 2; fill: var(--paper); fill-opacity: 0.6; }
.sheet .ghost text, .sheet .label.ghost { fill: var(--ghost); font-weight: 600; }
.sheet .painted { stroke: var(--bad); stroke-width: 2.4; stroke-dasharray: 14 4; fill: none; }
.sheet .still-wanted { stroke: var(--bad); stroke-width: 1.6; fill: none; }
.sheet .still-wanted circle { fill: var(--paper); fill-opacity: 0.6; stroke-dasharray: 3 2; }
.sheet .mark { stroke: var(--ink); stroke-width: 1.2; fill: var(--paper); }
.sheet .mark .full { fill: var(--ink); stroke: none; }
.sheet .plumb { stroke: var(--ink); stroke-width: 0.8; stroke-dasharray: 8 2 2 2; fill: none; }
.sheet .leader { stroke: var(--faint); stroke-width: 0.7; fill: none; }
.sheet .leader-end { fill: var(--ink); }
.sheet .tape { stroke: var(--faint); stroke-width: 0.9; fill: none; }
.sheet .key-words { font-size: 12px; fill: var(--faint); }
.sheet .tape-words { font-size: 12px; fill: var(--faint); }
.sheet .off { stroke: var(--bad); stroke-width: 1.2; fill: none; }
.sheet .off-words { fill: var(--bad); font-weight: 600; paint-order: stroke; stroke: var(--paper); stroke-width: 4px; }
.sheet .centres-ring { fill: none; stroke: var(--ink); stroke-width: 0.9; stroke-dasharray: 2 2; }
.sheet .ring-words, .sheet .inset-letter { font-weight: 600; paint-order: stroke; stroke: var(--paper); stroke-width: 3px; }
.sheet .inset { fill: var(--paper); stroke: var(--faint); stroke-width: 1; }
.sheet .missing { font-size: 14px; }
.sheet .texture { stroke: var(--ink); fill: none; pointer-events: none; }
.sheet .of-lead { stroke-width: 1.1; }
.sheet .of-part { stroke: var(--faint); stroke-width: 0.8; }
.sheet .of-foam { stroke-width: 1.5; stroke-linecap: round; }
.sheet .of-ballast { stroke: var(--water); stroke-width: 1; stroke-dasharray: 5 2.5; }
.sheet .grid { stroke: var(--faint); stroke-width: 0.4; stroke-opacity: 0.5; fill: none; }
.sheet .zero { stroke: var(--faint); stroke-width: 1; fill: none; }
.sheet .axis { stroke: var(--ink); stroke-width: 1; fill: none; }
.sheet .tick { font-size: 12px; fill: var(--faint); }
.sheet .axis-words { font-size: 13px; }
.sheet .end-words { font-size: 12px; fill: var(--faint); font-style: italic; }
.sheet .curve { fill: none; stroke: var(--ink); stroke-width: 1.9; stroke-linejoin: round; }
.sheet .curve.two { stroke: var(--water); stroke-dasharray: 7 4; }
.sheet .curve.three { stroke-dasharray: 2 3; }
.sheet .out { fill: var(--bad); fill-opacity: 0.09; }
.sheet .limit { stroke: var(--bad); stroke-width: 1; stroke-dasharray: 3 2; fill: none; }
.sheet .dot-mark { fill: var(--ink); }
.sheet .ring-mark { fill: var(--paper); stroke: var(--ink); stroke-width: 1.3; }
.sheet .bar { stroke: var(--ink); stroke-width: 0.8; }
.sheet .bar.up { fill: var(--wash); }
.sheet .reading-name { font-size: 12px; }
.sheet .score { stroke: var(--ink); stroke-width: 2.2; fill: none; }
.sheet .uncertainty-head { font-weight: 600; }
.sheet .reach { fill: var(--wash); stroke: var(--water); stroke-width: 1.3; stroke-linejoin: round; }
.sheet .needed { stroke: var(--ink); stroke-width: 2.4; fill: none; }
.sheet .each-tank { fill: none; stroke: var(--faint); stroke-width: 1; }
.sheet .allowed { fill: var(--good); fill-opacity: 0.16; stroke: var(--good); stroke-width: 1.4; }
.sheet .then-mark { fill: var(--paper); stroke: var(--ghost); stroke-width: 2; }
.sheet .then-way { stroke: var(--ghost); stroke-width: 1.2; stroke-dasharray: 4 3; fill: none; }
.sheet .haloed { paint-order: stroke; stroke: var(--paper); stroke-width: 3px; }
.gauge-bar { display: block; width: 100%; height: auto; }
.gauge-bar .gauge-rule { stroke: var(--faint); stroke-width: 0.8; fill: none; }
.gauge-bar .gauge-band { fill: var(--good); fill-opacity: 0.16; stroke: var(--good); stroke-width: 1.2; }
.gauge-bar .gauge-whisker { stroke: var(--ink); stroke-width: 2; fill: none; }
.gauge-bar .gauge-needle { fill: var(--good); stroke: var(--paper); stroke-width: 1; }
.gauge-bar.out .gauge-needle { fill: var(--bad); }
.gauge-bar.open .gauge-needle { fill: var(--paper); stroke: var(--ink); stroke-width: 2; }
.gauge-bar .gauge-then { fill: var(--paper); stroke: var(--ghost); stroke-width: 1.8; }
.sheet .entry:hover .body, .sheet .entry:focus .body, .sheet .entry.lit .body { stroke: var(--lit); stroke-width: 2.6; }
.sheet .shell:hover .body, .sheet .shell:focus .body, .sheet .shell.lit .body { stroke-width: 6; }
.sheet .entry:focus { outline: none; }
.sheet .label.lit { fill: var(--lit); text-decoration: underline; }
`;
