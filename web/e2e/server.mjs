// The built program on a free port of this machine with a shop folder of its own.
import { execFileSync, spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const BINARY = process.env.DENTWRIGHT_BIN ?? join(dirname(fileURLToPath(import.meta.url)), '../../target/release/dentwright');
const START_MS = 20_000;

/**
 * Starts the program, with more options where given. `stop` ends it and removes its folder; `cut` ends it and `back`
 * starts it again under the same address with the same shop, as when a van drives out of reach and back.
 */
export async function startServer(...options) {
  if (!existsSync(BINARY)) throw new Error(`${BINARY} is not there: build it with cargo build --release`);
  const folder = await mkdtemp(join(tmpdir(), 'dentwright-e2e-'));
  const port = await freePort();
  const base = `http://127.0.0.1:${port}`;
  let child;
  const back = async () => {
    child = spawn(BINARY, ['serve', '--shop', join(folder, 'shop'), '--port', String(port), ...options], { stdio: ['ignore', 'pipe', 'pipe'] });
    const said = [];
    for (const stream of [child.stdout, child.stderr]) stream.on('data', (text) => said.push(text));
    for (const until = Date.now() + START_MS; ; ) {
      if (await fetch(`${base}/api/shop`).then((answer) => answer.ok, () => false)) return;
      if (child.exitCode !== null || Date.now() > until) {
        await stop();
        throw new Error(`the program did not start:\n${said.join('')}`);
      }
      await new Promise((resolve) => setTimeout(resolve, 100));
    }
  };
  const cut = async () => {
    const ended = child.exitCode === null && new Promise((resolve) => child.once('exit', resolve));
    child.kill();
    await ended;
  };
  const stop = async () => {
    await cut();
    await rm(folder, { recursive: true, force: true });
  };
  await back();
  return { base, folder, stop, cut, back };
}

/** Files of a demo capture, the first where none is named, as the browser's file field takes them. */
export async function captureFiles(folder, name) {
  const captures = join(folder, 'captures');
  if (!existsSync(captures)) execFileSync(BINARY, ['demo-captures', captures]);
  const first = name ?? (await readdir(captures, { withFileTypes: true })).filter((entry) => entry.isDirectory()).map((entry) => entry.name).sort()[0];
  const names = (await readdir(join(captures, first))).filter((name) => /\.(jpe?g|png|toml)$/.test(name));
  return Promise.all(
    names.map(async (name) => ({ name, mimeType: name.endsWith('.toml') ? 'application/toml' : 'image/jpeg', buffer: await readFile(join(captures, first, name)) })),
  );
}

function freePort() {
  return new Promise((resolve, reject) => {
    const probe = createServer().once('error', reject).listen(0, '127.0.0.1', () => {
      const { port } = probe.address();
      probe.close(() => resolve(port));
    });
  });
}
