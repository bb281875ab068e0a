import { defineConfig } from "vitest/config";

/** The build is committed and embedded in the binary, so its names must not change without need. */
export default defineConfig({
  base: "./",
  build: {
    outDir: "../internal/server/page/dist",
    emptyOutDir: true,
    target: "es2022",
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
  },
  server: { proxy: { "/api": "http://127.0.0.1:8437" } },
  test: { include: ["test/**/*.test.ts"] },
});
