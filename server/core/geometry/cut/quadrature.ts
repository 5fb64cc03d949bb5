/** Nodes of a rule on 0..1, each with its distance from the far end kept apart so that nothing cancels near 1. */
export interface Quadrature {
  readonly fromStart: Float64Array;
  readonly fromEnd: Float64Array;
  readonly weight: Float64Array;
}

/**
 * Gauss-Legendre with `count` points on -1..1: roots of the Legendre polynomial by Newton's method from the usual
 * cosine estimate (Abramowitz & Stegun, Handbook of Mathematical Functions, 25.4.29, from memory).
 */
function legendreRoots(count: number): { readonly root: number; readonly weight: number }[] {
  return Array.from({ length: count }, (_, i) => {
    let root = Math.cos((Math.PI * (i + 0.75)) / (count + 0.5));
    let slope = 0;
    for (let round = 0; round < 8; round++) {
      let value = 1;
      let before = 0;
      for (let degree = 1; degree <= count; degree++) {
        const next = ((2 * degree - 1) * root * value - (degree - 1) * before) / degree;
        before = value;
        value = next;
      }
      slope = (count * (root * value - before)) / (root * root - 1);
      root -= value / slope;
    }
    return { root, weight: 2 / ((1 - root * root) * slope * slope) };
  });
}

/** Gauss-Legendre on 0..1, for integrands that are smooth up to both ends and a little beyond. */
export function gaussLegendre(count: number): Quadrature {
  const nodes = legendreRoots(count);
  return {
    fromStart: Float64Array.from(nodes, node => (1 - node.root) / 2),
    fromEnd: Float64Array.from(nodes, node => (1 + node.root) / 2),
    weight: Float64Array.from(nodes, node => node.weight / 2),
  };
}

/**
 * Gauss-Legendre in the angle t with x = (1 - cos t)/2, t = 0..pi: square roots (and inverse square roots) of the
 * distance from either end turn into smooth functions of t.
 */
export function gaussLegendreInAngle(count: number): Quadrature {
  const nodes = legendreRoots(count).map(node => ({
    half: (Math.PI / 4) * (1 - node.root),
    weight: node.weight,
  }));
  return {
    fromStart: Float64Array.from(nodes, node => Math.sin(node.half) ** 2),
    fromEnd: Float64Array.from(nodes, node => Math.cos(node.half) ** 2),
    weight: Float64Array.from(nodes, node => (node.weight * Math.PI * Math.sin(2 * node.half)) / 4),
  };
}
