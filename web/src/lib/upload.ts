import { Problem, told } from '../api/client';

export interface Sending<T> {
  done: Promise<T>;
  stop: () => void;
}

/** Most that one upload may hold, bytes; the server says the same. */
export const MOST_BYTES = 400 * 1024 * 1024;

/**
 * Sends files with their progress, which `fetch` does not tell.
 * `onPart` gets the part that has left this device, 0 to 1.
 */
export function send<T>(url: string, files: File[], field: string, onPart: (part: number) => void): Sending<T> {
  const request = new XMLHttpRequest();
  const done = new Promise<T>((resolve, reject) => {
    request.upload.onprogress = (event) => event.lengthComputable && onPart(event.loaded / event.total);
    request.onload = () => (request.status < 300 ? resolve(parse<T>(request.responseText)) : reject(new Problem(trouble(request))));
    request.onerror = () => reject(new Problem({ code: 'offline', message: '', next: '' }));
    request.onabort = () => reject(new Problem({ code: 'stopped', message: '', next: '' }));
  });
  const form = new FormData();
  for (const file of files) form.append(field, file, file.name);
  request.open('POST', url);
  let stopped = false;
  void told().then(() => (stopped ? request.onabort?.(new ProgressEvent('abort')) : request.send(form)));
  const stop = () => {
    stopped = true;
    request.abort();
  };
  return { done, stop };
}

/** Everything dropped, folders opened up. */
export async function dropped(items: DataTransferItemList): Promise<File[]> {
  const entries = [...items].map((item) => item.webkitGetAsEntry?.()).filter((entry) => entry != null);
  return (await Promise.all(entries.map(filesOf))).flat();
}

async function filesOf(entry: FileSystemEntry): Promise<File[]> {
  if (entry.isFile) return [await new Promise<File>((resolve, reject) => (entry as FileSystemFileEntry).file(resolve, reject))];
  const reader = (entry as FileSystemDirectoryEntry).createReader();
  const found: FileSystemEntry[] = [];
  for (;;) {
    const some = await new Promise<FileSystemEntry[]>((resolve, reject) => reader.readEntries(resolve, reject));
    if (some.length === 0) break;
    found.push(...some);
  }
  return (await Promise.all(found.map(filesOf))).flat();
}

function parse<T>(text: string): T {
  return text ? (JSON.parse(text) as T) : (undefined as T);
}

function trouble(request: XMLHttpRequest) {
  try {
    return JSON.parse(request.responseText);
  } catch {
    return { code: 'server', message: `${request.status} ${request.statusText}`, next: '' };
  }
}
