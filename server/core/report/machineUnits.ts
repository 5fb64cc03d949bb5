/** From SI to the units of the report for machines. */
export const mm = (metres: number): number => metres * 1e3;
export const g = (kilograms: number): number => kilograms * 1e3;
export const degrees = (radians: number): number => (radians * 180) / Math.PI;
