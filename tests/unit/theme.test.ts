import { afterEach, describe, expect, it, vi } from "vitest";

/** The program's choices on a machine set to dark or light, with what was kept there before. */
async function machine(isDark: boolean, kept: Record<string, string> = {}) {
  const store = new Map(Object.entries(kept));
  let hear = (_: { matches: boolean }) => {};
  vi.stubGlobal("localStorage", {
    getItem: (key: string) => store.get(key) ?? null,
    setItem: (key: string, value: string) => store.set(key, value),
  });
  vi.stubGlobal("matchMedia", () => ({
    matches: isDark,
    addEventListener: (_: "change", listener: typeof hear) => {
      hear = listener;
    },
  }));
  vi.resetModules();
  const screen = await import("../../src/live/screen.ts");
  return { ...screen, store, setDark: (matches: boolean) => hear({ matches }) };
}

afterEach(() => {
  vi.unstubAllGlobals();
});

describe("light or dark", () => {
  it("is as the machine is set, and follows it, until the person chooses", async () => {
    const { theme, flipTheme, setDark, store } = await machine(true);
    expect(theme.value).toBe("dark");
    setDark(false);
    expect(theme.value).toBe("light");
    expect(store.has("drystead.theme")).toBe(false);
    flipTheme();
    expect(theme.value).toBe("dark");
    setDark(true);
    setDark(false);
    expect(theme.value).toBe("dark");
    expect(store.get("drystead.theme")).toBe("dark");
  });

  it("is what was chosen on an earlier visit, whatever the machine is set to", async () => {
    const { theme } = await machine(true, { "drystead.theme": "light" });
    expect(theme.value).toBe("light");
  });
});

describe("feet or metres", () => {
  it("are kept when they are chosen, and when they are chosen back", async () => {
    const { unitSystem, store } = await machine(false, { "drystead.units": "metric" });
    expect(unitSystem.value).toBe("metric");
    unitSystem.value = "us";
    expect(store.get("drystead.units")).toBe("us");
  });
});
