// `evencount studio` on a free port, with a folder of projects of its own.
import { spawn } from 'node:child_process';
import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

const home = fileURLToPath(new URL('../../..', import.meta.url));
/** The program: $EVENCOUNT, or the one of the development build. */
export const program = resolve(process.env.EVENCOUNT ?? join(home, 'build/dev/src/app/evencount'));
export const examples = join(home, 'examples');
const page = join(home, 'studio/dist');

export class StudioServer {
  #child;
  /** What it wrote to standard error. */
  log = '';

  /** `projects`: files that are copied into the folder; `folder`: one that is there already. */
  static async start({ projects = [], folder, options = [] } = {}) {
    const server = new StudioServer();
    server.folder = folder ?? mkdtempSync(join(tmpdir(), 'evencount-studio-'));
    server.ownsFolder = folder === undefined;
    for (const file of projects) cpSync(file, join(server.folder, basename(file)));
    await server.#run(options);
    return server;
  }

  async #run(options) {
    this.#child = spawn(
      program,
      ['studio', '--projects', this.folder, '--port', '0', '--studio-files', page, ...options],
      {
        stdio: ['ignore', 'pipe', 'pipe'],
      },
    );
    this.#child.stderr.on('data', (text) => (this.log += text));
    this.entry = await new Promise((done, failed) => {
      let out = '';
      this.#child.stdout.on('data', (text) => {
        out += text;
        const line = /^(http:\S+)\n/m.exec(out);
        if (line) done(line[1]);
      });
      this.#child.on('exit', (code) => failed(new Error(`the studio ended with ${code}: ${this.log}`)));
      this.#child.on('error', failed);
    });
    this.origin = new URL(this.entry).origin;
  }

  get pid() {
    return this.#child.pid;
  }

  /** Ends it and waits until it has: SIGTERM saves, SIGKILL does not. */
  async end(signal = 'SIGTERM') {
    const ended = new Promise((done) => this.#child.once('exit', done));
    this.#child.kill(signal);
    await ended;
  }

  async stop() {
    await this.end();
    if (this.ownsFolder) rmSync(this.folder, { recursive: true, force: true });
  }
}
