/** A round of moves at the panel: what has been made of it, what comes next, what can be taken back. */
import type { MadeMove, Planned, Work } from '../../api/plan';
import type { Item } from '../outbox/item';

/** Places nearer than this are one, mm. */
const SAME_MM = 0.5;

/** What this device keeps of a round: planned moves that were left out, by their place in the round, and when. */
export interface Left {
  skipped: { move: number; at: string }[];
  /** When the work on this reading began here. */
  began: string;
}

export type Made = MadeMove & { reading: string };

/** What the server knows with everything that waits here laid over, oldest first. */
export function layMoves(told: Work | null, items: Item[]): Made[] {
  let moves = told?.moves ?? [];
  for (const item of items) {
    if (item.kind !== 'call' || item.trouble) continue;
    const noted = /^\/api\/readings\/([^/]+)\/moves$/.exec(item.path);
    const back = /^\/api\/moves\/([^/]+)$/.exec(item.path);
    if (noted && item.method === 'POST') {
      const made = { ...(item.body as MadeMove), reading: noted[1]! };
      moves = [...moves.filter((one) => one.id !== made.id), made];
    } else if (back && item.method === 'DELETE') moves = moves.filter((one) => one.id !== back[1]);
  }
  return moves;
}

/** For each planned move the one by which it was made; none where it is still to be made. */
export function madeOf(planned: Planned[], made: Made[]): (Made | null)[] {
  const rest = made.filter((one) => one.planned);
  return planned.map((move) => {
    const at = rest.findIndex((one) => one.act === move.act && one.tip === move.tip.name && Math.hypot(one.at_mm[0] - move.at_mm[0], one.at_mm[1] - move.at_mm[1]) < SAME_MM);
    return at < 0 ? null : rest.splice(at, 1)[0]!;
  });
}

/** The first planned move that was neither made nor left out; none when the round is over. */
export function nextMove(done: (Made | null)[], left: Left): number | null {
  const at = done.findIndex((one, index) => !one && !left.skipped.some((skip) => skip.move === index));
  return at < 0 ? null : at;
}

/** What an undo takes back: the last of what was made and what was left out; none where there is nothing. */
export function lastStep(made: Made[], left: Left): { made: Made } | { skipped: number } | null {
  const move = made.at(-1);
  const skip = left.skipped.at(-1);
  if (skip && (!move || Date.parse(skip.at) >= Date.parse(move.made))) return { skipped: skip.move };
  return move ? { made: move } : null;
}
