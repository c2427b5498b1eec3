/** What the server says, under the names that the app uses. */
export type Kind = 'round' | 'hail' | 'soft' | 'sharp' | 'crease' | 'high';
export type Metal = 'steel' | 'high_strength_steel' | 'aluminium';
export type Access = 'open' | 'trim_off' | 'braced' | 'glue_only' | 'none';
export type Place = 'flat' | 'body_line' | 'edge' | 'rail';
export type Stage = 'taken_in' | 'quoted' | 'authorised' | 'in_work' | 'finished' | 'handed_over';

export const KINDS: Kind[] = ['round', 'hail', 'soft', 'sharp', 'crease', 'high'];
export const METALS: Metal[] = ['steel', 'high_strength_steel', 'aluminium'];
export const ACCESSES: Access[] = ['open', 'trim_off', 'braced', 'glue_only', 'none'];
export const PLACES: Place[] = ['flat', 'body_line', 'edge', 'rail'];
export const STAGES: Stage[] = ['taken_in', 'quoted', 'authorised', 'in_work', 'finished', 'handed_over'];

export interface Shop {
  name: string;
  address: string;
  phone: string;
  email: string;
  tax_id: string;
  currency: string;
  hourly_rate: string;
  tax_percent: string;
  language: 'en' | 'de';
  length_unit: 'mm' | 'inch';
  temperature_unit: 'c' | 'f';
  finish_limit_um: number;
}
export interface JobRow {
  id: string;
  number: string;
  customer_name: string;
  car_title: string;
  plate: string;
  stage: Stage;
  promised: string | null;
  damage_count: number;
  gross: string | null;
  currency?: string;
}
export interface Customer {
  name: string;
  phone: string;
  email: string;
  address: string;
}
export interface Car {
  vin: string | null;
  plate: string;
  make: string;
  model: string;
  year: number | null;
  colour: string;
  paint: string;
  odometer_km: number | null;
  metals: Record<string, Metal>;
}
export interface Dent {
  kind: Kind;
  length_mm: number;
  width_mm: number;
  depth_mm: number;
  metal: Metal;
  access: Access;
  place: Place;
  sharpness?: number | null;
  count: number;
}
export interface DentEntry {
  id: string;
  dent: Dent;
  source: 'hand' | 'reading';
}
export interface Damage {
  id: string;
  panel: string;
  x: number;
  y: number;
  note: string;
  dents: DentEntry[];
  photos: string[];
  captures: CaptureRow[];
}
export interface CaptureRow {
  id: string;
  created: string;
  files: number;
  task_id: string | null;
  readings: { id: string; created: string }[];
}
export interface Job {
  id: string;
  number: string;
  stage: Stage;
  customer: Customer;
  car: Car;
  promised: string | null;
  notes: string;
  damages: Damage[];
}
export interface NewJob {
  customer: Customer;
  car: Car;
  promised: string | null;
  notes: string;
}
export interface VinAnswer {
  valid: boolean;
  check_digit_ok: boolean | null;
  warning: string | null;
}
export interface Task {
  id: string;
  state: 'queued' | 'running' | 'done' | 'failed' | 'cancelled';
  stage: string;
  fraction: number;
  stages: { name: string; done: number }[];
  error: Trouble | null;
  reading_id: string | null;
}
export interface Trouble {
  code: string;
  message: string;
  next: string;
}
export interface Spot {
  kind: 'low' | 'high';
  x_mm: number;
  y_mm: number;
  height_mm: number;
  sigma_mm: number;
  length_mm: number;
  width_mm: number;
  angle_deg: number;
  at_px?: [number, number] | null;
  outline_px?: [number, number][] | null;
}
export interface Reading {
  id: string;
  capture_id: string;
  damage_id?: string;
  created: string;
  version: string;
  grid: { x0_mm: number; y0_mm: number; step_mm: number; nx: number; ny: number };
  spots: Spot[];
  read_fraction: number;
  scale: 'absolute' | 'relative';
  finish: { limit_mm: number; verdict: 'done' | 'not done' | 'cannot tell'; reason: string };
  photo: { file: string; width_px: number; height_px: number };
  unread: { code: string; value: number; fraction: number; text: string; next: string }[];
  notes: { code: string; text: string }[];
  frames: { file: string; role: string; ok: boolean; note: string }[];
}
export interface RiLine {
  what: string;
  hours?: string;
  amount?: string;
}
export interface Uplift {
  what: string;
  percent: string;
  on: 'dents' | 'labour' | 'all';
}
export interface QuoteInput {
  ri_lines: RiLine[];
  uplifts: Uplift[];
  add_or_compound: 'add' | 'compound';
  hourly_rate: string;
  parts: { what: string; quantity: string; unit_price: string }[];
  sundries: { what: string; amount: string }[];
  discount: { percent?: string; amount?: string } | null;
  tax_percent: string;
  currency: string;
}
export interface Hours {
  low: number;
  likely: number;
  high: number;
  because: { name: string; times: number }[];
}
export interface Line {
  kind: 'dent' | 'remove_install' | 'part' | 'sundry' | 'uplift' | 'discount';
  what: string;
  count: number | null;
  quantity: string;
  unit: 'hour' | 'piece' | 'percent';
  unit_price: string;
  amount: string;
}
export interface Quote {
  lines: Line[];
  net: string;
  tax_percent: string;
  tax: string;
  gross: string;
  gross_low: string;
  gross_high: string;
  hours: Hours;
  add_or_compound: 'add' | 'compound';
  currency: string;
}
export interface QuoteAnswer {
  input: QuoteInput;
  quote: Quote;
  dent_hours: { what: string; hours: Hours }[];
}
export interface CautionRow {
  code: string;
  panel: string | null;
}
export type HoursSettings = Record<string, number | Record<string, number>>;
