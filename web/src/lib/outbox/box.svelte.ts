import { Problem, raw, waitFor } from '../../api/client';
import type { Job } from '../../api/types';
import { tellProblem } from '../toast.svelte';
import { all, put, remove } from './db';
import { newId, nextCall, type Choice, type Item, type Sort } from './item';
import { hold, openSeen } from './seen.svelte';

/** Taps are sent when the finger rests. */
const REST_MS = 400;
/** The server is asked again after this long. */
const AGAIN_MS = 5_000;

class Box {
  /** What waits, in the order of entry. */
  items = $state.raw<Item[]>([]);
  /** What a person must choose. */
  choices = $state.raw<Choice[]>([]);
  /** How many writes are not on the disk yet. */
  writing = $state(0);
  /** Whether the server is out of reach. */
  away = $state(false);
  /** How often something was sent, for pages that ask again then. */
  sent = $state(0);
}

/** What was entered on this device and is not sent yet. */
export const box = new Box();

const others = typeof BroadcastChannel === 'undefined' ? null : new BroadcastChannel('dentwright');
let timer: ReturnType<typeof setTimeout> | undefined;
let sending: Promise<void> | null = null;

/** Opens what this device kept, and sends it as soon as that can be. */
export async function openBox(): Promise<void> {
  await read();
  waitFor(sent);
  others?.addEventListener('message', () => void Promise.all([read(), openSeen()]).then(() => soon()));
  addEventListener('online', () => void send());
  void send();
}

async function read() {
  const [kept, choices] = await Promise.all([all<Item>('outbox'), all<Choice>('clash')]);
  const unwritten = box.items.filter((item) => item.n === undefined && !kept.some((one) => one.id === item.id));
  [box.items, box.choices] = [[...kept, ...unwritten], choices];
}

/**
 * Takes something in: it is on the disk in a moment and is sent when that can be. It shows at once, but for what is
 * counted: that shows when it is on the disk, so that what was seen to count is there whatever happens to the browser.
 * Whether it was kept.
 */
export function add(job: string, sort: Sort, id = newId()): Promise<boolean> {
  const item = { id, job, at: Date.now(), ...(sort.kind === 'file' ? sort : ($state.snapshot(sort) as Sort)) } as Item;
  if (sort.kind !== 'tap') box.items = [...box.items, item];
  box.writing++;
  return put('outbox', item).then(
    (n) => {
      const kept = { ...item, n: n as number };
      const there = box.items.some((one) => one.id === id);
      box.items = there ? box.items.map((one) => (one.id === id ? kept : one)) : [...box.items, kept];
      box.writing--;
      soon();
      return true;
    },
    (problem) => {
      box.writing--;
      tellProblem(problem);
      return false;
    },
  );
}

function soon(after = REST_MS) {
  clearTimeout(timer);
  timer = setTimeout(() => void send(), after);
}

/** Comes back when everything has been sent, or cannot be now. */
export async function sent(): Promise<void> {
  while (!box.away && (box.writing > 0 || nextCall(box.items).length > 0)) {
    if (box.writing > 0) await new Promise((resolve) => setTimeout(resolve, 5));
    else await send();
  }
}

/** Sends what waits, in the order of entry. */
export function send(): Promise<void> {
  sending ??= alone(sendAll).finally(() => (sending = null));
  return sending;
}

/** One page of the browser sends at a time, where it can tell. */
async function alone(work: () => Promise<void>): Promise<void> {
  await (navigator.locks ? navigator.locks.request('dentwright-outbox', work) : work());
}

async function sendAll(): Promise<void> {
  try {
    for (let items = nextCall(box.items); items.length > 0; items = nextCall(box.items)) {
      await deliver(items);
      box.away = false;
    }
    if (box.away && (await raw('GET', '/api/shop'))) box.away = false;
  } catch (problem) {
    if (!isAway(problem)) tellProblem(problem);
    box.away = true;
  }
  clearTimeout(timer);
  if (box.away) soon(AGAIN_MS);
}

/** Whether the server is out of reach or out of order, so that the same may be taken later. */
const isAway = (problem: unknown) => problem instanceof Problem && ['offline', 'server', 'not_paired', 'disk'].includes(problem.code);

async function deliver(items: Item[]): Promise<void> {
  try {
    await call(items);
    await drop(items);
  } catch (problem) {
    if (!(problem instanceof Problem) || isAway(problem)) throw problem;
    if (items.length > 1) for (const item of items) await deliver([item]);
    else await setAside(items[0]!, problem);
  }
}

async function call(items: Item[]): Promise<void> {
  const first = items[0]!;
  const path = `/api/jobs/${first.job}`;
  if (first.kind === 'new') return hold(await raw<Job>('POST', '/api/jobs', first.body));
  if (first.kind === 'damage') {
    await raw('POST', `${path}/damages`, { id: first.damage, panel: first.panel, x: first.x, y: first.y });
    return hold(await raw<Job>('GET', path));
  }
  if (first.kind === 'tap') {
    const taps = items.flatMap((item) => (item.kind === 'tap' ? [{ id: item.id, damage: item.damage, panel: item.panel, dent: item.dent, by: item.by }] : []));
    return hold(await raw<Job>('POST', `${path}/taps`, { taps }));
  }
  if (first.kind === 'edit') {
    const edits = items.flatMap((item) => (item.kind === 'edit' ? item.edits : []));
    const merged = await raw<{ job: Job; clashes: Choice[] }>('POST', `${path}/edits`, { edits });
    for (const clash of merged.clashes) await put('clash', { ...clash, id: `${first.job}${clash.field}`, job: first.job });
    if (merged.clashes.length > 0) box.choices = await all<Choice>('clash');
    return hold(merged.job);
  }
  if (first.kind === 'file') {
    const form = new FormData();
    form.append('files', first.file, first.name);
    await raw('POST', first.path, form);
    return;
  }
  await raw(first.method, first.path, first.body);
}

async function drop(items: Item[]): Promise<void> {
  await remove('outbox', items.map((item) => item.n!));
  const gone = new Set(items.map((item) => item.id));
  box.items = box.items.filter((item) => !gone.has(item.id));
  box.sent++;
  others?.postMessage('changed');
}

/** What the server will not take stays here with its reason. */
async function setAside(item: Item, problem: Problem): Promise<void> {
  const aside: Item = { ...item, trouble: { code: problem.code, message: problem.message, next: problem.next } };
  await put('outbox', aside);
  box.items = box.items.map((one) => (one.id === item.id ? aside : one));
  tellProblem(problem);
}

/** Tries again what was set aside. */
export async function tryAgain(): Promise<void> {
  for (const item of box.items.filter((one) => one.trouble)) {
    const { trouble: _, ...fresh } = item;
    await put('outbox', fresh);
  }
  await read();
  await send();
}

/** Gives up what was set aside. */
export const giveUp = (item: Item): Promise<void> => drop([item]);

/** Ends a clash: mine is sent again, knowing theirs; theirs stays as it is. */
export async function choose(choice: Choice, mine: boolean): Promise<void> {
  await remove('clash', [choice.id]);
  box.choices = box.choices.filter((one) => one.id !== choice.id);
  if (mine) add(choice.job, { kind: 'edit', edits: [{ field: choice.field, base: choice.theirs, to: choice.mine }] });
}
