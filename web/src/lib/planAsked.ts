/** What a plan is asked from, as it stands in the form and as it is sent. */
import type { PlanAsked } from '../api/plan';
import { fromC, parseNumber, toC, type TemperatureUnit } from './units';

export interface AskedForm {
  /** Empty for what stands out most. */
  spot: string;
  metal: string;
  thickness: string;
  paint: string;
  aged: boolean;
  /** Empty for none. */
  glue: string;
  panel: string;
  most: string;
  rule: string;
  ours: string;
  conventional: string;
}

/** A shop's working range ends here, °C (common practice). */
const MOST_C = 50;
const PANEL_C = 20;

/** The form as it was answered last; `same` tells whether the spots are still the ones that were asked from. */
export function formOf(asked: PlanAsked | null, suggested: string, unit: TemperatureUnit, same: boolean): AskedForm {
  const number = (value: number | null | undefined) => (value === null || value === undefined ? '' : String(value));
  return {
    spot: same ? number(asked?.spot) : '',
    metal: asked?.metal ?? suggested,
    thickness: number(asked?.thickness_mm),
    paint: asked?.paint ?? 'factory',
    aged: asked?.aged ?? false,
    glue: asked?.glue ?? '',
    panel: fromC(asked?.panel_c ?? PANEL_C, unit),
    most: fromC(asked?.most_c ?? MOST_C, unit),
    rule: asked?.makers_rule ?? '',
    ours: number(asked?.costs?.[0]),
    conventional: number(asked?.costs?.[1]),
  };
}

export type Flaw = 'thickness' | 'panel' | 'most' | 'costs';

/** What the form asks, or what is wrong with it. */
export function askedOf(form: AskedForm, unit: TemperatureUnit, technician: string | null): { asked: PlanAsked; wrong: Flaw[] } {
  const thickness_mm = form.thickness.trim() === '' ? null : parseNumber(form.thickness);
  const [panel_c, most_c] = [toC(form.panel, unit), toC(form.most, unit)];
  const costs = [form.ours, form.conventional].map((text) => (text.trim() === '' ? undefined : parseNumber(text)));
  const neither = costs.every((cost) => cost === undefined);
  const both = costs.every((cost) => typeof cost === 'number' && cost >= 0);
  const between = (value: number | null, low: number, high: number) => value !== null && value >= low && value <= high;
  const wrong: Flaw[] = [];
  if (form.thickness.trim() !== '' && !between(thickness_mm, 0.3, 3)) wrong.push('thickness');
  if (!between(panel_c, -20, 70)) wrong.push('panel');
  if (!between(most_c, 0, 85)) wrong.push('most');
  if (!neither && !both) wrong.push('costs');
  const asked: PlanAsked = {
    spot: form.spot === '' ? null : Number(form.spot),
    metal: form.metal,
    thickness_mm,
    paint: form.paint,
    aged: form.aged,
    glue: form.glue || null,
    panel_c: panel_c ?? PANEL_C,
    most_c: most_c ?? MOST_C,
    makers_rule: form.rule.trim() || null,
    costs: both ? (costs as [number, number]) : null,
    technician,
  };
  return { asked, wrong };
}
