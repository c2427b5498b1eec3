import { expect, test } from 'vitest';
import type { TimeEntry } from '../src/api/types';
import { layTimes } from '../src/lib/outbox/clocked';
import type { Item } from '../src/lib/outbox/item';

const JOB = 'job-1';
const call = (method: 'POST' | 'DELETE' | 'PATCH', path: string, body?: unknown): Item => ({ id: path, job: JOB, at: 0, kind: 'call', what: 'clock', method, path, body });
const push: TimeEntry = { id: 'a', technician: 'me', kind: 'push', started: '2026-11-26T08:00:00Z', stopped: null, state: 'running', seconds: 0, confirmed: false };
const start = call('POST', `/api/jobs/${JOB}/times`, { id: 'b', kind: 'tap', technician: 'me', started: '2026-11-26T09:00:00Z' });

test('a clock started without network stops the one before, once', () => {
  const laid = layTimes(JOB, [push], [start]);
  expect(laid.map(({ id, stopped }) => [id, stopped])).toEqual([['a', '2026-11-26T09:00:00Z'], ['b', null]]);
  expect(layTimes(JOB, laid, [start])).toEqual(laid); // what the server knows already is not there twice
  expect(layTimes('other', [push], [start])).toEqual([push]);
});

test('it is stopped, taken back, and let run again', () => {
  const stopped = layTimes(JOB, [push], [call('POST', '/api/times/a/stop', { at: '2026-11-26T08:30:00Z' })]);
  expect(stopped[0]?.stopped).toBe('2026-11-26T08:30:00Z');
  expect(layTimes(JOB, stopped, [call('PATCH', '/api/times/a', { stopped: null })])[0]?.stopped).toBeNull();
  const back = layTimes(JOB, [push], [start, call('DELETE', '/api/times/b'), call('PATCH', '/api/times/a', { stopped: null })]);
  expect(back.map(({ id, stopped }) => [id, stopped])).toEqual([['a', null]]);
});
