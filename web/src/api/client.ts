import createClient from 'openapi-fetch';
import { untrack } from 'svelte';
import type { components, paths } from './schema';
import type {
  Camera, CautionRow, Change, Dent, DentEntry, Foretold, HailTableRow, HoursSettings, Job, JobRow, LearnedAnswer, LineReport,
  LiveOffer, LiveState, FoundTip, GaugeAsked, MetalAnswer, MetalAsked, MoveAsked, Warmed, WarmingAsked, MoveTried, NewHailTable, OnFile, PairingOffer, QuoteAnswer, QuoteInput, Reading,
  Screen, SeriesReading, Shop, Task, Trouble, VinAnswer, WorkedInput,
} from './types';
import type { Billing, Claimed, Claims, Country, Issue, Language, Lean, Level, Paper, Rehearsal, RehearsalRow, RehearsalScore, Rehearsed, TakenIn, Touch } from './types';
import type { Behind, CoolingAsked, Place, PlanAnswer, PlanAsked, Rack, Reaches, Work } from './plan';
import type { ErasurePlan, NewTime, PaySheet, StartedTime, Technician, TechnicianInput, TimeChange, TimeEntry, Times } from './types';

/** What went wrong, in words for the technician, and what to do. */
export class Problem extends Error implements Trouble {
  code: string;
  next: string;
  constructor(trouble: Trouble) {
    super(trouble.message);
    this.code = trouble.code;
    this.next = trouble.next;
  }
}

const http = createClient<paths>({ baseUrl: location.origin });

/** What comes first: whatever was entered here is told to the server before it is asked. */
let first: () => Promise<void> = () => Promise.resolve();
export function waitFor(before: () => Promise<void>): void {
  first = before;
}
// Pages ask inside effects, which shall not run again with every tap.
http.use({ onRequest: () => untrack(first).then(() => undefined) });

/** A server that has not answered by then is out of reach, ms; photos may take longer. */
const PATIENCE_MS = 15_000;
const FILES_PATIENCE_MS = 180_000;

/** A call of the outbox, which waits for nothing. */
export async function raw<T>(method: string, path: string, body?: unknown): Promise<T> {
  const files = body instanceof FormData;
  const call = fetch(path, {
    method,
    headers: files || body === undefined ? undefined : { 'content-type': 'application/json' },
    body: files ? body : body === undefined ? undefined : JSON.stringify(body),
    signal: AbortSignal.timeout(files ? FILES_PATIENCE_MS : PATIENCE_MS),
  });
  return said<T>(
    call.then(async (response) => {
      const answer: unknown = response.status === 204 ? undefined : await response.json().catch(() => undefined);
      return response.ok ? { data: answer, response } : { error: answer, response };
    }),
  );
}
/** Waits until what was entered here has been sent, or cannot be now. */
export const told = (): Promise<void> => untrack(first);

/** The answer to a call, or the problem that it met. */
async function said<T>(call: Promise<{ data?: unknown; error?: unknown; response: Response }>): Promise<T> {
  const { data, error, response } = await call.catch(() => {
    throw new Problem({ code: 'offline', message: '', next: '' });
  });
  if (response.ok) return data as T;
  throw new Problem(isTrouble(error) ? error : { code: 'server', message: `${response.status} ${response.statusText}`, next: '' });
}

function isTrouble(error: unknown): error is Trouble {
  return typeof error === 'object' && error !== null && 'code' in error && 'message' in error;
}

/** What a photo of a live session was answered with; a refusal is a `Problem`. */
async function sendPhoto(code: string, turn: number, photo: Blob): Promise<LiveState> {
  const call = fetch(`/api/live/${part(code)}/photos/${turn}`, { method: 'POST', headers: { 'content-type': 'image/jpeg' }, body: photo });
  const response = await call.catch(() => {
    throw new Problem({ code: 'offline', message: '', next: '' });
  });
  if (response.ok) return response.json();
  throw new Problem(await response.json());
}

const of = (code: string) => ({ params: { path: { code } } });
const at = (id: string) => ({ params: { path: { id } } });
/** A removal that is sent while the page goes away must still arrive. */
const removal = (id: string) => ({ ...at(id), keepalive: true });

export const api = {
  shop: () => said<Shop>(http.GET('/api/shop')),
  saveShop: (body: Shop) => said<Shop>(http.PUT('/api/shop', { body })),
  hours: () => said<HoursSettings>(http.GET('/api/shop/hours')),
  saveHours: (body: HoursSettings) => said<HoursSettings>(http.PUT('/api/shop/hours', { body })),
  jobs: (search: string, stage: string) => said<JobRow[]>(http.GET('/api/jobs', { params: { query: { search, stage } } })),
  job: (job: string) => said<Job>(http.GET('/api/jobs/{id}', at(job))),
  removeJob: (job: string) => said<void>(http.DELETE('/api/jobs/{id}', removal(job))),
  vin: (vin: string) => said<VinAnswer>(http.GET('/api/vin/{vin}', { params: { path: { vin } } })),
  removeDamage: (damage: string) => said<void>(http.DELETE('/api/damages/{id}', removal(damage))),
  changeDent: (dent: string, body: Dent) => said<DentEntry>(http.PUT('/api/dents/{id}', { ...at(dent), body })),
  removeDent: (dent: string) => said<void>(http.DELETE('/api/dents/{id}', removal(dent))),
  readAgain: (capture: string) => said<{ task_id: string }>(http.POST('/api/captures/{id}/read', at(capture))),
  task: (task: string) => said<Task>(http.GET('/api/tasks/{id}', at(task))),
  cancel: (task: string) => said<void>(http.DELETE('/api/tasks/{id}', removal(task))),
  reading: (reading: string) => said<Reading>(http.GET('/api/readings/{id}', at(reading))),
  change: (later: string, earlier: string) => said<Change>(http.GET('/api/readings/{id}/change/{earlier}', { params: { path: { id: later, earlier } } })),
  series: (damage: string) => said<SeriesReading[]>(http.GET('/api/damages/{id}/series', at(damage))),
  bodyLine: (reading: string, from: { x: number; y: number }, to: { x: number; y: number }) =>
    said<LineReport>(http.GET('/api/readings/{id}/line', { params: { path: { id: reading }, query: { from_x_mm: from.x, from_y_mm: from.y, to_x_mm: to.x, to_y_mm: to.y } } })),
  addGauge: (reading: string, body: GaugeAsked) => said<Reading>(http.POST('/api/readings/{id}/gauge', { ...at(reading), body })),
  removeGauge: (reading: string) => said<Reading>(http.DELETE('/api/readings/{id}/gauge', removal(reading))),
  take: (reading: string) => said<DentEntry[]>(http.POST('/api/readings/{id}/take', at(reading))),
  warming: (body: WarmingAsked) => said<Warmed>(http.POST('/api/warming', { body })),
  metals: () => said<OnFile>(http.GET('/api/metals')),
  metal: (reading: string) => said<MetalAnswer>(http.GET('/api/readings/{id}/metal', at(reading))),
  knowMetal: (reading: string, body: MetalAsked) => said<void>(http.POST('/api/readings/{id}/metal', { ...at(reading), body })),
  cancelMetal: (reading: string) => said<void>(http.DELETE('/api/readings/{id}/metal', removal(reading))),
  tryMove: (reading: string, body: MoveAsked) => said<MoveTried>(http.POST('/api/readings/{id}/metal/try', { ...at(reading), body })),
  plan: (reading: string) => said<PlanAnswer>(http.GET('/api/readings/{id}/plan', at(reading))),
  planRepair: (reading: string, body: PlanAsked) => said<void>(http.POST('/api/readings/{id}/plan', { ...at(reading), body })),
  findTip: (reading: string, before: Blob, loaded: Blob, aim: readonly [number, number] | null) => {
    const form = new FormData();
    form.append('files', before, 'before.jpg');
    form.append('files', loaded, 'loaded.jpg');
    const query = aim ? `?x_mm=${aim[0]}&y_mm=${aim[1]}` : '';
    return raw<FoundTip>('POST', `/api/readings/${part(reading)}/tip${query}`, form);
  },
  cancelPlan: (reading: string) => said<void>(http.DELETE('/api/readings/{id}/plan', removal(reading))),
  work: (damage: string) => said<Work>(http.GET('/api/damages/{id}/work', at(damage))),
  lookAgain: (damage: string, due: string | null) => said<void>(http.PUT('/api/damages/{id}/look-again', { ...at(damage), body: { due } })),
  cooling: (body: CoolingAsked) => said<{ seconds: number | null }>(http.POST('/api/cooling', { body })),
  behind: (damage: string) => said<Behind | null>(http.GET('/api/damages/{id}/behind', at(damage))),
  drawBehind: (damage: string, body: Behind) => said<void>(http.PUT('/api/damages/{id}/behind', { ...at(damage), body })),
  forgetBehind: (damage: string) => said<void>(http.DELETE('/api/damages/{id}/behind', removal(damage))),
  reach: (damage: string, reading: string, at_mm: Place) => said<Reaches>(http.POST('/api/damages/{id}/reach', { ...at(damage), body: { reading, at_mm } })),
  rack: () => said<Rack>(http.GET('/api/rack')),
  saveRack: (body: Rack) => said<void>(http.PUT('/api/rack', { body })),
  starterRack: () => said<void>(http.DELETE('/api/rack')),
  quote: (job: string) => said<QuoteAnswer>(http.GET('/api/jobs/{id}/quote', at(job))),
  saveQuote: (job: string, body: QuoteInput, since?: number) =>
    said<QuoteAnswer>(http.PUT('/api/jobs/{id}/quote', { params: { path: { id: job }, query: { since } }, body: body as components['schemas']['Pricing'] })),
  hailTables: () => said<HailTableRow[]>(http.GET('/api/hail-tables')),
  addHailTable: (body: NewHailTable) => said<HailTableRow>(http.POST('/api/hail-tables', { body })),
  removeHailTable: (table: string) => said<void>(http.DELETE('/api/hail-tables/{id}', removal(table))),
  learned: () => said<LearnedAnswer>(http.GET('/api/shop/hours/learned')),
  saveWorked: (job: string, body: WorkedInput) => said<Foretold>(http.PUT('/api/jobs/{id}/worked', { ...at(job), body })),
  removeWorked: (job: string) => said<void>(http.DELETE('/api/jobs/{id}/worked', removal(job))),
  takenIn: (job: string) => said<TakenIn>(http.GET('/api/jobs/{id}/take-in', at(job))),
  consent: (language: Language) => said<string[]>(http.GET('/api/consent', { params: { query: { language: language as 'en' } } })),
  cautions: (job: string) => said<CautionRow[]>(http.GET('/api/cautions', { params: { query: { job } } })),
  cameras: () => said<Camera[]>(http.GET('/api/cameras')),
  removeCamera: (camera: string) => said<void>(http.DELETE('/api/cameras/{id}', removal(camera))),
  beginLive: (damage: string, tag_mm: number) => said<LiveOffer>(http.POST('/api/damages/{id}/live', { ...at(damage), body: { tag_mm } })),
  live: (code: string, after: number) => said<LiveState>(http.GET('/api/live/{code}', { params: { path: { code }, query: { after } } })),
  liveBoard: (code: string, body: Screen) => said<LiveState>(http.PUT('/api/live/{code}/board', { ...of(code), body })),
  liveShown: (code: string, turn: number) => said<void>(http.POST('/api/live/{code}/shown/{turn}', { params: { path: { code, turn } } })),
  livePhoto: sendPhoto,
  liveAgain: (code: string, setup: boolean) => said<LiveState>(http.POST('/api/live/{code}/again', { ...of(code), body: { setup } })),
  endLive: (code: string) => said<void>(http.DELETE('/api/live/{code}', { ...of(code), keepalive: true })),
  papers: (job: string) => said<Paper[]>(http.GET('/api/jobs/{id}/papers', at(job))),
  issuePaper: (job: string, body: Issue) => said<Paper>(http.POST('/api/jobs/{id}/papers', { ...at(job), body })),
  billing: () => said<Billing>(http.GET('/api/shop/billing')),
  saveBilling: (body: Billing) => said<Billing>(http.PUT('/api/shop/billing', { body })),
  countries: () => said<Country[]>(http.GET('/api/countries')),
  levels: () => said<Level[]>(http.GET('/api/rehearsal-levels')),
  rehearsals: () => said<RehearsalRow[]>(http.GET('/api/rehearsals')),
  beginRehearsal: (learner: string, level: string) => said<Rehearsal>(http.POST('/api/rehearsals', { body: { learner, level } })),
  rehearsal: (id: string) => said<Rehearsal>(http.GET('/api/rehearsals/{id}', at(id))),
  lean: (id: string, body: Lean) => said<{ change_mm: number[] | null }>(http.POST('/api/rehearsals/{id}/lean', { ...at(id), body })),
  foretell: (id: string, body: Touch) => said<{ change_mm: number[] | null }>(http.POST('/api/rehearsals/{id}/foretell', { ...at(id), body })),
  rehearse: (id: string, body: Touch) => said<Rehearsed>(http.POST('/api/rehearsals/{id}/moves', { ...at(id), body })),
  warm: (id: string, temperature_c: number) => said<void>(http.PUT('/api/rehearsals/{id}/temperature', { ...at(id), body: { temperature_c } })),
  claim: (id: string, body: Claims) => said<Claimed[]>(http.PUT('/api/rehearsals/{id}/claims', { ...at(id), body })),
  endRehearsal: (id: string) => said<RehearsalScore>(http.POST('/api/rehearsals/{id}/end', at(id))),
  rehearsalStep: (id: string, step: number) => said<number[]>(http.GET('/api/rehearsals/{id}/steps/{step}', { params: { path: { id, step } } })),
  times: (job: string) => said<Times>(http.GET('/api/jobs/{id}/times', at(job))),
  addTime: (job: string, body: NewTime) => said<StartedTime>(http.POST('/api/jobs/{id}/times', { ...at(job), body })),
  stopTime: (entry: string) => said<TimeEntry>(http.POST('/api/times/{id}/stop', { ...at(entry), body: {} })),
  changeTime: (entry: string, body: TimeChange) => said<TimeEntry>(http.PATCH('/api/times/{id}', { ...at(entry), body })),
  removeTime: (entry: string) => said<void>(http.DELETE('/api/times/{id}', removal(entry))),
  pay: (from: string, until: string) => said<PaySheet>(http.GET('/api/pay', { params: { query: { from, until } } })),
  erasure: (job: string) => said<ErasurePlan>(http.GET('/api/jobs/{id}/erasure', at(job))),
  orderErasure: (jobs: string[]) => said<{ due: string }>(http.POST('/api/erasure', { body: { jobs } })),
  callOffErasure: (job: string) => said<void>(http.DELETE('/api/jobs/{id}/erasure', removal(job))),
  crew: () => said<Technician[]>(http.GET('/api/crew')),
  addTechnician: (body: TechnicianInput) => said<Technician>(http.POST('/api/crew', { body })),
  changeTechnician: (id: string, body: TechnicianInput) => said<Technician>(http.PUT('/api/crew/{id}', { ...at(id), body })),
  pair: (code: string) => said<void>(http.POST('/api/pair', { body: { code } })),
  offerPairing: () => said<PairingOffer>(http.POST('/api/pair/offer')),
};

const part = encodeURIComponent;

/** A file of a reading, as bytes. */
export const readingFile = (reading: string, name: string) => bytesOf(readingFileUrl(reading, name));
/** A map of a change, as bytes. */
export const changeFile = (later: string, earlier: string, name: string) => bytesOf(`/api/readings/${part(later)}/change/${part(earlier)}/files/${part(name)}`);
/** A map of what the metal of a reading holds, as bytes. */
export const metalMap = (reading: string, name: string) => bytesOf(`/api/readings/${part(reading)}/metal/maps/${part(name)}`);

async function bytesOf(url: string): Promise<ArrayBuffer> {
  const response = await fetch(url);
  if (!response.ok) throw new Problem(await response.json());
  return response.arrayBuffer();
}

export const readingFileUrl = (reading: string, name: string) => `/api/readings/${part(reading)}/files/${part(name)}`;
export const exportUrl = (reading: string, form: string) => `/api/readings/${part(reading)}/export/${form}`;
export const photoUrl = (hash: string, width: number) => `/api/photos/${part(hash)}?width=${width}`;
export const reportUrl = (job: string) => `/api/jobs/${part(job)}/report.pdf`;
export const sheetUrl = (name: string, query: URLSearchParams) => `/api/sheets/${part(name)}?${query}`;
export const paperUrl = (paper: string, name: string) => `/api/papers/${part(paper)}/${part(name)}`;
export const calendarUrl = '/api/calendar.ics';
export const archiveUrl = '/api/archive.zip';
export const tableUrl = (name: string) => `/api/tables/${part(name)}`;
export const payTableUrl = (from: string, until: string) => `/api/pay.csv?from=${part(from)}&until=${part(until)}`;
