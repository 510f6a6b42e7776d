import type { Plugin } from "vite";
import { VitePWA } from "vite-plugin-pwa";

/** What the program keeps of itself to start without a network: all that it is built of but source maps. */
const KEPT = "**/*.{html,js,css,woff2,tif,wasm,png,svg,webmanifest,md}";
const MOST_BYTES = 8_000_000;

/** Makes the program installable, and its service worker with the list of all files. */
export function offline(): Plugin[] {
  return VitePWA({
    strategies: "injectManifest",
    srcDir: "workers",
    filename: "service-worker.ts",
    injectRegister: false,
    includeManifestIcons: false,
    manifest: {
      name: "Drystead",
      short_name: "Drystead",
      description: "Plans the emergency sandbag levee around one building on real terrain.",
      id: "./",
      start_url: "./",
      scope: "./",
      display: "standalone",
      background_color: "#f8f5ee",
      theme_color: "#1e2c33",
      icons: [
        { src: "icon.svg", sizes: "any", type: "image/svg+xml" },
        { src: "icon-192.png", sizes: "192x192", type: "image/png" },
        { src: "icon-512.png", sizes: "512x512", type: "image/png" },
        { src: "icon-maskable.png", sizes: "512x512", type: "image/png", purpose: "maskable" },
      ],
    },
    injectManifest: {
      globPatterns: [KEPT],
      maximumFileSizeToCacheInBytes: MOST_BYTES,
      rollupFormat: "iife",
      sourcemap: false,
      buildPlugins: { vite: [{ name: "quiet", config: () => ({ logLevel: "warn" as const }) }] },
    },
  });
}
