import { defineConfig } from "vite";

/** The client's page as one script and one style sheet, to be put into one file. */
export default defineConfig({
  publicDir: false,
  build: {
    outDir: "../internal/server/page/dist",
    emptyOutDir: false,
    target: "es2022",
    cssCodeSplit: false,
    rollupOptions: {
      input: "src/leaflet.tsx",
      output: { format: "iife", entryFileNames: "leaflet.js", assetFileNames: "leaflet[extname]" },
    },
  },
});
