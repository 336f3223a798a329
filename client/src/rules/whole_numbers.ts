/*
 * The arithmetic of the rules: floor division, rounding half up, the integer square root, medians without fractions.
 * It must not use a float: every ratio is compared by cross-multiplying, so that phone and server agree exactly.
 */

/** An exact mean: `sum / n`, never divided before it is compared. `n` is at least 1. */
export interface Mean {
  readonly sum: number;
  readonly n: number;
}

/** floor(num / den), towards minus infinity; `/` alone truncates nothing and `Math.trunc` goes towards zero. */
export function floorDivide(num: number, den: number): number {
  if (den === 0) throw new RangeError("division by zero");
  const rest = num % den;
  const quotient = (num - rest) / den;
  return rest !== 0 && rest < 0 !== den < 0 ? quotient - 1 : quotient;
}

/** num / den rounded half up: floor((2·num + den) / (2·den)). Den is positive. */
export function halfUp(num: number, den: number): number {
  return floorDivide(2 * num + den, 2 * den);
}

/** The largest whole number whose square is not above `value` (0 or more). The float is a first guess only. */
export function integerSquareRoot(value: bigint): bigint {
  if (value < 0n) throw new RangeError("square root of a negative number");
  let root = BigInt(Math.floor(Math.sqrt(Number(value))));
  while (root * root > value) root -= 1n;
  while ((root + 1n) * (root + 1n) <= value) root += 1n;
  return root;
}

/** The sum, in the order given; 0 for none. */
export function sumOf(values: readonly number[]): number {
  let sum = 0;
  for (const value of values) sum += value;
  return sum;
}

/** The exact mean of at least one value. */
export function meanOf(values: readonly number[]): Mean {
  if (values.length === 0) throw new RangeError("mean of nothing");
  return { sum: sumOf(values), n: values.length };
}

/** max − min of at least one value. */
export function rangeOf(values: readonly number[]): number {
  return Math.max(...values) - Math.min(...values);
}

/** Twice the median of at least one value: whole, since of an even count it is the sum of the middle two. */
export function twiceMedian(values: readonly number[]): number {
  if (values.length === 0) throw new RangeError("median of nothing");
  const sorted = [...values].sort((a, b) => a - b);
  const upper = sorted[floorDivide(sorted.length, 2)];
  const lower = sorted[floorDivide(sorted.length - 1, 2)];
  return lower + upper;
}

/** Is the value inside [lowest, highest], limits included? */
export function isWithin(value: number, limits: readonly number[]): boolean {
  return limits[0] <= value && value <= limits[1];
}
