import type {
  CautionRow, Damage, Dent, DentEntry, HoursSettings, Job, JobRow, NewJob, QuoteAnswer, QuoteInput, Reading, Shop, Task, Trouble, VinAnswer,
} from './types';

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

async function call<T>(method: string, path: string, body?: unknown): Promise<T> {
  let response: Response;
  try {
    response = await fetch(path, {
      method,
      // A removal that is sent while the page goes away must still arrive.
      keepalive: method === 'DELETE',
      headers: body === undefined ? {} : { 'content-type': 'application/json' },
      body: body === undefined ? undefined : JSON.stringify(body),
    });
  } catch {
    throw new Problem({ code: 'offline', message: '', next: '' });
  }
  if (!response.ok) throw new Problem(await response.json().catch(() => ({ code: 'server', message: `${response.status} ${response.statusText}`, next: '' })));
  return response.status === 204 ? (undefined as T) : await response.json();
}

const id = encodeURIComponent;

export const api = {
  shop: () => call<Shop>('GET', '/api/shop'),
  saveShop: (shop: Shop) => call<Shop>('PUT', '/api/shop', shop),
  hours: () => call<HoursSettings>('GET', '/api/shop/hours'),
  saveHours: (settings: HoursSettings) => call<HoursSettings>('PUT', '/api/shop/hours', settings),
  jobs: (search: string, stage: string) => call<JobRow[]>('GET', `/api/jobs?search=${id(search)}&stage=${id(stage)}`),
  takeIn: (job: NewJob) => call<Job>('POST', '/api/jobs', job),
  job: (job: string) => call<Job>('GET', `/api/jobs/${id(job)}`),
  changeJob: (job: string, change: Partial<NewJob & { stage: string }>) => call<Job>('PATCH', `/api/jobs/${id(job)}`, change),
  removeJob: (job: string) => call<void>('DELETE', `/api/jobs/${id(job)}`),
  vin: (vin: string) => call<VinAnswer>('GET', `/api/vin/${id(vin)}`),
  addDamage: (job: string, damage: { panel: string; x: number; y: number; note: string }) => call<Damage>('POST', `/api/jobs/${id(job)}/damages`, damage),
  changeDamage: (damage: string, change: { x?: number; y?: number; note?: string }) => call<Damage>('PATCH', `/api/damages/${id(damage)}`, change),
  removeDamage: (damage: string) => call<void>('DELETE', `/api/damages/${id(damage)}`),
  addDent: (damage: string, dent: Dent) => call<DentEntry>('POST', `/api/damages/${id(damage)}/dents`, dent),
  changeDent: (dent: string, value: Dent) => call<DentEntry>('PUT', `/api/dents/${id(dent)}`, value),
  removeDent: (dent: string) => call<void>('DELETE', `/api/dents/${id(dent)}`),
  readAgain: (capture: string) => call<{ task_id: string }>('POST', `/api/captures/${id(capture)}/read`),
  task: (task: string) => call<Task>('GET', `/api/tasks/${id(task)}`),
  cancel: (task: string) => call<void>('DELETE', `/api/tasks/${id(task)}`),
  reading: (reading: string) => call<Reading>('GET', `/api/readings/${id(reading)}`),
  take: (reading: string) => call<DentEntry[]>('POST', `/api/readings/${id(reading)}/take`),
  quote: (job: string) => call<QuoteAnswer>('GET', `/api/jobs/${id(job)}/quote`),
  saveQuote: (job: string, input: QuoteInput) => call<QuoteAnswer>('PUT', `/api/jobs/${id(job)}/quote`, input),
  cautions: (job: string) => call<CautionRow[]>('GET', `/api/cautions?job=${id(job)}`),
  pair: (code: string) => call<void>('POST', '/api/pair', { code }),
};

/** A file of a reading, as bytes. */
export async function readingFile(reading: string, name: string): Promise<ArrayBuffer> {
  const response = await fetch(readingFileUrl(reading, name));
  if (!response.ok) throw new Problem(await response.json());
  return response.arrayBuffer();
}

export const readingFileUrl = (reading: string, name: string) => `/api/readings/${id(reading)}/files/${id(name)}`;
export const photoUrl = (hash: string, width: number) => `/api/photos/${id(hash)}?width=${width}`;
export const reportUrl = (job: string) => `/api/jobs/${id(job)}/report.pdf`;
