/** The program with a data folder of its own. */

import { type ChildProcess, spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

export class Program {
  readonly data = mkdtempSync(join(tmpdir(), "steelyard-data-"));
  address = ""; // with the key behind the #
  #process: ChildProcess | null = null;
  #port = "0";

  /**
   * start runs the program and waits for the address it prints. Started again, it keeps its port. A command that
   * prepares its surroundings may stand before it.
   */
  async start(before: string[] = []): Promise<void> {
    const line = [...before, process.env.STEELYARD!, "serve", "--data", this.data, "--listen"];
    const child = spawn(line[0]!, [...line.slice(1), `127.0.0.1:${this.#port}`]);
    this.#process = child;
    this.address = await new Promise<string>((found, failed) => {
      let text = "";
      child.stdout.on("data", (part) => {
        text += part;
        const address = /http:\/\/127\.0\.0\.1:\d+\/#\S+/.exec(text)?.[0];
        if (address) found(address);
      });
      let trouble = "";
      child.stderr.on("data", (part) => {
        trouble += part;
      });
      child.on("exit", (code) => failed(new Error(`the program ended with ${code}: ${trouble}`)));
    });
    this.#port = new URL(this.address).port;
  }

  /** pid is the process's number. */
  get pid(): number {
    return this.#process!.pid!;
  }

  /** stop ends it as the system would. */
  async stop(): Promise<void> {
    const child = this.#process;
    if (!child) return;
    this.#process = null;
    const ended = new Promise((done) => child.on("exit", done));
    child.removeAllListeners("exit");
    const gone = new Promise((done) => child.on("exit", done));
    child.kill("SIGTERM");
    await Promise.race([ended, gone]);
  }

  async end(): Promise<void> {
    await this.stop();
    rmSync(this.data, { recursive: true, force: true });
  }

  /** base is the address without the key. */
  get base(): string {
    return this.address.slice(0, this.address.indexOf("#"));
  }
}
