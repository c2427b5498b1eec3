/**
 * The drawn car: seen from above with its sides folded out, front up. One drawing unit is about a
 * centimetre. Panels of the right side are the left ones mirrored.
 */
export interface Panel {
  name: string;
  path: string;
  /** Left, top, width, height of the panel in the drawing. */
  box: [number, number, number, number];
  mirrored: boolean;
}

export const WIDTH = 420;
export const HEIGHT = 640;

type Outline = [path: string, left: number, top: number, width: number, height: number];

const MIDDLE: Record<string, Outline> = {
  front_bumper: ['M132 52 Q132 20 168 14 Q210 8 252 14 Q288 20 288 52 Q210 40 132 52Z', 132, 11, 156, 41],
  bonnet: ['M136 62 Q210 48 284 62 L290 178 Q210 160 130 178Z', 130, 55, 160, 123],
  roof: ['M152 246 Q210 236 268 246 L272 408 Q210 420 148 408Z', 148, 241, 124, 173],
  boot_lid: ['M140 470 Q210 482 280 470 L282 560 Q210 578 138 560Z', 138, 470, 144, 99],
  tailgate: ['M146 420 Q210 432 274 420 L284 560 Q210 578 136 560Z', 136, 420, 148, 149],
  rear_bumper: ['M132 574 Q210 592 288 574 L286 606 Q282 624 252 628 Q210 633 168 628 Q138 624 134 606Z', 132, 574, 156, 57],
};

const LEFT: Record<string, Outline> = {
  front_wing: ['M44 66 Q96 50 122 64 L116 186 L40 186 L40 172 A38 38 0 0 0 40 98 Z', 40, 57, 82, 129],
  front_door: ['M40 192 L92 192 L92 304 L40 304Z', 40, 192, 52, 112],
  rear_door: ['M40 310 L92 310 L92 392 Q88 410 74 418 L40 418Z', 40, 310, 52, 108],
  rear_wing: ['M78 422 Q94 414 98 396 L122 420 L126 562 Q96 574 56 566 L44 546 A38 38 0 0 0 40 474 L40 424Z', 40, 396, 86, 174],
  roof_rail: ['M124 202 Q132 228 140 244 L136 412 L122 408 L118 300Z', 118, 202, 22, 210],
  sill: ['M8 192 L32 192 L32 418 L8 418 Q4 305 8 192Z', 6, 192, 26, 226],
};

const FLAP: Outline = ['M352 436 h16 a6 6 0 0 1 6 6 v16 a6 6 0 0 1 -6 6 h-16 a6 6 0 0 1 -6 -6 v-16 a6 6 0 0 1 6 -6Z', 346, 436, 28, 28];

/** Glass and wheels: drawn, not chosen. */
export const GLASS = [
  'M134 188 Q210 170 286 188 L268 238 Q210 228 152 238Z',
  'M97 196 L114 204 L114 300 L97 300Z',
  'M97 310 L114 310 L116 402 L99 390Z',
];
export const REAR_GLASS = 'M149 416 Q210 428 271 416 L279 462 Q210 474 141 462Z';
export const TAILGATE_GLASS = 'M160 432 Q210 440 260 432 L268 478 Q210 488 152 478Z';
export const WHEELS: [number, number][] = [
  [30, 135],
  [30, 510],
];

export type Body = 'boot' | 'hatch';

/** All panels of a body, in the order in which one walks round a car. */
export function panels(body: Body): Panel[] {
  const middle = (name: string): Panel => of(name, MIDDLE[name]!, false);
  const side = (left: boolean): Panel[] =>
    Object.entries(LEFT).map(([name, outline]) => of(`${name}_${left ? 'left' : 'right'}`, outline, !left));
  return [
    middle('front_bumper'),
    middle('bonnet'),
    ...side(true),
    middle(body === 'boot' ? 'boot_lid' : 'tailgate'),
    middle('rear_bumper'),
    ...side(false).reverse(),
    of('fuel_flap', FLAP, false),
    middle('roof'),
  ];
}

/** One panel by its name, whichever body has it. */
export function panelOf(name: string): Panel | undefined {
  return [...panels('boot'), middleHatch()].find((panel) => panel.name === name);
}

/** Where a place on a panel (0 to 1 each way) lies in the drawing. */
export function placeInDrawing(panel: Panel, at: { x: number; y: number }): { x: number; y: number } {
  const [left, top, width, height] = panel.box;
  return { x: left + at.x * width, y: top + at.y * height };
}

function middleHatch(): Panel {
  return of('tailgate', MIDDLE.tailgate!, false);
}

function of(name: string, [path, left, top, width, height]: Outline, mirrored: boolean): Panel {
  return { name, path, mirrored, box: [mirrored ? WIDTH - left - width : left, top, width, height] };
}
