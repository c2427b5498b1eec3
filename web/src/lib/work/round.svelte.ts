import { api } from '../../api/client';
import type { Act, MadeMove, Plan, PlanAnswer, Planned, Work } from '../../api/plan';
import { actWords, amountWords } from '../../lang/plan';
import { t } from '../../lang/index.svelte';
import { clock } from '../clock.svelte';
import { dropDraft, keepDraft, loadDraft } from '../draft';
import { add, box } from '../outbox/box.svelte';
import { newId } from '../outbox/item';
import { kept } from '../outbox/seen.svelte';
import { lastStep, layMoves, madeOf, nextMove, type Left, type Made } from './session';

/** A stay at the panel longer ago than this is another one, ms. */
const STAY_MS = 12 * 3600_000;

export type OwnMove = Pick<MadeMove, 'act' | 'at_mm' | 'tip' | 'radius_mm' | 'held_mm' | 'times'>;

/** The moves of one reading at the panel: what is planned, made, left out; noted without network too. */
export class AtWork {
  told = $state.raw<Work | null>(null);
  answer = $state.raw<PlanAnswer | null>(null);
  left = $state.raw<Left>({ skipped: [], began: '' });
  /** When the last step ended, or the page was opened, ms. */
  since = $state(Date.now());
  /** How warm the paint was made for the move in hand, °C. */
  warmed = $state<number | null>(null);
  /** What was done last, in words. */
  said = $state('');

  plan = $derived<Plan | null>(this.answer?.plan ?? null);
  moves = $derived<Planned[]>(this.plan?.rounds[0]?.moves ?? []);
  made = $derived<Made[]>(layMoves(this.told, box.items).filter((one) => one.reading === this.reading));
  done = $derived(madeOf(this.moves, this.made));
  next = $derived(nextMove(this.done, this.left));
  move = $derived<Planned | null>(this.next === null ? null : this.moves[this.next]!);
  last = $derived(lastStep(this.made, this.left));

  constructor(
    readonly job: string,
    readonly damage: string,
    readonly reading: string,
  ) {
    const before = loadDraft<Left>(this.draft, { skipped: [], began: '' });
    const fresh = !before.began || Date.now() - Date.parse(before.began) > STAY_MS;
    this.keep(fresh ? { ...before, began: new Date().toISOString() } : before);
  }

  private get draft() {
    return `work-${this.reading}`;
  }

  async open(): Promise<void> {
    const [told, answer] = await Promise.all([kept(`work/${this.damage}`, () => api.work(this.damage)), kept(`plan/${this.reading}`, () => api.plan(this.reading))]);
    [this.told, this.answer] = [told, answer];
  }

  /** The move in hand was made. */
  finish(): void {
    const move = this.move;
    if (!move) return;
    this.note({ act: move.act, at_mm: move.at_mm, tip: move.tip.name, radius_mm: move.tip.radius, held_mm: move.held_mm, times: move.times }, true);
  }

  /** Notes a move, planned or the technician's own. */
  note(own: OwnMove, planned = false): void {
    const made: Made = { ...own, id: newId(), planned, made: new Date().toISOString(), technician: clock.me || null, warmed_c: this.warmed, reading: this.reading };
    const { reading, ...body } = made;
    this.told = { ...(this.told ?? nothing), moves: [...(this.told?.moves ?? []), made] };
    void add(this.job, { kind: 'call', what: 'note-move', method: 'POST', path: `/api/readings/${reading}/moves`, body });
    this.step(t('work-noted', { what: wordsOf(made) }));
  }

  /** The move in hand is left out. */
  skip(): void {
    if (this.next === null || !this.move) return;
    const what = wordsOf(this.move);
    this.keep({ ...this.left, skipped: [...this.left.skipped, { move: this.next, at: new Date().toISOString() }] });
    this.step(t('work-skipped', { what }));
  }

  /** Takes back what came last. */
  undo(): void {
    const last = this.last;
    if (!last) return;
    if ('skipped' in last) {
      const move = this.moves[last.skipped];
      this.keep({ ...this.left, skipped: this.left.skipped.slice(0, -1) });
      this.step(t('work-taken-back', { what: move ? wordsOf(move) : '' }));
      return;
    }
    this.told = { ...(this.told ?? nothing), moves: (this.told?.moves ?? []).filter((one) => one.id !== last.made.id) };
    void add(this.job, { kind: 'call', what: 'take-back-move', method: 'DELETE', path: `/api/moves/${last.made.id}` });
    this.step(t('work-taken-back', { what: wordsOf(last.made) }));
  }

  private step(said: string) {
    [this.said, this.since, this.warmed] = [said, Date.now(), null];
  }
  private keep(left: Left) {
    this.left = left;
    if (left.began) keepDraft(this.draft, left);
    else dropDraft(this.draft);
  }
}

const nothing: Work = { moves: [], hand: [[1, 0], [1, 0]], tried: 0, look_again: null };
const wordsOf = (move: { act: Act; held_mm: number; times: number }) => `${actWords(move.act)} ${amountWords(move.held_mm, move.times)}`;
