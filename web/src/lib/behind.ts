/** What is behind a panel as it is drawn with a finger, and as the planner takes it. */
import type { BehindKind, InnerSide, Outline, Place, Point3, Wall } from '../api/plan';

/** What a drag draws: its corners, or its ends. */
export const THINGS = ['opening', 'hole', 'slot', 'brace', 'bonded', 'wiring', 'airbag', 'glass', 'battery', 'solid'] as const;
export type ThingKind = (typeof THINGS)[number];
export interface Thing {
  kind: ThingKind;
  a: Place;
  b: Place;
  /** Of openings and braces. */
  name: string;
  /** Trim in front of an opening; empty for none. */
  trim: string;
  /** How far behind the skin it lies or begins, mm. */
  deep_mm: number;
  /** Across a brace, mm. */
  wide_mm: number;
  /** Whether a bar may be levered over a brace. */
  bears: boolean;
}

/** The panel's own edges, mm. */
export interface Edges {
  left: number;
  right: number;
  bottom: number;
  top: number;
}

export interface Drawing {
  edges: Edges;
  /** From the skin to the inner sheet, mm. */
  gap_mm: number;
  curvature: Point3;
  things: Thing[];
}

/** What walls and unnamed things are called, in the language of the page. */
export type Named = (what: 'inner' | Side | ThingKind) => string;

export const SIDES = ['top', 'bottom', 'left', 'right'] as const;
export type Side = (typeof SIDES)[number];

/** An edge's wall stands so far inside the panel's line, mm, and reaches past skin and inner sheet by this. */
const INSIDE_MM = 5;
const PAST_MM = 10;
/** An opening at an edge leaves this share of the gap free. */
const SLOT_SHARE = 0.9;
/** Distance kept from what must not be touched, mm. */
const KEEP_MM = 10;

/** The four edges: outward, and along so that the wall's second axis points inward (−z). */
const AXES: Record<Side, { out: Point3; along: Point3 }> = {
  top: { out: [0, 1, 0], along: [1, 0, 0] },
  bottom: { out: [0, -1, 0], along: [-1, 0, 0] },
  right: { out: [1, 0, 0], along: [0, -1, 0] },
  left: { out: [-1, 0, 0], along: [0, 1, 0] },
};
const INNER = { out: [0, 0, -1] as Point3, along: [1, 0, 0] as Point3 };

const middle = (a: number, b: number) => (a + b) / 2;
const box = (a: Place, b: Place): Outline => ({ shape: 'rectangle', at: [middle(a[0], b[0]), middle(a[1], b[1])], size: [Math.abs(b[0] - a[0]), Math.abs(b[1] - a[1])] });
const flipped = ([x, y]: Place): Place => [x, -y];
/** A place of the panel along an edge's wall. */
const alongEdge = (side: Side, at: Place) => at[0] * AXES[side].along[0] + at[1] * AXES[side].along[1];

/** The edge that a drag lies nearest to. */
export function sideOf({ left, right, bottom, top }: Edges, a: Place, b: Place): Side {
  const [x, y] = [middle(a[0], b[0]), middle(a[1], b[1])];
  const far: [Side, number][] = [['top', Math.abs(top - y)], ['bottom', Math.abs(y - bottom)], ['left', Math.abs(x - left)], ['right', Math.abs(right - x)]];
  return far.reduce((best, one) => (one[1] < best[1] ? one : best))[0];
}

/** The drawing as the planner takes it: the inner sheet, a wall at each edge, and what was drawn. */
export function sideFrom({ edges, gap_mm, curvature, things }: Drawing, named: Named): InnerSide {
  const corners: [Place, Place] = [[edges.left, edges.bottom], [edges.right, edges.top]];
  const nameOf = (thing: Thing) => thing.name.trim() || named(thing.kind);
  const about = (thing: Thing) => ({ name: nameOf(thing), trim: thing.trim.trim() || null });
  const inner: Wall = {
    name: named('inner'),
    origin: [0, 0, -gap_mm],
    ...INNER,
    outline: box(flipped(corners[0]), flipped(corners[1])),
    openings: things.filter((one) => one.kind === 'opening' || one.kind === 'hole').map((one) => ({ ...about(one), outline: one.kind === 'hole' ? round(one) : box(flipped(one.a), flipped(one.b)) })),
  };
  const edge = (side: Side): Wall => {
    const line = side === 'left' || side === 'right' ? edges[side] : edges[side];
    const { out } = AXES[side];
    const inward = line - INSIDE_MM * (out[0] + out[1]);
    const ends = corners.map((corner) => alongEdge(side, corner));
    const strip = (a: number, b: number, high: number): Outline => ({ shape: 'rectangle', at: [middle(a, b), gap_mm / 2], size: [Math.abs(b - a), high] });
    return {
      name: named(side),
      origin: out[0] !== 0 ? [inward, 0, 0] : [0, inward, 0],
      ...AXES[side],
      outline: strip(ends[0]!, ends[1]!, gap_mm + 2 * PAST_MM),
      openings: things
        .filter((one) => one.kind === 'slot' && sideOf(edges, one.a, one.b) === side)
        .map((one) => ({ ...about(one), outline: strip(alongEdge(side, one.a), alongEdge(side, one.b), SLOT_SHARE * gap_mm) })),
    };
  };
  return {
    outline: box(...corners),
    curvature,
    walls: [inner, ...SIDES.map(edge)],
    braces: things.filter((one) => one.kind === 'brace').map((one) => ({ name: nameOf(one), line: [[...one.a, -one.deep_mm], [...one.b, -one.deep_mm]], radius: one.wide_mm / 2, bears: one.bears })),
    bonded: things.filter((one) => one.kind === 'bonded').map((one) => box(one.a, one.b)),
    behind: things.filter((one) => THINGS.indexOf(one.kind) >= THINGS.indexOf('wiring')).map((one) => ({ kind: one.kind as BehindKind, from: [...one.a, -one.deep_mm], to: [...one.b, -gap_mm], keep: KEEP_MM })),
  };
}

function round({ a, b }: Thing): Outline {
  const radius = Math.max(Math.abs(b[0] - a[0]), Math.abs(b[1] - a[1])) / 2;
  return { shape: 'circle', at: flipped([middle(a[0], b[0]), middle(a[1], b[1])]), radius };
}

const plain = { name: '', trim: '', deep_mm: 10, wide_mm: 20, bears: false };
const opposite = (outline: Outline, flip: (at: Place) => Place): [Place, Place] | null => {
  if (outline.shape === 'polygon') return null;
  const half: Place = outline.shape === 'circle' ? [outline.radius, outline.radius] : [outline.size[0] / 2, outline.size[1] / 2];
  const at = flip(outline.at);
  return [[at[0] - half[0], at[1] - half[1]], [at[0] + half[0], at[1] + half[1]]];
};
const like = (a: Point3, b: Point3) => a.every((v, k) => Math.abs(v - b[k]!) < 1e-9);

/** A drawing that was made here, to be drawn on; none where it holds what cannot be drawn here. */
export function drawingFrom(side: InnerSide): Drawing | null {
  const own = opposite(side.outline, (at) => at);
  const inner = side.walls.find((wall) => like(wall.out, INNER.out) && like(wall.along, INNER.along));
  if (!own || !inner || side.outline.shape !== 'rectangle') return null;
  const edges: Edges = { left: own[0][0], right: own[1][0], bottom: own[0][1], top: own[1][1] };
  const gap_mm = -inner.origin[2];
  const things: Thing[] = [];
  for (const { name, trim, outline } of inner.openings) {
    const found = opposite(outline, flipped);
    if (!found) return null;
    things.push({ ...plain, kind: outline.shape === 'circle' ? 'hole' : 'opening', a: found[0], b: found[1], name, trim: trim ?? '' });
  }
  for (const wall of side.walls.filter((one) => one !== inner)) {
    const edge = SIDES.find((one) => like(wall.out, AXES[one].out) && like(wall.along, AXES[one].along));
    if (!edge) return null;
    for (const { name, trim, outline } of wall.openings) {
      if (outline.shape !== 'rectangle') return null;
      const at = (u: number): Place => (edge === 'top' || edge === 'bottom' ? [u * AXES[edge].along[0], edges[edge]] : [edges[edge], u * AXES[edge].along[1]]);
      const half = outline.size[0] / 2;
      things.push({ ...plain, kind: 'slot', a: at(outline.at[0] - half), b: at(outline.at[0] + half), name, trim: trim ?? '' });
    }
  }
  for (const { name, line, radius, bears } of side.braces) {
    const [a, b] = [line[0], line.at(-1)];
    if (line.length !== 2 || !a || !b) return null;
    things.push({ ...plain, kind: 'brace', a: [a[0], a[1]], b: [b[0], b[1]], name, deep_mm: -a[2], wide_mm: 2 * radius, bears });
  }
  for (const outline of side.bonded) {
    const found = opposite(outline, (at) => at);
    if (!found || outline.shape !== 'rectangle') return null;
    things.push({ ...plain, kind: 'bonded', a: found[0], b: found[1] });
  }
  for (const { kind, from, to } of side.behind) things.push({ ...plain, kind, a: [from[0], from[1]], b: [to[0], to[1]], deep_mm: -from[2] });
  return { edges, gap_mm, curvature: side.curvature, things };
}

/** A thing as a drag draws it. */
export const begun = (kind: ThingKind, at: Place): Thing => ({ ...plain, kind, a: at, b: at });

/** A drag shorter than this draws nothing, mm. */
export const LEAST_MM = 8;
export const isDrawn = ({ kind, a, b }: Thing) => (kind === 'brace' || kind === 'slot' ? Math.hypot(b[0] - a[0], b[1] - a[1]) >= LEAST_MM : Math.min(Math.abs(b[0] - a[0]), Math.abs(b[1] - a[1])) >= LEAST_MM);
