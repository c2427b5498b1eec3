/** A map read from an NPY file: `data[row * nx + column]`, row 0 at the bottom of the panel. */
export interface NpyMap<T extends Float32Array | Uint8Array = Float32Array | Uint8Array> {
  nx: number;
  ny: number;
  data: T;
}

const MAGIC = [0x93, 0x4e, 0x55, 0x4d, 0x50, 0x59];

/**
 * Reads an NPY file of two dimensions, C order, `<f4` or `|u1`.
 * Throws an `Error` that says what is wrong with the file.
 * Format: NEP 1 of NumPy.
 */
export function readNpy(buffer: ArrayBuffer): NpyMap {
  const bytes = new Uint8Array(buffer);
  if (bytes.length < 10 || MAGIC.some((byte, at) => bytes[at] !== byte)) throw new Error('not an NPY file');
  const view = new DataView(buffer);
  const long = bytes[6]! >= 2;
  const start = long ? 12 : 10;
  if (bytes.length < start) throw new Error('the NPY header is cut off');
  const end = start + (long ? view.getUint32(8, true) : view.getUint16(8, true));
  if (end > bytes.length) throw new Error('the NPY header is cut off');
  const { descr, ny, nx } = readHeader(new TextDecoder('latin1').decode(bytes.subarray(start, end)));
  const width = descr === '<f4' ? 4 : 1;
  const need = nx * ny * width;
  if (bytes.length < end + need) throw new Error(`the NPY file holds ${bytes.length - end} bytes of ${need}`);
  const body = buffer.slice(end, end + need);
  return { nx, ny, data: width === 4 ? floats(body) : new Uint8Array(body) };
}

/** As `readNpy`, for a map of millimetres. */
export function readFloatMap(buffer: ArrayBuffer): NpyMap<Float32Array> {
  const map = readNpy(buffer);
  if (!(map.data instanceof Float32Array)) throw new Error('the NPY file holds no float32');
  return map as NpyMap<Float32Array>;
}

/** As `readNpy`, for a map of codes. */
export function readByteMap(buffer: ArrayBuffer): NpyMap<Uint8Array> {
  const map = readNpy(buffer);
  if (!(map.data instanceof Uint8Array)) throw new Error('the NPY file holds no bytes');
  return map as NpyMap<Uint8Array>;
}

function readHeader(text: string): { descr: string; ny: number; nx: number } {
  const descr = /'descr':\s*'([^']+)'/.exec(text)?.[1] ?? '';
  if (descr !== '<f4' && descr !== '|u1') throw new Error(`NPY values of type '${descr}' are not read here`);
  if (/'fortran_order':\s*True/.test(text)) throw new Error('the NPY file is in column order');
  const shape = /'shape':\s*\((\d+),\s*(\d+),?\s*\)/.exec(text);
  if (!shape) throw new Error('the NPY file has not two dimensions');
  return { descr, ny: Number(shape[1]), nx: Number(shape[2]) };
}

/** Little endian floats, whatever the machine. */
function floats(body: ArrayBuffer): Float32Array {
  if (new Uint8Array(new Uint16Array([1]).buffer)[0] === 1) return new Float32Array(body);
  const view = new DataView(body);
  return Float32Array.from({ length: body.byteLength / 4 }, (_, at) => view.getFloat32(at * 4, true));
}
