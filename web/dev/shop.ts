import { randomUUID } from 'node:crypto';
import type { Damage, Dent, Job, NewJob, QuoteInput, Reading, Task } from '../src/api/types.ts';
import { deviation, GRID, npy, PHOTO, photo, SPOTS, unread } from './panel.ts';

/** Invented people and cars. */
const CARS = [
  { name: 'Ada Lindqvist', make: 'Vardo', model: 'Kombi 4', plate: 'EX 204 A', stage: 'in_work', colour: 'deep blue' },
  { name: 'Tomas Brandt', make: 'Tavro', model: 'City', plate: 'EX 118 C', stage: 'quoted', colour: 'silver' },
  { name: 'Ines Ferrer', make: 'Hilde', model: 'Tourer', plate: 'EX 077 K', stage: 'taken_in', colour: 'black' },
] as const;

const STAGES = ['photos', 'tags', 'lines', 'poses', 'shape', 'spots'];

/** An upload that is not taken. */
export class Refusal {
  code: string;
  message: string;
  next: string;
  constructor(code: string, message: string, next: string) {
    [this.code, this.message, this.next] = [code, message, next];
  }
}

/** Answers like the server, from memory. */
export class Shop {
  private shop = {
    name: 'Linden Dent Works (invented)', address: 'Example Street 1', phone: '', email: '', tax_id: '', currency: 'EUR', hourly_rate: '95.00', tax_percent: '19',
    language: 'en', length_unit: 'mm', temperature_unit: 'c', finish_limit_um: 10,
  };
  private hours = {
    base_hours: 0.65, area_ref_mm2: 490.87, depth_ref_mm: 1, sharpness_ref: 0.08, area_power: 0.5, depth_power: 0.8, sharpness_power: 0.4, count_power: 0.97,
    spread_own: 0.35, spread_shared: 0.2, spread_z: 1.2816,
    kind: { round: 1, hail: 0.14, soft: 0.5, sharp: 1.6, crease: 2.2, high: 0.5 },
    metal: { steel: 1, high_strength_steel: 1.25, aluminium: 1.25 },
    access: { open: 1, trim_off: 1, braced: 1.4, glue_only: 1.35, none: 2 },
    place: { flat: 1, body_line: 1.4, edge: 1.5, rail: 1.3 },
  };
  private jobs: Job[] = [];
  private tasks = new Map<string, { began: number; damage: Damage; gone: boolean }>();
  private inputs = new Map<string, QuoteInput>();

  constructor() {
    for (const car of CARS) this.jobs.push(this.job(car.name, car));
    const damage = this.damage(this.jobs[0]!, { panel: 'front_door_left', x: 0.5, y: 0.6, note: '' });
    damage.captures.push({ id: 'c1', created: '2026-11-24T10:12:00Z', files: 26, task_id: null, readings: [{ id: 'r1', created: '2026-11-24T10:12:00Z' }] });
    this.damage(this.jobs[0]!, { panel: 'bonnet', x: 0.3, y: 0.4, note: '' });
    this.dent(damage, { kind: 'round', length_mm: 25, width_mm: 25, depth_mm: 1, metal: 'steel', access: 'open', place: 'body_line', count: 2 });
    this.dent(damage, { kind: 'crease', length_mm: 60, width_mm: 18, depth_mm: 0.4, metal: 'steel', access: 'braced', place: 'flat', count: 1 });
  }

  answer(method: string, [what, id, sub, name]: string[], query: URLSearchParams, body: any): unknown {
    const key = `${method} ${what}${id ? '/:' : ''}${sub ? '/' + sub : ''}`;
    if (what === 'shop' && id === 'hours') return method === 'PUT' ? (this.hours = body) : this.hours;
    switch (key) {
      case 'GET shop': return this.shop;
      case 'PUT shop': return (this.shop = body);
      case 'GET jobs': return this.rows(query.get('search') ?? '', query.get('stage') ?? '');
      case 'POST jobs': return this.takeIn(body);
      case 'GET jobs/:': return this.find(id!);
      case 'PATCH jobs/:': return Object.assign(this.find(id!), body);
      case 'DELETE jobs/:': return void (this.jobs = this.jobs.filter((job) => job.id !== id));
      case 'GET vin/:': return { valid: /^[A-HJ-NPR-Z0-9]{17}$/.test(id!), check_digit_ok: id![0]! > '5' ? null : true, warning: null };
      case 'POST jobs/:/damages': return this.damage(this.find(id!), body);
      case 'PATCH damages/:': return Object.assign(this.findDamage(id!), body);
      case 'DELETE damages/:': return void this.jobs.forEach((job) => (job.damages = job.damages.filter((one) => one.id !== id)));
      case 'POST damages/:/dents': return this.dent(this.findDamage(id!), body);
      case 'PUT dents/:': return Object.assign(this.allDents().find((one) => one.id === id)!, { dent: body });
      case 'DELETE dents/:': return void this.jobs.flatMap((job) => job.damages).forEach((damage) => (damage.dents = damage.dents.filter((one) => one.id !== id)));
      case 'POST damages/:/captures': return this.capture(this.findDamage(id!), body);
      case 'GET tasks/:': return this.task(id!);
      case 'DELETE tasks/:': return void (this.tasks.get(id!)!.gone = true);
      case 'GET readings/:': return this.reading(id!);
      case 'GET readings/:/files': return this.file(name!);
      case 'POST readings/:/take': return this.take(id!);
      case 'GET jobs/:/quote': return this.quote(id!);
      case 'PUT jobs/:/quote': return this.inputs.set(id!, body), this.quote(id!);
      case 'GET cautions': return [{ code: 'airbag_curtain', panel: 'roof_rail_left' }, { code: 'noise', panel: null }, { code: 'eyes_hands', panel: null }];
      case 'GET jobs/:/report.pdf': return Buffer.from('%PDF-1.7\n' + '%'.repeat(12_000));
      default: throw new Error(`no answer to ${key}`);
    }
  }

  private job(name: string, car: Partial<Job['car']> & { stage?: string }): Job {
    const number = `2026-${String(this.jobs.length + 1).padStart(3, '0')}`;
    return {
      id: randomUUID(), number, stage: (car.stage as Job['stage']) ?? 'taken_in', promised: '2026-11-27', notes: '', damages: [],
      customer: { name, phone: '', email: '', address: '' },
      car: { vin: null, plate: '', make: '', model: '', year: 2023, colour: '', paint: '', odometer_km: 48_200, high_voltage: null, metals: {}, ...car },
    };
  }
  private takeIn(body: NewJob): Job {
    const job = { ...this.job(body.customer.name, {}), ...body };
    this.jobs.unshift(job);
    return job;
  }
  private damage(job: Job, body: { panel: string; x: number; y: number; note: string }): Damage {
    const damage: Damage = { id: randomUUID(), ...body, dents: [], photos: [], captures: [] };
    job.damages.push(damage);
    return damage;
  }
  private dent(damage: Damage, dent: Dent, source: 'hand' | 'reading' = 'hand') {
    const entry = { id: randomUUID(), dent, source };
    damage.dents.push(entry);
    return entry;
  }
  private capture(damage: Damage, upload: string) {
    if (upload.includes('../')) throw new Refusal('bad_zip', 'The zip names a file outside its folder: ../escape.jpg.', 'Zip the capture folder again and choose that zip.');
    if (!upload.includes('capture.toml')) throw new Refusal('no_capture_toml', 'There is no capture.toml among these files, starting with holiday.jpg.', 'Choose the whole capture folder, with its capture.toml.');
    const id = randomUUID();
    this.tasks.set(id, { began: Date.now(), damage, gone: false });
    return { task_id: id, capture_id: id };
  }
  private task(id: string): Task {
    const task = this.tasks.get(id)!;
    const part = Math.min(1, (Date.now() - task.began) / 2400);
    const done = part >= 1;
    if (done && !task.gone && task.damage.captures.every((one) => one.id !== id))
      task.damage.captures.push({ id, created: new Date().toISOString(), files: 26, task_id: id, readings: [{ id: 'r1', created: new Date().toISOString() }] });
    const stages = STAGES.map((name, at) => ({ name, done: Math.max(0, Math.min(1, part * STAGES.length - at)) }));
    return { id, state: task.gone ? 'cancelled' : done ? 'done' : 'running', stage: STAGES[Math.min(STAGES.length - 1, Math.floor(part * STAGES.length))]!, fraction: part, stages, error: null, reading_id: done ? 'r1' : null };
  }
  private reading(id: string): Reading {
    return {
      id, capture_id: 'c1', created: '2026-11-24T10:12:00Z', version: '0.1.0', grid: GRID, spots: SPOTS, read_fraction: 0.962, scale: 'absolute', photo: PHOTO,
      finish: { limit_mm: 0.01, verdict: 'not done', reason: '' },
      unread: [
        { code: 'not_mirrored', value: 1, fraction: 0.171, text: '', next: '' },
        { code: 'tag', value: 2, fraction: 0.031, text: '', next: '' },
        { code: 'folded', value: 5, fraction: 0.004, text: '', next: '' },
      ],
      notes: [{ code: 'focal', text: 'The focal length was taken from the photo and refined.' }],
      frames: [],
    };
  }
  private file(name: string): Uint8Array {
    if (name === 'photo') return photo();
    if (name === 'unread.npy') return npy('u1', unread);
    return npy('f4', (x, y) => (unread(x, y) ? NaN : name === 'sigma.npy' ? 0.0007 + 1e-5 * Math.hypot(x, y) : deviation(x, y)));
  }
  private take(id: string) {
    const damage = this.jobs.flatMap((job) => job.damages).find((one) => one.captures.some((capture) => capture.readings.some((reading) => reading.id === id)))!;
    return SPOTS.filter((spot) => Math.abs(spot.height_mm) > 0.01).map((spot) =>
      this.dent(damage, { kind: spot.kind === 'high' ? 'high' : 'round', length_mm: spot.length_mm, width_mm: spot.width_mm, depth_mm: Math.abs(spot.height_mm), metal: 'steel', access: 'open', place: 'flat', count: 1 }, 'reading'),
    );
  }
  /** Looks like a quote; the sums are the server's business. */
  private quote(id: string) {
    const input = this.inputs.get(id) ?? { ri_lines: [], uplifts: [], add_or_compound: 'add' as const, hourly_rate: this.shop.hourly_rate, parts: [], sundries: [], discount: null, tax_percent: this.shop.tax_percent, currency: this.shop.currency };
    const job = this.find(id);
    const rate = Number(input.hourly_rate);
    const rows = job.damages.flatMap((damage) => damage.dents.map((entry) => ({ what: damage.panel, count: entry.dent.count, h: 0.03 * entry.dent.length_mm * entry.dent.count })));
    const h = rows.reduce((sum, row) => sum + row.h, 0);
    const lines = rows.map((row) => ({ kind: 'dent' as const, what: row.what, count: row.count, quantity: row.h.toFixed(2), unit: 'hour' as const, unit_price: input.hourly_rate, amount: (row.h * rate).toFixed(2) }));
    const gross = h * rate * 1.19;
    return {
      input,
      quote: { lines, net: (h * rate).toFixed(2), tax_percent: input.tax_percent, tax: (h * rate * 0.19).toFixed(2), gross: gross.toFixed(2), gross_low: (gross * 0.7).toFixed(2), gross_high: (gross * 1.4).toFixed(2), hours: { low: h * 0.7, likely: h, high: h * 1.4, because: [] }, add_or_compound: input.add_or_compound, currency: input.currency },
      dent_hours: rows.map((row) => ({ what: row.what, hours: { low: row.h * 0.7, likely: row.h, high: row.h * 1.4, because: [{ name: 'base', times: 0.65 }, { name: 'area', times: 1.3 }, { name: 'place', times: 1.4 }, { name: 'depth', times: 0.71 }] } })),
    };
  }
  private rows(search: string, stage: string) {
    return this.jobs
      .filter((job) => (!stage || job.stage === stage) && JSON.stringify([job.customer.name, job.car.plate, job.car.make, job.car.model]).toLowerCase().includes(search.toLowerCase()))
      .map((job) => ({ id: job.id, number: job.number, customer_name: job.customer.name, car_title: `${job.car.make} ${job.car.model}`.trim(), plate: job.car.plate, stage: job.stage, promised: job.promised, damage_count: job.damages.length, gross: job.damages.length ? '418.20' : null }));
  }
  private find(id: string): Job {
    const job = this.jobs.find((one) => one.id === id);
    if (!job) throw new Error('no such job');
    return job;
  }
  private findDamage(id: string): Damage {
    return this.jobs.flatMap((job) => job.damages).find((one) => one.id === id)!;
  }
  private allDents() {
    return this.jobs.flatMap((job) => job.damages).flatMap((damage) => damage.dents);
  }
}
