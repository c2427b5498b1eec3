/** A plan in the words of the app: moves, why, what the lines do, the verdict's reasons, departures, what the hand taught. */
import type { Act, Blocked, CameOf, Departure, Fulcrum, Planned, Reaches, Reason, Tooling } from '../api/plan';
import { say, shop } from '../lib/shop.svelte';
import { temperature } from '../lib/units';
import { has, t } from './index.svelte';

export const degrees = (c: number) => temperature(c, shop.value?.temperature_unit ?? 'c', shop.value?.language);
const newtons = (n: number) => `${say.number(n, 0)} N`;
/** How far a tip goes, with a tenth of a millimetre. */
export const lift = (mm: number) => (say.unit() === 'mm' ? `${say.number(mm, 1)} mm` : say.height(mm));
/** A name of the rack: of ours in words, of the shop's own as it is. */
export const rackName = (name: string) => (has('rack-' + name) ? t('rack-' + name) : name);
export const tipWords = (tip: { name: string; radius: number; hardness?: string }) =>
  [rackName(tip.name), t('radius-of', { radius: say.length(tip.radius) }), tip.hardness ? t('hardness-' + tip.hardness) : ''].filter(Boolean).join(', ');

export const actWords = (act: Act) => t('plan-act-' + act);
export const outward = (act: Act) => act === 'push' || act === 'pull';

/** How far, and how often. */
export const amountWords = (held_mm: number, times: number) => (times > 1 ? t('amount-times', { times, lift: lift(held_mm) }) : lift(held_mm));

export function whyWords(move: Planned): string {
  if (move.why === 'large_shape' || move.why === 'low') return t('plan-why-' + move.why, { depth: say.height(move.depth_mm) });
  if (move.why === 'high') return t('plan-why-high', { height: say.height(move.height_mm) });
  const comes = move.low_comes_up_mm >= 0 ? 'up' : 'down';
  return t('plan-why-crown', { height: say.height(move.height_mm), low: say.height(move.low_mm), comes, change: say.height(Math.abs(move.low_comes_up_mm)) });
}

export function linesWords(move: Planned): string {
  const stands = t(move.while_held_mm >= 0 ? 'held-above' : 'held-below', { height: say.height(Math.abs(move.while_held_mm)) });
  return `${t('plan-lines-' + move.lines)} ${t('plan-stays', { stands, leaves: say.height(move.leaves_mm[0]), doubt: say.height(2 * move.leaves_mm[1]) })}`;
}
export const stopWords = (move: Planned) => t('plan-stop', { height: say.height(move.stop_at_mm) });
export const heatWords = (move: Planned) =>
  t('plan-heat', { warm: degrees(move.paint_c), risk: t('risk-' + move.paint_risk), strain: say.number(100 * move.paint_strain, 1) });

export function toolingWords(tooling: Tooling, force_n: number): string {
  if (tooling.with === 'tab') return t('with-tab', { glue: rackName(tooling.glue), sure: newtons(tooling.holds_n[0]), perhaps: newtons(tooling.holds_n[1]) });
  if (tooling.with !== 'bar') return t('with-' + tooling.with);
  const over = overWords(tooling.fulcrum);
  const parts = [
    t('with-bar-through', { tool: rackName(tooling.tool), tip: rackName(tooling.tip_on_it), opening: tooling.through[1], wall: tooling.through[0], inside: say.length(Math.round(tooling.inside_mm)) }),
    tooling.trim ? t('with-bar-trim', { trim: tooling.trim }) : '',
    t('with-bar-over', { over, square: say.number(tooling.off_square_deg, 0), force: newtons(tooling.gives_n) }),
    tooling.gives_n < force_n ? t('with-bar-short') : '',
  ];
  return parts.filter(Boolean).join(' ');
}

function overWords(fulcrum: Fulcrum): string {
  if (fulcrum.over === 'end_on') return t('over-end_on');
  return t('over-' + fulcrum.over, { name: fulcrum.over === 'brace' ? fulcrum.name : '', packing: say.length(Math.round(fulcrum.packing)) });
}

/** How a tool reaches a place. */
export function reachWords(one: Reaches['reaches'][number]): string {
  const parts = [
    t('reach-through', { opening: one.through[1], wall: one.through[0], inside: say.length(Math.round(one.inside_mm)) }),
    one.trim ? t('with-bar-trim', { trim: one.trim }) : '',
    t('with-bar-over', { over: overWords(one.levered.fulcrum), square: say.number(one.off_square_deg, 0), force: newtons(one.levered.force_n) }),
    t('reach-goes-on', { travel: say.length(Math.round(one.levered.travel_mm)) }),
  ];
  return parts.filter(Boolean).join(' ');
}

export const blockedWords = (one: Blocked) => t('blocked-' + one.why, { name: 'name' in one ? one.name : 'kind' in one ? t('behind-' + one.kind) : '' });

export function reasonWords(reason: Reason): string {
  switch (reason.reason) {
    case 'oil_can':
      return reason.pops_at_n === null ? t('reason-oil_can-never') : t('reason-oil_can', { force: newtons(reason.pops_at_n) });
    case 'stretched':
      return t('reason-stretched', { area: say.number(100 * reason.area, 1) });
    case 'paint':
      return t('reason-paint', { strain: say.number(100 * reason.strain, 1), risk: t('risk-' + reason.risk) });
    case 'access':
      return t('reason-access', { blocked: reason.blocked.map(blockedWords).join(', ') });
    case 'makers_rule':
      return t('reason-makers_rule', { rule: reason.rule });
    case 'dearer':
      return t('reason-dearer', { ours: say.money(reason.ours), conventional: say.money(reason.conventional) });
    case 'not_computed':
      return t('reason-not_computed');
    case 'went_over':
      return t('reason-went_over', { before: say.height(reason.before_mm), after: say.height(reason.after_mm) });
  }
}

export function departureWords(one: Departure): string {
  switch (one.rule) {
    case 'crowns_first':
      return t('departure-crowns_first', { planned: say.height(one.planned_mm), trade: say.height(one.trade_mm) });
    case 'crown_left':
      return t('departure-crown_left', { height: say.height(one.height_mm), place: placeWords(one.at_mm), change: say.height(one.changes_mm) });
    case 'tied_together':
      return t('departure-tied_together', { first: say.percent(one.first_share), tie: say.percent(one.tie) });
  }
}
export const placeWords = ([x, y]: readonly [number, number]) => t('at-place', { x: say.length(Math.round(x)), y: say.length(Math.round(y)) });

/** A change of less than this, or than a third of its doubt, is none worth a word. */
const NOTHING_LEARNED = 0.03;

/** What the last round taught about the hand and about the sheet, in two sentences. */
export function learnedWords(of: CameOf): string[] {
  const one = (which: 'hand' | 'sheet', before: number, [after, sigma]: readonly [number, number]) => {
    const way = Math.abs(after - before) < Math.max(NOTHING_LEARNED, sigma / 3) ? 'same' : after > before ? 'more' : 'less';
    return t(`learned-${which}-${way}`, { before: say.number(before, 2), after: say.number(after, 2), doubt: say.number(2 * sigma, 2) });
  };
  return [one('hand', of.hand_before[0][0], of.hand_after[0]), one('sheet', of.hand_before[1][0], of.hand_after[1])];
}

/** How a move came out beside what was foretold: within two sigma of both, more, or less. */
export function cameOut(move: CameOf['moves'][number]): 'as_foretold' | 'more' | 'less' {
  const off = move.left_mm - move.foretold_mm[0];
  if (Math.abs(off) <= 2 * Math.hypot(move.foretold_mm[1], move.sigma_mm)) return 'as_foretold';
  return off > 0 ? 'more' : 'less';
}

/** The next move as it is read aloud. */
export function spokenMove(move: Planned, number: number): string {
  const once = t(outward(move.act) ? 'spoken-lift' : 'spoken-lower', { mm: say.number(move.held_mm, 1) });
  const far = move.times > 1 ? `${t('spoken-times', { times: move.times })} ${once}` : once;
  return t('spoken-move', { number, act: actWords(move.act), tip: rackName(move.tip.name), far });
}
