/**
 * Double exponential quadrature (Takahasi & Mori, Publ. RIMS 9 (1974), from memory): it converges as fast where the
 * integrand rises with a square root at an end of the interval as where it is smooth.
 */
const STEP = 1 / 12;
const NODES: readonly (readonly [x: number, weight: number])[] = Array.from({ length: 79 }, (_, i) => {
  const t = (i - 39) * STEP;
  const inner = (Math.PI / 2) * Math.sinh(t);
  return [Math.tanh(inner), (STEP * (Math.PI / 2) * Math.cosh(t)) / Math.cosh(inner) ** 2] as const;
});

/** Integrals of several functions at once, each smooth between the given points and their ends. */
function integrate(functions: (x: number) => readonly number[], points: readonly number[]): readonly number[] {
  const sorted = [...points].sort((a, b) => a - b);
  const sums: number[] = [];
  for (let i = 1; i < sorted.length; i++) {
    const half = (sorted[i]! - sorted[i - 1]!) / 2;
    if (half <= 0) continue;
    const middle = (sorted[i]! + sorted[i - 1]!) / 2;
    for (const [x, weight] of NODES) {
      functions(middle + half * x).forEach((value, k) => {
        sums[k] = (sums[k] ?? 0) + half * weight * value;
      });
    }
  }
  return sums;
}

/** A frustum along x from 0 to `length`, cut by `rise·x + z <= level`: `rise` is the tangent of the tilt. */
export interface CutFrustum {
  readonly from: number;
  readonly to: number;
  readonly length: number;
  readonly rise: number;
  readonly level: number;
}

/** What lies below the plane: volume or area, and its first moments along x and z. */
export interface Below {
  readonly amount: number;
  readonly x: number;
  readonly z: number;
}

/**
 * The solid, by slices along its axis and up at a constant y: each is a strip between a parabola-like outline and the
 * plane, integrated over x, then over y. The program goes another way, by disks square to the axis.
 */
export function solidBelow(cut: CutFrustum): Below {
  const { from, to, length, rise, level } = cut;
  const slope = (to - from) / length;
  const widest = Math.max(from, to);
  const surface = (x: number): number => level - rise * x;
  const slice = (y: number): readonly number[] => {
    // The outline meets y where the radius is |y|; the plane meets it where surface² = radius² - y².
    const meets = slope === 0 ? [] : [(Math.abs(y) - from) / slope];
    const crossings = roots(
      rise ** 2 - slope ** 2,
      -2 * (level * rise + from * slope),
      level ** 2 - from ** 2 + y ** 2,
    );
    const inside = [...meets, ...crossings].filter(x => x > 0 && x < length);
    return integrate(
      x => {
        const radius = from + slope * x;
        const top = Math.sqrt(Math.max(0, radius ** 2 - y ** 2));
        const wet = Math.min(Math.max(surface(x), -top), top);
        return [wet + top, x * (wet + top), (wet ** 2 - top ** 2) / 2];
      },
      [0, ...inside, length],
    );
  };
  // Slices change their nature where the plane leaves an end disk, at the small end, and where it only grazes the cone.
  const breaks = [Math.min(from, to)];
  for (const [x, radius] of [
    [0, from],
    [length, to],
  ] as const) {
    breaks.push(Math.sqrt(Math.max(0, radius ** 2 - surface(x) ** 2)));
  }
  const leading = rise ** 2 - slope ** 2;
  const grazing = (level * rise + from * slope) ** 2 / leading - level ** 2 + from ** 2;
  if (leading > 0 && grazing > 0) breaks.push(Math.sqrt(grazing));
  const inside = breaks.filter(y => y > 0 && y < widest);
  const [volume = 0, x = 0, z = 0] = integrate(slice, [0, ...inside, widest]);
  return { amount: 2 * volume, x: 2 * x, z: 2 * z };
}

/** The curved wall, by generators: along each the wet part is one stretch, with sums in closed form. */
export function wallBelow(cut: CutFrustum): Below {
  const { from, to, length, rise, level } = cut;
  const slope = (to - from) / length;
  const slant = Math.hypot(1, slope);
  const heightAt = (x: number, cosine: number): number => rise * x + (from + slope * x) * cosine - level;
  const generator = (psi: number): readonly number[] => {
    const cosine = Math.cos(psi);
    const [start, end] = [heightAt(0, cosine), heightAt(length, cosine)];
    const crossing = (length * start) / (start - end);
    const a = start <= 0 ? 0 : end <= 0 ? crossing : length;
    const b = end <= 0 ? length : start <= 0 ? crossing : length;
    const power = (n: number): number => (b ** n - a ** n) / n;
    const area = slant * (from * power(1) + slope * power(2));
    const along = slant * (from * power(2) + slope * power(3));
    const squares = from ** 2 * power(1) + 2 * from * slope * power(2) + slope ** 2 * power(3);
    return [area, along, slant * squares * cosine];
  };
  const kinks = [(level - 0) / from, (level - rise * length) / to, ...(slope === 0 ? [] : [-rise / slope])].filter(
    cosine => Math.abs(cosine) < 1,
  );
  const [area = 0, x = 0, z = 0] = integrate(generator, [0, ...kinks.map(Math.acos), Math.PI]);
  return { amount: 2 * area, x: 2 * x, z: 2 * z };
}

/** Real roots of ax² + bx + c. */
function roots(a: number, b: number, c: number): readonly number[] {
  if (Math.abs(a) < 1e-14) return b === 0 ? [] : [-c / b];
  const discriminant = b ** 2 - 4 * a * c;
  if (discriminant < 0) return [];
  const q = -(b + Math.sign(b || 1) * Math.sqrt(discriminant)) / 2;
  return q === 0 ? [0] : [q / a, c / q];
}
