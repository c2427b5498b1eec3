import type { IncomingMessage, ServerResponse } from 'node:http';
import type { Plugin } from 'vite';
import { Refusal, Shop } from './shop.ts';

/**
 * A stand-in for the server while developing the pages: keeps everything in memory, reads nothing.
 * It is never part of the build. With `DENTWRIGHT=http://127.0.0.1:PORT` the real one is used instead.
 */
export function mock(): Plugin {
  const shop = new Shop();
  return {
    name: 'mock-api',
    configureServer(server) {
      server.middlewares.use('/api', (request, response) => void answer(shop, request, response));
    },
  };
}

async function answer(shop: Shop, request: IncomingMessage, response: ServerResponse): Promise<void> {
  const url = new URL(request.url ?? '/', 'http://mock');
  const parts = url.pathname.split('/').filter(Boolean);
  const body = await read(request);
  try {
    const said = shop.answer(request.method ?? 'GET', parts, url.searchParams, body);
    if (said instanceof Uint8Array) response.end(said);
    else if (said === undefined) response.writeHead(204).end();
    else response.setHeader('content-type', 'application/json').end(JSON.stringify(said));
  } catch (problem) {
    const trouble = problem instanceof Refusal ? { ...problem } : { code: 'mock', message: String(problem), next: 'This is the stand-in; start the real server.' };
    response.writeHead(trouble.code === 'mock' ? 404 : 400, { 'content-type': 'application/json' }).end(JSON.stringify(trouble));
  }
}

async function read(request: IncomingMessage): Promise<unknown> {
  const chunks: Buffer[] = [];
  for await (const chunk of request) chunks.push(chunk as Buffer);
  const text = Buffer.concat(chunks);
  return request.headers['content-type']?.includes('json') && text.length > 0 ? JSON.parse(text.toString()) : text.toString('latin1');
}
