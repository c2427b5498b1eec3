/** The shop's tools on the screen: bars as bent lines, tips, tabs, knock-downs. */
import type { Place, Rack, Tool } from '../api/plan';

export const SHELVES = ['tip', 'tab', 'knock_down'] as const;
export type Shelf = (typeof SHELVES)[number];
export const HARDNESSES = ['soft', 'medium', 'hard'] as const;

/** Spring steel, from memory of EN 10089 grades, as the starter rack has it, MPa. */
const STEEL = { e_mpa: 205_000, yield_mpa: 1100 };
const OWN = 'own';

/** Along a bar's middle line, mm. */
export const lengthOf = ({ line }: Pick<Tool, 'line'>): number => line.slice(1).reduce((sum, at, k) => sum + Math.hypot(at[0] - line[k]![0], at[1] - line[k]![1]), 0);

/** A name that none has yet. */
export function freeName(taken: string[], wanted: string): string {
  if (!taken.includes(wanted)) return wanted;
  for (let k = 2; ; k++) if (!taken.includes(`${wanted} ${k}`)) return `${wanted} ${k}`;
}

export const newTool = (name: string): Tool => ({ name, says: '', line: [[0, 0], [0, -20], [500, -30]], section: { kind: 'round', diameter_mm: 10 }, ...STEEL, source: OWN });
export const newTip = (name: string): Rack['tip'][number] => ({ name, radius: 8, hardness: 'medium', source: OWN });

/** What stands in the way of saving: the names that are empty or come twice, and tools without a length. */
export function flawsOf(rack: Rack): string[] {
  const of = (names: string[]) => names.filter((name, k) => name.trim() === '' || names.indexOf(name) !== k);
  const short = rack.tool.filter((tool) => tool.line.length < 2 || tool.line.some((at, k) => k > 0 && at[0] === tool.line[k - 1]![0] && at[1] === tool.line[k - 1]![1])).map((tool) => tool.name);
  return [...new Set([...of(rack.tool.map((one) => one.name)), ...of(SHELVES.flatMap((shelf) => rack[shelf].map((one) => one.name))), ...short])];
}

/** What of the drawing is seen, mm: the bar with room about it, at least so large. */
export interface Frame {
  x: number;
  y: number;
  width: number;
  height: number;
}
export function frameOf(line: Place[], room = 60, ratio = 2.4): Frame {
  const [xs, ys] = [line.map((at) => at[0]), line.map((at) => -at[1])];
  const [left, right, top, bottom] = [Math.min(...xs) - room, Math.max(...xs) + room, Math.min(...ys) - room, Math.max(...ys) + room];
  const width = Math.max(right - left, ratio * (bottom - top));
  const height = width / ratio;
  return { x: (left + right - width) / 2, y: (top + bottom - height) / 2, width, height };
}

/** Corners lie on whole steps of this, mm. */
const SNAP_MM = 5;
export const snapped = ([x, z]: Place): Place => [SNAP_MM * Math.round(x / SNAP_MM) + 0, SNAP_MM * Math.round(z / SNAP_MM) + 0];

/** The corner that a finger meant; the tip stays where it is. None where it is far from all. */
export function cornerNear(line: Place[], at: Place, within: number): number | null {
  const far = line.map((corner, k) => (k === 0 ? Infinity : Math.hypot(corner[0] - at[0], corner[1] - at[1])));
  const best = far.indexOf(Math.min(...far));
  return best > 0 && far[best]! <= within ? best : null;
}
