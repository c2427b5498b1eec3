/** The plan of a repair and the moves that were made, as the server says them. Lengths in mm, temperatures in °C, forces in N. */
import type { Trouble } from './types';

export type Act = 'push' | 'pull' | 'tap' | 'blend';
export type Place = [number, number];
/** A value and one sigma. */
export type Sure = [number, number];
export type RiskName = 'low' | 'raised' | 'high';
export type Can = 'yes' | 'push_to_paint' | 'no';

export interface ToolTip {
  name: string;
  radius: number;
  hardness: 'soft' | 'medium' | 'hard';
  source?: string;
}

export type Why =
  | { why: 'large_shape'; depth_mm: number }
  | { why: 'low'; depth_mm: number }
  | { why: 'crown'; height_mm: number; low_mm: number; low_comes_up_mm: number }
  | { why: 'high'; height_mm: number };

export type Fulcrum = { over: 'rim'; packing: number } | { over: 'brace'; name: string; packing: number } | { over: 'end_on' };

export interface BarUsed {
  with: 'bar';
  tool: string;
  tip_on_it: string;
  /** Wall and opening. */
  through: [string, string];
  trim: string | null;
  off_square_deg: number;
  fulcrum: Fulcrum;
  gives_n: number;
  inside_mm: number;
}
export type Tooling = BarUsed | { with: 'not_drawn' } | { with: 'tab'; glue: string; holds_n: Place } | { with: 'knock_down' };

/** A move to make. */
export type Planned = Why & {
  act: Act;
  at_mm: Place;
  tip: ToolTip;
  times: number;
  held_mm: number;
  while_held_mm: number;
  leaves_mm: Sure;
  force_n: number;
  paint_c: number;
  paint_risk: RiskName;
  paint_strain: number;
  lines: 'opens' | 'flattens';
  stop_at_mm: number;
  tooling: Tooling;
};

export interface Round {
  moves: Planned[];
  before_mm: number;
  expected_mm: number;
  sigma_mm: number;
  proved: boolean;
  left_out: number;
  read_again: 'doubt_grows' | 'should_be_level';
}

export type Blocked =
  | { why: 'off_panel' | 'fold' | 'bonded' | 'no_opening' | 'skin' | 'no_fulcrum' }
  | { why: 'wall' | 'brace'; name: string }
  | { why: 'behind'; kind: BehindKind };
export type BehindKind = 'wiring' | 'airbag' | 'glass' | 'battery' | 'solid';

export type Reason =
  | { reason: 'oil_can'; pops_at_n: number | null }
  | { reason: 'stretched'; area: number }
  | { reason: 'paint'; strain: number; risk: RiskName }
  | { reason: 'access'; blocked: Blocked[] }
  | { reason: 'makers_rule'; rule: string }
  | { reason: 'dearer'; ours: number; conventional: number }
  | { reason: 'not_computed' }
  | { reason: 'went_over'; before_mm: number; after_mm: number };

export type Departure =
  | { rule: 'crowns_first'; planned_mm: number; trade_mm: number }
  | { rule: 'crown_left'; at_mm: Place; height_mm: number; changes_mm: number }
  | { rule: 'tied_together'; tie: number; first_share: number };

/** Gain of the hand and share of what is computed that the sheet keeps. */
export type Hand = [Sure, Sure];

export interface Plan {
  verdict: { can: Can; reasons: Reason[] };
  level: boolean;
  rounds: Round[];
  departures: Departure[];
  unreached_mm: Place[];
  hand: Hand;
  bridged: number;
  misfit_mm: number;
  /** Places on the panel photo, px, round by round. */
  at_px: (Place | null)[][];
  limit_mm: number;
  sheet: { metal: string; thickness_mm: number; at_mm: Place; half_mm: number } | null;
  paint: string | null;
  fine_tips: string[];
  cautions: string[];
}

export interface PlanAsked {
  /** Place in the reading's list of spots, from 0; none for the deepest. */
  spot: number | null;
  metal: string;
  thickness_mm: number | null;
  paint: string;
  aged: boolean;
  glue: string | null;
  panel_c: number;
  most_c: number;
  makers_rule: string | null;
  /** This repair, conventional repair. */
  costs: Place | null;
  technician: string | null;
}

export interface PlanAnswer {
  state: 'none' | 'running' | 'failed' | 'done';
  fraction: number;
  error: Trouble | null;
  plan: Plan | null;
  asked: PlanAsked | null;
  suggested: string;
  came_of: CameOf | null;
}

/** What the moves before a reading came to. */
export interface CameOf {
  moves: (Pick<MadeMove, 'act' | 'at_mm' | 'radius_mm' | 'held_mm' | 'times'> & { foretold_mm: Sure; left_mm: number; sigma_mm: number })[];
  foretold_mm: Sure;
  found_mm: number;
  hand_before: Hand;
  hand_after: Hand;
}

/** A move that was made; its id is the device's own, so that a repeat is harmless. */
export interface MadeMove {
  id: string;
  act: Act;
  at_mm: Place;
  tip: string;
  radius_mm: number;
  held_mm: number;
  times: number;
  planned: boolean;
  made: string;
  technician: string | null;
  warmed_c: number | null;
}

export interface Work {
  moves: (MadeMove & { reading: string })[];
  hand: Hand;
  /** Moves that the hand was learned from. */
  tried: number;
  look_again: string | null;
}

export interface CoolingAsked {
  metal: string;
  thickness_mm: number | null;
  from_c: number;
  to_c: number;
  room_c: number;
}

/** What is behind a panel, in its frame: z out of the panel, so that what is behind has negative z. */
export type Point3 = [number, number, number];
export type Outline = { shape: 'rectangle'; at: Place; size: Place } | { shape: 'circle'; at: Place; radius: number } | { shape: 'polygon'; corners: Place[] };
export interface Opening {
  name: string;
  outline: Outline;
  trim: string | null;
}
export interface Wall {
  name: string;
  origin: Point3;
  along: Point3;
  /** Toward the hand; the wall's second axis is out × along. */
  out: Point3;
  outline: Outline;
  openings: Opening[];
}
export interface InnerSide {
  outline: Outline;
  curvature: Point3;
  walls: Wall[];
  braces: { name: string; line: Point3[]; radius: number; bears: boolean }[];
  bonded: Outline[];
  behind: { kind: BehindKind; from: Point3; to: Point3; keep: number }[];
}
export interface Behind {
  reading: string;
  side: InnerSide;
}
export interface Reaches {
  reaches: {
    tool: string;
    tip: string;
    through: [string, string];
    trim: string | null;
    off_square_deg: number;
    levered: { fulcrum: Fulcrum; force_n: number; travel_mm: number };
    inside_mm: number;
    /** Corners of the bar as it stands ready, from the tip to the hand. */
    stands_mm: Point3[];
  }[];
  blocked: Blocked[];
}

/** The shop's tools. */
export type Section = { kind: 'round'; diameter_mm: number } | { kind: 'flat'; width_mm: number; height_mm: number };
export interface Tool {
  name: string;
  says: string;
  /** Corners `[along, push]` from the tip to the hand. */
  line: Place[];
  section: Section;
  e_mpa: number;
  yield_mpa: number;
  source: string;
}
export interface Rack {
  tool: Tool[];
  tip: Required<ToolTip>[];
  tab: Required<ToolTip>[];
  knock_down: Required<ToolTip>[];
}
