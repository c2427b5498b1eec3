/** What the server says, under the names that the app uses. Everything comes out of the API's description. */
import type { components } from './schema';

type S = components['schemas'];

export type Kind = S['Kind'];
export type Metal = S['Metal'];
export type Access = S['Access'];
export type Place = S['Place'];
export type Stage = S['Stage'];
export type PanelCode = S['Panel'];

export const KINDS: Kind[] = ['round', 'hail', 'soft', 'sharp', 'crease', 'high'];
export const METALS: Metal[] = ['steel', 'high_strength_steel', 'aluminium'];
export const ACCESSES: Access[] = ['open', 'trim_off', 'braced', 'glue_only', 'none'];
export const PLACES: Place[] = ['flat', 'body_line', 'edge', 'rail'];
export const OLD_KINDS: S['OldKind'][] = ['scratch', 'chip', 'crack', 'dent', 'rust', 'broken', 'repaired'];
export const SHOTS: S['Shot'][] = ['front_left', 'front_right', 'rear_right', 'rear_left', 'instruments', 'vin', 'old', 'gauge'];
export const STAGES: Stage[] = ['taken_in', 'quoted', 'authorised', 'in_work', 'finished', 'handed_over'];

export type Shop = S['Shop'];
export type JobRow = S['JobRow'];
export type Job = Omit<S['JobJson'], 'damages'> & { damages: Damage[] };
/** The id is given where the device makes one. */
export type NewJob = Omit<S['NewJobJson'], 'id'>;
/** The count may be left out when a dent is sent, and is always there when one comes. */
export type Dent = S['Dent'] & { count: number };
export type DentEntry = Omit<S['DentEntryJson'], 'dent'> & { dent: Dent };
export type Damage = Omit<S['DamageJson'], 'dents'> & { dents: DentEntry[] };
/** An edit of one field, by its JSON pointer, with the value that was last known. */
export interface Edit {
  field: string;
  base: unknown;
  to: unknown;
}
/** Two values for one field. */
export interface Clash {
  field: string;
  mine: unknown;
  theirs: unknown;
}
export type TakenIn = Omit<S['TakenInJson'], 'old' | 'signed'> & { old: OldDamage[]; signed: (Omit<S['SignedJson'], 'old'> & { old: OldDamage[] }) | null };
export type OldDamage = Required<S['OldJson']>;
export type OldKind = S['OldKind'];
export type Shot = S['Shot'];
export type PanelPaint = S['PanelPaint'];
/** A language of papers; the app itself speaks fewer. */
export type Language = 'en' | 'de' | 'fr' | 'it' | 'es' | 'pl';
export type VinAnswer = S['VinAnswer'];
export type Task = S['TaskJson'];
export type Trouble = S['Trouble'];
export type Spot = S['SpotFacts'];
export type Reading = S['ReadingJson'];
/** A hole that was too steep to read, and a depth measured by hand. */
export type Fold = S['Fold'];
export type Gauge = S['GaugeFacts'];
export type GaugeAsked = S['GaugeAsked'];
export type Change = S['ChangeFile'];
export type Worked = S['Worked'];
export type SeriesReading = S['SeriesReadingJson'];
export type LineReport = S['LineReport'];
export type Settle = S['Settle'];
export type Uplift = S['Uplift'];
/** A line of trim as the form holds it: one of the two. */
export interface RiLine {
  what: string;
  hours?: string;
  amount?: string;
}
export type SizeClass = S['SizeClass'];
/** How the dents are priced, as the form holds it. */
export type PricedBy =
  | { by: 'hours' }
  | { by: 'size_classes'; classes: SizeClass[]; size_rule?: S['SizeRule'] }
  | { by: 'hail_table'; table: string; size_rule?: S['SizeRule']; oversize?: string | null }
  | { by: 'day_rate'; day_rate: string; hours_per_day: string; days?: string | null };
/** Lists may be left out when it is sent, and are always there when it comes. */
export type QuoteInput = Omit<Required<S['Pricing']>, 'ri_lines' | 'discount' | 'way' | 'conditions'> & {
  ri_lines: RiLine[];
  discount: { percent?: string; amount?: string } | null;
  way: PricedBy;
  conditions: { paint?: S['Paint']; panel_c?: number | null };
};
export type SizeRules = S['SizeRules'];
export type HailTableRow = S['HailTableRow'];
export type NewHailTable = S['NewHailTable'];
export type LearnedAnswer = S['LearnedAnswer'];
export type Foretold = S['Foretold'];
export type WorkedInput = S['WorkedInput'];
export type Hours = S['Hours'];
export type Line = S['Line'];
export type Quote = S['Quote'];
export type QuoteAnswer = Omit<S['QuoteAnswer'], 'input'> & { input: QuoteInput };
export type CautionRow = S['CautionRow'];
export type HoursSettings = S['HoursSettings'];
export type PairingOffer = S['PairingOffer'];
export type LiveOffer = S['LiveOffer'];
export type LiveState = S['LiveState'];
export type Wave = S['Wave'];
export type Screen = S['ScreenJson'];
export type Camera = S['CameraJson'];
export type OnFile = S['OnFileJson'];
/** How far the work on a reading's metal has come, and its answer. */
export type MetalAnswer = S['MetalJson'];
export type MetalAsked = S['MetalAskedJson'];
export type MetalFacts = S['MetalFile'];
export type OilCan = S['OilCanFacts'];
export type MoveAsked = S['MoveAsked'];
export type MoveTried = S['MoveTried'];
/** Papers: money comes as decimal texts. */
export type PaperKind = S['PaperKind'];
export type Paper = S['PaperJson'];
export type Issue = S['Issue'];
export type Billing = Required<S['Billing']>;
export type Country = S['Country'];
/** Rehearsals. */
export type Level = S['LevelJson'];
export type Rehearsal = S['RehearsalJson'];
export type RehearsalRow = S['RehearsalRow'];
export type RehearsalScore = S['RehearsalScore'];
export type Claim = S['Claim'];
export type Claimed = S['ClaimedJson'];
export type Claims = S['ClaimsJson'];
export type Lean = S['LeanJson'];
export type Touch = S['Touch'];
export type Rehearsed = S['MadeJson'];
/** The day. */
export type WorkKind = S['WorkKind'];
export type TimeEntry = S['TimeJson'];
export type Times = S['TimesAnswer'];
export type NewTime = S['NewTimeJson'];
export type StartedTime = S['StartedJson'];
export type TimeChange = S['TimeChange'];
export type WorkedByKind = S['WorkedByKind'];
export type Technician = S['Technician'];
export type TechnicianInput = S['TechnicianInput'];
export const WORK_KINDS: WorkKind[] = ['trim', 'reading', 'push', 'tap', 'glue', 'finish'];
export type PaySheet = S['PaySheet'];
export type Imported = S['ImportedJson'];
export type ErasurePlan = S['ErasurePlan'];
/** Warming a spot. */
export type WarmingAsked = S['WarmingAskedJson'];
export type Warmed = S['Warmed'];
/** Where a tip stands. */
export type FoundTip = S['TipFile'];
