import { describe, expect, it } from 'vitest';
import { readByteMap, readFloatMap, readNpy } from '../src/lib/npy';

/** Bytes of an NPY file as NumPy writes them (NEP 1): magic, version, header length, header padded to 64. */
function file(header: string, body: ArrayBuffer, version = 1): ArrayBuffer {
  const start = version === 1 ? 10 : 12;
  const padded = header.padEnd(Math.ceil((header.length + 1 + start) / 64) * 64 - start - 1) + '\n';
  const length = version === 1 ? [padded.length & 255, padded.length >> 8] : [padded.length & 255, padded.length >> 8, 0, 0];
  const head = [0x93, ...[...'NUMPY'].map((c) => c.charCodeAt(0)), version, 0, ...length, ...[...padded].map((c) => c.charCodeAt(0))];
  const whole = new Uint8Array(head.length + body.byteLength);
  whole.set(head);
  whole.set(new Uint8Array(body), head.length);
  return whole.buffer;
}
const head = (descr: string, shape: string, order = 'False') => `{'descr': '${descr}', 'fortran_order': ${order}, 'shape': ${shape}, }`;

describe('NPY files', () => {
  it('read float maps row by row, NaN kept', () => {
    const values = new Float32Array([0.5, -1.25, NaN, 3, 4, 5]);
    for (const version of [1, 2]) {
      const map = readFloatMap(file(head('<f4', '(2, 3)'), values.buffer, version));
      expect([map.ny, map.nx]).toEqual([2, 3]);
      expect([...map.data]).toEqual([0.5, -1.25, NaN, 3, 4, 5]);
    }
  });
  it('read the bytes that NumPy 2 writes for np.arange(6, dtype="<f4").reshape(2, 3)', () => {
    // base64 of what numpy.save wrote
    const base64 =
      'k05VTVBZAQB2AHsnZGVzY3InOiAnPGY0JywgJ2ZvcnRyYW5fb3JkZXInOiBGYWxzZSwgJ3NoYXBlJzogKDIsIDMpLCB9ICAgICAgICAgICAgICAgICAgICAgICAgICAgICAgICAgICAgICAgICAgICAgICAgICAgICAgICAgIAoAAAAAAACAPwAAAEAAAEBAAACAQAAAoEA=';
    const bytes = Uint8Array.from(atob(base64), (c) => c.charCodeAt(0));
    expect([...readFloatMap(bytes.buffer).data]).toEqual([0, 1, 2, 3, 4, 5]);
  });
  it('read maps of codes', () => {
    expect([...readByteMap(file(head('|u1', '(1, 4)'), new Uint8Array([0, 1, 5, 2]).buffer)).data]).toEqual([0, 1, 5, 2]);
  });
  it('say what is wrong', () => {
    const body = new Float32Array(6).buffer;
    expect(() => readNpy(new TextEncoder().encode('not a map at all').buffer)).toThrow('not an NPY file');
    expect(() => readNpy(file(head('<f8', '(2, 3)'), body))).toThrow("'<f8'");
    expect(() => readNpy(file(head('<f4', '(2, 3)', 'True'), body))).toThrow('column order');
    expect(() => readNpy(file(head('<f4', '(6,)'), body))).toThrow('two dimensions');
    expect(() => readNpy(file(head('<f4', '(3, 3)'), body))).toThrow('24 bytes of 36');
    expect(() => readNpy(file(head('<f4', '(2, 3)'), body).slice(0, 30))).toThrow('cut off');
    expect(() => readByteMap(file(head('<f4', '(2, 3)'), body))).toThrow('no bytes');
  });
});
