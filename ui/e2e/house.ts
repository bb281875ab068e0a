/** One browser and one program for all tests of a file. */

import type { Browser } from "playwright-core";
import { afterAll, beforeAll } from "vitest";
import { launch } from "./browser.ts";
import { Program } from "./program.ts";

export interface House {
  readonly browser: Browser; // once the tests run
  readonly program: Program;
}

/** house starts both before the tests of the file and ends them after. */
export function house(): House {
  const program = new Program();
  let browser: Browser | null = null;
  beforeAll(async () => {
    browser = await launch();
    await program.start();
  });
  afterAll(async () => {
    await browser?.close();
    await program.end();
  });
  return {
    program,
    get browser() {
      return browser!;
    },
  };
}
