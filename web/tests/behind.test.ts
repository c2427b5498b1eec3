import { describe, expect, it } from 'vitest';
import type { Place, Point3, Wall } from '../src/api/plan';
import { begun, drawingFrom, isDrawn, sideFrom, sideOf, SIDES, type Drawing, type Thing } from '../src/lib/behind';

const thing = (kind: Thing['kind'], a: Place, b: Place, more: Partial<Thing> = {}): Thing => ({ ...begun(kind, a), b, ...more });
const drawing: Drawing = {
  edges: { left: -300, right: 400, bottom: -250, top: 200 },
  gap_mm: 60,
  curvature: [0, 0, 0],
  things: [
    thing('opening', [-50, 20], [90, 80], { name: 'speaker', trim: 'door lining' }),
    thing('hole', [100, -100], [140, -60]),
    thing('slot', [-200, 190], [250, 195], { name: 'window slot' }),
    thing('slot', [395, -100], [390, 60]),
    thing('brace', [-300, 40], [400, 50], { deep_mm: 35, wide_mm: 24, bears: true }),
    thing('bonded', [0, -200], [60, -150]),
    thing('airbag', [-280, 100], [-200, 180], { deep_mm: 20 }),
  ],
};
const side = sideFrom(drawing, (what) => `a ${what}`);
const cross = (u: Point3, v: Point3): Point3 => [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
/** A place of a wall's plane in the panel's frame, as the planner reckons it. */
const place = (wall: Wall, [u, v]: Place): Point3 => {
  const across = cross(wall.out, wall.along);
  return [0, 1, 2].map((k) => wall.origin[k]! + u * wall.along[k]! + v * across[k]! + 0) as Point3;
};

describe('what is drawn behind a panel', () => {
  it('is where it was drawn, in the inner sheet', () => {
    const inner = side.walls[0]!;
    expect(place(inner, (inner.outline as { at: Place }).at)).toEqual([50, -25, -60]);
    expect(place(inner, (inner.openings[0]!.outline as { at: Place }).at)).toEqual([20, 50, -60]);
    expect(inner.openings.map(({ name, trim }) => [name, trim])).toEqual([['speaker', 'door lining'], ['a hole', null]]);
    expect(place(inner, (inner.openings[1]!.outline as { at: Place }).at)).toEqual([120, -80, -60]);
  });
  it('stands at the edges, closed but for slots', () => {
    const [top, bottom, left, right] = side.walls.slice(1) as [Wall, Wall, Wall, Wall];
    expect(side.walls.slice(1).map((wall) => wall.openings.length)).toEqual([1, 0, 0, 1]);
    const of = (wall: Wall, k = 0) => place(wall, (wall.openings[k]!.outline as { at: Place }).at);
    expect(of(top)).toEqual([25, 195, -30]);
    expect(of(right)).toEqual([395, -20, -30]);
    expect(place(bottom, (bottom.outline as { at: Place }).at)).toEqual([50, -245, -30]);
    expect(place(left, (left.outline as { at: Place }).at)).toEqual([-295, -25, -30]);
    for (const wall of side.walls) expect(cross(wall.out, wall.along).map(Math.abs)).toEqual(wall === side.walls[0] ? [0, 1, 0] : [0, 0, 1]);
  });
  it('holds braces, bonded zones and what must not be touched at their depth', () => {
    expect(side.braces).toEqual([{ name: 'a brace', line: [[-300, 40, -35], [400, 50, -35]], radius: 12, bears: true }]);
    expect(side.bonded).toEqual([{ shape: 'rectangle', at: [30, -175], size: [60, 50] }]);
    expect(side.behind).toEqual([{ kind: 'airbag', from: [-280, 100, -20], to: [-200, 180, -60], keep: 10 }]);
  });
  it('comes back to be drawn on, and goes out the same again', () => {
    const back = drawingFrom(side)!;
    expect(back.edges).toEqual(drawing.edges);
    expect(back.things).toHaveLength(7);
    expect(sideFrom(back, (what) => `a ${what}`)).toEqual(side);
  });
  it('is not taken for its own where it cannot be drawn here', () => {
    expect(drawingFrom({ ...side, outline: { shape: 'polygon', corners: [[0, 0], [1, 0], [0, 1]] } })).toBeNull();
    expect(drawingFrom({ ...side, walls: [...side.walls, { ...side.walls[0]!, out: [0, 0.6, 0.8] }] })).toBeNull();
    expect(drawingFrom({ ...side, braces: [{ name: 'bent', line: [[0, 0, -9], [1, 1, -9], [2, 0, -9]], radius: 3, bears: false }] })).toBeNull();
  });
  it('knows the nearest edge, and what was only touched', () => {
    expect(SIDES.map((one) => sideOf(drawing.edges, ...({ top: [[0, 150], [9, 150]], bottom: [[0, -240], [9, -240]], left: [[-290, 0], [-290, 9]], right: [[380, 0], [380, 9]] } as Record<string, [Place, Place]>)[one]!))).toEqual([...SIDES]);
    expect([thing('opening', [0, 0], [50, 2]), thing('brace', [0, 0], [50, 2]), thing('hole', [0, 0], [0, 0])].map(isDrawn)).toEqual([false, true, false]);
  });
});
